"""The charts of the hold: what is drawn is what was reckoned."""

from logbook.model.figures import Reckoned
from logbook.render.charts import Chart, HoldPlan, Lines
from logbook.render.draw import draw
from logbook.render.hold import hold_of
from logbook.render.hold_charts import ageing_chart, hold_chart, ice_chart, pen_rows
from tests.reckon.build import HEAD, reckoned
from tests.render.picture import Picture

LOG = (
    HEAD + "ice loaded: 10 t\n"
    "tows:\n"
    "  - {shot: 18:10, hauled: 19:40, pen: P1, catch: {cod: 1200 kg}}\n"
    "  - {shot: 20:00, hauled: 21:30, pen: P1, catch: {cod: 1500 kg}}\n"
    "  - {shot: 22:00, hauled: 23:30, pen: S1, catch: {cod: 600 kg}}\n"
    "readings:\n"
    "  - {at: 2026-03-05 08:00, ice left: 8 t, P1: 0.5 C}\n"
)


def trip(text: str = LOG) -> Reckoned:
    return reckoned(text)[0]


def words_on(chart: Chart) -> list[str]:
    return Picture(chart).words


def test_pens_named_alike_stand_in_one_row() -> None:
    assert pen_rows(("P1", "S1", "P2", "S2")) == (("P1", "P2"), ("S1", "S2"))
    assert pen_rows(("1", "2", "3")) == (("1", "2", "3"),)
    assert pen_rows(("forward", "aft")) == (("forward", "aft"),)


def test_a_long_row_is_broken() -> None:
    rows = pen_rows(tuple(f"{n}" for n in range(1, 30)))

    assert [len(row) for row in rows] == [12, 12, 5]


def test_every_pen_has_its_weight_how_full_it_is_its_day_and_its_age() -> None:
    chart = hold_chart(trip())
    assert chart is not None
    assert isinstance(chart.drawing, HoldPlan)
    boxes = {box.name: box for row in chart.drawing.rows for box in row}
    pen = trip().figures.pens["P1"]

    assert pen.full_percent is not None
    assert boxes["P1"].full == pen.full_percent / 100
    assert boxes["P1"].words[0] == "2.70\u202ft"
    assert "4 Mar" in boxes["P1"].words
    assert "5 Mar" in boxes["S1"].words
    assert set(boxes) == set(trip().figures.pens)
    assert {"P1", "S1"} <= set(words_on(chart))


def test_a_trip_without_pens_has_no_plan() -> None:
    alone = trip(
        LOG.replace("Solan Bright", "Stranger")
        .replace(", pen: P1", "")
        .replace(", pen: S1", "")
        .replace(", P1: 0.5 C", "")
    )

    assert hold_chart(alone) is None
    assert hold_of(alone).told  # its ice is known


def test_the_ice_line_has_the_looks_and_goes_on_to_where_it_is_gone() -> None:
    chart = ice_chart(trip())
    assert chart is not None
    assert isinstance(chart.drawing, Lines)
    line, onward = chart.drawing.lines
    left = trip().figures.ice.left_kg
    assert left is not None

    assert [value for _, value in line.marks] == [8.0]
    assert line.points[0][1] == 10.0
    assert line.points[-1][1] == left / 1000
    assert onward.broken
    assert onward.points[-1][1] == 0
    assert "gone" in words_on(chart)
    assert "1 look logged" in chart.alt


def test_the_age_stands_against_the_limit() -> None:
    chart = ageing_chart(trip())
    assert chart is not None
    assert isinstance(chart.drawing, Lines)

    assert chart.drawing.limit == (10.0, "limit 10 days")
    assert {"oldest", "mean", "limit 10 days"} <= set(words_on(chart))
    assert chart.drawing.lines[0].points[-1][1] == trip().figures.age.oldest_equivalent_ice_days


def test_a_trip_without_fish_and_ice_has_neither_line() -> None:
    bare = trip(HEAD)

    assert ice_chart(bare) is None
    assert ageing_chart(bare) is None


def test_the_same_charts_give_the_same_bytes() -> None:
    for make in (hold_chart, ice_chart, ageing_chart):
        chart = make(trip())
        assert chart is not None
        assert draw(chart) == draw(chart)
        assert draw(chart).startswith(b"<svg")
