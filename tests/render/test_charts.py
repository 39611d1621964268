"""Charts as data and as they are published: what is drawn is what was reckoned, and the words say the same."""

import os
import subprocess
import sys
from datetime import UTC, datetime
from decimal import Decimal
from hashlib import sha256
from pathlib import Path

import pytest
from msgspec.structs import replace

from logbook.model.figures import Reckoned
from logbook.model.named import ByName
from logbook.reckon.tally import share_of
from logbook.render.chart_of_tows import tow_chart
from logbook.render.charts import OTHERS, Bar, Bars, Chart, Chartlet, Columns, Part, Run
from logbook.render.draw import draw
from logbook.render.draw_chartlet import whole_minutes
from logbook.render.fleet_charts import grounds_chart, landings_chart, vessel_trips_chart
from logbook.render.gather import trip_line
from logbook.render.plate import BLUE, PALETTE, VERMILLION
from logbook.render.projection import northing
from logbook.render.trip_charts import age_chart, day_words, grades_chart, run_chart
from tests.render import example
from tests.render.example import at
from tests.render.picture import Picture


def charts_of(trip: Reckoned) -> list[Chart]:
    chartlet = tow_chart(trip, example.fleet())
    assert chartlet
    found = [chartlet.chart, run_chart(trip), grades_chart(trip), age_chart(trip)]
    return [chart for chart in found if chart]


def fleet_charts() -> list[Chart]:
    _, trips, figures, _ = example.whole_fleet()
    lines = [trip_line(share_of(trip, example.fleet()).brief) for trip in trips[:4]]
    found = [landings_chart(figures), grounds_chart(figures), vessel_trips_chart("Solan Bright", lines)]
    return [chart for chart in found if chart]


def every_chart() -> list[Chart]:
    return charts_of(example.trip()) + fleet_charts()


def words_on(chart: Chart) -> list[str]:
    return Picture(chart).words


def test_the_same_chart_gives_the_same_bytes_whatever_was_drawn_before() -> None:
    charts = every_chart()
    first = [draw(chart) for chart in charts]

    assert [draw(chart) for chart in reversed(charts)] == first[::-1]
    assert len(set(first)) == len(charts)


DRAW_ALL = """
from hashlib import sha256
from tests.render.test_charts import every_chart, draw
print(sha256(b"".join(draw(chart) for chart in every_chart())).hexdigest())
"""


def test_another_process_with_other_settings_gives_the_same_bytes(tmp_path: Path) -> None:
    settings = tmp_path / "matplotlibrc"
    settings.write_text(
        "svg.fonttype: path\nsvg.hashsalt: other\nhatch.linewidth: 9\nfont.family: serif\npath.simplify: True"
    )
    own = sha256(b"".join(draw(chart) for chart in every_chart())).hexdigest()
    other = subprocess.run(  # noqa: S603 - this very Python
        [sys.executable, "-c", DRAW_ALL],
        env=os.environ
        | {"MATPLOTLIBRC": str(settings), "PYTHONHASHSEED": "7", "PYTHONPATH": str(Path(__file__).parents[2])},
        capture_output=True,
        text=True,
        check=True,
    )

    assert other.stdout.strip() == own


@pytest.mark.parametrize("chart", every_chart(), ids=lambda chart: chart.path)
def test_a_chart_says_nothing_of_when_or_with_what_it_was_drawn(chart: Chart) -> None:
    svg = draw(chart).decode()

    assert svg.startswith("<svg")
    assert f'width="{chart.width}" height="{chart.height}"' in svg
    assert "atplotlib" not in svg
    assert "metadata" not in svg
    assert "DejaVu" not in svg


def test_the_bars_of_the_tows_are_what_the_tows_kept() -> None:
    trip = example.trip(tows=24)
    chart = run_chart(trip)
    assert chart
    picture = Picture(chart)
    drawn = [picture.boxes(colour, panel=1) for colour in range(len(PALETTE))]
    high = [
        max((high for boxes in drawn for left, _, right, high in boxes if left < place + 0.5 < right), default=0.0)
        for place in range(24)
    ]

    kept = [float(tow.kept_kg or 0) for tow in trip.figures.tows]

    assert high == pytest.approx(kept, abs=0.01 * picture.panels[1].per_pixel_y)


def test_the_running_total_ends_at_what_the_trip_kept() -> None:
    trip = example.trip(tows=24)
    chart = run_chart(trip)
    assert chart
    picture = Picture(chart)
    (line,) = picture.lines(BLUE, 2.2)
    total = float(trip.figures.totals.kept_kg or 0)

    assert line[-1][0] == pytest.approx(24, abs=0.01 * picture.panels[0].per_pixel_x)
    assert line[-1][1] == pytest.approx(total / 1000, abs=0.01 * picture.panels[0].per_pixel_y)
    assert isinstance(chart.drawing, Run)
    assert chart.drawing.totals[-1] == trip.figures.totals.kept_kg


