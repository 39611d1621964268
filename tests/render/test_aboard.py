"""The screen that tells how a trip stands: what is first, what is said where something is missing, and how wide it is."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.model.figures import Neighbours
from logbook.model.fleet import Fleet
from logbook.model.named import ByName
from logbook.model.past import Past
from logbook.reckon.as_of import until
from logbook.reckon.hail import hailed
from logbook.reckon.out_turn import spread
from logbook.reckon.trip import reckon_trip
from logbook.render.aboard import BOUND_BY, aboard_text
from logbook.render.cautions import IN_SHORT
from tests.read.logs import FLEET, fleet, trip
from tests.reckon.build import HEAD, figures

MARKET = fleet(
    FLEET.replace(
        "    at: 59 40.0N 012 10.0W\n",
        "    at: 59 40.0N 012 10.0W\n    landing rate: 5 t/h\n    sale: {days: Mon-Fri, time: 07:00, all ashore before: 3 h}\n",
    )
)
AT = "2026-03-05 12:00"
TOWS = """\
ice loaded: 5 t
tows:
  - {shot: 2026-03-04 20:00, hauled: 21:00, stowed: 22:00, deck temperature: 0 C, pen: P1, catch: {cod: 1000 kg}, to: 58 41.5N 014 34.5W}
  - {shot: 2026-03-05 10:00, hauled: 11:00, stowed: 11:30, deck temperature: 0 C, pen: P1, catch: {cod: {large: 700 kg, small: 300 kg}}, from: 58 41.5N 014 34.5W, to: 58 41.5N 014 34.5W}
readings:
  - {at: 2026-03-05 12:00, temperatures: {P1: 0 C}}
