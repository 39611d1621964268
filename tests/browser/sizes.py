"""How large pages become when an archive grows: `python -m tests.browser.sizes --trips 2000`.

The logs are the sample logs again and again, each on days of its own, for a fleet of eight over as many years as that takes. All
else is as in a real archive: the same grounds, so that they fill, and a page for every species, season and week.
"""

import argparse
import re
import sys
import tempfile
from collections.abc import Iterator
from datetime import date, timedelta
from html.parser import HTMLParser
from pathlib import Path
from unittest.mock import patch

from logbook.build import build
from logbook.model.edition import EDITIONS, OFFICE
from logbook.render.language import MONTHS
from logbook.store import store

ROOT = Path(__file__).parents[2]
SAMPLES = ROOT / "sample_logs"
LARGEST_BYTES = 1_000_000
MOST_ELEMENTS = 20_000

_FLEET_OF = 8
_CYCLE = timedelta(days=11)
_LAST = date(2026, 11, 24)
_DATE = re.compile(r"\b(\d{4})-(\d\d)-(\d\d)\b")
_DAY = re.compile(r"(?<=- day: )\w{3} \d{1,2} \w+")
_VESSEL = re.compile(r"^vessel: .*$", re.MULTILINE)
_NUMBER = re.compile(r"^trip: .*$", re.MULTILINE)


class _Counting(HTMLParser):
    """Counts the elements of a page."""

    def __init__(self) -> None:
        super().__init__()
        self.elements = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements += 1


def elements(text: str) -> int:
    """Return how many elements a page has."""
    counting = _Counting()
    counting.feed(text)
    return counting.elements


def write_logs(folder: Path, trips: int) -> None:
    """Write a fleet file and as many logs of landed trips.

    Args:
        folder: Where; it must not be there yet.
        trips: How many.
    """
    fleet = (SAMPLES / "fleet.yaml").read_text("utf-8")
    head, vessels, rest = re.split(r"(?<=^vessels:\n)|(?=^ports:)", fleet, maxsplit=2, flags=re.MULTILINE)
    blocks = re.split(r"(?=^  - name: )", vessels, flags=re.MULTILINE)[1:]
    folder.mkdir(parents=True)
    named = []
    texts = [_landed(re.search(r"name: (\w+)", block).group(1).lower()) for block in blocks]  # type: ignore[union-attr]
    for number in range(_FLEET_OF):
        block = blocks[number % len(blocks)]
        block = re.sub(r"name: .*", f"name: {_vessel(number)}", block, count=1)
        named.append(re.sub(r"registration: .*", f"registration: KI {700 + number}", block, count=1))
    (folder / "fleet.yaml").write_text(head + "".join(named) + rest, "utf-8")
    for number in range(trips):
        by_kind = texts[number % _FLEET_OF % len(blocks)]
        text = by_kind[number // _FLEET_OF % len(by_kind)]
        sails = _LAST - _CYCLE * (number // _FLEET_OF + 1) + timedelta(days=number % _FLEET_OF)
        text = _VESSEL.sub(f"vessel: {_vessel(number % _FLEET_OF)}", _on_days(text, sails), count=1)
        text = _NUMBER.sub(f"trip: {trips - number}", text, count=1)
        (folder / f"{number:05}.yaml").write_text(text, "utf-8")


def _landed(vessel: str) -> list[str]:
    """Return the sample logs of a vessel's landed trips."""
    texts = [path.read_text("utf-8") for path in sorted(SAMPLES.glob(f"*/{vessel}*.yaml"))]
    return [text for text in texts if re.search(r"^landed:", text, re.MULTILINE)]


def _vessel(number: int) -> str:
    return f"Kerrin Boat {'ABCDEFGH'[number]}"


def _on_days(text: str, sails: date) -> str:
    """Return a log with all its dates as far from the day of sailing as they were."""
    first = min(date(*map(int, found)) for found in _DATE.findall(text))
    later = sails - first
    months = {name: place for place, name in enumerate(MONTHS, 1)}

    def dated(found: re.Match[str]) -> str:
        return (date(*map(int, found.groups())) + later).isoformat()

    def told(found: re.Match[str]) -> str:
        _, day, month = found.group().split()
        there = date(first.year, months[month], int(day)) + later
        return f"{there:%a} {there.day} {MONTHS[there.month - 1]}"

    return _DAY.sub(told, _DATE.sub(dated, text))


def sizes(site: Path) -> Iterator[tuple[str, str, int, int]]:
    """Give for each kind of page the largest: its kind, its path, its bytes and its elements, largest kinds first."""
    largest: dict[str, tuple[str, int, int]] = {}
    for path in sorted(site.rglob("*.html")):
        name = path.relative_to(site).as_posix()
        kind = name if "/" not in name else f"{name.split('/')[0]}/"
        content = path.read_bytes()
        one = (name, len(content), elements(content.decode()))
        _, size, count = largest.get(kind, one)
        largest[kind] = max(
            largest.get(kind, one), one, key=lambda it: max(it[1] / LARGEST_BYTES, it[2] / MOST_ELEMENTS)
        )
    for kind, (name, size, count) in sorted(largest.items(), key=lambda item: -item[1][1]):
        yield kind, name, size, count


def main() -> int:
    """Print the largest page of every kind, and leave with 1 where one is over the limits."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--trips", type=int, default=2000)
    parser.add_argument("--edition", choices=EDITIONS, default=OFFICE)
    parser.add_argument("--keep", type=Path, help="a folder that is not there yet, for the logs and the archive")
    asked = parser.parse_args()
    with tempfile.TemporaryDirectory() as made:
        folder = asked.keep or Path(made) / "sizes"
        write_logs(folder / "logs", asked.trips)
        with patch.object(store, "place_of", return_value=None):  # nothing in the user's cache
            built = build(folder / "logs", folder / "site", print, (asked.edition,))
        print(f"{built.trips} trips, {built.errors} errors in the logs")
        over = 0
        for kind, name, size, count in sizes(folder / "site"):
            too_large = size > LARGEST_BYTES or count > MOST_ELEMENTS
            over += too_large
            print(f"{size / 1000:8.0f} kB {count:7} elements  {'OVER ' if too_large else '     '}{kind:16} {name}")
    print(f"{over} kinds of page over {LARGEST_BYTES:,} bytes or {MOST_ELEMENTS:,} elements")
    return int(over > 0)


if __name__ == "__main__":
    sys.exit(main())
