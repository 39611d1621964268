"""What the page "find" looks through: every trip and tow of a season in few bytes, as a script that a page can load.

Names and words stand once in tables, trips and tows point at them by number. Nothing is here that the records of the edition don't hold.

A season is `{season, vessels, skippers, ports, grounds, species, texts, trips}`:

- a vessel is its name and registration, a species its name and code, all else a text;
- a trip is `[id, vessel, number, skipper, port, began, ended, state, kept_kg, kg_per_h, chief species, texts, tows]`;
- a tow is `[day, ground, minutes, catch, texts, number]`: days after the day that the trip began, the minutes that its catch took (0 where
  catch or time is not known), species and kilograms in turn; without its last parts where they say nothing new. Its place on the page is
  its place in the list.
"""

import hashlib
import json
from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from decimal import Decimal
from typing import Any

from logbook.model.figures import Reckoned, SpeciesCatch, TowFigures
from logbook.model.page import Page
from logbook.model.trip import Tow, Trip
from logbook.render.gather import begun, kept_species, logged_tows
from logbook.render.language import _, _c
from logbook.render.notes import note

NOBODY = -1
"""Stands for what is not told."""

NOT_WEIGHED = -1
"""Stands for the weight of fish that was kept and not weighed."""

NOT_KEPT = -2
"""Stands for the weight of fish that was put back, or is undersize."""

_DIGITS = 8
_ESCAPES = str.maketrans({"<": "\\u003c", ">": "\\u003e", "&": "\\u0026", "'": "\\u0027"})
"""What would end a script in a page, or open a comment; other signs beyond ASCII are escaped by JSON."""

Row = list[Any]


class Table:
    """Names in the order they are met, each once, and their numbers."""

    def __init__(self) -> None:
        """Begin with no name."""
        self._numbers: dict[Any, int] = {}

    def number(self, name: str | tuple[str, str] | None) -> int:
        """Return the number of a name; of what is not told, -1."""
        return NOBODY if not name else self._numbers.setdefault(name, len(self._numbers))

    def names(self) -> Row:
        """Return the names by their numbers."""
        return list(self._numbers)


class _Season:
    """A season's tables, and the trips that point at them."""

    def __init__(self, name: str) -> None:
        self.name = name
        self.tables = {name: Table() for name in ("vessels", "skippers", "ports", "grounds", "species", "texts")}
        self.trips: list[Row] = []

    def add(self, reckoned: Reckoned) -> None:
        log, head, totals = reckoned.log, reckoned.figures.trip, reckoned.figures.totals
        number = {name: table.number for name, table in self.tables.items()}
        codes = {name: total.code or "" for name, total in reckoned.figures.catch.items()}
        began = log.begins.date()
        rows = [self._tow(tow, figures, began, codes) for tow, figures in logged_tows(reckoned)]
        for order, row in enumerate(rows, 1):
            _shorten(row, order)
        self.trips.append(
            [
                head.id,
                number["vessels"]((head.vessel, log.vessel.registration or "")),
                head.number or "",
                number["skippers"](head.skipper),
                number["ports"](head.port),
                began.isoformat(),
                (head.docked or head.as_of).date().isoformat(),
                head.state,
                _figure(totals.kept_kg, NOT_WEIGHED),
                _figure(totals.kept_kg_per_h, NOBODY),
                [number["species"]((name, codes[name])) for name in kept_species(reckoned.figures.catch)[:2]],
                [number["texts"](text) for text in trip_texts(log)],
                rows,
            ]
        )

    def _tow(self, tow: Tow, figures: TowFigures, began: date, codes: Mapping[str, str]) -> Row:
        when = figures.shot or figures.hauled
        caught: Row = []
        for name, one in figures.catch.items():
            caught += [self.tables["species"].number((name, codes.get(name, ""))), _weight(one)]
        return [
            NOBODY if when is None else max((when.date() - began).days, NOBODY),
            self.tables["grounds"].number(figures.ground),
            round(figures.catch_h * 60) if figures.catch_h and figures.kept_kg is not None else 0,
            caught,
            [self.tables["texts"].number(text) for text in tow_texts(tow, foul=figures.foul)],
            figures.no,
        ]


