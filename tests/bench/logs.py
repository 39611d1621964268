"""Trips of the bench written as logs: those of every other vessel in block style, the others' a tow a line."""

from collections import Counter
from collections.abc import Iterator
from datetime import datetime, timedelta
from pathlib import Path
from random import Random

from tests.bench.fleet import ALWAYS, FLEET_FILE, PENS, SOMETIMES, VESSELS, fleet_file
from tests.bench.pages import page
from tests.bench.trips import SEED, TOWS_A_PEN, Fish, Tow, Trip, trip_of

_PRICES = {kind.name: kind.price for kind in (*ALWAYS, *SOMETIMES)}
_WINDS = ("N", "NW", "WNW", "W", "SW", "SSW", "S", "SE")


def write_fleet(folder: Path, pages: Path, trips: int, tows: int) -> None:
    """Write a fleet's logs, and its trips' pages as ready-made Markdown.

    Args:
        folder: Where the fleet file and the logs go, a folder a year; made here.
        pages: Where the Markdown goes; made here.
        trips: How many trips.
        tows: How many tows each has.
    """
    folder.mkdir(parents=True)
    pages.mkdir(parents=True)
    (folder / FLEET_FILE).write_text(fleet_file(), "utf-8")
    for number in range(trips):
        trip = trip_of(number, tows)
        path = log_path(folder, trip)
        path.parent.mkdir(exist_ok=True)
        path.write_text(log(trip), "utf-8")
        (pages / f"{trip.name}.md").write_text(page(trip), "utf-8")


def log_path(folder: Path, trip: Trip) -> Path:
    """Return where a trip's log lies in a folder of logs."""
    return folder / f"{trip.sailed:%Y}" / f"{trip.name}.yaml"


def log(trip: Trip) -> str:
    """Return a trip's log."""
    in_blocks = VESSELS.index(trip.vessel) % 2 == 0
    return "\n".join((*_head(trip), *(_blocks if in_blocks else _lines)(trip), *_readings(trip), *_landed(trip), ""))


def _head(trip: Trip) -> Iterator[str]:
    yield f"vessel: {trip.vessel}"
    yield f"trip: {trip.label}"
    yield f"skipper: {trip.skipper}"
    yield f"crew: {9 + trip.number % 4}"
    yield f"sailed: {trip.sailed:%Y-%m-%d %H:%M}, {trip.port}"
    yield f"ice loaded: {trip.ice} t"
    yield "sea temperature: 7.5 C"
    yield ""
    yield "tows:"


def _moments(tows: tuple[Tow, ...]) -> Iterator[tuple[Tow, str, str]]:
    """Give the tows with their times as written: with the date where it is another than that of the tow before."""
    day = None
    for tow in tows:
        yield tow, f"{tow.shot:{'%H:%M' if tow.shot.date() == day else '%Y-%m-%d %H:%M'}}", f"{tow.hauled:%H:%M}"
        day = tow.shot.date()


def _fields(tow: Tow) -> Iterator[tuple[str, str]]:
    """Give what was written of a tow between its times and its catch."""
    if tow.ground:
        yield "side", tow.side
        yield "ground", tow.ground
    yield "from", tow.start
    yield "to", tow.end
    yield "depth", f"{tow.fathoms} fm"
    if tow.net:
        yield "net", tow.net


def _notes(tow: Tow) -> Iterator[tuple[str, str]]:
    """Give what was written of a tow after its catch."""
    for key in ("pen", "damage", "fast", "remarks"):
        if text := getattr(tow, key):
            yield key, text


def _species(fish: tuple[Fish, ...]) -> dict[str, str]:
    """Return species and what there was of each: an amount, or grades in braces."""
    grades: dict[str, list[str]] = {}
    for some in fish:
        grades.setdefault(some.species, []).append(f"{some.grade}: {some.amount}" if some.grade else some.amount)
    return {name: f"{{{', '.join(parts)}}}" if ":" in parts[0] else parts[0] for name, parts in grades.items()}


