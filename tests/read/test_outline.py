"""Where lines belong: what fits stays as it is, what does not is blamed where it stands."""

import pytest
import yaml
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from logbook.read.draft import Draft
from logbook.read.events import Grower, Refused
from logbook.read.keys import TEXT_KEYS
from logbook.read.levels import Level, Levels
from logbook.read.node import Mapping
from logbook.read.outline import Outline
from logbook.read.report import Report
from tests.read.test_tree import KEYS, LOG, VALUES, mutated
from tests.read.trees import HEAD, LOST, exact, hints, kept, read, told


def assert_left_alone(text: str) -> None:
    """See that a log which YAML takes and nobody doubts is not changed by going through its lines."""
    report = Report("f")
    grower = Grower(text, report, TEXT_KEYS)
    try:
        root = grower.grow()
    except (yaml.YAMLError, Refused):
        return
    if grower.doubtful or not isinstance(root, Mapping):
        return

    draft = Draft(text.split("\n"), Report("f"))
    Outline(draft, TEXT_KEYS).mend()

    assert draft.report.problems == []
    assert exact(Grower("\n".join(draft.lines), Report("f"), TEXT_KEYS, draft.swaps).grow()) == exact(root)


def test_a_good_log_is_left_alone() -> None:
    assert_left_alone(LOG)


@settings(suppress_health_check=[HealthCheck.too_slow])
@given(st.dictionaries(KEYS, VALUES, min_size=1, max_size=5), st.sampled_from([None, False, True]), st.integers(2, 4))
def test_whatever_the_library_writes_is_left_alone(data: object, flow: object, indent: int) -> None:
    style = bool(flow) if flow is not None else None

    assert_left_alone(yaml.dump(data, allow_unicode=True, sort_keys=False, default_flow_style=style, indent=indent))


@settings(suppress_health_check=[HealthCheck.too_slow])
@given(st.randoms(use_true_random=False))
def test_slips_that_yaml_takes_are_left_alone(chance: object) -> None:
    text = mutated(chance, LOG)  # type: ignore[arg-type]

    if not set(text) & set("\t\r\x07\x85\u2028\ufeff\u00a0"):
        assert_left_alone(text)


def test_lists_may_stand_in_the_column_of_their_key() -> None:
    text = "crew; 4\ntows:\n- shot: 18:10\n  catch:\n  - cod\n  - ling\n- day: 5 March\nlanded:\n  - x\n"

    assert kept(text) == {
        "crew": LOST,
        "tows": [{"shot": "18:10", "catch": ["cod", "ling"]}, {"day": "5 March"}],
        "landed": ["x"],
    }


def test_items_may_be_lists_and_stand_below_their_dash() -> None:
    assert kept("crew; 4\na:\n  - - 1\n    - 2\n  -\n    b: 3\n  -\n    - 4\n  - # none\n  - |\n    text\n") == {
        "crew": LOST,
        "a": [["1", "2"], {"b": "3"}, ["4"], "", "text\n"],
    }


def test_a_value_may_stand_below_its_key() -> None:
    assert kept("crew; 4\nremarks:\n  fine: no\nskipper:\n  A. Fell\ntrip:\n  'x'\nb:\n  [c]\nd:\n  see there\n") == {
        "crew": LOST,
        "remarks": {"fine": "no"},
        "skipper": "A. Fell",
        "trip": "x",
        "b": ["c"],
        "d": "see there",
    }
    assert kept("crew; 4\nremarks:\n  ask:him\n  or=her\n") == {"crew": LOST, "remarks": "ask:him or=her"}
    assert kept("crew; 4\ncatch:\n  all of it\n  cod: 4\n") == {"crew": LOST, "catch": {"cod": "4", None: 1}}
    assert kept("a:\n  -1.5 C\nb; 4\n") == {"a": "-1.5 C", "b": LOST}


def test_a_text_goes_on_until_a_comment_or_a_key() -> None:
    assert kept("crew; 4\nremarks: one\n\n  two # three\n  four: 5\n") == {
        "crew": LOST,
        "remarks": "one\ntwo",
        "four": LOST,
    }
    assert kept("crew; 4\na: one\n  two\nb: 3\n") == {"crew": LOST, "a": "one two", "b": "3"}
    assert kept("crew; 4\na: one\n  # two\nb: 3\n") == {"crew": LOST, "a": "one", "b": "3"}
    assert kept("crew; 4\na: one # x\n  two\nb: 3\n") == {"crew": LOST, "a": "one", "b": "3", None: 1}
    assert kept('crew; 4\n"remarks": one\n  two: 3\n') == {"crew": LOST, "remarks": LOST}


