"""The text of a new log: what is known filled in, the rest of it explained in comments that can be put to use.

A comment that begins with `# ` explains; one that begins with `#` and a word is a line to use, by taking the `#` away.
"""

from collections.abc import Iterator
from datetime import datetime

from msgspec import Struct

from logbook.begin.before import Before
from logbook.begin.comment import told
from logbook.begin.example import lines_of
from logbook.begin.typed import quoted, typed
from logbook.model.fleet import Fleet, Vessel
from logbook.model.names import plural
from logbook.model.quantity import DAY
from logbook.read.keys import TOW, TRIP, Key
from logbook.read.zone import parse_zone

_IN_HEAD = (
    "vessel",
    "trip",
    "zone",
    "skipper",
    "crew",
    "sailed",
    "ice loaded",
    "fuel loaded",
    "sea temperature",
    "tows",
)
_BELOW_TOW = (
    "shot",
    "hauled",
    "side",
    "ground",
    "from",
    "to",
    "depth",
    "net",
    "catch",
    "put back",
    "pen",
    "stowed",
    "remarks",
)


class NewLog(Struct, frozen=True, kw_only=True):
    """A log just begun.

    Attributes:
        text: What stands in it, with plain line feeds.
        filled: Keys that have a value.
        blank: Keys that want one.
    """

    text: str
    filled: tuple[str, ...]
    blank: tuple[str, ...]


def new_log(before: Before, *, number: str | None, sailed: datetime, schema: str | None) -> NewLog:
    """Return the log of a new trip.

    Args:
        before: What is known of the vessel.
        number: The trip's number; None where it is not known.
        sailed: When she sails, by the clocks of the log.
        schema: Path of the log's schema from the log's folder, for editors that know such; None where there is none.
    """
    values = _values(before, number, sailed)
    lines = [f"# yaml-language-server: $schema={schema}", ""] if schema else []
    lines += told(
        "A trip's log, in plain words. A line that begins with # is not read: it explains, or it is an example that you put to "
        "use by taking the # away. Leave out whatever is not known. Save often."
    )
    lines += [
        "",
        *_head(before, values),
        "",
        *_tows(before.vessel, before.fleet, sailed),
        "",
        *_less_usual(before, sailed),
    ]
    filled = tuple(name for name, value in values.items() if value)
    return NewLog(
        text="\n".join(lines) + "\n",
        filled=filled,
        blank=tuple(name for name, value in values.items() if not value),
    )


def local_now(zone: str, now: datetime) -> datetime:
    """Return a moment by the clocks of a zone, to the minute that has begun."""
    clocks = parse_zone(zone).value
    assert clocks is not None  # noqa: S101 - it was read from a log or a fleet file
    return clocks.local(now).replace(second=0, microsecond=0)


def _values(before: Before, number: str | None, sailed: datetime) -> dict[str, str]:
    """Return the keys at the head of the log and what is known of each; empty where nothing is."""
    sailing = f"{sailed:%Y-%m-%d %H:%M}"
    if before.port:
        sailing = f"{sailing}, {before.port}"
        sailing = sailing if typed(before.port) == before.port else quoted(sailing)
    values = {"vessel": typed(before.vessel.name), "trip": typed(number) if number else ""}
    if before.zone != before.usual_zone:
        values["zone"] = f'"{before.zone}"'
    values["sailed"] = sailing
    return values | dict.fromkeys(("ice loaded", "fuel loaded", "sea temperature"), "")


def _head(before: Before, values: dict[str, str]) -> Iterator[str]:
    """Give the first keys, each below what there is to say of it."""
    said = {
        "trip": "Your own number for the trip, or any label." if not values["trip"] else "",
        "sailed": f"When she sailed and from where, by {before.zone} time: put the time right.",
        "ice loaded": _ice(before.vessel),
    }
    for name, value in values.items():
        if said.get(name):
            yield from told(said[name])
        yield f"{name}: {value}".rstrip()
        if name == "sailed":
            skipper = before.last.skipper if before.last is not None else None
            yield f"#skipper: {typed(skipper) if skipper else _example('skipper')}"
            hands = before.last.hands if before.last is not None else None
            yield f"#crew: {hands or _example('crew')}"
            if "zone" not in values:
                yield f"#zone: {_example('zone')}"


def _ice(vessel: Vessel) -> str:
    """Return what to say of the ice."""
    most = f" She can load {vessel.ice_capacity / 1000:f} t." if vessel.ice_capacity is not None else ""
    return f"With their units, as 24 t, 9000 l and 8 C.{most}"


def _tows(vessel: Vessel, fleet: Fleet, sailed: datetime) -> Iterator[str]:
    """Give the list of tows, with a worked one of this vessel's nets, pens and grounds to go by."""
    yield from told(
        "Each tow after a dash, in either of two ways. A bare time is the next such time after the one before."
    )
    nets = [f"{net.name} ({net.side})" if net.side else net.name for net in vessel.nets]
    pens = [pen for pen, _ in vessel.hold.pens]
    grounds = [ground.name for ground in fleet.grounds]
    for what, names in (("Her nets", nets), ("Her pens", pens), ("Grounds", grounds)):
        if names:
            yield from told(f"{what}: {', '.join(names)}.")
    yield "tows:"
    yield from (f"#  {line}" for line in worked_tow(vessel, fleet, sailed))
    yield "# The same way of telling it on one line:"
    yield f"#  - {worked_line(fleet, sailed)}"
    yield "# A new day begins:"
    yield f"#  - day: {sailed + 2 * DAY:%Y-%m-%d}"
    others = [key for key in TOW.keys if key.name not in _BELOW_TOW]
    yield from told(f"A tow may also have: {', '.join(key.name for key in others)}.")


