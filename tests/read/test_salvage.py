"""One bad line costs its own item: what of a log is kept when a line of it can't be read, and how much work that is."""

from typing import Any

import pytest
import yaml

from logbook.read import salvage as module
from logbook.read.draft import Draft
from logbook.read.explain import Why
from logbook.read.keys import TEXT_KEYS
from logbook.read.report import Report
from logbook.read.salvage import salvage, set_aside
from tests.read.trees import HEAD, LOST, kept, plain, read, told

TOWS = """\
tows:
  - shot: 18:10
    hauled: 19:40
    catch:
      cod: 14 baskets
      haddock: 3 baskets
    pen: P1
  - 2015-2150, 98 fm, cod 9 baskets
  - {shot: 22:10, catch: {cod: 3 boxes, ling: 1 box}, pen: P2}
crew: 4
"""


def changed(old: str, new: str) -> Any:  # noqa: ANN401 - tests look into it as they need
    """Return what is kept of a log in which something is typed otherwise, without what is above."""
    assert old in TOWS
    root = kept(HEAD + TOWS.replace(old, new))
    return root["tows"]


GOOD = [
    {
        "shot": "18:10",
        "hauled": "19:40",
        "catch": {"cod": "14 baskets", "haddock": "3 baskets"},
        "pen": "P1",
    },
    "2015-2150, 98 fm, cod 9 baskets",
    {"shot": "22:10", "catch": {"cod": "3 boxes", "ling": "1 box"}, "pen": "P2"},
]


def but(item: int, **entries: Any) -> list[Any]:  # noqa: ANN401 - values of any kind
    """Return the good tows with some entries of one of them put in place or left out."""
    tows: list[Any] = [dict(tow) if isinstance(tow, dict) else tow for tow in GOOD]
    tows[item] |= entries
    tows[item] = {key: value for key, value in tows[item].items() if value is not None}
    return tows


@pytest.mark.parametrize("mark", ["*", "&", "!", "%", "@", "`", ">", "|", "- ", "? ", "'", '"', "[", "{", "}"])
def test_a_value_that_begins_with_a_sign_costs_its_key_only(mark: str) -> None:
    assert changed("hauled: 19:40", f"hauled: {mark}19:40") == but(0, hauled=LOST)
    assert changed("cod: 14", f"cod: {mark}14") == but(0, catch={"cod": LOST, "haddock": "3 baskets"})


@pytest.mark.parametrize("typed", ["pen:P1", "pen = P1", "pen; P1", "pen： P1", "pen: a: b", "pen: 'P'1", "pen: [P1"])
def test_a_key_typed_wrongly_is_kept_without_its_value(typed: str) -> None:
    assert changed("pen: P1", typed) == but(0, pen=LOST)


@pytest.mark.parametrize("typed", ["cod 14 baskets", "cod:14 baskets", "cod= 14 baskets"])
def test_a_species_without_its_colon_is_known_to_have_been_caught(typed: str) -> None:
    assert changed("cod: 14 baskets", typed) == but(0, catch={"cod": LOST, "haddock": "3 baskets"})


def test_a_key_without_a_colon_keeps_what_stands_below_it() -> None:
    assert changed("    catch:", "    catch") == GOOD
    assert changed("    catch:", "    catch =") == GOOD
    assert kept(HEAD + TOWS.replace("tows:", "tows"))["tows"] == GOOD
    assert kept("crew\n- A. Fell\n- B. Moe\ntrip; 4\n") == {"crew": ["A. Fell", "B. Moe"], "trip": LOST}


def test_an_item_whose_first_key_is_typed_wrongly_keeps_the_others() -> None:
    assert changed("- shot: 18:10", "- shot 18:10") == but(0, shot=LOST)
    assert changed("- shot: 18:10", "- shot:18:10") == but(0, shot=LOST)
    assert changed("- shot: 18:10", "-shot: 18:10") == but(0, shot=LOST)
    assert changed("- shot: 18:10", "– shot: 18:10") == but(0, shot=LOST)
    assert changed("- shot: 18:10", "- <<: {shot: *x}")[0].keys() == {"hauled", "catch", "pen", None}


def test_a_tow_on_one_line_is_lost_alone() -> None:
    for typed in (
        "-2015-2150, cod 9",
        "• 2015-2150, cod 9",
        "2015-2150, cod 9",
        "- 'x' y",
        "- 2015-2150, note: x",
        "- [x",
    ):
        assert changed("- 2015-2150, 98 fm, cod 9 baskets", typed) == [GOOD[0], LOST, GOOD[2]]
    assert changed("  - 2015-2150", "   - 2015-2150") == [GOOD[0], LOST, GOOD[2]]
    assert changed("  - 2015-2150", "     - 2015-2150") == [GOOD[0], LOST, GOOD[2]]


