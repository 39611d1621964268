"""Trips as the store keeps them for the pages of many: the same whatever was kept when, and damage is noticed."""

from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from random import Random

import msgspec
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from logbook.build.ledger import StoredLedger
from logbook.model.edition import OFFICE
from logbook.model.figures import Reckoned
from logbook.model.fleet import Fleet
from logbook.model.ledger import Brief, Kit
from logbook.model.packed import packed_as_it_stands
from logbook.redact.policy import policy_of
from logbook.store.made import Made
from logbook.store.shares import Shares
from logbook.store.store import Store, StoreError
from tests.ledger import kept, ledger_of
from tests.reckon.trips import some_trips
from tests.render import example

FLEET = Fleet(season_start=(9, 1))
POLICY = policy_of(OFFICE, FLEET)
SITE = Path("site")
ROWS = ("trips", "tows", "tracks", "find")


def told(ledger: StoredLedger) -> list[object]:
    """Return everything that a ledger tells."""
    ids = [entry.id for entry in ledger.entries]
    years = sorted({entry.year for entry in ledger.entries})
    seasons = {entry.season for entry in ledger.entries}
    return [
        ledger.entries,
        ledger.latest,
        ledger.key_of(ledger.entries),
        list(ledger.vessels),
        list(ledger.briefs(ids)),
        [ledger.kit(one) for one in ids],
        in_order(ledger.fleet()),
        [in_order(ledger.vessel(name)) for name in ledger.vessels],
        [ledger.of_vessel(name) for name in ledger.vessels],
        [ledger.of_season(name) for name in sorted(seasons)],
        [in_order(one) for one in ledger.species()],
        [in_order(one) for one in ledger.grounds()],
        ledger.fasts(),
        [
            (name, year, list(ledger.rows(name, year)), ledger.rows_key(name, year))
            for name in ROWS
            for year in (None, *years)
        ],
    ]


def in_order(record: object) -> bytes:
    """Return a record as bytes, with what stands in its tables in the order it stands there."""
    return msgspec.json.encode(msgspec.json.decode(packed_as_it_stands(record)), order="sorted")


def shares_of(trips: Sequence[Reckoned]) -> Shares:
    shares = Shares(Store(None), SITE)
    for trip in trips:
        shares.keep(b"", kept(trip, FLEET, POLICY))
    return shares


def anew(trips: Sequence[Reckoned]) -> StoredLedger:
    return ledger_of(trips, FLEET, POLICY)


def again(shares: Shares) -> StoredLedger:
    """Return a ledger as the next build has it, of trips that were kept."""
    return StoredLedger(shares)


CHANCE = st.integers(0, 2**32 - 1).map(Random)
TRIPS = some_trips(most=5).filter(bool)


@given(CHANCE, TRIPS)
@settings(max_examples=25)
def test_the_order_in_which_trips_are_kept_changes_nothing(chance: Random, trips: tuple[Reckoned, ...]) -> None:
    shuffled = again(shares_of(chance.sample(trips, len(trips))))

    assert told(shuffled) == told(anew(trips))


@given(CHANCE, TRIPS, some_trips(most=1).filter(bool))
@settings(max_examples=25)
def test_a_trip_in_place_of_another_is_as_if_the_other_had_never_been(
    chance: Random, trips: tuple[Reckoned, ...], other: tuple[Reckoned, ...]
) -> None:
    shares = shares_of(trips)
    told(again(shares))  # sums over all of them are kept now
    place = chance.randrange(len(trips))
    name = trips[place].figures.trip.id
    new = replace(other[0], figures=replace(other[0].figures, trip=replace(other[0].figures.trip, id=name)))
    shares.keep(b"", kept(new, FLEET, POLICY))

    assert told(again(shares)) == told(anew([*trips[:place], new, *trips[place + 1 :]]))


@given(CHANCE, TRIPS)
@settings(max_examples=25)
def test_a_trip_that_is_forgotten_is_as_if_it_had_never_been(chance: Random, trips: tuple[Reckoned, ...]) -> None:
    shares = shares_of(trips)
    told(again(shares))
    left = chance.sample(trips, chance.randrange(len(trips)))
    shares.forget_others(trip.figures.trip.id for trip in left)

    assert told(again(shares)) == told(anew(left))


