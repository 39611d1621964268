"""Names as they are matched, and file names that are safe, short and different."""

import re
import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.model.named import ByName
from logbook.model.names import bare_slug, fold_name, slug


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
    # Naming Files, Paths, and Namespaces (Windows): reserved signs and names, no dot or space at the end, 255 units a name; those of
    # Linux are 255 octets (ext4). 40 signs, a digest and "-2026-03-04-b-chartlet.svg" stay within both.
    made = slug(name if name.strip() else "a")

    assert re.fullmatch(r"[^\W_](?:[^\W_]|-|[\u0300-\uffff\U00010000-\U0010ffff]){0,59}", made)
    assert not set(made) & set('<>:"/\\|?*. \t')
    assert made.isprintable()
    assert {unicodedata.category(sign)[0] for sign in made.replace("-", "")} <= set("LMN")
    assert len(made.encode("utf-8")) <= 200
    assert made == unicodedata.normalize("NFC", made)
    assert re.fullmatch(r"[a-z0-9][a-z0-9-]{0,59}", bare_slug(name))


@pytest.mark.parametrize(
    ("name", "expected"),
    [
        # Names that Windows keeps for devices, with any ending, and superscript digits too (the same source)
        ("CON", "con-"),
        ("aux.yaml", "aux-yaml-"),
        ("nul.", "nul-"),
        ("COM¹", "com1-"),
        ("LPT9 spare", "lpt9-spare-"),
        ("con", "con-"),
        ("Contender", "contender"),
        # Ends, cases and composition
        ("Solan Bright. ", "solan-bright-"),
        ("SOLAN bright", "solan-bright"),
        ("solan_bright", "solan-bright-"),
        ("../../x", "x-"),
        ("C:\\con\\x", "c-con-x-"),
        ("..", "v-"),
        ("W" * 300, "w" * 40 + "-"),
        # Scripts
        ("Þór Skjærvøy", "thor-skjaervoy-"),
        ("Łódź", "lodz-"),
        ("Ørnen", "ornen-"),
        ("Чайка", "чайка-"),
        ("Ёж", "ёж-"),
        ("Ναυτίλος", "ναυτίλοσ-"),
        ("東京漁港", "東京漁港-"),
        ("갈매기", "갈매기-"),
        ("सागर रानी", "सागर-रानी-"),
        ("นกนางนวล", "นกนางนวล-"),
        ("سفينة", "سفينة-"),
        ("🐟 Cod", "cod-"),
        ("\u202egnp.exe", "gnp-exe-"),
    ],
)
def test_a_name_stays_readable_in_its_script_and_safe_on_windows(name: str, expected: str) -> None:
    made = slug(name)

    assert re.fullmatch(re.escape(expected) + (r"[0-9a-f]{6}" if expected.endswith("-") else ""), made)
    assert slug(f"  {name.upper()} ") == slug(name.upper())


def test_file_names_are_the_same_for_ever() -> None:
    # Links to an archive, and what was bookmarked, outlive a version of the program
    assert slug("Ørnen") == "ornen-21ba1f"
    assert slug("CON") == "con-1143da"
    assert slug("Чайка") == "чайка-6bd8cb"


def test_names_that_differ_only_in_case_or_composition_are_one_and_share_a_file() -> None:
    names = ["Å Bris", "å bris", "A\u030a BRIS"]

    assert len({fold_name(name) for name in names}) == len({slug(name) for name in names}) == 1


def test_a_table_by_name_keeps_its_order_and_compares_by_what_it_holds() -> None:
    table = ByName([("b", 1), ("a", 2)])

    assert list(table) == ["b", "a"]
    assert table == ByName([("a", 2), ("b", 1)])
    assert hash(table) == hash(ByName([("a", 2), ("b", 1)]))
    assert repr(table) == "ByName({'b': 1, 'a': 2})"
