"""No page of many trips is left standing that would be made otherwise now, whatever has changed in a trip."""

from collections.abc import Iterable
from decimal import Decimal
from pathlib import Path
from random import Random

from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from logbook.model.edition import OFFICE
from logbook.model.figures import Reckoned
from logbook.model.page import AtOnce, File, Maker, Page, content_of
from logbook.redact.policy import policy_of
from logbook.render.pages import render_archive
from logbook.store.made import Made
from logbook.store.store import Store
from tests.reckon.trips import some_trips
from tests.render import example
from tests.render.archives import site_and_ledger

KG = Decimal
FLEET = example.fleet()
SITE = Path("site")


def made(trips: tuple[Reckoned, ...], maker: Maker) -> Iterable[File]:
    site, ledger = site_and_ledger(FLEET, trips, policy_of(OFFICE, FLEET))
    return render_archive(FLEET, ledger, (), site, maker)


def at_once(trips: tuple[Reckoned, ...]) -> dict[str, bytes]:
    return {file.path: content_of(file) for file in made(trips, AtOnce())}


def check_after(before: tuple[Reckoned, ...], after: tuple[Reckoned, ...]) -> None:
    """See that files made of some trips, where others were made before, are those made of them at once."""
    store = Store(None)
    first = {file.path: content_of(file) for file in made(before, Made(store, SITE, "en"))}
    then = {
        file.path: file.content if isinstance(file, Page) else first[file.path]
        for file in made(after, Made(store, SITE, "en"))
    }
    fresh = at_once(after)

    assert then.keys() == fresh.keys()
    assert [path for path in fresh if then[path] != fresh[path]] == []


def changed(chance: Random, trip: Reckoned, other: Reckoned) -> Reckoned:
    """Return a trip with one thing in it as it is in another, which may be the same."""
    figures, tows = trip.figures, trip.figures.tows
    kind = chance.randrange(4)
    if kind == 0 and tows and other.figures.tows:
        n, names = chance.randrange(len(tows)), tows[0].__struct_fields__
        name = chance.choice(names)
        tow = replace(tows[n], **{name: getattr(chance.choice(other.figures.tows), name)})
        return replace(trip, figures=replace(figures, tows=(*tows[:n], tow, *tows[n + 1 :])))
    if kind == 1 and len(tows) > 1:
        one, two = chance.sample(range(len(tows)), 2)
        swapped = [tows[{one: two, two: one}.get(n, n)] for n in range(len(tows))]
        return replace(trip, figures=replace(figures, tows=tuple(swapped)))
    if kind == 2:
        name = chance.choice([one for one in figures.trip.__struct_fields__ if one not in ("id", "vessel")])
        head = replace(figures.trip, **{name: getattr(other.figures.trip, name)})
        return replace(trip, figures=replace(figures, trip=head))
    name = chance.choice([one for one in figures.__struct_fields__ if one not in ("trip", "tows")])
    return replace(trip, figures=replace(figures, **{name: getattr(other.figures, name)}))


@given(st.integers(0, 2**32 - 1).map(Random), some_trips(most=3).filter(lambda trips: len(trips) > 1))
@settings(max_examples=8)
def test_whatever_has_changed_in_one_trip_the_archive_is_as_if_made_anew(
    chance: Random, trips: tuple[Reckoned, ...]
) -> None:
    place = chance.randrange(1, len(trips))
    new = changed(chance, trips[place], trips[0])

    check_after(trips, (*trips[:place], new, *trips[place + 1 :]))


@given(some_trips(most=3), some_trips(most=3))
@settings(max_examples=3)
def test_other_trips_in_the_same_place_are_an_archive_of_their_own(
    before: tuple[Reckoned, ...], after: tuple[Reckoned, ...]
) -> None:
    check_after(before, after)


def test_a_tow_that_moves_no_sum_is_told_anew_on_the_board() -> None:
    # A slow but heavy one is none of the best of its ground or of a species, and yet the best haul of the week.
    trip = example.trip(tows=30, state="at sea")
    tows = [
        replace(tow, ground="Gannet Edge", kept_kg=KG(100), duration_h=0.5, catch_h=0.5) for tow in trip.figures.tows
    ]
    tows[4] = replace(tows[4], kept_kg=KG(500), duration_h=50.0, catch_h=50.0)
    before = replace(trip, figures=replace(trip.figures, tows=tuple(tows)))
    tows[4] = replace(tows[4], no=77)
    after = replace(trip, figures=replace(trip.figures, tows=tuple(tows)))

    assert b"tow 77" in at_once((after,))["board.html"]
    check_after((before,), (after,))


def test_nothing_changed_is_all_left_standing() -> None:
    _, trips, _, _ = example.whole_fleet()
    store = Store(None)
    for _ in made(trips, Made(store, SITE, "en")):
        pass

    left = {file.path for file in made(trips, Made(store, SITE, "en")) if isinstance(file, Page)}
    assert not [
        path for path in left if path.startswith(("vessels/", "species/", "grounds/", "seasons/", "weeks/", "charts/"))
    ]
    assert not left & {"index.html", "board.html", "find.html", "gear.html", "problems.html"}