def test_advice_gives_the_line_as_it_should_be() -> None:
    typed = {
        "depth:240 m": "write `depth: 240 m`",
        "depth = 240 m": "write `depth: 240 m`",
        "depth; 240 m": "write `depth: 240 m`",
        "depth 240 m # x": "write `depth: 240 m`",
        "depth：240 m": "write `depth: 240 m`",
        "remarks: ask Bob: torn": "write `remarks: 'ask Bob: torn'`",
        "remarks: *torn*": "write `remarks: '*torn*'`",
        "remarks: @6 o'clock": 'write `remarks: "@6 o\'clock"`',
        "remarks: 'twas calm": 'write `remarks: "twas calm"`',
        "remarks: 'Bob' said": "write `remarks: \"'Bob' said\"`",
        "from: '58°52.4'N'": "leave the outer quotes off: write `from: 58°52.4'N`",
        'remarks: "C:\\logs"': "use single quotes: write `remarks: 'C:\\logs'`",
        "catch: cod: 3 boxes": "write it on lines of its own below 'catch:', or `catch: {cod: 3 boxes}`",
        "remarks: {see note} torn": "if it is a text, write `remarks: '{see note} torn'`",
        "- shot: 18:10": "indent it below the key it belongs to, or take the dash out",
        "–shot 18:10": "write `key: value`; if it goes on from the line above, indent it deeper; a comment begins with #",
    }

    assert {line: hints(f"{HEAD}{line}\ncrew: 4\n")[0] for line in typed} == typed


def test_advice_for_a_list_has_its_dash() -> None:
    assert hints("tows:\n  -1810-1940, cod 3 boxes\n") == ["write `- 1810-1940, cod 3 boxes`"]
    assert hints("tows:\n  – 1810-1940, cod 3 boxes\n") == ["write `- 1810-1940, cod 3 boxes`"]
    assert hints("tows:\n  - *1810\n") == ["write `- '*1810'`"]
    assert hints("tows:\n  - 1810-1940, note: x\n") == ["write `- '1810-1940, note: x'`"]


def test_an_odd_dash_out_of_line_is_told_once() -> None:
    assert told("tows:\n  - 1810-1940\n    -2010-2140\n  - 2210-2340\n") == ["3:5 no-space-after-dash"]
    assert told(f"{HEAD}– shot: 18:10\n") == ["3:1 dash-odd"]


def test_a_text_that_wants_quotes_and_is_long_is_not_written_out() -> None:
    assert hints(f"remarks: *{'x' * 100}\n") == ["put the whole text in single quotes"]


@pytest.mark.parametrize(
    "key", ["crew", "a b", "A. Fell", "it's", "boat's share", "x/y", "'q: r'", '"q"', "a:b", "12:30", "é"]
)
def test_keys_may_be_any_words(key: str) -> None:
    root, problems = read(f"crew; 4\n{key}: 5\n")

    assert [problem.code for problem in problems] == ["no-colon"]
    assert root is not None
    assert len(root.entries) == 2


@pytest.mark.parametrize(
    ("line", "code"),
    [
        ("a #b: 4", "line-unreadable"),
        ("#a: 4", None),
        ("a:{b: 4}", "no-space-after-colon"),
        ("http://x", "line-unreadable"),
    ],
)
def test_what_is_no_key(line: str, code: str | None) -> None:
    assert told(f"crew: 4\n{line}\ntrip: 5\n") == (
        [f"2:{2 if code == 'no-space-after-colon' else 1} {code}"] if code else []
    )


def test_a_known_word_is_a_key_where_any_other_is_the_end_of_the_line_above() -> None:
    text = "tows:\n  - shot: 18:10\n{}\n  - at: 12:00\n"

    assert kept(text.format("readings")) == {"tows": [{"shot": "18:10"}], "readings": [{"at": "12:00"}]}
    assert kept(text.format("baskets")) == {"tows": [{"shot": LOST}, {"at": "12:00"}]}
    assert kept(text.format("crew 4"))["crew"] == LOST
    assert kept(text.format("tusk 4")) == {"tows": [{"shot": LOST}, {"at": "12:00"}]}


def test_levels_know_where_a_line_fits() -> None:
    levels = Levels([Level(0, listed=False)])
    levels.top.opens = True

    assert levels.fit(2, dash=True) is None
    assert (levels.top.column, levels.top.listed, len(levels)) == (2, True, 2)
    assert levels.fit(4, dash=False) is levels.top
    assert levels.fit(1, dash=True) is levels.top
    assert levels.fit(0, dash=False) is None
    assert len(levels) == 1
    assert levels.fit(0, dash=True) is levels.top
    assert levels.at_or_left(-1) is levels.top
    assert levels.copy().top is not levels.top
