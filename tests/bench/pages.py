"""Trips of the bench as ready-made Markdown, for general-purpose site generators: title, list, table of tows, remarks.

Everything is worked out beforehand: they only turn it into pages. All of them read the same files; what stands at the top between
lines of dashes is taken by each in its own way.
"""

from collections.abc import Iterable, Iterator

from tests.bench.trips import Fish, Tow, Trip

COLUMNS = ("Tow", "Shot", "Hauled", "Ground", "From", "To", "Depth", "Net", "Kept", "Catch", "Put back", "Pen")


def page(trip: Trip) -> str:
    """Return a trip's page in Markdown."""
    return "\n".join((*_head(trip), *_table(trip), *_remarks(trip), ""))


def _head(trip: Trip) -> Iterator[str]:
    kept = sum(fish.kg for tow in trip.tows for fish in tow.catch)
    yield "---"
    yield f"title: {trip.vessel} {trip.label}"
    yield f"date: {trip.sailed:%Y-%m-%d}"
    yield "---"
    yield f"# {trip.vessel}, trip {trip.label}"
    yield ""
    yield f"- Skipper: {trip.skipper}"
    yield f"- Sailed: {trip.sailed:%Y-%m-%d %H:%M}, {trip.port}"
    yield f"- Docked: {trip.docked:%Y-%m-%d %H:%M}, {trip.port}"
    yield f"- Kept: {kept} kg"
    yield f"- Tows: {len(trip.tows)}"
    yield f"- Ice loaded: {trip.ice} t"
    yield ""
    yield trip.remarks
    yield ""


def _table(trip: Trip) -> Iterator[str]:
    yield "## Tows"
    yield ""
    yield _row(COLUMNS)
    yield _row("---" for _ in COLUMNS)
    carried = {"ground": "", "net": "", "pen": ""}
    for tow in trip.tows:
        carried = {key: getattr(tow, key) or before for key, before in carried.items()}
        yield _row(_cells(tow, carried))
    yield ""


def _cells(tow: Tow, carried: dict[str, str]) -> Iterator[str]:
    yield str(tow.no)
    yield f"{tow.shot:%Y-%m-%d %H:%M}"
    yield f"{tow.hauled:%H:%M}"
    yield carried["ground"]
    yield tow.start
    yield tow.end
    yield f"{tow.fathoms} fm"
    yield carried["net"]
    yield f"{sum(fish.kg for fish in tow.catch)} kg"
    yield _told(tow.catch)
    yield _told(tow.put_back)
    yield carried["pen"]


def _told(fish: Iterable[Fish]) -> str:
    return ", ".join(" ".join(filter(None, (some.species, some.grade, some.amount))) for some in fish)


def _row(cells: Iterable[str]) -> str:
    return f"| {' | '.join(cells)} |"


def _remarks(trip: Trip) -> Iterator[str]:
    yield "## Remarks"
    yield ""
    for tow in trip.tows:
        if tow.remarks:
            yield f"- Tow {tow.no}: {tow.remarks}"
