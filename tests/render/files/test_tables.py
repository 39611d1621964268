"""Tables and their description, read by the standard library and by frictionless, a reader of Data Packages."""

import csv
import hashlib
import io
import json
from datetime import datetime
from decimal import Decimal
from pathlib import Path

import pytest
from frictionless import Package
from hypothesis import given, settings
from hypothesis import strategies as st

from logbook.model.edition import CREW, EDITIONS, OFFICE, PUBLIC
from logbook.model.fleet import Edition, Fleet
from logbook.redact.policy import policy_of
from logbook.render.files.rows import trip_rows
from tests.read.logs import fleet
from tests.render import example
from tests.render.files.data import FLEET_OF_TWO, NASTY, files, problem, saying, trip_saying, two_trips

Rows = list[dict[str, str]]
PARTED = ("tows", "catches", "landed", "sales")
"""Tables of which each year has a file of its own."""


def rows(content: bytes) -> Rows:
    return list(csv.DictReader(io.StringIO(content.decode("utf-8"), newline=""), strict=True))


def table(name: str, edition: str = OFFICE) -> Rows:
    """Return the rows of a table of trips that docked in 2026, or have their last word then."""
    return rows(files(edition=edition, problems=(problem("a, b"),))[f"files/{named(name)}.csv"])


def named(name: str) -> str:
    return f"{name}-2026" if name in PARTED else name


def fields(made: dict[str, bytes]) -> dict[str, dict[str, dict[str, str]]]:
    """Return what is told of every column, by table and name."""
    package = json.loads(made["files/datapackage.json"])
    return {one["name"]: {field["name"]: field for field in one["schema"]["fields"]} for one in package["resources"]}


@pytest.mark.parametrize("edition", EDITIONS)
def test_another_reader_finds_every_table_as_it_is_described(edition: str, tmp_path: Path) -> None:
    # Types, keys, references between tables, sizes and digests: Data Package and Table Schema, version 1.
    for path, content in files(edition=edition, problems=(problem("=1"),)).items():
        (tmp_path / path).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / path).write_bytes(content)
    package = Package(str(tmp_path / "files" / "datapackage.json"))
    report = package.validate()

    assert report.valid, report.flatten(["title", "message"])
    read = {name: package.get_table_resource(name).read_rows() for name in package.resource_names}
    assert all(read.values())
    tow = read["tows-2026"][0].to_dict()
    assert tow["pens"] == ["P1", "S1"]
    assert tow["shot"] == datetime.fromisoformat("2026-03-04T18:00:00+00:00")
    assert [row["kept_kg"] for row in read["catches-2026"]][:2] == [Decimal("100.5"), Decimal("63.1")]


def test_a_reader_that_is_told_the_wrong_thing_says_so(tmp_path: Path) -> None:
    made = files()
    wrong = made["files/tows-2026.csv"].replace(b"solan-bright-2026-03-04,1,", b"solan-bright-2026-03-04,one,", 1)
    (tmp_path / "files").mkdir()
    for path, content in (made | {"files/tows-2026.csv": wrong}).items():
        if path.count("/") == 1:
            (tmp_path / path).write_bytes(content)

    assert not Package(str(tmp_path / "files" / "datapackage.json")).validate().valid


def test_lines_end_as_rfc_4180_says_and_every_row_is_as_wide_as_the_head() -> None:
    for path, content in files(problems=(problem("x"),)).items():
        if path.endswith(".csv"):
            assert content.endswith(b"\r\n")
            assert b"\n" not in content.replace(b"\r\n", b"")
            assert not content.startswith(b"\xef\xbb\xbf")
            lines = list(csv.reader(io.StringIO(content.decode(), newline=""), strict=True))
            assert {len(line) for line in lines} == {len(lines[0])}