def test_a_tow_whose_catch_is_not_known_has_a_question_mark_and_no_bar() -> None:
    trip = example.trip(tows=24)
    chart = run_chart(trip)
    assert chart

    assert words_on(chart).count("?") == sum(tow.kept_kg is None for tow in trip.figures.tows) == 1


def test_the_words_of_the_tows_are_the_figures() -> None:
    trip = example.trip(tows=24)
    chart = run_chart(trip)
    assert chart
    known = [(tow.kept_kg, tow.no) for tow in trip.figures.tows if tow.kept_kg is not None]
    most, best = max(known)
    total = trip.figures.totals.kept_kg or Decimal(0)
    said = f"Catch tow by tow: 24 tows, {total / 1000:.1f} t kept in all; the most in tow {best}, {most:,} kg; 1 tow not known."

    assert chart.alt.replace("\u202f", " ") == said.replace(f"{most:,}", f"{most:,}".replace(",", " "))


def test_a_trip_of_which_no_catch_is_known_says_so() -> None:
    trip = example.trip(tows=2)
    tows = tuple(replace(tow, kept_kg=None, catch=ByName()) for tow in trip.figures.tows)
    chart = run_chart(replace(trip, figures=replace(trip.figures, tows=tows)))
    assert chart

    assert chart.alt == "Catch tow by tow: 2 tows, the catch of none of them known."


def test_the_bars_of_a_species_are_its_grades() -> None:
    trip = example.trip(tows=10)
    chart = grades_chart(trip)
    assert chart
    assert isinstance(chart.drawing, Bars)
    haddock = trip.figures.catch["haddock"]

    assert [part.size for part in chart.drawing.bars[0].parts] == pytest.approx(
        [float(kg or 0) for kg in haddock.grades.values()]
    )
    picture = Picture(chart)
    assert picture.boxes(0)[0][2] == pytest.approx(
        float(haddock.grades["large"] or 0), abs=0.01 * picture.panels[0].per_pixel_x
    )
    assert {"haddock", "large"} <= set(picture.words)


def test_what_was_not_graded_is_grey_and_said() -> None:
    trip = example.trip(tows=10)
    catch = dict(trip.figures.catch)
    catch["haddock"] = replace(catch["haddock"], grades=ByName([("large", Decimal(10))]))
    chart = grades_chart(replace(trip, figures=replace(trip.figures, catch=ByName(catch.items()))))
    assert chart
    assert isinstance(chart.drawing, Bars)

    assert chart.drawing.bars[0].parts[-1].colour == OTHERS
    assert chart.drawing.bars[0].parts[-1].words == "not graded"
    assert sum(part.size for part in chart.drawing.bars[0].parts) == pytest.approx(float(catch["haddock"].kept_kg or 0))


def test_many_species_are_summed_up_in_the_last_bar() -> None:
    trip = example.trip(tows=10)
    one = trip.figures.catch["cod"]
    catch = ByName((f"species {number:02d}", one) for number in range(14))
    chart = grades_chart(replace(trip, figures=replace(trip.figures, catch=catch)))
    assert chart
    assert isinstance(chart.drawing, Bars)

    assert len(chart.drawing.bars) == 10
    assert chart.drawing.bars[-1].label == "5 more"
    assert chart.drawing.bars[-1].parts[0].size == pytest.approx(5 * float(one.kept_kg or 0))


def test_the_bars_of_age_are_the_days() -> None:
    trip = example.trip(tows=40)
    chart = age_chart(trip)
    assert chart
    picture = Picture(chart)
    lengths = [right for _, _, right, _ in sorted(picture.boxes(0), key=lambda one: one[1])]
    kept = [float(kg) for kg in trip.figures.age.kept_kg_by_day.values()]

    assert lengths == pytest.approx(kept, abs=0.01 * picture.panels[0].per_pixel_x)
    assert f"the oldest {trip.figures.age.oldest_ice_days:.1f}" in chart.alt


def test_days_are_named() -> None:
    assert [day_words(day) for day in ("0", "1", "12", "later")] == [
        "under 1 day",
        "1 to 2 days",
        "12 to 13 days",
        "later",
    ]