"""
"""Some 95 miles from port, so ten hours of steam; 2000 kg in the fifteen hours from first shot to last haul."""
WIDEST = 90


def screen(
    text: str = TOWS, of: Fleet = MARKET, *, head: str = HEAD, at: str | None = AT, next_sailed: str | None = None
) -> str:
    made = figures(text, head, of=of, at=at, next_sailed=next_sailed)
    log = trip(head + text, of)
    return aboard_text(made, hailed(until(log, made.trip.as_of)))


def said(shown: str, word: str) -> str:
    """Return the line that begins with a word and the indented ones after it, as one line with single spaces."""
    lines = shown.splitlines()
    start = next(n for n, line in enumerate(lines) if line.startswith(f"{word} "))
    end = next((n for n in range(start + 1, len(lines)) if not lines[n].startswith("        ")), len(lines))
    return " ".join(" ".join(lines[start:end]).split())


def tow(shot: str, hauled: str, catch: str, more: str = "") -> str:
    return f"  - {{shot: 2026-03-05 {shot}, hauled: {hauled}, catch: {catch}{more}}}\n"


def test_the_screen_of_a_ship_at_sea() -> None:
    # By hand: 2000 of 7200 kg is 28 %. Ice is laid 1 to 2 of fish (Torry Advisory Note 15), 1000 kg; 1.9 kW melt
    # 1.9 * 3600 / 334 = 20.48 kg an hour (FAO 331: latent heat 80 kcal/kg), 625 kg in 30.5 h; 3375 kg are left. Catching
    # 2000 / 15 kg an hour takes half of that in ice, so 87.1 kg an hour with the melt: 38.7 h, until Saturday 02:43.
    # 94.7 nm at 9.5 kn are 9 h 58 min, in poor weather at 0.7 of that 14 h 14 min. To be ashore at 04:00 with 2 t and more at
    # 5 t/h leaves until 17:29.
    assert screen().splitlines()[:21] == [
        "Solan Bright: at sea",
        "Last word Thu 5 Mar 12:00. Times are UTC.",
        "",
        "Fish    2.00 t kept in 2 tows, hold 28 % full",
        "        cod  2 000 kg  ungraded 1 000, large 700, small 300",
        "",
        "Pens    P1 83 %",
        "Ice     3.38 t loose, reckoned; gone Sat 7 Mar 02:43",
        "Age     oldest 0.6 days, as if kept at 0 C 0.6; mean 0.3, 0.3; limit 10.0",
        "",
        "Docks   Thu 5 Mar 21:58 at Port Kerrin if she turns now, passage 94.7 nm",
        "Sale    Fri 6 Mar 07:00; to make it, turn by Thu 5 Mar 17:29",
        "Turn    for home by Fri 6 Mar 16:45 at the latest:",
        "        then the loose ice is gone before she docks",
        "        in poor weather by Fri 6 Mar 12:29; last shot by Fri 6 Mar 15:15",
        "",
        "Turn              Docks      Fish t  Hold %  Ice t  Oldest  Over t  Sale       Binds",
        "now    Thu 12:00  Thu 21:58     2.0      28    2.5     1.0    none  Fri 6 Mar",
        "+12 h  Fri 00:00  Fri 09:58     3.6      50    1.5     1.5    none  Mon 9 Mar",
        "+24 h  Fri 12:00  Fri 21:58     5.2      72    0.4     2.0    none  Mon 9 Mar",
        "+36 h  Sat 00:00  Sat 09:58     6.8      94    0.0     2.5    none  Mon 9 Mar  ice gone",
    ]


def test_what_was_assumed_and_what_none_of_it_is_stand_last() -> None:
    parts = screen().split("\n\n")

    assert parts[-2].startswith("Assumed ice: 1 kg of ice with 2 kg of fish for tows 1-2, ")
    assert "0.7 of the steaming speed" in " ".join(parts[-2].split())
    assert parts[-1].replace("\n", " ") == IN_SHORT


def test_homeward_there_is_nothing_to_turn_for() -> None:
    shown = screen(f"{TOWS}turned for home: 2026-03-05 12:00\n")

    assert shown.startswith("Solan Bright: homeward\n")
    assert said(shown, "Docks") == "Docks Thu 5 Mar 21:58 at Port Kerrin, passage 94.7 nm"
    assert said(shown, "Sale") == "Sale Fri 6 Mar 07:00"
    assert "\nTurn" not in shown


def test_landed_all_is_as_of_the_docking() -> None:
    shown = screen(f"trip: 14\n{TOWS}landed: 2026-03-06 09:30, Port Kerrin\n", at="2026-03-09 12:00")

    assert shown.startswith("Solan Bright, trip 14: landed\nDocked Fri 6 Mar 09:30 at Port Kerrin. Times are UTC.\n")
    assert "gone" not in said(shown, "Ice")
    assert not re.search(r"^(Docks|Sale|Turn)", shown, re.MULTILINE)


def with_past(ratios: dict[str, tuple[float, ...]], text: str = TOWS) -> str:
    """Return the screen of a trip whose vessel's earlier ones came to these ratios of out-turn to hail."""
    log = trip(HEAD + text, MARKET)
    past = Past(out_turn_over_hail=ByName((name, spread(sorted(found))) for name, found in ratios.items()))
    made = reckon_trip(log, MARKET, Neighbours(past=past))
    return aboard_text(made, hailed(until(log, made.trip.as_of)))


def test_at_sea_it_says_what_the_scale_may_say_and_leaves_the_hail_as_it_is() -> None:
    # By hand: the middle of 0.90 0.95 1.00 1.05 1.10 and the quartiles with both ends, times 2000 kg of cod.
    shown = with_past({"cod": (0.9, 0.95, 1.0, 1.05, 1.1), "ling": (0.9,) * 5})

    assert said(shown, "Scale") == "Scale expected, as on her earlier trips: cod 2.00 t (1.90 t to 2.10 t)"
    assert "\n        cod  2 000 kg  " in shown
    assert all(len(line) <= WIDEST for line in shown.splitlines())


def test_with_few_earlier_trips_it_says_so() -> None:
    assert said(with_past({"cod": (0.9, 0.95)}), "Scale") == (
        "Scale not expected: fewer than 5 of her earlier trips tell hail and scale"
    )
    assert "\nScale" not in with_past({})


def test_once_landed_no_out_turn_is_expected() -> None:
    assert "\nScale" not in with_past({"cod": (0.9,) * 5}, f"{TOWS}landed: 2026-03-06 09:30, Port Kerrin\n")


@pytest.mark.parametrize("landed", ["{port: Port Kerrin}", "{docked: soon, port: Port Kerrin}"])
def test_landed_at_a_time_that_nobody_knows(landed: str) -> None:
    shown = screen(f"{TOWS}landed: {landed}\n", at=None)

    assert shown.startswith("Solan Bright: landed\nLast word Thu 5 Mar 12:00. Times are UTC.\n")


