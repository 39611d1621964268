"""What stands beside tows, catch and landing in a log is shown as typed, every bit of it."""

from datetime import UTC, datetime, timedelta
from decimal import Decimal

from msgspec.structs import replace

from logbook.model.quantity import Celsius, Kilograms, Litres, Weight
from logbook.model.trip import Amount, Fix, GearEvent, Landing, Period, Reading, Stowed
from logbook.render.also import LoggedList, logged_lists, loose_ends
from tests.render import example

UTC_OFFSET = timedelta(0)
NOON = datetime(2026, 3, 5, 12, tzinfo=UTC)
LOG = replace(example.trip(tows=1).log, readings=(), weather=(), gear=(), time_lost=())


def weighed(kilograms: int) -> Weight:
    return Weight(kilograms=Kilograms(Decimal(kilograms)), number=Decimal(kilograms), unit="kg")


def plain(rows: tuple[tuple[str, ...], ...]) -> list[tuple[str, ...]]:
    return [tuple(str(cell).replace("\u202f", " ") for cell in row) for row in rows]


def only(lists: tuple[LoggedList, ...]) -> LoggedList:
    assert len(lists) == 1
    return lists[0]


def test_single_things_have_their_names() -> None:
    log = replace(
        LOG,
        crew=("A. Holm", "B. Voe"),
        fuel_loaded=Litres(Decimal(9000)),
        ice_left_at_sailing=Kilograms(Decimal(800)),
        deck_temperature=Celsius(6.5),
        planned_days=6.0,
        planned_catch=Kilograms(Decimal(40000)),
        sails_again=NOON,
    )
    found = {name: words.replace("\u202f", " ") for name, words in loose_ends(log, UTC_OFFSET)}

    assert found == {
        "Crew": "A. Holm, B. Voe",
        "Ice loaded": "24.0 t",
        "Ice left at sailing": "800 kg",
        "Fuel loaded": "9 000 l",
        "Sea temperature": "8.0 °C",
        "Deck temperature": "6.5 °C",
        "Planned": "6.0 days, 40.0 t",
        "Bound for": "Port Kerrin",
        "Wants on the quay": "20 t ice, 9000 l fuel",
        "Sails again": "5 March 2026, 12:00",
    }


def test_fuel_that_was_weighed_stays_a_weight() -> None:
    log = replace(LOG, fuel_loaded=weighed(8000))

    assert dict(loose_ends(log, UTC_OFFSET))["Fuel loaded"].replace("\u202f", " ") == "8.00 t"


def test_pens_as_they_were_emptied_and_the_buyers_words_are_kept() -> None:
    landing = Landing(
        place=example.place(9),
        docked=NOON,
        pens=(("P1", weighed(2300)), ("P2", weighed(900))),
        quality=(("cod", "E"), ("ling", "A")),
    )
    found = dict(loose_ends(replace(LOG, landings=(landing,)), UTC_OFFSET))

    assert found["Emptied by pen"].replace("\u202f", " ") == "P1 2.30 t, P2 900 kg"
    assert found["Quality, in the buyer's words"] == "cod E, ling A"


def test_the_fishrooms_tally_is_kept() -> None:
    cod = Amount(
        species="cod",
        known=None,
        grade="large",
        weight=weighed(880),
        count=None,
        state=None,
        state_typed=False,
        place=example.place(9),
    )
    counted = replace(cod, species="halibut", grade=None, weight=None, count=2)
    stowed = Stowed(
        place=example.place(9), at=NOON, pen="P2", tows=(12, 13), fish=(cod, counted), ice=Kilograms(Decimal(600))
    )
    found = only(logged_lists(replace(LOG, stowage=(stowed,)), UTC_OFFSET))

    assert found.name == "Fishroom tally"
    assert plain(found.rows) == [
        ("Thu 5 March 12:00", "P2", "12, 13", "cod large 880 kg, halibut 2 fish, weight not known", "600 kg")
    ]


def test_readings_are_kept() -> None:
    reading = Reading(
        place=example.place(9), at=NOON, temperatures=(("P1", Celsius(0.4)), ("P2", Celsius(-0.8))), ice_left=Kilograms(Decimal(9000)),
        ice_taken_aboard=Kilograms(Decimal(2000)), re_iced=(("P1", Kilograms(Decimal(300))),), fuel_left=Litres(Decimal(5200)), remarks="*dry*",
    )  # fmt: skip
    found = only(logged_lists(replace(LOG, readings=(reading,)), UTC_OFFSET))

    assert plain(found.rows)[0] == (
        "Thu 5 March 12:00", "P1 0.4 °C, P2 −0.8 °C", "9.00 t", "2.00 t", "P1 300 kg", "5 200 l", "<p><em>dry</em></p>\n"
    )  # fmt: skip


def test_gear_is_kept_with_the_time_it_took() -> None:
    events = (
        GearEvent(
            place=example.place(9),
            at=NOON,
            part="net",
            name="rockhopper",
            event="mended",
            took=timedelta(hours=2, minutes=5),
        ),
        GearEvent(place=example.place(9), at=None, part="item", name="net sounder", event="lost"),
        GearEvent(place=example.place(9), at=NOON, part="doors", name="", event="changed"),
    )
    rows = only(logged_lists(replace(LOG, gear=events), UTC_OFFSET)).rows

    assert [row[1:4] for row in rows] == [
        ("net rockhopper", "mended", "2:05 h"),
        ("net sounder", "lost", ""),
        ("doors", "changed", ""),
    ]
    assert "not known" in rows[1][0]


def test_time_lost_has_its_hours_where_both_ends_are_known() -> None:
    periods = (
        Period(place=example.place(9), start=NOON, end=NOON + timedelta(hours=11), words="dodging"),
        Period(place=example.place(9), start=NOON, end=None, words="engine"),
    )
    rows = only(logged_lists(replace(LOG, time_lost=periods), UTC_OFFSET)).rows

    assert rows[0][2:] == ("11:00", "dodging")
    assert "not known" in rows[1][2]


def test_fixes_while_steaming_are_kept() -> None:
    fix = Fix(place=example.place(9), at=NOON, position=example.at(59.5, -12.25))
    rows = only(logged_lists(replace(LOG, passage=(fix,)), UTC_OFFSET)).rows

    assert rows[0][1] == "59°30.0′N 012°15.0′W"


def test_the_weather_is_kept() -> None:
    found = only(logged_lists(replace(LOG, weather=example.trip(tows=1).log.weather), UTC_OFFSET))

    assert found.rows[0][:3] == ("Wed 4 March 18:10", "SW 5-6", "4")


def test_nothing_else_in_a_log_gives_no_list() -> None:
    assert logged_lists(LOG, UTC_OFFSET) == ()


def test_a_column_with_nothing_in_it_is_left_out() -> None:
    reading = Reading(place=example.place(9), at=NOON, ice_left=Kilograms(Decimal(9000)))
    found = only(logged_lists(replace(LOG, readings=(reading,)), UTC_OFFSET))

    assert found.heads == ("When", "Ice left")