def test_the_tracks_are_where_the_tows_were() -> None:
    trip = example.trip(tows=6)
    found = tow_chart(trip, example.fleet())
    assert found
    picture = Picture(found.chart)
    (panel,) = picture.panels
    tracks = [line for line in picture.lines(BLUE, 1.6) if len(line) > 1]
    dots = [line[0] for line in picture.lines(BLUE, 4.5)]
    logged = [(tow.start, tow.end) for tow in trip.log.tows if tow.start and tow.end]
    near = 0.01 * panel.per_pixel_x

    assert dots == [line[0] for line in tracks]
    assert len(tracks) == len(logged) == 6
    for track, (start, end) in zip(tracks, logged, strict=True):
        assert track[0] == pytest.approx((start.longitude, northing(start.latitude)), abs=near, rel=0)
        assert track[-1] == pytest.approx((end.longitude, northing(end.latitude)), abs=near, rel=0)


def test_the_chartlet_bounds_statistical_rectangles_where_they_are() -> None:
    # ICES: rectangles are half a degree of latitude by one of longitude; 46D4 has its south-west corner at 58.5 N 16 W
    found = tow_chart(example.trip(tows=30), example.fleet())
    assert found
    assert isinstance(found.chart.drawing, Chartlet)

    assert dict(found.chart.drawing.rectangles)["46D4"] == (-16.0, 58.5)
    assert {"46D4", "47D4", "46D5", "47D5"} <= set(words_on(found.chart))


def test_names_lie_on_a_light_ground_over_tracks_and_scale() -> None:
    found = tow_chart(example.trip(tows=30), example.fleet())
    assert found
    shapes = Picture(found.chart).shapes
    grounds = [place for place, one in enumerate(shapes) if one.style.get("fill-opacity") == "0.8"]
    beneath = [place for place, one in enumerate(shapes) if one.style.get("stroke") in {BLUE, VERMILLION}]

    assert len(grounds) == 1
    assert grounds[0] > max(beneath)


def test_a_foul_tow_has_a_cross_and_its_number() -> None:
    trip = example.trip(tows=10)
    found = tow_chart(trip, example.fleet())
    assert found
    picture = Picture(found.chart)
    foul = next(tow for tow in trip.log.tows if tow.no == 7)
    assert foul.end
    strokes = [line for line in picture.lines(VERMILLION, 1.6) if len(line) == 2][-2:]
    middles = [((one[0] + two[0]) / 2, (one[1] + two[1]) / 2) for one, two in strokes]

    assert (
        middles
        == [
            pytest.approx(
                (foul.end.longitude, northing(foul.end.latitude)), abs=0.01 * picture.panels[0].per_pixel_x, rel=0
            )
        ]
        * 2
    )
    assert "7" in picture.words
    assert "1 of them foul" in found.chart.alt


def test_a_tow_with_one_position_is_a_dot_and_one_with_none_is_left_out() -> None:
    trip = example.trip(tows=3)
    first, second, third = trip.log.tows
    log = replace(trip.log, tows=(replace(first, end=None), replace(second, start=None, end=None), third))
    found = tow_chart(replace(trip, log=log), example.fleet())
    assert found
    assert isinstance(found.chart.drawing, Chartlet)

    assert [len(track.points) for track in found.chart.drawing.tracks] == [1, 2]
    assert found.without == 1
    draw(found.chart)


def test_a_trip_without_positions_has_no_chartlet() -> None:
    trip = example.trip(tows=2)
    log = replace(trip.log, tows=tuple(replace(tow, start=None, end=None) for tow in trip.log.tows))

    assert tow_chart(replace(trip, log=log), example.fleet()) is None


def test_a_position_far_off_does_not_spoil_the_chartlet() -> None:
    trip = example.trip(tows=20)
    tows = (*trip.log.tows[:-1], replace(trip.log.tows[-1], start=at(5.0, 100.0), end=None))
    found = tow_chart(replace(trip, log=replace(trip.log, tows=tows)), example.fleet())
    assert found
    assert isinstance(found.chart.drawing, Chartlet)

    assert found.left_off == (20,)
    assert found.chart.drawing.north - found.chart.drawing.south < 3


def test_tracks_across_the_180th_meridian_stay_whole() -> None:
    trip = example.trip(tows=2)
    tows = tuple(replace(tow, start=at(-44.0, 179.9), end=at(-44.1, -179.9)) for tow in trip.log.tows)
    found = tow_chart(replace(trip, log=replace(trip.log, tows=tows)), example.fleet())
    assert found
    assert isinstance(found.chart.drawing, Chartlet)

    assert found.chart.drawing.east - found.chart.drawing.west < 1
    assert found.chart.drawing.tracks[0].points[1][0] == pytest.approx(180.1)
    assert "180°00′W" in words_on(found.chart)


