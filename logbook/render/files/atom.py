"""A feed of landings (RFC 4287): what each trip put ashore, the latest first.

The archive has no address of its own, so links are relative to the feed, and it has none to itself. Moments are those of the logs.
"""

from collections.abc import Iterable
from datetime import datetime
from xml.etree.ElementTree import Element, SubElement

from logbook.model.figures import Reckoned
from logbook.model.fleet_figures import Landed
from logbook.render.files.identity import identity
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


def landings_feed(
    trips: Iterable[Reckoned], landed: Iterable[Landed], name: str, edition: str, *, linked: bool
) -> bytes | None:
    """Return the feed; None where nothing has been landed, since a feed must say when it was last changed.

    Args:
        trips: All trips.
        landed: What each landed trip put ashore.
        name: The fleet's name.
        edition: office, crew or public; each has a feed of its own.
        linked: Whether the pages stand beside the feed.
    """
    of_trip = {one.trip_id: one for one in landed}
    docked = [
        (trip.figures.trip.docked, trip.figures.trip.id, trip) for trip in trips if trip.figures.trip.docked is not None
    ]
    latest = [trip for _, _, trip in sorted(docked, key=lambda one: one[:2], reverse=True)[:_MOST]]
    if not latest:
        return None
    root = Element("feed", {"xmlns": _ATOM, "xml:lang": speech().tag})
    said(root, "id", identity(name, "landings", edition).urn)
    said(root, "title", _("Landings, {fleet}").format(fleet=name))
    said(root, "updated", _moment(max(trip.figures.trip.last_word for trip in latest)))
    said(SubElement(root, "author"), "name", name)
    if linked:
        _link(root, FRONT)
    for trip in latest:
        _entry(root, trip, of_trip.get(trip.figures.trip.id), name, linked=linked)
    return document(root)


def _entry(root: Element, trip: Reckoned, landed: Landed | None, name: str, *, linked: bool) -> None:
    head = trip.figures.trip
    entry = SubElement(root, "entry")
    said(entry, "id", identity(name, "landings", head.id).urn)
    landed_at = _("{vessel} landed at {port}") if head.port else _("{vessel} landed")
    said(entry, "title", landed_at.format(vessel=head.vessel, port=head.port))
    said(entry, "updated", _moment(head.last_word))
    if head.docked is not None:
        said(entry, "published", _moment(head.docked))
    if linked:
        _link(entry, trip_page(head.id))
    said(entry, "content", _content(trip, landed), type="text")


def _content(trip: Reckoned, landed: Landed | None) -> str:
    docked = trip.figures.trip.docked
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