@given(TRIPS)
@settings(max_examples=15)
def test_what_was_kept_of_sums_tells_the_same_as_sums_put_together_now(trips: tuple[Reckoned, ...]) -> None:
    shares = shares_of(trips)
    first = told(again(shares))

    assert told(again(shares)) == first


def test_a_season_that_begins_on_another_day_has_other_sums() -> None:
    trips = example.whole_fleet()[1]
    shares = shares_of(trips)
    told(again(shares))
    for trip in trips:
        shares.keep(b"", kept(trip, Fleet(), POLICY))

    assert told(again(shares)) == told(ledger_of(trips, Fleet(), POLICY))
    assert list(again(shares).fleet().seasons) == ["2025", "2026"]


def test_no_trips_at_all_have_nothing_to_tell() -> None:
    ledger = anew(())

    assert (ledger.latest, list(ledger.vessels), list(ledger.species()), list(ledger.grounds()), ledger.fasts()) == (
        None, [], [], [], ()
    )  # fmt: skip
    assert ledger.fleet().vessels == {}


def test_a_key_is_another_for_any_change_of_a_trip_and_for_that_alone() -> None:
    trips = list(example.whole_fleet()[1])
    before = anew(trips)
    head = trips[0].figures.trip
    trips[0] = replace(trips[0], figures=replace(trips[0].figures, trip=replace(head, skipper="S. Otherwise")))
    after = anew(trips)

    changed = [one.id for one, other in zip(before.entries, after.entries, strict=True) if one.key != other.key]
    assert changed == [head.id]
    assert before.key_of(before.entries) != after.key_of(after.entries)
    assert before.key_of(before.of_vessel("Arctic Tern")) == after.key_of(after.of_vessel("Arctic Tern"))
    assert before.rows_key("trips", "2025") != after.rows_key("trips", "2025")
    assert before.rows_key("trips", "2026") == after.rows_key("trips", "2026")
    assert before.rows_key("tracks") == after.rows_key("tracks")


def test_archives_beside_one_another_in_one_store_know_nothing_of_each_other() -> None:
    trips = example.whole_fleet()[1]
    store = Store(None)
    one, other = Shares(store, Path("one")), Shares(store, Path("other"))
    ledger_of(trips[:5], FLEET, POLICY, one)
    ledger_of(trips[3:], FLEET, POLICY, other)

    for place, own in (("one", trips[:5]), ("other", trips[3:])):
        assert told(again(Shares(store, Path(place)))) == told(anew(own))


# Damage: whatever stands in a blob that is read, one bit of it changed.


TABLES = ("entry", "made", "piece", "tallied")


def spoil(store: Store, of: str, column: str, place: float) -> None:
    """Change a bit of every blob of a column of a table, or of every piece of a name, so far along."""
    table, only = (of, "") if of in TABLES else ("piece", f" AND name = '{of}'")
    rows = list(store.rows(f"SELECT DISTINCT {column} FROM {table} WHERE length({column}){only}"))  # noqa: S608 - names of our own
    for (blob,) in rows:
        at = min(int(len(blob) * place), len(blob) - 1)
        spoilt = bytes([*blob[:at], blob[at] ^ 4, *blob[at + 1 :]])
        store.change(f"UPDATE {table} SET {column} = ? WHERE {column} = ?", spoilt, blob)  # noqa: S608 - the same
    assert rows


def fleet_of(ledger: StoredLedger) -> object:
    return ledger.fleet()


PARTS: dict[tuple[str, str], Callable[[StoredLedger], object]] = {
    ("brief", "content"): lambda ledger: list(ledger.briefs([ledger.entries[0].id])),
    ("kit", "content"): lambda ledger: ledger.kit(ledger.entries[0].id),
    ("days", "content"): lambda ledger: list(ledger.grounds()),
    ("mishaps", "content"): lambda ledger: ledger.fasts(),
    ("hauls", "content"): lambda ledger: ledger.hauls(ledger.entries[0].id),
    ("trips in a file", "content"): lambda ledger: list(ledger.rows("trips")),
    ("tallied", "tally"): fleet_of,
}


