"""The lists of a log besides its tows: what is read of them, and what is told where they are wrong."""

import pytest

from tests.read.logs import codes, read, trip

HEAD = "vessel: Solan Bright\nsailed: 2026-03-04 05:30, Port Kerrin\ntows:\n  - {shot: 18:10, hauled: 19:40}\n"


def test_stowage_keeps_pen_tows_fish_and_ice() -> None:
    (line,) = trip(
        HEAD + "stowage:\n  - {at: 0130, pen: P2, tows: 12-13, fish: {haddock: {large: 22 boxes}}, ice: 0.6 t}\n"
    ).stowage

    assert (line.pen, line.tows, line.ice) == ("P2", (12, 13), 600)
    assert [(fish.species, fish.grade, fish.weight.kilograms) for fish in line.fish if fish.weight] == [
        ("haddock", "large", 990)
    ]


def test_a_reading_keeps_ice_fuel_temperatures_and_what_was_re_iced() -> None:
    (look,) = trip(
        HEAD
        + "readings:\n  - {at: 12:00, pen: P1, temperature: 0.4 C, ice left: 9 t, ice taken aboard: 2 t, re-iced: {P2: 0.3 t},"
        " fuel left: 5200 l, remarks: All well.}\n"
    ).readings

    assert (look.temperatures, look.ice_left, look.ice_taken_aboard) == ((("P1", 0.4),), 9000, 2000)
    assert (look.re_iced, look.fuel_left, look.remarks) == ((("P2", 300),), 5200, "All well.")


def test_weather_keeps_all_it_may_have() -> None:
    (look,) = trip(
        HEAD
        + "weather:\n  - {at: 06:00, wind: SW 6, sea: 5, swell: 3 m from W, visibility: good, air temperature: 4 C, barometer: 1004 hPa, icing: light}\n"
    ).weather

    assert look.wind is not None
    assert (look.wind.point, look.wind.force, look.sea, look.swell, look.visibility) == (
        "SW",
        6,
        5,
        "3 m from W",
        "good",
    )
    assert (look.air_temperature, look.pressure_hpa, look.icing) == (4, 1004, "light")


def test_gear_names_its_part_and_what_was_done() -> None:
    net, doors = trip(
        HEAD
        + "gear:\n  - {at: 14:00, net: rockhopper, event: mended, took: 3 h}\n  - {at: 18:00, doors: old pair, event: changed}\n"
    ).gear

    assert (net.part, net.name, net.event, net.took is not None) == ("net", "rockhopper", "mended", True)
    assert (doors.part, doors.name, doors.event) == ("doors", "old pair", "changed")


def test_stretches_of_time_keep_their_words_and_the_watch_bill_its_hours() -> None:
    made = trip(
        HEAD
        + "time lost:\n  - {from: 02:00, to: 09:30, why: dodging}\nall hands:\n  - {from: 03:00, to: 05:00, why: big haul}\n"
        "watches: {port: 00-06 12-18, starboard: [06-12, 18-24]}\npassage:\n  - {at: 11:00, position: 59 20.0N 013 00.0W}\n"
    )

    assert [(period.words, period.end is not None) for period in (*made.time_lost, *made.all_hands)] == [
        ("dodging", True),
        ("big haul", True),
    ]
    assert [(watch.name, watch.hours) for watch in made.watches] == [
        ("port", ((0, 6), (12, 18))),
        ("starboard", ((6, 12), (18, 24))),
    ]
    assert made.passage[0].position is not None


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("gear:\n  - {at: 14:00, event: mended}\n", "gear-part"),
        ("gear:\n  - {at: 14:00, net: rockhopper, event: burnt}\n", "word-unknown"),
        ("gear:\n  - {at: 14:00, net: rockhopr, event: mended}\n", "net-unknown"),
        ("readings:\n  - {at: 12:00, temperature: 0.4 C}\n", "reading-empty"),
        ("readings:\n  - {at: 12:00, pen: P9, temperature: 0.4 C}\n", "pen-unknown"),
        ("time lost:\n  - {from: 2026-03-05 09:00, to: 2026-03-05 08:00, why: gear}\n", "period-backwards"),
        ("stowage:\n  - {at: 0130, pen: P2, fish: a lot}\n", "catch-unreadable"),
        ("stowage:\n  - {at: 0130, pen: P2, fish: [cod]}\n", "catch-unreadable"),
        ("weather: foul\n", "list-wanted"),
        ("weather: [foul]\n", "mapping-wanted"),
        ("weather: {at: 06:00, wind: [SW, 6]}\n", "one-value"),
        ("watches: {port: [[00-06]]}\n", "one-value"),
        ("planned: six days\n", "mapping-wanted"),
        ("zone: CET+1\n", "zone-unknown"),
        ("trip: 4\nTrip: 5\n", "key-twice"),
        ("bound for: Port Kerin\n", "port-unknown"),
        ("turned for home: 2026-03-06 08:00, The Sadle\n", ""),
        ("passage:\n  - {at: 11:00, position: [1, 2, 3]}\n", "position-unreadable"),
    ],
)
def test_what_is_wrong_is_told_and_the_trip_stands(text: str, code: str) -> None:
    made, problems = read(HEAD + text)

    assert made is not None
    assert len(made.tows) == 1
    assert code in codes(problems) if code else problems == ()


def test_crew_and_plans_may_be_typed_in_several_ways() -> None:
    names = trip(HEAD + "crew: [A. Fell, B. Rime]\nplanned: {days: 6, catch: 40 t}\n")
    line = trip(HEAD + "crew: A. Fell, B. Rime, C. Toller\nplanned: {days: 6 days}\nfuel loaded: 8 t\n")

    assert (names.hands, names.crew, names.planned_days, names.planned_catch) == (2, ("A. Fell", "B. Rime"), 6, 40000)
    assert (line.hands, line.planned_days) == (3, 6)


def test_a_log_that_names_no_vessel_or_no_date_says_so() -> None:
    nameless, problems = read("sailed: 2026-03-04 05:30\ntows: [{shot: 18:10}]\n")
    dateless, others = read("vessel: Solan Bright\n")

    assert nameless is not None
    assert nameless.vessel.name == "Vessel not named"
    assert "key-missing" in codes(problems)
    assert dateless is None
    assert "no-date" in codes(others)


def test_a_vessel_the_fleet_does_not_list_is_a_warning() -> None:
    made, problems = read("vessel: Solan Brigt\nsailed: 2026-03-04 05:30\ntows: [{shot: 18:10}]\n")

    assert made is not None
    assert (made.vessel.listed, codes(problems)) == (False, ["vessel-unlisted"])
    assert "Solan Bright" in problems[0].hint
