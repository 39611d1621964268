"""Names as they are matched, and file names that are safe, short and different."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.model.named import ByName
from logbook.model.names import fold_name, slug


def test_names_match_whatever_their_case_spaces_and_composition() -> None:
    assert fold_name("  Solan   BRIGHT ") == fold_name("solan bright")
    assert fold_name("Ha\u030akon") == fold_name("H\u00e5kon")
    assert fold_name("Kitti Wake") != fold_name("Kitti-Wake")


@pytest.mark.parametrize(("name", "expected"), [("Solan Bright", "solan-bright"), ("KI 114", "ki-114")])
def test_a_plain_name_stays_readable(name: str, expected: str) -> None:
    assert slug(name) == expected


NASTY = [
    "Kitti Wake",
    "Kitti-Wake",
    "Kitti_Wake",
    "CON",
    "aux",
    "COM1",
    "???",
    "!!!",
    "Ørnen",
    "Ornen",
    "Чайка",
    "鷗",
    "../../evil",
    "a" * 300,
    "a" * 301,
]


def test_different_names_never_share_a_file_name() -> None:
    assert len({slug(name) for name in NASTY}) == len(NASTY)
    assert slug("Ørnen").startswith("ornen-")
    assert slug("CON").startswith("con-")


@given(st.text(max_size=80))
def test_every_file_name_is_safe_and_short(name: str) -> None:
    assert re.fullmatch(r"[a-z0-9][a-z0-9-]{0,59}", slug(name) if name.strip() else "a")


def test_a_table_by_name_keeps_its_order_and_compares_by_what_it_holds() -> None:
    table = ByName([("b", 1), ("a", 2)])

    assert list(table) == ["b", "a"]
    assert table == ByName([("a", 2), ("b", 1)])
    assert hash(table) == hash(ByName([("a", 2), ("b", 1)]))
    assert repr(table) == "ByName({'b': 1, 'a': 2})"