@pytest.mark.parametrize("place", [(89.9, 10.0), (-89.9, 10.0), (0.0, 0.0), (84.9, 179.99)])
def test_a_chartlet_can_be_drawn_anywhere(place: tuple[float, float]) -> None:
    trip = example.trip(tows=1)
    tow = replace(trip.log.tows[0], start=at(*place), end=None)
    found = tow_chart(replace(trip, log=replace(trip.log, tows=(tow,))), example.fleet())
    assert found

    assert draw(found.chart)


@pytest.mark.parametrize(
    ("angle", "letters", "words"),
    [(58.8333333333, "NS", "58°50′N"), (-15.0, "EW", "15°00′W"), (0.0, "NS", "0°00′N"), (-0.5, "NS", "0°30′S")],
)
def test_angles_are_marked_as_on_charts(angle: float, letters: str, words: str) -> None:
    assert whole_minutes(angle, letters) == words


def test_landings_by_month_are_what_was_landed() -> None:
    _, _, figures, _ = example.whole_fleet()
    chart = landings_chart(figures)
    assert chart
    assert isinstance(chart.drawing, Columns)
    heights = [sum(part.size for part in bar.parts) for bar in chart.drawing.bars]
    landed = [float(sum(species.values())) / 1000 for species in figures.landed_by_month.values()]

    assert heights == pytest.approx(landed)
    picture = Picture(chart)
    drawn = max(high for colour in range(5) for _, _, _, high in picture.boxes(colour))
    assert drawn == pytest.approx(max(landed), abs=0.01 * picture.panels[0].per_pixel_y)
    assert "February 2025 to March 2026" in chart.alt


def test_grounds_are_drawn_best_first_with_their_rates() -> None:
    _, _, figures, _ = example.whole_fleet()
    chart = grounds_chart(figures)
    assert chart
    rates = sorted((ground.kept_kg_per_h or 0 for ground in figures.grounds.values()), reverse=True)

    picture = Picture(chart)
    drawn = [right for _, _, right, _ in sorted(picture.boxes(0), key=lambda one: one[1])]
    assert drawn == pytest.approx(rates, abs=0.01 * picture.panels[0].per_pixel_x)
    assert "Gannet Edge leads" in chart.alt


def test_a_vessels_trips_stand_in_order() -> None:
    _, trips, _, _ = example.whole_fleet()
    chart = vessel_trips_chart("Solan Bright", [trip_line(share_of(trip, example.fleet()).brief) for trip in trips[:4]])
    assert chart
    assert isinstance(chart.drawing, Columns)
    kept = [float(trip.figures.totals.kept_kg or 0) / 1000 for trip in trips[:4]]

    assert [sum(part.size for part in bar.parts) for bar in chart.drawing.bars] == pytest.approx(kept)


def test_nothing_known_gives_no_chart() -> None:
    bare = example.trip(tows=0)

    assert run_chart(bare) is None
    assert grades_chart(bare) is None
    assert age_chart(bare) is None
    assert vessel_trips_chart("x", []) is None
    assert grounds_chart(example.figures_of([])) is None
    assert landings_chart(example.figures_of([])) is None


@pytest.mark.parametrize("kind", [Bars, Columns])
@pytest.mark.parametrize("parts", [(), (Part(size=0.0),)])
def test_where_everything_is_nought_a_chart_still_has_a_scale(
    kind: type[Bars] | type[Columns], parts: tuple[Part, ...]
) -> None:
    bars = (Bar(label="Odd Hole", parts=parts, end="0"), Bar(label="The Saddle", parts=parts, end="0"))
    svg = draw(Chart(path="x.svg", alt="", width=400, height=120, drawing=kind(unit="kg/h", bars=bars)))

    assert b"nan" not in svg
    assert b">0</text>" in svg or b">0.0</text>" in svg
    assert b">1</text>" in svg or b">1.0</text>" in svg


@pytest.mark.parametrize("name", ["$x$", "$", "_cod", "<b>", "🐟 鱈", "a&b", "x" * 300, "{{ 7*7 }}"])
def test_any_name_is_drawn_as_typed_without_a_warning(name: str) -> None:
    trip = example.trip(example.SOLAN, datetime(2026, 3, 4, tzinfo=UTC), tows=5)
    catch = ByName((name if one == "cod" else one, species) for one, species in trip.figures.catch.items())
    tows = tuple(
        replace(tow, catch=ByName((name if one == "cod" else one, species) for one, species in tow.catch.items()))
        for tow in trip.figures.tows
    )
    changed = replace(trip, figures=replace(trip.figures, catch=catch, tows=tows))
    for chart in (run_chart(changed), grades_chart(changed)):
        assert chart
        assert any(
            word and word.rstrip("…") in name and len(word) > 0 for word in words_on(chart) if word.startswith(name[:1])
        )
        assert draw(chart)