def worked_tow(vessel: Vessel, fleet: Fleet, sailed: datetime) -> list[str]:
    """Return the lines of a tow as it might be, the day after sailing, with this vessel's own words where there are any."""
    net = vessel.nets[0] if vessel.nets else None
    start, end = _track(fleet)
    told = {
        "shot": f"{sailed + DAY:%Y-%m-%d} 04:10",
        "hauled": "05:40",
        "side": net.side if net is not None and net.side else "",
        "ground": typed(fleet.grounds[0].name) if fleet.grounds else "",
        "from": start,
        "to": end,
        "depth": "98 fm",
        "net": typed(net.name) if net is not None else "",
        "catch": "\n".join(("", f"  cod: {_amount(fleet, 14)}", f"  haddock: {_amount(fleet, 9)}")),
        "put back": "{skate: 30 kg}",
        "pen": typed(vessel.hold.pens[0][0]) if vessel.hold.pens else "",
        "stowed": "06:45",
        "remarks": "Good marks at the turn.",
    }
    lines = [line for name, value in told.items() if value for line in f"{name}: {value}".splitlines()]
    return [f"{'- ' if n == 0 else '  '}{line}".rstrip() for n, line in enumerate(lines)]


def worked_line(fleet: Fleet, sailed: datetime) -> str:
    """Return a second tow, on one line."""
    day = f"{sailed + DAY:%Y-%m-%d}"
    return f"{day} 0615-0745, 102 fm, cod {_amount(fleet, 9)}, haddock {_amount(fleet, 11)}, put back skate 20 kg"


def _amount(fleet: Fleet, count: int) -> str:
    """Return an amount in the fleet's first measure, or in kilograms."""
    measure = next((m.name for m in fleet.measures if m.default is not None), None)
    return f"{count} {plural(measure)}" if measure is not None and typed(measure) == measure else f"{count * 40} kg"


def _track(fleet: Fleet) -> tuple[str, str]:
    """Return where the worked tow begins and ends: three miles to the north, on the first ground with an outline."""
    corners = next((ground.corners for ground in fleet.grounds if ground.corners), ())
    if not corners:
        return "58 52.4N 015 10.0W", "58 55.4N 015 10.0W"
    north = sum(corner.latitude for corner in corners) / len(corners)
    east = sum(corner.longitude for corner in corners) / len(corners)
    end = north + 0.05 if north < 89 else north - 0.05  # noqa: PLR2004 - short of the pole
    return (
        f"{_degrees(north, 'NS', 2)} {_degrees(east, 'EW', 3)}",
        f"{_degrees(end, 'NS', 2)} {_degrees(east, 'EW', 3)}",
    )


def _degrees(angle: float, letters: str, width: int) -> str:
    """Return degrees and minutes as they are typed."""
    tenths = round(abs(angle) * 600)
    return f"{tenths // 600:0{width}} {tenths % 600 / 10:04.1f}{letters[0 if angle >= 0 else 1]}"


def _less_usual(before: Before, sailed: datetime) -> Iterator[str]:
    """Give every other key of a log as a comment: what it is, and a line to put to use."""
    yield "# Less usual; take the # away from the line below to use one."
    for key in TRIP.keys:
        if key.name in _IN_HEAD:
            continue
        yield "#"
        yield from told(key.about)
        yield from (f"#{line}" for line in _made_hers(key, before, sailed))


def _made_hers(key: Key, before: Before, sailed: datetime) -> Iterator[str]:
    """Give the lines of a key's example with this trip's days, and this vessel's and fleet's own words for the invented ones."""
    vessel, fleet = before.vessel, before.fleet
    pens = [pen for pen, _ in vessel.hold.pens]
    words = {
        "2026-03-10": f"{sailed + 6 * DAY:%Y-%m-%d}",
        "2026-03-11": f"{sailed + 7 * DAY:%Y-%m-%d}",
        "59 20.0N 013 00.0W": _track(fleet)[0],
        "22 boxes": _amount(fleet, 22),
        "rockhopper": next((net.name for net in vessel.nets), ""),
        "P2": next(iter(pens[1:2] or pens), ""),
        "The Saddle": next((ground.name for ground in fleet.grounds), ""),
        "Port Kerrin": before.port or "",
    }
    for line in lines_of(key):
        for invented, own in words.items():
            if own and typed(own) == own:
                line = line.replace(invented, own)  # noqa: PLW2901 - word by word
        yield line


def _example(name: str) -> str:
    key = TRIP.find(name)
    assert key is not None  # noqa: S101 - it is one of the table's
    return key.example