def test_where_a_landing_was_not_logged_nothing_is_expected() -> None:
    shown = screen(at=None, next_sailed="2026-03-10 12:00")

    assert shown.startswith("Solan Bright: landing not logged\nLast word Thu 5 Mar 12:00. Times are UTC.\n")
    assert not re.search(r"^(Docks|Sale|Turn)", shown, re.MULTILINE)


def test_later_than_the_last_word_both_are_said() -> None:
    assert "\nLast word Thu 5 Mar 12:00; figures as of Sat 7 Mar 12:00. Times are UTC.\n" in screen(
        at="2026-03-07 12:00"
    )


def test_fish_over_the_limit_and_a_time_to_turn_that_has_passed_are_shown_so() -> None:
    shown = screen(at="2026-03-17 12:00")

    assert "\n        OVER THE LIMIT: 2.00 t\n" in shown
    assert said(shown, "Ice") == "Ice 0 kg loose, reckoned"
    assert said(shown, "Turn") == f"Turn FOR HOME NOW: {BOUND_BY['ice days']}"
    assert " too old" in shown
    assert re.search(r"^now .* 2\.0  Wed 18 Mar  too old$", shown, re.MULTILINE)


def test_fish_over_the_limit_that_nobody_weighed_is_shown_so_too() -> None:
    text = f"tows:\n{tow('08:00', '09:00', '{ling: 3 fish}')}"

    assert "mean not known; limit 10.0\n\n" in screen(text)
    assert "mean not known; limit 10.0\n        OVER THE LIMIT: fish whose weight is not known\n\n" in screen(
        text, at="2026-03-17 12:00"
    )


def test_fish_of_no_known_weight_is_not_told_as_none_over_the_limit() -> None:
    text = TOWS.replace(
        "ice loaded: 5 t\ntows:\n", "tows:\n  - {shot: 2026-03-04 10:00, hauled: 11:00, catch: {ling: 3 fish}}\n"
    )
    rows = [line for line in screen(text, at="2026-03-14 08:00").splitlines() if line.startswith(("now ", "+12 h"))]

    assert [re.split("  +", row)[7] for row in rows] == ["?", "1.0"]


def test_what_binds_is_said_in_words() -> None:
    full = screen(TOWS.replace("5 t", "25 t").replace("cod: 1000 kg", "cod: 6000 kg"))

    assert said(screen(), "Turn").endswith("15:15")
    assert BOUND_BY["ice"] in said(screen(), "Turn")
    assert BOUND_BY["hold"] in said(full, "Turn")
    assert "hold full" in full


def test_where_nothing_binds_that_is_said() -> None:
    of = fleet(FLEET.replace(", pens: {P1: 2.4 t, P2: 2.4 t, S1: 2.4 t}", ""))
    shown = screen("tows:\n" + tow("08:00", "09:00", "nil", ", to: 58 41.5N 014 34.5W"), of)

    assert said(shown, "Docks").startswith("Docks Thu 5 Mar 21:58 at Port Kerrin")
    assert said(shown, "Turn") == "Turn nothing that is logged binds the time to turn"


def test_a_port_that_nobody_knows_is_said() -> None:
    shown = screen(f"bound for: Nowhere\n{TOWS}")

    assert said(shown, "Docks") == "Docks not known: the fleet file does not say where Nowhere lies"
    assert not re.search(r"^(Sale|Turn)", shown, re.MULTILINE)


def test_a_trip_without_tows() -> None:
    shown = screen("", at=None)

    assert "\n\nFish    no tows logged\n\nIce     loose ice not known: " in shown
    assert "\n\nDocks   not known: no position with a time is logged\n\n" in shown
    assert "Age" not in shown.split("Assumed")[0]


