"""A fleet file to a fleet: what does not change from trip to trip."""

from collections import Counter
from collections.abc import Callable, Iterator
from datetime import date, timedelta
from typing import TypeVar

from msgspec.structs import replace

from logbook.model.fleet import Assumed, Constants, Edition, Fleet, Ground, Limits, Measure, Port, Route, Sale, Vessel
from logbook.model.language import LANGUAGES
from logbook.model.names import fold_name
from logbook.model.problem import Place, Problem, Severity
from logbook.model.quantity import Kilograms
from logbook.read.duration import parse_duration
from logbook.read.fields import (
    Fields,
    Found,
    error,
    mappings_of,
    open_mapping,
    pairs_of,
    take,
    take_choice,
    take_text,
    take_words,
    texts_of,
)
from logbook.read.hours import parse_weekdays
from logbook.read.keys import (
    ASSUMED,
    CONSTANTS,
    EDITION,
    EDITIONS,
    FLEET,
    GROUND,
    LIMITS,
    PORT,
    ROUTE,
    SALE,
    TEXT_KEYS,
    UNITS,
    VESSEL,
    Keys,
)
from logbook.read.measured import (
    parse_depth,
    parse_landing_rate,
    parse_latent_heat,
    parse_percent,
    parse_specific_heat,
    parse_speed,
    parse_temperature,
)
from logbook.read.moment import parse_clock, parse_day
from logbook.read.number import parse_number
from logbook.read.own_species import take_species
from logbook.read.said import Said
from logbook.read.species import program_species
from logbook.read.terms import Terms, take_position, take_positions, take_weight
from logbook.read.tree import Mapping, Node, read_tree
from logbook.read.vessel import take_vessels
from logbook.read.zone import parse_zone

CODES = frozenset({"name-twice", "waters-unreadable", "unit-unknown", "corners", "sale-days", "season-start"})

N = TypeVar("N", Vessel, Port, Ground)

_POSITIONS = ("exact", "rectangle", "ground")
_YES_NO = ("yes", "no")
_HEMISPHERES = (("N", "S"), ("E", "W"))


def read_fleet(data: bytes, file: str) -> tuple[Fleet, tuple[Problem, ...]]:
    """Return the fleet of a fleet file and everything that is wrong in it; what can't be read is as if not written.

    Args:
        data: The file's bytes.
        file: Its name, for messages.
    """
    root, problems = read_tree(data, file, TEXT_KEYS)
    found: Found = list(problems)
    fleet = _Reader(root, found).fleet(file) if root is not None else Fleet(file=file, species=program_species())
    if any(_of_editions(problem, data) for problem in problems if problem.severity is Severity.ERROR):
        fleet = replace(fleet, editions_unread=True)
    return fleet, tuple(sorted(set(found)))


def _of_editions(problem: Problem, data: bytes) -> bool:
    """Tell whether what could not be read at all may have been of editions: the word stands there, or above what belongs to it."""
    lines = data.replace(b"\0", b"").decode("utf-8", "replace").splitlines()[: problem.place.line]
    begins = next((n for n in range(len(lines) - 1, -1, -1) if lines[n][:1].strip(" #-")), 0)
    return "edition" in "\n".join(lines[begins:]).casefold()