def test_every_column_has_a_type_and_a_meaning_and_measures_have_a_unit() -> None:
    described = fields(files(problems=(problem("x"),)))

    assert set(described) == {"trips", "landings", "problems", *map(named, PARTED)}
    for columns in described.values():
        for name, field in columns.items():
            assert field["description"]
            measured = name.rpartition("_")[2] in {"kg", "h", "nm", "km2", "m", "c", "kn", "percent", "days"}
            assert ("unit" in field) >= measured, name
    assert described["sales-2026"]["value"]["unit"] == "KRC"
    for path, content in files().items():
        if path.endswith(".csv"):
            head = next(csv.reader(io.StringIO(content.decode(), newline="")))
            assert head == list(described[path.removeprefix("files/").removesuffix(".csv")])


def test_digests_and_sizes_are_those_of_the_tables() -> None:
    made = files()
    for resource in json.loads(made["files/datapackage.json"])["resources"]:
        content = made[f"files/{resource['path']}"]
        assert resource["bytes"] == len(content)
        assert resource["hash"] == f"sha256:{hashlib.sha256(content).hexdigest()}"


def test_weights_are_as_typed_and_a_row_is_a_species_and_grade() -> None:
    told = [
        (row["species"], row["code"], row["grade"], row["kept_kg"], row["kept_count"], row["undersize_kg"], row["put_back_kg"])
        for row in table("catches")
        if row["trip"] == "solan-bright-2026-03-04"
    ]  # fmt: skip

    assert told == [
        ("cod", "COD", "large", "100.5", "", "", ""),
        ("cod", "COD", "small", "63.1", "", "", ""),
        ("cod", "COD", "", "", "", "7", ""),
        ("saithe", "POK", "", "45", "", "", ""),
        ("halibut", "HAL", "", "", "2", "", ""),
        ("skate", "SRX", "", "", "", "", "30"),
    ]


def both_years(made: dict[str, bytes], name: str) -> Rows:
    return [row for year in (2025, 2026) for row in rows(made[f"files/{name}-{year}.csv"])]


def test_what_is_added_up_from_the_catches_is_the_catch_of_the_tow() -> None:
    trips = example.whole_fleet()[1]
    made = files(trips, of=example.fleet())
    sums: dict[tuple[str, str], Decimal] = {}
    for row in both_years(made, "catches"):
        key = row["trip"], row["tow_order"]
        sums[key] = sums.get(key, Decimal(0)) + Decimal(row["kept_kg"] or 0)
    tows = both_years(made, "tows")

    assert len(tows) == sum(len(trip.figures.tows) for trip in trips)
    for tow in tows:
        assert sums.get((tow["trip"], tow["tow_order"]), Decimal(0)) == Decimal(tow["kept_kg"] or 0)


def test_a_tow_whose_catch_is_not_known_has_an_empty_cell_and_one_that_caught_nothing_a_nought() -> None:
    tows = table("tows")

    assert [row["catch_told"] for row in tows] == ["known", "nothing", "unknown", "known"]
    assert tows[1]["kept_kg"] == "0"
    assert tows[2]["kept_kg"] == ""


def test_a_landing_stands_with_its_times_and_weight_and_one_that_is_expected_says_so() -> None:
    made, expected = table("landings")

    assert (made["docked"], made["landing_started"], made["discharge_h"], made["out_turn_kg"]) == (
        "2026-03-06T08:00:00+00:00",
        "2026-03-06T09:00:00+00:00",
        "2.5",
        "204",
    )
    assert made["expected"] == "false"
    assert expected["expected"] == "true"
    assert expected["docked"].endswith("+01:00")
    assert expected["out_turn_kg"] == ""


def test_hail_stands_beside_out_turn_and_what_was_sold_is_exact() -> None:
    landed = [(row["species"], row["grade"], row["hail_kg"], row["out_turn_kg"]) for row in table("landed")]

    assert ("cod", "large", "100.5", "99") in landed
    assert [(row["species"], row["price_per_kg"], row["value"]) for row in table("sales")][:2] == [
        ("cod", "3.9", "386.10"),
        ("cod", "2.05", "123.00"),
    ]