@pytest.mark.parametrize(
    ("tows", "lines"),
    [
        (tow("08:00", "09:00", "{}"), ["Fish 0 kg kept in 1 tow, hold 0 % full"]),
        (tow("08:00", "09:00", "-"), ["Fish weight not known, 1 tow", "without tow 1: catch not logged"]),
        (
            tow("08:00", "09:00", "{cod: 3 fish}"),
            [
                "Fish weight not known, 1 tow",
                "cod 3 fish",
                "without tow 1: part of the catch counted, not weighed",
            ],
        ),
        (
            tow("08:00", "09:00", "{cod: 10 kg}") + tow("10:00", "-", "-") + tow("11:00", "11:30", "{}"),
            ["Fish 10 kg kept in 3 tows, hold 0 % full", "cod 10 kg", "without tow 2: catch not logged"],
        ),
        (
            tow("08:00", "-", "{cod: 10 kg}") + tow("10:00", "11:00", "{}"),
            ["Fish 10 kg kept in 2 tows, hold 0 % full", "cod 10 kg"],
        ),
        (
            tow("08:00", "09:00", "{cod: 10 kg}", ", put back: {skate: 5 kg, ling: 2 fish}, undersize: {saithe: 1 kg}"),
            ["Fish 10 kg kept in 1 tow, hold 0 % full", "cod 10 kg"],
        ),
        (
            tow("08:00", "09:00", "{cod: {large: 10 kg, small: 3 fish}}")
            + tow("10:00", "11:00", "{Cod: {Large: 2 fish}}"),
            [
                "Fish 10 kg kept in 2 tows, hold 0 % full",
                "cod 10 kg + 5 fish large 10 + 2 fish, small 3 fish",
                "without tows 1-2: part of the catch counted, not weighed",
            ],
        ),
        (
            tow("08:00", "09:00", "{cod: 10 kg}") + "  - 5\n  - {shot: 2026-03-05 10:00}\n",
            [
                "Fish 10 kg kept in 2 tows, hold 0 % full",
                "cod 10 kg",
                "without line 5: a tow that can't be read",
                "without tow 2: gear still down",
            ],
        ),
    ],
)
def test_fish_that_is_not_known_is_named_and_no_other(tows: str, lines: list[str]) -> None:
    shown = screen(f"tows:\n{tows}")
    fish = next(part for part in shown.split("\n\n") if part.startswith("Fish"))

    assert [" ".join(line.split()) for line in fish.splitlines()] == lines


def test_many_species_are_the_five_of_most_weight_and_the_rest() -> None:
    names = ("cod", "haddock", "saithe", "ling", "redfish", "plaice", "monk", "halibut")
    kept = {name: 1000 - 100 * n for n, name in enumerate(names)}

    shown = screen(f"tows:\n{tow('08:00', '09:00', '{' + ', '.join(f'{k}: {kg} kg' for k, kg in kept.items()) + '}')}")
    six = screen(f"tows:\n{tow('08:00', '09:00', '{' + ', '.join(f'{k}: 100 kg' for k in names[:6]) + '}')}")

    assert "        redfish     600 kg\n        3 others  1 200 kg\n" in shown
    assert "plaice" not in shown
    assert "others" not in six


def test_pens_without_a_capacity_are_told_by_weight() -> None:
    of = fleet(FLEET.replace("{heat gain: 1.9 kW, pens: {P1: 2.4 t, P2: 2.4 t, S1: 2.4 t}}", "{heat gain: 1.9 kW}"))
    text = "tows:\n" + tow("08:00", "09:00", "{cod: 1240 kg}", ", pen: P2") + tow("10:00", "11:00", "-", ", pen: S1")

    assert said(screen(text, of), "Pens") == "Pens P2 1.24 t S1 ?"
    assert "hold" not in said(screen(text, of), "Fish")


@pytest.mark.parametrize(
    ("text", "line"),
    [
        (
            TOWS.replace("ice loaded: 5 t\n", ""),
            "Ice loose ice not known: the log does not say what was loaded or left",
        ),
        (f"{TOWS}  - {{at: 2026-03-05 12:00, ice left: 3 t}}\n", "Ice 3.00 t loose, logged; gone Fri 6 Mar 22:25"),
    ],
)
def test_loose_ice_is_as_logged_or_reckoned_or_not_known(text: str, line: str) -> None:
    assert said(screen(text), "Ice") == line


ICING = "weather:\n  - {at: 2026-03-05 06:00, icing: moderate}\n"


def test_ice_on_deck_stands_before_anything_else() -> None:
    shown = screen(TOWS + ICING)

    assert shown.startswith(
        "ICE ON DECK: moderate, Thu 5 Mar 06:00. Ice on deck capsizes ships.\n\nSolan Bright: at sea\n"
    )


