"""Records as an edition gets them, gone through to the last field: what is not shown is not in them."""

from collections.abc import Iterator, Mapping
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from msgspec import Struct
from msgspec.structs import replace

from logbook.model.edition import CREW, OFFICE, PUBLIC
from logbook.model.figures import Reckoned
from logbook.model.packed import packed
from logbook.model.past import Past
from logbook.model.quantity import Position
from logbook.model.trip import Fast
from logbook.read.folder import named_from, read_folder
from logbook.reckon.trip import reckon_trips
from logbook.redact.policy import policy_of
from logbook.redact.trip import is_held
from tests.ledger import kept, ledger_of
from tests.ledger import redacted as shown_in
from tests.read.logs import fleet
from tests.redact.canaries import ALL, INSIDE, NOBODY, WORDS, plant

DEFAULT = ""
CLOSE = "editions: {crew: {positions: exact, fasts: no, after: 5 days}, public: {positions: exact, after: 5 days}}"
OPEN = "editions: {crew: {positions: exact}, public: {positions: exact}}"
FAST_TYPED, HELD_FAST = "58 35.9N 015 20.2W", "59 15.7N 016 05.9W"


def redacted(folder: Path, edition: str, editions: str = DEFAULT) -> tuple[Reckoned, Reckoned]:
    logs = plant(folder, editions)
    shown = named_from(read_folder(logs), logs)
    landed, at_sea = shown_in(reckon_trips(shown.trips, shown.fleet, shown.problems), policy_of(edition, shown.fleet))
    return landed, at_sea


def parts(value: object) -> Iterator[object]:
    """Give a record and everything in it; the fleet's vessel apart, which everybody is shown."""
    yield value
    if isinstance(value, Struct):
        for name in value.__struct_fields__:
            if name not in ("vessel", "known"):
                yield from parts(getattr(value, name))
    elif isinstance(value, Mapping):
        for name, one in value.items():
            yield from (name, *parts(one))
    elif isinstance(value, (tuple, frozenset)):
        for one in value:
            yield from parts(one)


def texts(value: object) -> str:
    return "\n".join(part for part in parts(value) if isinstance(part, str)).casefold()


def positions(value: object) -> set[str]:
    return {part.typed for part in parts(value) if isinstance(part, Position)}


def holding(words: str, text: str) -> bool:
    return words.casefold() in text


@pytest.mark.parametrize("edition", [CREW, PUBLIC])
@pytest.mark.parametrize("editions", [DEFAULT, CLOSE, OPEN])
def test_no_field_of_a_record_has_a_word_that_the_edition_does_not_show(
    tmp_path: Path, edition: str, editions: str
) -> None:
    text = texts(redacted(tmp_path, edition, editions))

    assert [word for word, who in WORDS.items() if edition not in who and holding(word, text)] == []


def test_the_office_has_every_word_that_any_edition_shows(tmp_path: Path) -> None:
    text = texts(redacted(tmp_path, OFFICE))

    of_no_trip = {"quillfleet", "quillvessel", "quillempty"}
    shown = [word for word, who in WORDS.items() if who != NOBODY and word not in of_no_trip]
    assert [word for word in shown if not holding(word, text)] == []
    assert holding("quillallhands", text)


def test_the_crew_loses_no_word_that_is_theirs(tmp_path: Path) -> None:
    text = texts(redacted(tmp_path, CREW))

    theirs = [word for word, who in WORDS.items() if who in (INSIDE, ALL) and word not in ("quillfleet", "quillvessel")]
    assert [word for word in theirs if not holding(word, text)] == []


def test_no_position_but_that_of_a_fast_is_left_where_the_fleet_file_says_nothing(tmp_path: Path) -> None:
    assert positions(redacted(tmp_path, CREW)) == {FAST_TYPED, HELD_FAST}


def test_no_position_is_left_for_the_public_though_the_fleet_file_says_exact(tmp_path: Path) -> None:
    shown = redacted(tmp_path, PUBLIC, OPEN)

    assert positions(shown) == set()
    assert {tow.rectangle for trip in shown for tow in trip.figures.tows} == {"46D4", "47D3", None}
    assert [fast for fast in parts(shown) if isinstance(fast, Fast)] == []
    assert all(trip.figures.landing.passage_nm is None for trip in shown)


def test_what_is_held_back_tells_nothing_of_where_the_tows_were(tmp_path: Path) -> None:
    landed, at_sea = redacted(tmp_path, CREW, CLOSE)

    assert positions(landed) >= {"58 31.7N 015 21.3W", "58 55.3N 014 11.6W", "58 41.3N 015 13.7W"}
    assert FAST_TYPED not in positions(landed)
    assert positions(at_sea) == set()
    assert not holding("quillrecent", texts(at_sea))
    assert not holding("quillmud", texts(at_sea))
    for tow in at_sea.figures.tows:
        assert (tow.ground, tow.rectangle, tow.depth_m, tow.warp_to_depth) == (None, None, None, None)
    assert at_sea.figures.grounds == {}
    assert at_sea.figures.landing.passage_nm is None
    assert at_sea.figures.landing.docked is not None


def test_a_fleet_file_without_fasts_leaves_neither_fast_nor_count_of_them(tmp_path: Path) -> None:
    landed, at_sea = redacted(tmp_path, CREW, CLOSE)

    assert [fast for fast in parts((landed, at_sea)) if isinstance(fast, Fast)] == []
    assert {net.fasts for net in landed.figures.gear.values()} == {None}


