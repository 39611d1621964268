"""A calendar of landings (RFC 5545): those that were made, and those that are expected by the last word from a vessel."""

from collections.abc import Iterable, Iterator
from datetime import UTC, datetime, timedelta

from logbook.model.figures import Reckoned
from logbook.model.ledger import Entry
from logbook.render.files.identity import identity
from logbook.render.files.of_landings import NO_WATCH, LandingRow, landing_rows
from logbook.render.language import _
from logbook.render.shown import moment
from logbook.render.text import bare

_AGO = timedelta(days=400)
"""So long before the archive's last word landings are in the calendar, so that it does not grow for ever; all are in the tables."""

_OUT = ("homeward", "at sea")

_WIDTH = 75
"""Octets of a line, its end not counted."""

_BREAKS = ("\r\n", "\r", "\n")


def in_calendar(entries: Iterable[Entry], latest: datetime) -> tuple[Entry, ...]:
    """Return the trips whose landings are in the calendar, by the archive's last word: those that are out, and those that ended lately."""
    since = latest - _AGO
    return tuple(entry for entry in entries if entry.state in _OUT or (entry.docked or entry.last_word) >= since)


def landing_events(trip: Reckoned, name: str) -> bytes:
    """Return a trip's landings as they stand in the calendar of a fleet; nothing where none is made or expected."""
    return b"".join(folded(line) for row in landing_rows((trip,)) for line in _event(row, name))


def landings_calendar(events: Iterable[bytes], name: str) -> bytes | None:
    """Return the calendar; None where it would be empty, since it must hold something.

    Args:
        events: The landings of each trip.
        name: The fleet's name.
    """
    told = b"".join(events)
    if not told:
        return None
    head = (
        "BEGIN:VCALENDAR",
        "VERSION:2.0",
        "PRODID:trawl-trip-logbook",
        "CALSCALE:GREGORIAN",
        "NAME:" + escaped(_("Landings, {fleet}").format(fleet=name)),
    )
    return b"".join((*map(folded, head), told, folded("END:VCALENDAR")))


def _event(row: LandingRow, name: str) -> Iterator[str]:
    head, landing = row.trip.figures.trip, row.figures
    docked = landing.docked
    if docked is None:
        return
    yield "BEGIN:VEVENT"
    yield f"UID:{identity(name, 'landing', head.id, str(row.order))}"
    yield f"DTSTAMP:{_utc(head.last_word)}"
    # What is reckoned is not known to the second.
    yield f"DTSTART:{_utc(docked.replace(second=0, microsecond=0) if landing.expected else docked)}"
    if not landing.expected and landing.landing_finished is not None and landing.landing_finished > docked:
        yield f"DTEND:{_utc(landing.landing_finished)}"
    yield f"SUMMARY:{escaped(_summary(row))}"
    if landing.port:
        yield f"LOCATION:{escaped(landing.port)}"
    yield f"DESCRIPTION:{escaped(_words(row))}"
    yield f"STATUS:{'TENTATIVE' if landing.expected else 'CONFIRMED'}"
    yield "TRANSP:TRANSPARENT"
    yield "END:VEVENT"


def _summary(row: LandingRow) -> str:
    vessel, port = row.trip.figures.trip.vessel, row.figures.port
    if row.figures.expected:
        said = _("{vessel} expected at {port}") if port else _("{vessel} expected")
    else:
        said = _("{vessel} landed at {port}") if port else _("{vessel} landed")
    return said.format(vessel=vessel, port=port)


def _words(row: LandingRow) -> str:
    head = row.trip.figures.trip
    if not row.figures.expected:
        return _("As logged. Trip {id}.").format(id=head.id)
    said = (
        _("Last word from her {when}. Expected if she turned then. {no_watch} Trip {id}.")
        if head.state == "at sea"
        else _("Last word from her {when}. Expected. {no_watch} Trip {id}.")
    )
    return said.format(when=bare(moment(head.last_word)), no_watch=_(NO_WATCH), id=head.id)


def _utc(moment: datetime) -> str:
    return moment.astimezone(UTC).strftime("%Y%m%dT%H%M%SZ")


def escaped(text: str) -> str:
    """Return a text as a value of type TEXT; control characters have no place in one, and all line breaks become one kind.

    Source:
        RFC 5545 sections 3.1 (no control characters but the tab) and 3.3.11 (escapes).
    """
    for sign in _BREAKS:
        text = text.replace(sign, "\n")
    text = text.replace("\\", "\\\\").replace(";", "\\;").replace(",", "\\,").replace("\n", "\\n")
    return "".join(sign for sign in text if sign == "\t" or (sign >= " " and not "\x7f" <= sign <= "\x9f"))


def folded(line: str) -> bytes:
    """Return a line in pieces of 75 octets at most, no letter cut in two, each but the first after a space.

    Source:
        RFC 5545 section 3.1.
    """
    pieces: list[bytes] = []
    piece = b""
    for letter in line:
        octets = letter.encode("utf-8", "replace")
        if len(piece) + len(octets) > _WIDTH:
            pieces.append(piece)
            piece = b" "
        piece += octets
    return b"\r\n".join((*pieces, piece)) + b"\r\n"
