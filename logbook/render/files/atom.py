"""A feed of landings (RFC 4287): what each trip put ashore, the latest first.

The archive has no address of its own, so links are relative to the feed, and it has none to itself. Moments are those of the logs.
"""

from collections.abc import Iterable, Sequence
from datetime import datetime
from xml.etree.ElementTree import Element, SubElement

from logbook.model.ledger import Entry
from logbook.render.files.identity import identity
from logbook.render.files.of_trips import TripRow
from logbook.render.files.paths import FEED
from logbook.render.files.xml import document, said
from logbook.render.gather import added
from logbook.render.language import _, speech
from logbook.render.links import FRONT, relative, trip_page
from logbook.render.shown import moment, weight
from logbook.render.text import bare

_ATOM = "http://www.w3.org/2005/Atom"
_MOST = 100
"""Landings in the feed; older ones are in the tables."""


def in_feed(entries: Iterable[Entry]) -> tuple[Entry, ...]:
    """Return the trips whose landings are in the feed, the latest first; none where none has been landed."""
    docked = [(entry.docked, entry.id, entry) for entry in entries if entry.docked is not None]
    return tuple(entry for _, _, entry in sorted(docked, key=lambda one: one[:2], reverse=True)[:_MOST])


def landings_feed(latest: Sequence[TripRow], name: str, edition: str, *, linked: bool) -> bytes:
    """Return the feed; there must be a landing, since a feed must say when it was last changed.

    Args:
        latest: Trips that landed, the latest first.
        name: The fleet's name.
        edition: office, crew or public; each has a feed of its own.
        linked: Whether the pages stand beside the feed.
    """
    root = Element("feed", {"xmlns": _ATOM, "xml:lang": speech().tag})
    said(root, "id", identity(name, "landings", edition).urn)
    said(root, "title", _("Landings, {fleet}").format(fleet=name))
    said(root, "updated", _moment(max(row.trip.figures.trip.last_word for row in latest)))
    said(SubElement(root, "author"), "name", name)
    if linked:
        _link(root, FRONT)
    for row in latest:
        _entry(root, row, name, linked=linked)
    return document(root)


def _entry(root: Element, row: TripRow, name: str, *, linked: bool) -> None:
    head = row.trip.figures.trip
    entry = SubElement(root, "entry")
    said(entry, "id", identity(name, "landings", head.id).urn)
    landed_at = _("{vessel} landed at {port}") if head.port else _("{vessel} landed")
    said(entry, "title", landed_at.format(vessel=head.vessel, port=head.port))
    said(entry, "updated", _moment(head.last_word))
    if head.docked is not None:
        said(entry, "published", _moment(head.docked))
    if linked:
        _link(entry, trip_page(head.id))
    said(entry, "content", _content(row), type="text")


def _content(row: TripRow) -> str:
    docked, landed = row.trip.figures.trip.docked, row.landed
    lines = [_("Docked {when}.").format(when=bare(moment(docked))) if docked is not None else ""]
    if landed is not None and landed.species:
        how = _("{weight}, over the scale:") if landed.weighed else _("{weight}, as estimated aboard:")
        lines.append(how.format(weight=bare(weight(added(landed.species.values())))))
        heaviest = sorted(landed.species.items(), key=lambda one: (-one[1], one[0]))
        lines += [f"{species} {bare(weight(kilograms))}" for species, kilograms in heaviest]
    return "\n".join(lines)


def _moment(moment: datetime) -> str:
    """Return a moment as RFC 3339 has it."""
    return moment.isoformat(timespec="seconds")


def _link(parent: Element, path: str) -> None:
    SubElement(parent, "link", {"rel": "alternate", "type": "text/html", "href": relative(FEED, path)})