class _Reader:
    """Reads one fleet file, its terms first."""

    def __init__(self, root: Mapping, found: Found) -> None:
        self.found = found
        self.fields = open_mapping(root, FLEET, found)
        self.units, self.us_gallons = self._units(self.fields.get("units"))
        waters = self._waters(self.fields.get("waters"))
        self.currency = take_words(self.fields.get("currency"), found)
        plain = Terms(units=self.units, waters=waters)
        self.measures = self._measures(self.fields.get("measures"), plain)
        self.terms = Terms(
            units=self.units,
            measures=self.measures,
            waters=waters,
            us_gallons=self.us_gallons,
            currency=self.currency,
        )
        self._check_units()

    def fleet(self, file: str) -> Fleet:
        """Return the fleet."""
        get, found = self.fields.get, self.found
        zone = take(get("zone"), parse_zone, found, "a zone")
        usual = Fleet()
        editions, unread = self._read_editions(get("editions"))
        return Fleet(
            file=file,
            name=take_words(get("fleet"), found),
            zone=zone.name if zone else usual.zone,
            currency=self.currency,
            home_port=take_words(get("home port"), found),
            waters=self.terms.waters,
            us_gallons=self.us_gallons,
            units=tuple(self.units.items()),
            limits=self._limits(usual.limits),
            constants=self._constants(usual.constants),
            assumed=self._assumed(usual.assumed),
            measures=self.measures,
            vessels=self._once(take_vessels(get("vessels"), self.terms, found), "vessels", VESSEL),
            ports=self._once(tuple(self._ports(get("ports"))), "ports", PORT),
            routes=tuple(self._routes(get("routes"))),
            grounds=self._once(tuple(self._grounds(get("grounds"))), "grounds", GROUND),
            species=take_species(get("species"), program_species(), found),
            editions=editions,
            editions_unread=unread,
            season_start=self._season_start(get("season starts")) or usual.season_start,
            language=self._language(get("language")) or usual.language,
        )

    def _opened(self, node: Node | None, keys: Keys) -> Fields | None:
        """Return a mapping opened by its keys; None where it is not there or no mapping."""
        if isinstance(node, Mapping):
            return open_mapping(node, keys, self.found)
        pairs_of(node, self.found, keys.what)
        return None

    def _once(self, named: tuple[N, ...], what: str, keys: Keys) -> tuple[N, ...]:
        """Return things with names, each name once; a second is reported and left out."""
        kept: dict[str, N] = {}
        times: Counter[str] = Counter()
        for thing in named:
            name = fold_name(thing.name)
            if name in kept:
                places = self._places(what, keys, name)
                message = f"'{thing.name}' stands twice among the {what}, first on line {places[0].line}"
                place = places[times[name]]
                error(self.found, place, "name-twice", f"{message}; this one is not used", "keep one of them")
            kept.setdefault(name, thing)
            times[name] += 1
        return tuple(kept.values())

    def _places(self, what: str, keys: Keys, name: str) -> list[Place]:
        """Return where each thing of a name has it, among things with names."""
        items = mappings_of(self.fields.get(what), [], what)
        nodes = [open_mapping(item, keys, []).get("name") for item in items]
        return [node.place for node in nodes if node is not None and fold_name(take_words(node, []) or "") == name]

    def _units(self, node: Node | None) -> tuple[dict[str, str], bool]:
        """Return the units meant where none is typed, and whether a gallon is the US one."""
        fields = self._opened(node, UNITS)
        if fields is None:
            return {}, False
        gallon = take_choice(fields.get("gallon"), ("imperial", "US"), self.found)
        units = {
            name: text
            for name in fields.nodes
            if name != "gallon" and (text := take_text(fields.get(name), self.found))
        }
        return units, gallon == "US"

    def _check_units(self) -> None:
        """Report units that nobody knows and leave them out."""
        fields = self.fields.get("units")
        if not isinstance(fields, Mapping):
            return
        opened = open_mapping(fields, UNITS, [])
        tries: dict[str, Callable[[str], Said[object]]] = {
            "depth": lambda text: parse_depth(text, None),
            "length": lambda text: parse_depth(text, None),
            "catch": lambda text: self.terms.amount(text, None),
            "weight": self.terms.weight,
            "temperature": lambda text: parse_temperature(text, None),
            "speed": lambda text: parse_speed(text, None),
            "fuel": self.terms.fuel,
        }
        for name, unit in tuple(self.units.items()):
            node = opened.get(name)
            if node is not None and tries[name](f"1 {unit}").value is None:
                hint = f"write a unit such as {next(key.example for key in UNITS.keys if key.name == name)}"
                error(self.found, node.place, "unit-unknown", f"'{unit}' is no unit of {name}", hint)
                del self.units[name]

    def _waters(self, node: Node | None) -> tuple[str, str] | None:
        """Return the letters of the hemispheres, latitude first."""
        letters = (
            " ".join(text.value for text in texts_of(node, self.found, "waters")).upper().replace(",", " ").split()
        )
        if not letters or node is None:
            return None
        if len(letters) == 2 and all(letter in pair for letter, pair in zip(letters, _HEMISPHERES, strict=True)):  # noqa: PLR2004
            return letters[0], letters[1]
        error(
            self.found,
            node.place,
            "waters-unreadable",
            f"'{' '.join(letters)}' are no waters",
            "write N W, the latitude's letter first",
        )
        return None

    def _measures(self, node: Node | None, plain: Terms) -> tuple[Measure, ...]:
        """Return the fleet's own measures: one weight, or a default and weights by species."""
        measures: list[Measure] = []
        for key, value in pairs_of(node, self.found, "measures"):
            name = key.value.strip()
            if not isinstance(value, Mapping):
                weight = take_weight(value, plain, self.found)
                if weight is not None:
                    measures.append(Measure(name=name, default=weight))
                continue
            by_species: list[tuple[str, Kilograms]] = []
            default = None
            for species, node_of in value.entries:
                weight = take_weight(node_of, plain, self.found)
                if weight is not None and fold_name(species.value) == "default":
                    default = weight
                elif weight is not None:
                    by_species.append((fold_name(species.value), weight))
            measures.append(Measure(name=name, default=default, by_species=tuple(by_species)))
        return tuple(measures)

    def _limits(self, usual: Limits) -> Limits:
        fields = self._opened(self.fields.get("limits"), LIMITS)
        if fields is None:
            return usual
        days = take(fields.get("ice days"), parse_number, self.found, "a number of days")
        warmest = take(fields.get("landing temperature"), self.terms.temperature, self.found, "a temperature")
        tolerance = take(fields.get("hail tolerance"), parse_percent, self.found, "a percentage")
        return Limits(
            ice_days=usual.ice_days if days is None else float(days),
            landing_temperature=usual.landing_temperature if warmest is None else warmest,
            hail_tolerance=usual.hail_tolerance if tolerance is None else tolerance,
        )

    def _constants(self, usual: Constants) -> Constants:
        fields = self._opened(self.fields.get("constants"), CONSTANTS)
        if fields is None:
            return usual
        specific = take(fields.get("specific heat"), parse_specific_heat, self.found, "a specific heat")
        latent = take(fields.get("latent heat"), parse_latent_heat, self.found, "a latent heat")
        return Constants(specific_heat=specific or usual.specific_heat, latent_heat=latent or usual.latent_heat)

    def _assumed(self, usual: Assumed) -> Assumed:
        fields = self._opened(self.fields.get("assumed"), ASSUMED)
        if fields is None:
            return usual
        ratio = take(fields.get("fish to ice"), parse_number, self.found, "a number")
        pen = take(fields.get("pen temperature"), self.terms.temperature, self.found, "a temperature")
        hours = take_text(fields.get("hours to stow"), self.found)
        if hours is not None and hours.replace(".", "", 1).isdecimal():
            to_stow = take(fields.get("hours to stow"), lambda text: parse_duration(f"{text} h"), self.found)
        else:
            to_stow = take(fields.get("hours to stow"), parse_duration, self.found, "a number of hours")
        return Assumed(
            fish_to_ice=float(ratio) if ratio else usual.fish_to_ice,
            pen_temperature=usual.pen_temperature if pen is None else pen,
            to_stow=usual.to_stow if to_stow is None else to_stow,
        )

    def _ports(self, node: Node | None) -> Iterator[Port]:
        for item in mappings_of(node, self.found, "the ports"):
            fields = open_mapping(item, PORT, self.found)
            name = take_words(fields.get("name"), self.found)
            if name is not None:
                yield Port(
                    name=name,
                    at=take_position(fields.get("at"), self.terms, self.found),
                    landing_rate_kg_per_h=take(fields.get("landing rate"), parse_landing_rate, self.found, "a rate"),
                    sale=self._sale(fields.get("sale")),
                )

    def _sale(self, node: Node | None) -> Sale | None:
        fields = self._opened(node, SALE)
        if fields is None:
            return None
        texts = texts_of(fields.get("days"), self.found, "days of sale")
        days = tuple(day for text in texts for day in take(text, parse_weekdays, self.found, "weekdays") or ())
        clock = take(fields.get("time"), parse_clock, self.found, "a clock time")
        if not days or clock is None:
            return None
        before = take(fields.get("all ashore before"), parse_duration, self.found, "a length of time")
        return Sale(
            days=tuple(sorted(set(days))),
            time=clock,
            all_ashore_before=before if before is not None else timedelta(0),
            none_on=tuple(self._days(fields.get("none on"))),
        )

    def _days(self, node: Node | None) -> Iterator[date]:
        for text in texts_of(node, self.found, "days"):
            line = take(text, parse_day, self.found, "a day")
            if line is not None and line.year is not None:
                yield date(line.year, line.month, line.day)
            elif line is not None:
                error(self.found, text.place, "sale-days", f"'{text.value}' has no year", "write it as 2026-04-03")

    def _routes(self, node: Node | None) -> Iterator[Route]:
        for item in mappings_of(node, self.found, "the routes"):
            fields = open_mapping(item, ROUTE, self.found)
            to = take_words(fields.get("to"), self.found)
            if to is not None:
                yield Route(to=to, via=take_positions(fields.get("via"), self.terms, self.found))

    def _grounds(self, node: Node | None) -> Iterator[Ground]:
        for item in mappings_of(node, self.found, "the grounds"):
            fields = open_mapping(item, GROUND, self.found)
            name = take_words(fields.get("name"), self.found)
            corners = take_positions(fields.get("within"), self.terms, self.found)
            if len(corners) == 1:
                error(
                    self.found,
                    item.place,
                    "corners",
                    f"the ground '{name}' has one corner",
                    "give two corners of a box, or an outline",
                )
                corners = ()
            if name is not None:
                yield Ground(name=name, corners=corners)

    def _read_editions(self, node: Node | None) -> tuple[tuple[Edition, ...], bool]:
        """Return what is said of editions, and whether some of it can't be read."""
        known = len(self.found)
        made = tuple(self._editions(node))
        return made, any(problem.severity is Severity.ERROR for problem in self.found[known:])

    def _editions(self, node: Node | None) -> Iterator[Edition]:
        fields = self._opened(node, EDITIONS)
        for name, value in fields.nodes.items() if fields is not None else ():
            opened = self._opened(value, EDITION)
            if opened is None:
                continue
            fasts = take_choice(opened.get("fasts"), _YES_NO, self.found)
            yield Edition(
                name=name,
                positions=take_choice(opened.get("positions"), _POSITIONS, self.found),
                fasts=fasts == "yes" if fasts else None,
                after=take(opened.get("after"), parse_duration, self.found, "a length of time"),
            )

    def _language(self, node: Node | None) -> str | None:
        said = take_choice(node, tuple(word for tag, more in LANGUAGES.items() for word in (tag, *more)), self.found)
        return next((tag for tag, more in LANGUAGES.items() if said == tag or said in more), None)

    def _season_start(self, node: Node | None) -> tuple[int, int] | None:
        line = take(node, parse_day, self.found, "a day of the year")
        if line is None or node is None:
            return None
        if (line.month, line.day) == (2, 29):
            error(self.found, node.place, "season-start", "a season can't begin on 29 February", "write 1 March")
            return None
        return line.month, line.day
