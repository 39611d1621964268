"""The tree as a whole: case files, places, both parsers, and properties that hold for any bytes."""

import random
import re
from collections.abc import Callable
from pathlib import Path

import pytest
import yaml
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from logbook.model.problem import Place, Problem
from logbook.read import events, explain, report, silent, source, tree, unseen
from logbook.read.keys import TEXT_KEYS, fold_key
from logbook.read.tree import Lost, Mapping, Node, Scalar, Sequence, read_tree, repeated
from tests.read.trees import HEAD, LOADERS, LOST, exact, kept, plain, read, told, value

CASES = Path(__file__).parents[1] / "cases" / "tree"
EXPECT = re.compile(r"# expect (\d+):(\d+) ([a-z-]+)")
CODES = frozenset().union(*(module.CODES for module in (events, explain, report, silent, source, tree, unseen)))
TESTED_ELSEWHERE = source.CODES | unseen.CODES | report.CODES | events.CODES
"""Codes of files that an editor would not keep as they are, and of files too big to keep: built in tests of their own."""

LOG = """\
vessel: Petrel
crew: [A. Fell, "B. Moe", 'C''s boy']
sailed: 2026-03-04 05:30, Port Kerrin
# a comment
tows:
  - shot: 18:10
    hauled: 19:40
    from: 58 52.4N 015 10.0W
    to: 58°48.1'N 015°04.2'W
    depth: 95-110 fm   # by sounder
    catch:
      cod: 14 baskets
      haddock: {large: 6 baskets, small: 280 kg}
    put back:
      skate: 3 baskets
    remarks: Good marks at the turn.

  - 2015-2150, 98 fm, 58 48.0N 15 04.0W to 58 52.2N 15 09.1W, cod 9 baskets
  - day: Thu 5 March
  - 0010-0145, 102 fm, cod 12 baskets, fast, wing torn
readings:
  - {at: 12:00,
     ice left: 9 t}
landed:
  port: Port Kerrin
  prices:
    cod: {large: [2100 kg 3.90/kg, 2020 kg 3.75/kg], medium: 3.20/kg}
remarks: |
  Free text, in *Markdown*: lost half a day.

  - a list
    # not a comment
skipper: "M. Aldane"
"""

SNIPPETS = (
    *":-#'\"{}[],|>*&!%@`?=; \t\r\\x~é\x07\x85",
    *(
        "- ",
        "  ",
        ": ",
        " #",
        "\n",
        "\n\n",
        "---\n",
        "...\n",
        "```\n",
        "<<: ",
        "-----\n",
        "–",
        "：",
        "\u2028",
        "\ufeff",
    ),
    *("\\n", "\\ud83d", "12:30", "<<<<<<< a\n", "{a: b}", "[x", "\u00a0"),
)