def season_of(reckoned: Reckoned) -> str:
    """Return the season a trip belongs to: the year it docked in, else that of its last word."""
    head = reckoned.figures.trip
    return f"{(head.docked or head.last_word).year:04d}"


def by_season(trips: Iterable[Reckoned]) -> tuple[tuple[str, tuple[Reckoned, ...]], ...]:
    """Return the trips of every season, the latest season and the latest trip first."""
    grouped: dict[str, list[Reckoned]] = {}
    for trip in sorted(trips, key=begun, reverse=True):
        grouped.setdefault(season_of(trip), []).append(trip)
    return tuple((name, tuple(grouped[name])) for name in sorted(grouped, reverse=True))


def season_file(name: str, trips: Sequence[Reckoned]) -> Page:
    """Return a season as a script, named for what is in it."""
    season = _Season(name)
    for trip in trips:
        season.add(trip)
    told = {"season": name, **{key: table.names() for key, table in season.tables.items()}, "trips": season.trips}
    text = json.dumps(told, ensure_ascii=True, separators=(",", ":")).translate(_ESCAPES)
    content = f"(window.logbookSeasons=window.logbookSeasons||[]).push({text});\n".encode("ascii")
    return Page(path=f"find/{name}.{hashlib.sha256(content).hexdigest()[:_DIGITS]}.js", content=content)


def trip_texts(log: Trip) -> tuple[str, ...]:
    """Return what was said of a trip beside its tows, each once."""
    said = [_plain(log.remarks)]
    said += [_within(_("time lost: {words}"), period.words) for period in log.time_lost]
    said += [_within(_("{gear} {event}: {words}"), one.remarks, gear=one.name, event=_(one.event)) for one in log.gear]
    said += [_plain(reading.remarks) for reading in log.readings]
    said += [_plain(look.remarks) for look in log.weather]
    said += [_plain(fix.remarks) for fix in log.passage]
    return tuple(dict.fromkeys(text for text in said if text))


def tow_texts(tow: Tow, *, foul: bool) -> tuple[str, ...]:
    """Return what was said of a tow, each once; what tells of trouble begins with what it is, in the language in force."""
    said = [
        _plain(tow.remarks),
        _within(_("damage: {words}"), tow.damage),
        _within(_("gear lost: {words}"), tow.gear_lost),
    ]
    if tow.fast is not None:
        said.append(_within(_("fast: {words}"), tow.fast.what) or _c("gear that came fast", "fast"))
    if foul:
        said.append(_("foul tow"))
    said.append(_within(_("bottom: {words}"), tow.bottom))
    return tuple(dict.fromkeys(text for text in said if text))


def _within(phrase: str, text: str | None, **values: str) -> str:
    """Return a remark within the phrase that says what it is of; nothing where there is none."""
    plain = _plain(text or "")
    return phrase.format(words=plain, **values) if plain else ""


def _plain(text: str) -> str:
    """Return a remark as text on one line, without the signs of Markdown."""
    return note(text).striptags()


def _weight(one: SpeciesCatch) -> float | int:
    if one.kept_kg is not None:
        return _figure(one.kept_kg, NOT_WEIGHED)
    return NOT_WEIGHED if one.kept else NOT_KEPT


def _figure(value: Decimal | float | None, missing: int) -> float | int:
    """Return a figure for the script, which rounds it once more to show it."""
    if value is None:
        return missing
    exact = round(float(value), 2)
    return int(exact) if exact.is_integer() else exact


def _shorten(row: Row, order: int) -> None:
    """Take the last parts off a tow that say nothing new: its number where that is its place, no texts."""
    if row[-1] == order:
        row.pop()
        if not row[-1]:
            row.pop()