@pytest.mark.parametrize("place", [0.0, 0.3, 0.99])
@pytest.mark.parametrize("of", PARTS, ids=".".join)
def test_damage_to_what_is_kept_is_noticed_when_it_is_read(of: tuple[str, str], place: float) -> None:
    store = Store(None)
    told(ledger_of(example.whole_fleet()[1], FLEET, POLICY, Shares(store, SITE)))
    spoil(store, *of, place)

    with pytest.raises(StoreError):
        PARTS[of](again(Shares(store, SITE)))


@pytest.mark.parametrize("place", [0.0, 0.3, 0.99])
def test_damage_to_the_sums_of_a_trip_is_noticed_where_they_are_put_together(place: float) -> None:
    store = Store(None)
    ledger = ledger_of(example.whole_fleet()[1], FLEET, POLICY, Shares(store, SITE))
    spoil(store, "tally", "content", place)

    with pytest.raises(StoreError):
        ledger.fleet()


@pytest.mark.parametrize("place", [0.0, 0.3, 0.99])
def test_damage_to_the_line_of_a_trip_is_noticed_at_once(place: float) -> None:
    store = Store(None)
    ledger_of(example.whole_fleet()[1], FLEET, POLICY, Shares(store, SITE))
    spoil(store, "entry", "entry", place)

    with pytest.raises(StoreError):
        Shares(store, SITE)


@pytest.mark.parametrize("place", [0.0, 0.3, 0.99])
def test_damage_to_the_list_of_what_was_made_is_noticed(place: float) -> None:
    store = Store(None)
    Made(store, SITE, "en").file("a.html", (1,), lambda: b"a")
    spoil(store, "made", "files", place)

    with pytest.raises(StoreError):
        Made(store, SITE, "en").file("a.html", (1,), lambda: b"a")


def test_what_is_sound_but_something_else_is_noticed_too() -> None:
    store = Store(None)
    ledger = ledger_of(example.whole_fleet()[1], FLEET, POLICY, Shares(store, SITE))
    for name, other in (("brief", "mishaps"), ("kit", "days")):
        store.change("DELETE FROM piece WHERE name = ?", name)
        store.change("UPDATE piece SET name = ? WHERE name = ?", name, other)

    with pytest.raises(StoreError):
        list(ledger.briefs([ledger.entries[0].id]))
    with pytest.raises(StoreError):
        ledger.kit(ledger.entries[0].id)


@pytest.mark.parametrize("kind", [Brief, Kit])
def test_what_is_not_there_is_noticed(kind: type[Brief] | type[Kit]) -> None:
    shares = Shares(Store(None), SITE)

    with pytest.raises(StoreError, match="nothing is kept of auk-2026-01-01"):
        shares.part("auk-2026-01-01", kind.__name__.lower(), kind)


def test_keys_of_what_was_made_are_not_trusted_where_they_are_damaged() -> None:
    store = Store(None)
    ledger_of(example.whole_fleet()[1], FLEET, POLICY, Shares(store, SITE)).fleet()
    before = told(again(Shares(store, SITE)))
    spoil(store, "tallied", "key", 0.5)

    assert told(again(Shares(store, SITE))) == before


def blobs(store: Store) -> Iterator[tuple[str, str]]:
    """Give the tables and columns of a store that hold blobs, by its own description."""
    for (table,) in list(store.rows("SELECT name FROM sqlite_master WHERE type = 'table'")):
        for _, column, kind, *_ in list(store.rows(f"PRAGMA table_info({table})")):
            if kind == "BLOB":
                yield table, column


def test_every_blob_there_is_of_trips_and_sums_is_tried_above() -> None:
    store = Store(None)
    Shares(store, SITE)
    keys = {("entry", "key"), ("tallied", "key")}

    assert set(blobs(store)) == {("piece", "content"), ("tallied", "tally"), ("entry", "entry"), *keys}
    assert {name for name, _ in PARTS} > {"brief", "kit", "days", "mishaps", "hauls"}