def test_an_item_out_of_line_is_lost_with_what_stands_below_it() -> None:
    text = HEAD + "tows:\n  - shot: 18:10\n - shot: 20:10\n   hauled: 21:10\n  - shot: 22:10\n"

    assert kept(text)["tows"] == [{"shot": "18:10"}, LOST, {"shot": "22:10"}]
    assert told(text) == ["5:2 indent"]


def test_a_key_out_of_line_costs_itself() -> None:
    assert changed("    hauled", "   hauled") == but(0, hauled=LOST)
    assert changed("    hauled", "      hauled") == but(0, hauled=LOST)
    assert changed("    hauled", "  hauled") == but(0, hauled=LOST)
    assert changed("    hauled", "hauled") == but(0, hauled=LOST)
    assert changed("    pen: P1", "pen: P1") == but(0, pen=LOST)


def test_a_key_out_of_line_keeps_what_stands_below_it() -> None:
    assert changed("    catch:", "   catch:") == GOOD
    assert kept(HEAD + " " + TOWS)["tows"] == GOOD


def test_lines_that_show_no_key_are_known_to_have_been_there() -> None:
    assert changed("pen: P1", "@pen: P1")[0][None] == 1
    assert changed("cod: 14 baskets", "fourteen baskets of cod?") == but(0, catch={"haddock": "3 baskets", None: 1})
    assert changed("hauled: 19:40", "- hauled: 19:40")[0][None] == 1


def test_a_line_broken_in_two_costs_what_it_was() -> None:
    assert changed("19:40", "19\n:40") == but(0, hauled=LOST)
    assert changed("cod 9 baskets", "cod 9\nbaskets") == [GOOD[0], LOST, GOOD[2]]
    assert changed("pen: P1", "pen:\nP1") == but(0, pen=LOST)
    assert changed("    catch:", "    catch:\nx") == GOOD


def test_a_heading_that_shows_no_key_costs_what_stands_below_it() -> None:
    text = HEAD + TOWS.replace("    catch:", "'   catch:")

    assert kept(text)["tows"] == [{"shot": "18:10", "hauled": "19:40", "pen": "P1", None: 1}, *GOOD[1:]]
    assert read(text)[1][0].message == "''   catch:' has no key, so lines 6 to 8 are not read"
    assert kept("tows:\n  - a\n'x:\n    y: 4\n  - b\n") == {"tows": ["a", "b"]}


def test_inside_brackets_a_text_is_lost_alone() -> None:
    assert changed("cod: 3 boxes", "cod: *3") == but(2, catch={"cod": LOST, "ling": "1 box"})
    assert changed("cod: 3 boxes", "cod: 3: boxes") == but(2, catch={"cod": LOST, "ling": "1 box"})
    assert changed("cod: 3 boxes", "cod: 3 [x]") == but(2, catch={"cod": LOST, "ling": "1 box"})
    assert changed("cod: 3 boxes", "cod: 'a' b") == but(2, catch={"cod": LOST, "ling": "1 box"})
    assert changed("cod: 3 boxes", "cod: '3\n   boxes' b") == [*GOOD[:2], LOST]
    assert changed("cod: 3 boxes", "cod:3 boxes") == but(2, catch={"cod": LOST, "ling": "1 box"})
    assert changed("cod: 3 boxes", "cod 3 boxes") == but(2, catch={"cod": LOST, "ling": "1 box"})
    assert changed("cod: 3 boxes", "cod") == but(2, catch={"cod": LOST, "ling": "1 box"})
    assert changed("cod: 3 boxes", ": 3 boxes") == but(2, catch={"ling": "1 box", None: 1})
    assert changed("cod: 3 boxes", "cod: 1,200 kg") == but(2, catch={"cod": LOST, "ling": "1 box", None: 1})
    assert changed("cod: 3 boxes", "cod: -, tusk: ?") == but(2, catch={"cod": "-", "tusk": "?", "ling": "1 box"})


def test_brackets_that_do_not_close_cost_their_item() -> None:
    assert changed(", pen: P2}", ", pen: P2") == [*GOOD[:2], LOST]
    assert changed("ling: 1 box}", "ling: 1 box") == [*GOOD[:2], LOST]
    assert changed("ling: 1 box}", "ling: 1 box]") == [*GOOD[:2], LOST]


