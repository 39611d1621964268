"""The frame that every page stands in: title, way back, navigation, style sheet and links from where it lies."""

from msgspec import Struct

from logbook.model.edition import Policy
from logbook.model.named import ByName
from logbook.render.files.paths import trip_file
from logbook.render.formulas import ENTRIES, Entry
from logbook.render.language import _
from logbook.render.links import (
    BOARD,
    FIND,
    FRONT,
    GEAR,
    PROBLEM_CODES,
    PROBLEMS,
    RECKONING,
    ground_page,
    relative,
    season_page,
    species_page,
    trip_page,
    vessel_page,
    week_page,
)


class Crumb(Struct, frozen=True, kw_only=True):
    """A step of the way back to the front page."""

    name: str
    path: str


class Site(Struct, frozen=True, kw_only=True):
    """What all pages of an archive share.

    Attributes:
        name: The fleet's name.
        style: Path of the style sheet.
        policy: What this edition shows.
        species: Names of the species that have one.
        scripts: Names that templates know scripts by to their paths.
    """

    name: str
    style: str
    policy: Policy
    species: frozenset[str] = frozenset()
    scripts: ByName[str]


class Frame(Struct, frozen=True, kw_only=True):
    """A page's place in the archive.

    Attributes:
        site: What all pages share.
        path: Where the page goes.
        title: What it is called.
        crumbs: The way back to the front page.
    """

    site: Site
    path: str
    title: str
    crumbs: tuple[Crumb, ...] = ()

    @property
    def full_title(self) -> str:
        """Return the title with the fleet's name after it."""
        return self.site.name if self.title == self.site.name else f"{self.title} – {self.site.name}"

    @property
    def navigation(self) -> tuple[tuple[str, str, bool], ...]:
        """Return name, link and whether it is this page of the main ways in."""
        named = [
            (_("The fleet"), FRONT),
            (_("Find"), FIND),
            (_("Board"), BOARD),
            *([(_("Gear and fasts"), GEAR)] if self.site.policy.gear else []),
            (_("How it is reckoned"), RECKONING),
        ]
        if self.site.policy.problems:
            named.append((_("Log problems"), PROBLEMS))
        return tuple((name, self.to(path), path == self.path) for name, path in named)

    def to(self, path: str, fragment: str = "") -> str:
        """Return the link from here to a file of the archive."""
        return relative(self.path, path, fragment)

    def script(self, name: str) -> str:
        """Return the link to one of our scripts."""
        return self.to(self.site.scripts[name])

    def vessel(self, name: str) -> str:
        """Return the link to a vessel's page."""
        return self.to(vessel_page(name))

    def trip(self, trip_id: str) -> str:
        """Return the link to a trip's page."""
        return self.to(trip_page(trip_id))

    def trip_json(self, trip_id: str) -> str:
        """Return the link to a trip's figures for other programs."""
        return self.to(trip_file(trip_id))

    def species(self, name: str) -> str:
        """Return the link to a species' page."""
        return self.to(species_page(name))

    def ground(self, name: str) -> str:
        """Return the link to a ground's page."""
        return self.to(ground_page(name))

    def season(self, name: str) -> str:
        """Return the link to a season's page."""
        return self.to(season_page(name))

    def week(self, name: str) -> str:
        """Return the link to a week's page."""
        return self.to(week_page(name))

    def tow(self, trip_id: str, order: int) -> str:
        """Return the link to a tow on a trip's page, by its place among the tows from 1."""
        return self.to(trip_page(trip_id), f"tow-{order}")

    def how(self, entry: str) -> str:
        """Return the link to how a figure is reckoned."""
        return self.to(RECKONING, ENTRIES[entry].id)

    def code(self, code: str) -> str:
        """Return the link to what a problem's code means."""
        return self.to(PROBLEM_CODES, code)

    def codes(self) -> str:
        """Return the link to what all codes mean."""
        return self.to(PROBLEM_CODES)

    def entry(self, entry: str) -> Entry:
        """Return what is said of a figure: its name, its unit and whether it is logged or reckoned."""
        return ENTRIES[entry]