HIDDEN = {
    CREW: {
        "trips": {"crew", "gross", "net", "file"},
        "tows": {"rectangle", "start_latitude", "end_longitude"},
        "landings": {"passage_nm"},
        "landed": {"difference_kg", "difference_percent", "within_tolerance"},
    },
    PUBLIC: {
        "trips": {"skipper", "crew", "remarks", "put_back_kg", "gross", "net", "file"},
        "tows": {"start_latitude", "rectangle", "fast", "came_fast", "damage", "gear_lost", "bottom", "remarks", "put_back_kg"},
        "catches": {"put_back_kg", "undersize_kg"},
        "landed": {"difference_kg"},
    },
}  # fmt: skip


@pytest.mark.parametrize("edition", [CREW, PUBLIC])
def test_an_edition_has_no_column_for_what_it_does_not_show(edition: str) -> None:
    shown, office = fields(files(edition=edition)), fields(files())

    assert "sales-2026" not in shown
    assert "problems" not in shown
    for name, hidden in HIDDEN[edition].items():
        assert hidden <= set(office[named(name)])
        assert not hidden & set(shown[named(name)])


def test_rectangles_and_exact_positions_are_columns_only_where_the_fleet_file_shows_them() -> None:
    of = fleet(FLEET_OF_TWO)

    def tows(positions: str) -> set[str]:
        said = Fleet(editions=(Edition(name=CREW, positions=positions),), vessels=of.vessels)
        return set(fields(files(edition=CREW, of=said))["tows-2026"])

    assert {"rectangle", "start_latitude"} <= tows("exact")
    assert "rectangle" in tows("rectangle")
    assert "start_latitude" not in tows("rectangle")


def had_back(row: dict[str, str], *names: str) -> list[str]:
    return [row[name].removeprefix("'") for name in names]


def check(text: str) -> None:
    made = saying(text)
    (trip,) = rows(made["files/trips.csv"])
    assert (
        had_back(trip, "vessel", "registration", "number", "skipper", "port", "sailed_from", "remarks", "file")
        == [text] * 8
    )
    assert json.loads(trip["crew"]) == [text, text]
    assert json.loads(trip["incomplete"]) == [text]
    for tow in rows(made["files/tows-2026.csv"]):
        assert had_back(tow, "ground", "net", "damage", "gear_lost", "bottom", "remarks", "fast") == [text] * 7
        assert json.loads(tow["pens"]) == [text, text]
    for row in rows(made["files/catches-2026.csv"]):
        assert had_back(row, "species", "grade") == [text] * 2
    (wrong,) = rows(made["files/problems.csv"])
    assert had_back(wrong, "file", "message", "hint") == [text] * 3
    assert json.loads(made["files/datapackage.json"])["title"].startswith(text)


@pytest.mark.parametrize("text", NASTY)
def test_any_text_comes_back_as_typed(text: str) -> None:
    check(text)


@settings(max_examples=40, deadline=None)
@given(st.text(min_size=1))
def test_any_other_text_comes_back_as_typed(text: str) -> None:
    check(text)


def test_half_a_letter_does_not_stop_the_rest() -> None:
    pieces = trip_rows(trip_saying("a\ud83db"), None, example.fleet(), policy_of(OFFICE, example.fleet()))

    assert next(csv.reader([pieces["trips"].decode()]))[1] == "a?b"


def test_the_same_trips_give_the_same_bytes_in_any_order() -> None:
    wrong = (problem("a"), problem("b"))

    assert files(tuple(reversed(two_trips())), problems=wrong[::-1]) == files(problems=(*wrong, *wrong))


def test_an_archive_without_trips_has_tables_without_rows() -> None:
    made = files(())

    assert set(made) == {f"files/{name}" for name in ("trips.csv", "landings.csv", "problems.csv", "datapackage.json")}
    assert rows(made["files/trips.csv"]) == []
