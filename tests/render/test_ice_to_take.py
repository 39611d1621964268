"""How much ice to take, as it is printed."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.model.fleet import Assumed, Constants, Fleet, Hold, Vessel
from logbook.model.quantity import Kilograms
from logbook.reckon.ice_to_take import ice_to_take
from logbook.render.ice_to_take import ice_text

FULL = Vessel(name="Solan Bright", hold=Hold(heat_gain_kw=1.9), ice_capacity=Kilograms(30000))  # type: ignore[arg-type]
BARE = Vessel(name="Solan Bright")


def shown(
    vessel: Vessel = FULL, fleet: Fleet | None = None, *, days: float = 7, catch: float = 40000, sea: float = 8
) -> str:
    return ice_text(vessel.name, ice_to_take(vessel, fleet or Fleet(), days=days, catch_kg=catch, sea_c=sea))


def test_the_ice_to_take_and_how_it_comes_about() -> None:
    # By hand. FAO Fisheries Technical Paper 331 ch. 3: 40 t by 8 degrees at 3.35 kJ/(kg K) over 334 kJ/kg is 3210 kg; 1.9 kW
    # for 7 days is 1 149 120 kJ, 3440 kg. Torry Advisory Note 15: 1 t of ice to 2 t of fish is 20 t.
    # (3210 + 3440) * 1.2 = 7980; (20000 + 3440) * 1.2 = 28129.
    assert shown().splitlines() == [
        "Solan Bright: take 28.1 t of ice",
        "for 7 days, 40.0 t of fish, sea 8.0 °C",
        "",
        "                    by physics  by practice",
        "to chill the fish     3 210 kg",
        "laid with the fish                20 000 kg",
        "melted by the hold    3 440 kg     3 440 kg",
        "20 % more             1 330 kg     4 688 kg",
        "ice                   7 980 kg    28 129 kg",
        "",
        "By practice 1 kg of ice is laid with 2 kg of fish.",
        "She can load 30.0 t.",
        "An estimate for planning: what the ice is like, the weather and the way it is",
        "stowed decide.",
    ]


def test_the_worked_chilling_of_the_handbook() -> None:
    # FAO Fisheries Technical Paper 331 ch. 3: c/L as 0.8 kcal/(kg K) over 80 kcal/kg: 20 t at 8 degrees takes 1600 kg.
    of = Fleet(constants=Constants(specific_heat=3.34, latent_heat=334))

    assert re.search(r"^to chill the fish +1 600 kg$", shown(fleet=of, catch=20000), re.MULTILINE)


def test_more_than_she_can_load_is_said_aloud() -> None:
    # By hand: (25000 + 3440) * 1.2 = 34129, of which she can load 30000.
    assert "THAT IS 4.13 t MORE than the 30.0 t she can load: plan for less fish or fewer days." in " ".join(
        shown(catch=50000).split()
    )


def test_what_is_not_known_is_said() -> None:
    lines = shown(BARE).splitlines()

    assert lines[0] == "Solan Bright: take 24.0 t of ice"
    assert re.search(r"^melted by the hold +not known +not known$", "\n".join(lines), re.MULTILINE)
    assert lines[-4:-2] == [
        "Hold melt not known, left out.",
        "What ice Solan Bright can load is not in the fleet file.",
    ]


@pytest.mark.parametrize(
    ("days", "words"), [(1, "for 1 day, "), (0.5, "for 0.5 days, "), (1.5, "for 1.5 days, "), (10, "for 10 days, ")]
)
def test_days_are_told_as_people_say_them(days: float, words: str) -> None:
    assert shown(days=days).splitlines()[1].startswith(words)


@pytest.mark.parametrize(("ratio", "words"), [(2, "2 kg"), (2.5, "2.5 kg"), (10, "10 kg"), (1 / 3, "0.33 kg")])
def test_the_usual_fish_to_ice_is_the_fleets(ratio: float, words: str) -> None:
    of = Fleet(assumed=Assumed(fish_to_ice=ratio))

    assert f"By practice 1 kg of ice is laid with {words} of fish." in shown(fleet=of)


@given(st.sampled_from((FULL, BARE)), st.floats(0.01, 60), st.floats(0, 900000), st.floats(-60, 60))
def test_columns_line_up_and_the_sums_are_sums(vessel: Vessel, days: float, catch: float, sea: float) -> None:
    text = shown(vessel, days=days, catch=catch, sea=sea)
    rows = text.splitlines()[3:9]
    figures = [[int(found.replace(" ", "")) for found in re.findall(r"(-?\d[\d ]*) kg", row[18:])] for row in rows]

    assert len({len(row) for row in rows if row.startswith(("laid", "melted", "20 %", "ice"))}) == 1
    physics = sum(row[0] for row in (figures[1], *([figures[3]] if figures[3] else []), figures[4]))
    practice = sum(row[-1] for row in (figures[2], *([figures[3]] if figures[3] else []), figures[4]))
    assert abs(physics - figures[5][0]) <= 2
    assert abs(practice - figures[5][1]) <= 2
    assert text.encode("cp1252")
    assert max(len(line) for line in text.splitlines()) <= 80