@pytest.mark.parametrize(
    ("looks", "at"),
    [
        ("", AT),
        ("weather:\n  - {at: 2026-03-05 06:00, icing: none}\n", AT),
        (f"{ICING}  - {{at: 2026-03-05 11:00, icing: none}}\n", AT),
        (ICING, "2026-03-05 05:59"),
    ],
)
def test_no_ice_on_deck_is_not_spoken_of(looks: str, at: str) -> None:
    assert screen(TOWS + looks, at=at).startswith("Solan Bright: at sea\n")


def test_a_look_whose_time_cannot_be_read_still_warns() -> None:
    assert screen("weather:\n  - {at: 27:99, icing: severe}\n").startswith("ICE ON DECK: severe. Ice on deck capsizes")


def test_times_by_another_clock_say_so_and_the_lines_keep_their_width() -> None:
    head = "vessel: Solan Bright\nzone: Europe/London\nsailed: 2026-03-27 12:00, Port Kerrin\n"
    text = TOWS.replace("2026-03-04", "2026-03-28").replace("2026-03-05", "2026-03-29")

    shown = screen(text, head=head, at="2026-03-29 12:00")

    assert "those by another clock say so" in " ".join(shown.split())
    assert max(map(len, shown.splitlines())) <= WIDEST


LOGS = st.builds(
    lambda tows, pens, ice, looks, end: (
        (f"ice loaded: {ice} t\n" if ice else "")
        + "tows:\n"
        + "".join(
            f"  - {{shot: 2026-03-0{5 + n // 10} {n % 10 * 2:02d}:00, hauled: {n % 10 * 2 + 1:02d}:30, {what}"
            f"{f', pen: A{n % pens + 1}' if pens else ''}, to: 58 {n:02d}.5N 014 34.5W}}\n"
            for n, what in enumerate(tows)
        )
        + looks
        + end
    ),
    st.lists(
        st.sampled_from(
            (
                "catch: {cod: {large: 900 kg, medium: 12 baskets, small: 99.5 lb}, haddock: {large: 30 boxes, small: 30 boxes}}",
                "catch: {cod: 3 fish, saithe: 4 t, redfish: 1 t, ling: 2 t, monk: 1 st, plaice: 1 kg, lemon sole: 1 kg}",
                "catch: with next",
                "catch: nil",
                "put back: {skate: 1 box}",
                "catch: plenty",
            )
        ),
        max_size=30,
    ),
    st.integers(0, 26),
    st.integers(0, 99),
    st.sampled_from(("", "weather:\n  - {at: 2026-03-05 01:00, icing: severe}\n")),
    st.sampled_from(
        ("", "turned for home: 2026-03-09 01:00\n", "landed: 2026-03-10 12:00, Port Kerrin\n", "bound for: X\n")
    ),
)


@given(LOGS, st.sampled_from((None, "2026-03-05 07:00", "2026-03-12 00:00", "2027-01-01 00:00")))
def test_whatever_the_log_the_screen_is_narrow_and_in_plain_signs(text: str, at: str | None) -> None:
    shown = screen(text, at=at)

    assert max(map(len, shown.splitlines())) <= WIDEST
    assert shown.encode("cp1252")
    assert not re.search(r"None|nan|inf\b|<|>|\bnot known kg", shown)
    assert all(line == line.rstrip() for line in shown.splitlines())
    assert "\n\n\n" not in shown


def test_a_name_of_several_lines_or_over_long_is_one_short_line() -> None:
    head = f"vessel: {'k' * 300}\nsailed: 2026-03-04 05:30, {'q' * 300}\ntrip: {'9' * 80}\n"

    for end in ("", f"landed: 2026-03-06 09:30, {'q' * 300}\n"):
        shown = screen(TOWS + end, head=head)
        assert max(map(len, shown.split("\n\nAssumed")[0].splitlines())) <= WIDEST
        assert shown.startswith("k" * 59 + "…: ")


def test_names_are_cut_where_they_are_over_long() -> None:
    text = f"tows:\n{tow('08:00', '09:00', '{' + 'x' * 60 + ': {' + 'g' * 60 + ': 1 kg}}', ', pen: ' + 'p' * 60)}"

    shown = screen(text)

    assert max(map(len, shown.splitlines())) <= WIDEST