def test_every_fault_is_found_in_one_reading() -> None:
    text = HEAD + TOWS.replace("19:40", "*").replace("cod: 14", "cod:14").replace("9 baskets", "9: x") + "trip = 4\n"

    assert told(text) == ["5:13 text-start", "7:10 no-space-after-colon", "10:28 colon-in-text", "13:5 no-colon"]


def test_two_copies_of_one_mistake_are_two_problems() -> None:
    assert told("a: *x\nb: *x\n") == ["1:4 text-start", "2:4 text-start"]


def test_after_a_hundred_faults_the_rest_is_given_up() -> None:
    text = "vessel: Petrel\n" + "a:b\n" * 150 + "crew: 4\n"

    assert len(told(text)) == 101
    assert told(text)[-1] == "102:1 too-many-faults"
    assert "crew" not in kept(text)
    assert kept(text)["vessel"] == "Petrel"


# What is left over for YAML itself to refuse is rare; these see that it costs its own item too.


def aside(text: str, line: int) -> tuple[str, Draft]:
    draft = Draft(text.split("\n"), Report("f"))
    set_aside(draft, line - 1, 0, Why("x", "y"))
    return "\n".join(draft.lines), draft


def test_what_yaml_refuses_costs_its_own_item() -> None:
    assert aside("a: 1\nb: 2\n  3\nc: 4", 2)[0] == "a: 1\nb: x\n\nc: 4"
    assert aside("a:\n  - 1\n  - b: 2\n    c: 3", 3)[0] == "a:\n  - 1\n  - b: x\n"
    assert aside("a:\n  - 1\n  - 2\n    3", 3)[0] == "a:\n  - 1\n  - x\n"
    assert aside("a: 1\nb\n", 2)[0] == "a: 1\n0: x\n"
    assert aside("a: 1\n\n\n", 9)[0] == "a: x\n\n\n"


def test_where_a_stand_in_does_not_fit_the_line_is_left_out() -> None:
    text, draft = aside("a: 1\nb: 2", 2)
    set_aside(draft, 1, 0, Why("x", "y"))

    assert text == "a: 1\nb: x"
    assert draft.lines == ["a: 1", ""]
    assert len(draft.report.problems) == 1


class Stubborn:
    """A parser that refuses a word."""

    def __init__(self, text: str) -> None:
        lines = text.split("\n")
        self.line = next((number for number, line in enumerate(lines) if "refused" in line), -1)
        self.parser: Any = yaml.BaseLoader(text)

    def get_event(self) -> object:
        if self.line >= 0:
            mark = yaml.Mark("f", 0, self.line, 0, None, 0)
            raise yaml.MarkedYAMLError("while scanning", None, "refused", mark)
        return self.parser.get_event()

    def dispose(self) -> None:
        self.parser.dispose()


@pytest.fixture
def stubborn(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("logbook.read.events.LOADER", Stubborn)


@pytest.mark.usefixtures("stubborn")
def test_lines_are_set_aside_until_yaml_takes_the_rest() -> None:
    assert kept("a: 1\nb: refused\nc:\n  - d\n  - refused\nrefused: 4\n") == {"a": "1", "b": LOST, "c": ["d", LOST]}
    assert told("a: 1\nb: refused\nc: 3\n") == ["2:1 line-unreadable"]


@pytest.mark.usefixtures("stubborn")
def test_the_work_is_bounded(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(module, "MAX_WORK", 60)

    assert kept("a: 1\nb: refused\nc: refused\nd: refused\ne: 5\n") == {"a": "1", "b": LOST}
    assert told("a: 1\nb: refused\nc: refused\nd: refused\ne: 5\n") == ["2:1 line-unreadable", "3:1 too-many-faults"]


class Deaf(Stubborn):
    """A parser that refuses everything, at its last line."""

    def get_event(self) -> object:
        mark = yaml.Mark("f", 0, 99, 0, None, 0)
        raise yaml.MarkedYAMLError("while scanning", None, "refused", mark)


@pytest.mark.parametrize("work", [0, 10, 100, 1000])
def test_what_is_refused_to_the_end_is_none(monkeypatch: pytest.MonkeyPatch, work: int) -> None:
    monkeypatch.setattr("logbook.read.events.LOADER", Deaf)
    monkeypatch.setattr(module, "MAX_WORK", work)

    assert plain(salvage("a: 1\nb: 2\n" * 20, Report("f"), TEXT_KEYS)) is None


@pytest.mark.usefixtures("stubborn")
def test_nothing_is_given_up_twice() -> None:
    assert told("refused: 1\n" + "a:b\n" * 150)[-1] == "102:1 too-many-faults"
