"""What the page "find" looks through: every trip and tow of a year in few bytes, as a script that a page can load.

Each trip is made by itself, with the names and words that it uses once in tables of its own, at which its tows point by number. A year is
`{season, trips}`, its trips one behind the other. Nothing is here that the records of the edition don't hold.

- a trip is `[id, vessel, registration, number, skipper, port, began, ended, kept_kg, kg_per_h, species, grounds, texts, own, tows]`: species
  with their codes in turn, and of the texts so many of the trip itself;
- a tow is `[day, ground, minutes, species, kilograms, species, kilograms …, [texts], number]`: days after the day that the trip began, the
  minutes that its catch took (0 where catch or time is not known), what it caught; without its last parts where they say nothing new. Its
  place on the page is its place in the list.
"""

import json
from collections.abc import Iterable
from datetime import date
from decimal import Decimal
from typing import Any

import msgspec
from msgspec import Struct

from logbook.model.figures import Reckoned, SpeciesCatch, TowFigures
from logbook.model.page import Page
from logbook.model.trip import Tow, Trip
from logbook.render.gather import logged_tows
from logbook.render.language import _, _c
from logbook.render.notes import note

NOBODY = -1
"""Stands for what is not told."""

NOT_WEIGHED = -1
"""Stands for the weight of fish that was kept and not weighed."""

NOT_KEPT = -2
"""Stands for the weight of fish that was put back, or is undersize."""

_ESCAPES = str.maketrans({"<": "\\u003c", ">": "\\u003e", "&": "\\u0026", "'": "\\u0027"})
"""What would end a script in a page, or open a comment; other signs beyond ASCII are escaped by JSON."""

Row = list[Any]


class Table:
    """Names in the order they are met, each once, and their numbers."""

    def __init__(self) -> None:
        """Begin with no name."""
        self._numbers: dict[str, int] = {}

    def number(self, name: str | None) -> int:
        """Return the number of a name; of what is not told, -1."""
        return NOBODY if not name else self._numbers.setdefault(name, len(self._numbers))

    def names(self) -> list[str]:
        """Return the names by their numbers."""
        return list(self._numbers)


class Head(Struct, frozen=True, array_like=True):
    """What a trip's data begins with."""

    id: str
    vessel: str
    registration: str
    number: str
    skipper: str
    port: str
    began: date
    ended: date
    kept: Decimal

    @property
    def kept_kg(self) -> Decimal | None:
        """Return what was kept; None where it is not known."""
        return None if self.kept == NOT_WEIGHED else self.kept


_HEAD = msgspec.json.Decoder(Head)


def head_of(data: bytes) -> Head:
    """Return what the data of a trip begins with."""
    return _HEAD.decode(data)


class _Names(Struct, frozen=True, kw_only=True):
    """The tables of a trip."""

    species: Table
    grounds: Table
    texts: Table


def trip_data(reckoned: Reckoned) -> bytes:
    """Return a trip as it stands in the data of its year."""
    log, head, totals = reckoned.log, reckoned.figures.trip, reckoned.figures.totals
    names = _Names(species=Table(), grounds=Table(), texts=Table())
    own = [names.texts.number(text) for text in trip_texts(log)]
    began = log.begins.date()
    tows = [_tow(tow, figures, began, names) for tow, figures in logged_tows(reckoned)]
    for order, row in enumerate(tows, 1):
        _shorten(row, order)
    codes = {name: total.code or "" for name, total in reckoned.figures.catch.items()}
    return _safe(
        [
            head.id,
            head.vessel,
            log.vessel.registration or "",
            head.number or "",
            head.skipper or "",
            head.port or "",
            began.isoformat(),
            (head.docked or head.as_of).date().isoformat(),
            _figure(totals.kept_kg, NOT_WEIGHED),
            _figure(totals.kept_kg_per_h, NOBODY),
            [text for name in names.species.names() for text in (name, codes.get(name, ""))],
            names.grounds.names(),
            names.texts.names(),
            len(own),
            tows,
        ]
    )


def _tow(tow: Tow, figures: TowFigures, began: date, names: _Names) -> Row:
    when = figures.shot or figures.hauled
    caught: Row = []
    for name, one in figures.catch.items():
        caught += [names.species.number(name), _weight(one)]
    return [
        NOBODY if when is None else max((when.date() - began).days, NOBODY),
        names.grounds.number(figures.ground),
        round(figures.catch_h * 60) if figures.catch_h and figures.kept_kg is not None else 0,
        *caught,
        [names.texts.number(text) for text in tow_texts(tow, foul=figures.foul)],
        figures.no,
    ]


def year_file(year: str, trips: Iterable[bytes]) -> Page:
    """Return the trips of a year as a script.

    Args:
        year: Which; the page calls it a season.
        trips: The data of each, by when they began.
    """
    told = b'{"season":' + _safe(year) + b',"trips":[' + b",".join(trips) + b"]}"
    content = b"(window.logbookSeasons=window.logbookSeasons||[]).push(" + told + b");\n"
    return Page(path=f"find/{year}.js", content=content)


def _safe(value: object) -> bytes:
    """Return a value as JSON that can stand in a script."""
    return json.dumps(value, ensure_ascii=True, separators=(",", ":")).translate(_ESCAPES).encode("ascii")


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
    return note(text).striptags() if text else ""  # most tows have nothing to say


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