def test_money_rest_margins_and_earlier_trips_are_gone(tmp_path: Path) -> None:
    office = redacted(tmp_path / "office", OFFICE)
    crew = redacted(tmp_path / "crew", CREW)

    assert office[0].figures.money is not None
    assert office[0].figures.rest
    assert office[0].figures.hail["cod"].difference_kg is not None
    for trip in crew:
        assert trip.figures.money is None
        assert trip.log.settlement is None
        assert all(not landed.prices for landed in trip.log.landings)
        assert not trip.figures.rest
        assert (trip.log.rest, trip.log.all_hands, trip.log.watches) == ((), (), ())
        assert all(hail.difference_kg is None and hail.bias_percent is None for hail in trip.figures.hail.values())
        assert trip.figures.problems == ()
        assert trip.neighbours.past == Past()


def test_when_to_turn_is_the_wheelhouses(tmp_path: Path) -> None:
    logs = plant(tmp_path)
    (logs / "fishing.yaml").write_text(
        "vessel: Quillvessel\nsailed: 2026-04-01 05:30\nice loaded: 20 t\ntows:\n"
        "  - {shot: 18:10, hauled: 19:40, from: 58 40N 15 10W, to: 58 44N 15 10W, catch: {cod: 900 kg}}\n"
    )
    shown = named_from(read_folder(logs), logs)
    trips = reckon_trips(shown.trips, shown.fleet, shown.problems)
    (fishing,) = (trip for trip in trips if trip.figures.trip.state == "at sea")
    (crew,) = shown_in([fishing], policy_of(CREW, shown.fleet))

    for landing, told in ((fishing.figures.landing, True), (crew.figures.landing, False)):
        assert (landing.turn_for_home_by is not None) is told
        assert (landing.bound_by is not None) is told
        assert bool(landing.choices) is told
        assert any(sale.turn_for_home_by is not None for sale in landing.sales) is told
        assert landing.sales


def test_fish_that_was_kept_and_only_counted_is_everybodys_and_what_was_put_back_is_not_the_publics(
    tmp_path: Path,
) -> None:
    landed, _ = redacted(tmp_path, PUBLIC)

    assert set(landed.figures.catch) == {"cod", "haddock", "halibut"}
    assert landed.figures.catch["halibut"].kept_kg is None
    assert landed.figures.totals.put_back_kg is None
    assert [gap for gap in landed.figures.totals.incomplete if "put back" in gap] == []


def test_a_tow_that_cannot_be_read_is_told_of_without_its_line(tmp_path: Path) -> None:
    logs = plant(tmp_path)
    (logs / "lost.yaml").write_text(
        "vessel: Ternbank\nsailed: 2026-04-01 05:30\ntows:\n  - {shot: 18:10, hauled: 19:40, catch: {cod: 9 kg}}\n  - quillgarbled\n"
    )
    shown = named_from(read_folder(logs), logs)
    trips = reckon_trips(shown.trips, shown.fleet, shown.problems)
    lost = next(trip for trip in trips if trip.log.tows_lost)
    (crew,) = shown_in([lost], policy_of(CREW, shown.fleet))

    assert [gap for gap in lost.figures.totals.incomplete if gap.startswith("line 5: ")]
    assert "a tow that can't be read" in crew.figures.totals.incomplete
    assert not holding("quillgarbled", texts(crew))


def test_sums_of_the_fleet_have_nothing_that_its_trips_have_not(tmp_path: Path) -> None:
    logs = plant(tmp_path, CLOSE)
    shown = named_from(read_folder(logs), logs)
    trips = reckon_trips(shown.trips, shown.fleet, shown.problems)
    of_crew = shown_in(trips, policy_of(CREW, shown.fleet))
    ledger = ledger_of(of_crew, shown.fleet)
    sums = ledger.fleet()

    assert ledger.fasts() == ()
    assert list(sums.grounds) == ["Quillground"]
    assert {tow.rectangle for trip in of_crew for tow in trip.figures.tows} == {"46D4", None}
    assert all(group.gross is None for group in (*sums.vessels.values(), *sums.seasons.values()))
    assert all(ledger.vessel(name).bias == () for name in ledger.vessels)


@pytest.mark.parametrize("edition", [CREW, PUBLIC])
@pytest.mark.parametrize("editions", [DEFAULT, CLOSE, OPEN])
def test_what_a_trip_gives_to_the_pages_of_many_has_no_word_that_the_edition_does_not_show(
    tmp_path: Path, edition: str, editions: str
) -> None:
    logs = plant(tmp_path, editions)
    read = named_from(read_folder(logs), logs)
    trips = reckon_trips(read.trips, read.fleet, read.problems)
    policy = policy_of(edition, read.fleet)
    given = [kept(trip, read.fleet, policy) for trip in shown_in(trips, policy)]
    text = "\n".join(part.decode().casefold() for one in given for part in (packed(one.entry), *one.pieces.values()))

    assert "quillvessel" in text
    assert [word for word, who in WORDS.items() if edition not in who and holding(word, text)] == []


DAY = datetime(2026, 3, 10, 12, tzinfo=UTC)


@pytest.mark.parametrize(
    ("last_word", "held_back", "held"),
    [
        (DAY, timedelta(0), False),
        (DAY, timedelta(days=5), True),
        (DAY - timedelta(days=5) + timedelta(seconds=1), timedelta(days=5), True),
        (DAY - timedelta(days=5), timedelta(days=5), False),
        (DAY - timedelta(days=50), timedelta(days=5), False),
    ],
)
def test_a_trip_is_held_back_until_so_long_after_its_last_word(
    last_word: datetime, held_back: timedelta, held: object
) -> None:
    assert is_held(last_word, DAY, replace(policy_of(CREW, fleet()), held_back=held_back)) is held