@pytest.fixture(params=LOADERS, ids=str)
def parser(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> str:
    monkeypatch.setattr(events, "LOADER", LOADERS[request.param])
    return str(request.param)


def cases() -> list[Path]:
    return sorted(CASES.glob("*.yaml"))


def expected(case: Path) -> list[tuple[int, int, str]]:
    found = EXPECT.findall(case.read_text(encoding="utf-8"))
    return sorted((int(line), int(column), code) for line, column, code in found)


@pytest.mark.parametrize("case", cases(), ids=lambda case: case.stem)
def test_a_case_gives_the_problems_it_says(case: Path, parser: str) -> None:
    root, problems = read_tree(case.read_bytes(), case.name, TEXT_KEYS)

    assert [(each.place.line, each.place.column, each.code) for each in sorted(problems, key=at_and_code)] == expected(
        case
    )
    assert root is not None or case.stem.startswith("no-")


def at_and_code(problem: Problem) -> tuple[Place, str]:
    return problem.place, problem.code


@pytest.mark.parametrize("case", cases(), ids=lambda case: case.stem)
def test_messages_begin_small_and_end_without_a_stop(case: Path) -> None:
    for problem in read_tree(case.read_bytes(), case.name, TEXT_KEYS)[1]:
        assert problem.message[0].islower() or not problem.message[0].isalpha()
        assert not problem.message.endswith(".")
        assert not problem.hint.endswith(".")
        assert problem.hint


def test_every_code_has_a_case() -> None:
    shown = {code for case in cases() for _, _, code in expected(case)}

    assert shown <= CODES
    assert shown >= CODES - TESTED_ELSEWHERE


def test_texts_stay_as_they_were_typed() -> None:
    texts = ("12:30", "0123", "no", "1_000", "2026-03-04", "~", "null", "1e3", "0x1F", "=", "on", "12:30:15")

    root, problems = read("".join(f"k{number}: {text}\n" for number, text in enumerate(texts)))

    assert problems == ()
    assert root is not None
    assert [plain(value) for _, value in root.entries] == list(texts)


def test_a_text_knows_where_it_stands() -> None:
    node = value(HEAD + 'tows:\n  - shot: "18:10"  # by watch\n', "tows")

    assert isinstance(node, Sequence)
    item = node.items[0]
    assert isinstance(item, Mapping)
    key, text = item.entries[0]
    assert isinstance(text, Scalar)
    assert key.place == Place(file="trip.yaml", line=4, column=5)
    assert (text.line, text.column, text.end_line, text.style, text.comment) == (4, 11, 4, '"', 20)
    assert (node.flow, item.flow) == (False, False)


def test_columns_count_characters_and_not_bytes() -> None:
    assert value("å°é: Håkon\n", "å°é").place.column == 6
    assert told("å°é: Håkon: x\n") == ["1:11 colon-in-text"]


def test_blocks_and_brackets_know_where_they_end() -> None:
    text = "remarks: |\n  one\n  two\n\ncrew: [A,\n  B]\ntows:\n  - shot: 1\n    note: a\n      b\n"

    root, _ = read(text)

    assert root is not None
    assert [(node.line, node.end_line) for _, node in root.entries] == [(1, 4), (5, 6), (8, 10)]
    assert [getattr(node, "style", None) for _, node in root.entries] == ["|", None, None]
    assert root.end_line == 10


def test_nodes_show_themselves() -> None:
    root, _ = read(HEAD + "crew: [A, 'B\n")

    assert repr(root) == (
        "<mapping 1:1 ((<'vessel' 1:1>, <'Petrel' 1:9>), (<'sailed' 2:1>, <'2026-03-04 05:30' 2:9>),"
        " (<'crew' 3:1>, <lost 3:7>))>"
    )
    assert repr(value("a: [b]\n", "a")) == "<list 1:4 (<'b' 1:5>,)>"


def test_keys_that_stand_twice_are_kept_and_found() -> None:
    root, problems = read("Cod: 1\nling: 2\ncod: 3\nCOD: 4\n")

    assert problems == ()
    assert root is not None
    assert [key.value for key, _ in root.entries] == ["Cod", "ling", "cod", "COD"]
    assert [(again.line, first.line) for again, first in repeated(root, fold_key)] == [(3, 1), (4, 1)]


@pytest.mark.parametrize("text", ["", "\n \n", "# x\n", "---\n", "--- # x\n...\n", "\ufeff"], ids=ascii)
def test_a_file_without_a_log_is_an_error(text: str) -> None:
    root, problems = read(text)

    assert root is None
    assert [problem.severity for problem in problems] == ["error"]


def test_an_empty_mapping_is_a_log_without_keys() -> None:
    assert kept("{}") == {}


def test_a_log_of_which_nothing_is_left_is_none() -> None:
    assert read("blah\n")[0] is None
    assert read("{vessel: Petrel\n")[0] is None
    assert read("'vessel'\n")[0] is None


def test_the_root_may_be_anything_but_keys_and_is_then_refused() -> None:
    assert told("- a\n- b\n") == ["1:1 no-keys"]
    assert told("[a, b]\n") == ["1:1 no-keys"]
    assert told("|\n  text\n") == ["1:1 text-start"]


def test_the_collector_runs_again_afterwards() -> None:
    import gc  # noqa: PLC0415 - only here

    assert gc.isenabled()
    read(LOG)
    assert gc.isenabled()
    gc.disable()
    try:
        read(LOG)
        assert not gc.isenabled()
    finally:
        gc.enable()


def test_more_than_a_log_can_hold_is_refused() -> None:
    assert told(HEAD + "a: {" + "b: c, " * 100_001 + "}\n") == ["3:599975 too-much"]
    assert told(HEAD + "crew; 4\na: {" + "b: c, " * 100_001 + "}\n")[-1].endswith("too-much")
    assert read("a: b\n" * 100_001)[0] is None


def test_no_more_problems_are_told_than_anyone_reads() -> None:
    said = told("remarks: a # b\n" * 1200)

    assert len(said) == 1001
    assert said[-1] == "1001:12 too-many-problems"


# What holds for any bytes


@given(st.binary(max_size=400))
def test_any_bytes_are_read_without_a_traceback(data: bytes) -> None:
    root, problems = read_tree(data, "f", TEXT_KEYS)

    assert root is not None or problems


@given(st.text(max_size=200))
def test_any_text_is_read_without_a_traceback(text: str) -> None:
    root, problems = read(text.encode("utf-8", "surrogatepass"))

    assert root is not None or problems


@given(st.lists(st.sampled_from([*"ab: -\n[]{}'\"#|,\t>?&*!=;", "\n  ", "- ", ": ", "key: "]), max_size=120))
def test_signs_in_any_order_are_read_alike_by_both_parsers(signs: list[str]) -> None:
    assert_alike("".join(signs))


def mutated(chance: random.Random, text: str) -> str:
    """Return a log with a few slips of the hand in it."""
    for _ in range(chance.choice((1, 1, 1, 2, 3, 6))):
        at = chance.randrange(len(text) + 1)
        kind = chance.random()
        if kind < 0.35:
            text = text[:at] + chance.choice(SNIPPETS) + text[at:]
        elif kind < 0.55:
            text = text[:at] + text[at + chance.choice((1, 1, 1, 2, 5, 20)) :]
        elif kind < 0.7:
            text = moved(chance, text)
        else:
            text = text[:at] + chance.choice(SNIPPETS) + text[at + 1 :]
    return text


def moved(chance: random.Random, text: str) -> str:
    """Return a log with a line moved, doubled, joined or left out."""
    lines = text.split("\n")
    at = chance.randrange(len(lines))
    changes: tuple[Callable[[], object], ...] = (
        lambda: lines.__setitem__(at, " " * chance.randint(1, 4) + lines[at]),
        lambda: lines.__setitem__(at, lines[at][chance.randint(1, 3) :]),
        lambda: lines.insert(at, lines[at]),
        lambda: lines.pop(at),
        lambda: lines.insert(chance.randrange(len(lines)), lines[at]),
        lambda: lines.__setitem__(at, lines[at].replace("  ", "\t", chance.randint(1, 2))),
        lambda: lines.__setitem__(slice(at, at + 2), ["".join(lines[at : at + 2])]),
    )
    chance.choice(changes)()
    return "\n".join(lines)


@settings(suppress_health_check=[HealthCheck.too_slow])
@given(st.randoms(use_true_random=False))
def test_slips_of_the_hand_are_read_alike_by_both_parsers(chance: random.Random) -> None:
    assert_alike(mutated(chance, LOG))


def assert_alike(text: str) -> None:
    read_by: list[tuple[object, tuple[Problem, ...]]] = []
    for loader in LOADERS.values():
        with pytest.MonkeyPatch.context() as patch:
            patch.setattr(events, "LOADER", loader)
            root, problems = read(text)
            read_by.append((exact(root), problems))

    assert read_by[0] == read_by[1], text


def texts_and_gaps(root: Mapping) -> tuple[set[str], set[int]]:
    """Return the words of a tree, and the lines of what is lost of it."""
    words: set[str] = set()
    lines: set[int] = set()
    todo: list[Node] = [root]
    while todo:
        node = todo.pop()
        if isinstance(node, Scalar):
            words.update(re.findall(r"\w+", node.value))
        elif isinstance(node, Lost):
            lines.update(range(node.line, node.end_line + 1))
        elif isinstance(node, Sequence):
            todo += node.items
        elif isinstance(node, Mapping):
            todo += [each for entry in node.entries for each in entry] + list(node.lost)
    return words, lines


def lines_named(problems: tuple[Problem, ...]) -> set[int]:
    """Return the lines that problems stand at or speak of."""
    named = {problem.place.line for problem in problems}
    for problem in problems:
        for first, last in re.findall(r"(?<!column )\b(\d+)(?:(?:-| to )(\d+))?", problem.message + problem.hint):
            if int(last or first) < 100:
                named.update(range(int(first), int(last or first) + 1))
    return named


@settings(max_examples=400, suppress_health_check=[HealthCheck.too_slow])
@given(st.randoms(use_true_random=False))
def test_no_word_is_lost_without_a_word_about_it(chance: random.Random) -> None:
    text = mutated(chance, LOG)

    root, problems = read(text)

    if root is None or any(problem.code in ("second-document", "too-many-faults") for problem in problems):
        assert problems
        return
    words, gaps = texts_and_gaps(root)
    gaps |= lines_named(problems)
    for number, line in enumerate(re.split("\r\r\n|\r\n|\r|\n", text), 1):
        typed = re.split(r"(?:^|[\s\[{,])#", line)[0]
        if number not in gaps:
            assert set(re.findall(r"\w+", typed)) <= words, (text[:300], problems)


# What PyYAML itself makes of it: a reference from outside (PyYAML 6, `yaml.compose` with `BaseLoader`)

WORDS = st.sampled_from(
    [
        "cod",
        "a b",
        "12:30",
        "58 52.4N 015 10.0W",
        "it's",
        'say "hi"',
        "- x",
        "#no",
        "a # b",
        "a: b",
        "ends:",
        "*star",
        "{br",
        "é",
        "multi\nline",
        "a,b",
        "-",
        "?",
        "~",
        "1_000",
        "@x",
        "%",
        "|",
        "x:y",
        "a=b",
        "–dash",
        "🐟",
        "",
    ]
)
KEYS = st.sampled_from(["cod", "a b", "x-y", "it's", "a: b", "#no", "é", "12:30", "- x", "[k", "🐟", "remarks"])
VALUES = st.recursive(
    WORDS, lambda inner: st.lists(inner, max_size=4) | st.dictionaries(KEYS, inner, max_size=4), max_leaves=12
)


def composed(node: yaml.Node | None) -> object:
    """Return the texts and places of a tree that PyYAML composed."""
    assert node is not None
    at = (node.start_mark.line + 1, node.start_mark.column + 1)
    if isinstance(node, yaml.MappingNode):
        return (*at, [(composed(key), composed(value)) for key, value in node.value])
    if isinstance(node, yaml.SequenceNode):
        return (*at, [composed(item) for item in node.value])
    return (*at, node.value)


def placed(node: Node) -> object:
    """Return the same of one of our trees."""
    if isinstance(node, Mapping):
        return (node.line, node.column, [(placed(key), placed(value)) for key, value in node.entries])
    if isinstance(node, Sequence):
        return (node.line, node.column, [placed(item) for item in node.items])
    assert isinstance(node, Scalar)
    return (node.line, node.column, node.value)


@settings(suppress_health_check=[HealthCheck.too_slow])
@given(st.dictionaries(KEYS, VALUES, min_size=1, max_size=5), st.sampled_from([None, False, True]), st.integers(2, 4))
def test_texts_and_places_are_those_that_the_library_composes(data: object, flow: object, indent: int) -> None:
    text = yaml.dump(
        data,
        allow_unicode=True,
        sort_keys=False,
        default_flow_style=bool(flow) if flow is not None else None,
        indent=indent,
        width=60,
    )

    root, problems = read(text)

    assert {problem.code for problem in problems} <= {"value-over-lines"}
    assert root is not None
    assert placed(root) == composed(yaml.compose(text, Loader=yaml.BaseLoader))


def test_a_log_of_both_forms_is_kept_whole() -> None:
    assert told(LOG) == []
    assert kept(LOG)["tows"][0]["catch"] == {"cod": "14 baskets", "haddock": {"large": "6 baskets", "small": "280 kg"}}
    assert kept(LOG.replace("haddock: {large: 6", "haddock: {large: *6"))["tows"][0]["catch"] == {
        "cod": "14 baskets",
        "haddock": {"large": LOST, "small": "280 kg"},
    }
