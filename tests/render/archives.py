"""Archives and what their pages show, made of logs as people type them."""

from logbook.model.figures import Reckoned
from logbook.model.fleet import Fleet
from logbook.model.fleet_figures import FleetFigures
from logbook.model.named import ByName
from logbook.model.page import AtOnce, content_of
from logbook.model.places import Places
from logbook.model.problem import Problem
from logbook.reckon.fleet import reckon_fleet
from logbook.reckon.of_ground import reckon_grounds
from logbook.reckon.of_species import reckon_species
from logbook.redact.policy import policy_of
from logbook.redact.trip import redact_trips
from logbook.render.frame import Site
from logbook.render.pages import render_archive
from logbook.render.static import script_files
from tests.read.logs import FLEET, fleet
from tests.reckon.build import reckoned

SALE = "    sale: {days: Mon-Fri, time: 07:00}\n"
BOATS = "".join(f"  - {{name: {name}, steaming speed: 9 kn}}\n" for name in ("Auk", "Fulmar", "Petrel"))
MARKETS = (
    FLEET.replace("ports:", f"{BOATS}ports:")
    .replace("at: 59 40.0N 012 10.0W\n", f"at: 59 40.0N 012 10.0W\n{SALE}")
    .replace("grounds:", f"  - name: Sulvik\n    at: 60 05.0N 012 25.0W\n{SALE}grounds:")
)
"""The fleet with markets at two ports, and vessels whose speed is known."""


def shown(
    *texts: str, of: Fleet | None = None, edition: str = "office"
) -> tuple[Site, tuple[Reckoned, ...], FleetFigures, Places]:
    """Return what an edition shows of some logs, and the sums over it."""
    of = of or fleet()
    policy = policy_of(edition, of)
    trips = redact_trips(reckoned(*texts, of=of), policy)
    figures = reckon_fleet(trips, of)
    places = Places(species=reckon_species(trips, figures), grounds=reckon_grounds(trips, figures))
    site = Site(
        name=of.name or "The fleet",
        style="style.css",
        policy=policy,
        troubles=0,
        trips=frozenset(trip.figures.trip.id for trip in trips),
        species=frozenset(one.name for one in places.species),
        scripts=ByName((name, page.path) for name, page in script_files()),
    )
    return site, trips, figures, places


def archive_of(
    *texts: str, of: Fleet | None = None, edition: str = "office", problems: tuple[Problem, ...] = ()
) -> dict[str, bytes]:
    """Return every file of the archive of some logs, by its path; each path is there once."""
    of = of or fleet()
    site, trips, figures, places = shown(*texts, of=of, edition=edition)
    pages = list(render_archive(of, trips, figures, problems, site.policy, places, AtOnce()))
    assert len({page.path for page in pages}) == len(pages)
    return {page.path: content_of(page) for page in pages}
