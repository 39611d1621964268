"""A vessel's page: her trips, the latest of very many, and where the others are found."""

import re
from collections.abc import Sequence
from datetime import UTC, datetime, timedelta

import pytest
from msgspec.structs import replace

from logbook.model.edition import OFFICE
from logbook.model.figures import Reckoned
from logbook.redact.policy import policy_of
from logbook.render.time_pages import render_season, season_context
from logbook.render.vessel import VesselPage, render_vessel, vessel_context
from tests.render import example
from tests.render.archives import site_and_ledger

FIRST = datetime(2019, 1, 2, 5, 30, tzinfo=UTC)
APART = timedelta(days=10)
MOST = 200


def trips(count: int, landed: int | None = None) -> tuple[Reckoned, ...]:
    """Return trips ten days apart, those up to a number landed and later ones not logged to be."""
    made = example.trip(tows=1)
    return tuple(sailing(made, n, landed=landed is None or n < landed) for n in range(count))


def sailing(made: Reckoned, n: int, *, landed: bool) -> Reckoned:
    """Return a trip as it would be had it sailed ten days later for each that went before."""
    sailed = FIRST + APART * n
    docked = sailed + timedelta(days=5) if landed else None
    state = "landed" if landed else "landing not logged"
    head = replace(
        made.figures.trip, id=f"solan-bright-{sailed:%Y-%m-%d}", number=str(n + 1), sailed=sailed, docked=docked, state=state,
        last_word=docked or sailed,
    )  # fmt: skip
    log = replace(
        made.log,
        number=str(n + 1),
        file=f"{n}.yaml",
        begins=sailed,
        sailed=sailed,
        landings=made.log.landings if landed else (),
    )
    return replace(made, log=log, figures=replace(made.figures, trip=head))


def page(of: tuple[Reckoned, ...]) -> VesselPage:
    site, ledger = site_and_ledger(example.fleet(), of, policy_of(OFFICE, example.fleet()))
    return vessel_context(site, ledger, "Solan Bright", ledger.fleet().vessels["Solan Bright"])


def numbers(of: VesselPage) -> list[int]:
    return [int(line.trip.figures.trip.number or 0) for line in of.trips]


def test_all_trips_stand_on_it_the_latest_first_where_they_are_no_more_than_there_is_room_for() -> None:
    made = page(trips(MOST))
    html = render_vessel(made)

    assert numbers(made) == list(range(MOST, 0, -1))
    assert made.earlier == ()
    assert ">All trips</caption>" in html
    assert "Earlier trips" not in html


def test_of_very_many_trips_the_latest_stand_on_it_and_the_seasons_of_the_others() -> None:
    # Ten days apart from 2 January 2019, docked on the fifth day: the 60th sailed on 14 August 2020.
    every = trips(MOST + 60)
    made = page(every)
    html = render_vessel(made)

    assert numbers(made) == list(range(MOST + 60, 60, -1))
    assert every[59].figures.trip.docked == datetime(2020, 8, 19, 5, 30, tzinfo=UTC)
    assert made.earlier == ("2020", "2019")
    assert made.all_trips == MOST + 60
    assert '<a href="../seasons/2020.html">2020</a>, <a href="../seasons/2019.html">2019</a>' in html
    assert ">The latest trips</caption>" in html
    assert html.count('href="../trips/') >= MOST


def test_sums_and_best_trips_are_of_all_of_them_also_those_not_in_the_list() -> None:
    every = list(trips(MOST + 3))
    totals = replace(every[0].figures.totals, kept_kg_per_day=99999.0)
    every[0] = replace(every[0], figures=replace(every[0].figures, totals=totals))
    made = page(tuple(every))

    assert made.figures is not None
    assert (made.figures.trips, made.figures.tows) == (MOST + 3, MOST + 3)
    assert made.best[0].trip.figures.trip.number == "1"
    assert made.usual[0].trips == MOST + 3
    assert numbers(made)[-1] == 4


@pytest.mark.parametrize(("landed", "seasons"), [(0, ()), (1, ("2019",))])
def test_earlier_trips_whose_landing_is_not_logged_have_no_season_and_the_list_is_not_called_all_of_them(
    landed: int, seasons: tuple[str, ...]
) -> None:
    made = page(trips(MOST + 2, landed))
    html = render_vessel(made)

    assert made.earlier == seasons
    assert ">The latest trips</caption>" in html
    assert ("Earlier trips, by the season they docked in:" in html) is bool(seasons)


def test_every_trip_of_very_many_is_on_the_page_or_on_that_of_one_of_the_seasons_it_leads_to() -> None:
    every = trips(MOST + 60)
    site, ledger = site_and_ledger(example.fleet(), every, policy_of(OFFICE, example.fleet()))
    seasons = ledger.fleet().seasons
    made = vessel_context(site, ledger, "Solan Bright", ledger.fleet().vessels["Solan Bright"])
    shown = [
        render_vessel(made),
        *(render_season(season_context(site, ledger, seasons[name])) for name in made.earlier),
    ]

    assert linked(shown) == {trip.figures.trip.id for trip in every}
    assert linked(shown[:1]) != linked(shown)


def linked(pages: Sequence[str]) -> set[str]:
    return {trip for page in pages for trip in re.findall(r'href="\.\./trips/([a-z0-9-]+)\.html"', page)}