def _blocks(trip: Trip) -> Iterator[str]:
    for tow, shot, hauled in _moments(trip.tows):
        yield f"  - shot: {shot}"
        yield f"    hauled: {hauled}"
        yield from (f"    {key}: {text}" for key, text in _fields(tow))
        for key, fish in (("catch", tow.catch), ("put back", tow.put_back)):
            if fish:
                yield f"    {key}:"
                yield from (f"      {name}: {amount}" for name, amount in _species(fish).items())
        yield from (f"    {key}: {text}" for key, text in _notes(tow))
        yield ""


def _lines(trip: Trip) -> Iterator[str]:
    for tow, shot, hauled in _moments(trip.tows):
        parts = [("shot", shot), ("hauled", hauled), *_fields(tow)]
        for key, fish in (("catch", tow.catch), ("put back", tow.put_back)):
            if fish:
                species = ", ".join(f"{name}: {amount}" for name, amount in _species(fish).items())
                parts.append((key, f"{{{species}}}"))
        yield f"  - {{{', '.join(f'{key}: {text}' for key, text in (*parts, *_notes(tow)))}}}"
    yield ""


def _readings(trip: Trip) -> Iterator[str]:
    """Give a look at the hold each noon, and the weather twice a day."""
    chance = Random(f"{SEED}/{trip.number}/readings")
    noon = trip.sailed.replace(hour=12, minute=0)
    days = [noon + timedelta(days=day) for day in range(1, 9) if noon + timedelta(days=day) < trip.turned]
    yield "readings:"
    for at in days:
        used = (at - trip.sailed) / (trip.docked - trip.sailed)
        full = [pen for pen, tow in zip(PENS, trip.tows[::TOWS_A_PEN], strict=False) if tow.shot < at][-4:]
        if full:
            temperatures = ", ".join(f"{pen}: {chance.randint(2, 14) / 10} C" for pen in full)
            yield f"  - {{at: {_written(at)}, temperatures: {{{temperatures}}}}}"
            yield f"  - {{at: {_written(at)}, ice left: {(trip.ice - 1) * (1 - 0.9 * used):.1f} t}}"
    yield ""
    yield "weather:"
    for at in (at + timedelta(hours=later) for at in (noon, *days) for later in (0, 12)):
        if trip.sailed < at < trip.docked:
            force = chance.randint(2, 7)
            wind = f"{chance.choice(_WINDS)} {force}"
            yield f"  - {{at: {_written(at)}, wind: {wind}, sea: {force - 1}, pressure: {chance.randint(985, 1028)} hPa}}"
    yield ""


def _landed(trip: Trip) -> Iterator[str]:
    kept: Counter[tuple[str, str]] = Counter()
    for tow in trip.tows:
        kept.update({(fish.species, fish.grade): fish.kg for fish in tow.catch})
    began = trip.docked + timedelta(minutes=45)
    weighed = tuple(
        Fish(species=name, grade=grade, amount=f"{round(kg * 0.98)} kg", kg=kg) for (name, grade), kg in kept.items()
    )
    priced = tuple(
        Fish(species=name, grade=grade, amount=f"{_PRICES[name] * (0.8 if grade == 'small' else 1):.2f}/kg", kg=kg)
        for (name, grade), kg in kept.items()
    )
    yield f"turned for home: {_written(trip.turned)}, {trip.turned_at}"
    yield ""
    yield "landed:"
    yield f"  port: {trip.port}"
    yield f"  docked: {_written(trip.docked)}"
    yield f"  started landing: {began:%H:%M}"
    yield f"  finished landing: {_written(began + timedelta(hours=6))}"
    for key, fish in (("out-turn", weighed), ("prices", priced)):
        yield f"  {key}:"
        yield from (f"    {name}: {amount}" for name, amount in _species(fish).items())
    yield ""
    yield "remarks: |"
    yield f"  {trip.remarks}"


def _written(at: datetime) -> str:
    return f"{at:%Y-%m-%d %H:%M}"
