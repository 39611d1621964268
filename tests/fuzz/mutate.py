"""Logs as nobody should type them: `python -m tests.fuzz.mutate --count 20000 --seed 1` reads and reckons so many, and counts.

Sound logs are changed by what people, editors and power cuts do to files, or made from the words of logs in any order.
Every log is told by its seed and number, so that one that breaks a promise can be had again with `--only`.
"""

import argparse
import re
import sys
import time
import traceback
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from functools import cache
from pathlib import Path
from random import Random

from tests.fuzz.promises import SAMPLE_FLEET, hold, hold_fleet, wide
from tests.fuzz.words import ENDS, KEYS, SIGNS, VALUES
from tests.read.logs import FLEET

ROOT = Path(__file__).parents[2]
_TOWS = 6
"""Tows that are kept of a sample log, so that changes hit everything in it."""

_VALUE = re.compile(r"(?<=: )[^,{}\[\]\n]+")
_NUMBER = re.compile(r"[0-9]+(?:[.:][0-9]+)?")


@cache
def sound() -> tuple[str, ...]:
    """Return the logs that are changed: the samples without most of their tows, and the cases that read clean."""
    cases = ROOT / "tests" / "cases" / "read"
    clean = [path.read_text("utf-8") for path in sorted(cases.glob("clean-*.yaml"))]
    return (*(_shortened(path.read_text("utf-8")) for path in sorted(ROOT.glob("sample_logs/*/*.yaml"))), *clean)


def _shortened(log: str) -> str:
    """Return a log with the first lines of each of its parts only."""
    kept: list[str] = []
    items = 0
    for line in log.splitlines():
        items = items + line.startswith("  - ") if line.startswith(" ") else 0
        if items <= _TOWS:
            kept.append(line)
    return "\n".join(kept) + "\n"


# Changes of one text


def _at(text: str, chance: Random) -> int:
    return chance.randint(0, len(text))


def insert_sign(text: str, chance: Random) -> str:
    """Put a sign that means something to YAML, to an editor or to nobody anywhere."""
    at = _at(text, chance)
    return text[:at] + chance.choice(SIGNS) + text[at:]


def drop_signs(text: str, chance: Random) -> str:
    """Take some signs out."""
    at = _at(text, chance)
    return text[:at] + text[at + chance.choice((1, 1, 1, 2, 7, 40)) :]


def change_sign(text: str, chance: Random) -> str:
    """Put one sign in place of another."""
    at = _at(text, chance)
    return text[:at] + chance.choice(SIGNS) + text[at + 1 :]


def change_value(text: str, chance: Random) -> str:
    """Put another value behind a key."""
    found = list(_VALUE.finditer(text))
    if not found:
        return text
    where = chance.choice(found)
    return text[: where.start()] + chance.choice(VALUES) + text[where.end() :]


def change_number(text: str, chance: Random) -> str:
    """Put another number in place of one."""
    found = list(_NUMBER.finditer(text))
    if not found:
        return text
    where = chance.choice(found)
    other = str(chance.choice((0, 1, 24, 31, 59, 60, 61, 99, 100, 2400, 9999, 10**9, 10**20, -1, 0.5)))
    return text[: where.start()] + other + text[where.end() :]


def change_key(text: str, chance: Random) -> str:
    """Put another key in place of one, or one more."""
    lines = text.split("\n")
    at = chance.randrange(len(lines))
    key, colon, value = lines[at].partition(":")
    indent = key[: len(key) - len(key.lstrip(" -"))]
    lines[at] = f"{indent}{chance.choice(KEYS)}{colon or ': '}{value}"
    return "\n".join(lines)


def change_lines(text: str, chance: Random) -> str:
    """Drop, double, move, join, split, indent, quote or comment lines."""
    lines = text.split("\n")
    at = chance.randrange(len(lines))
    end = min(len(lines), at + chance.choice((1, 1, 1, 2, 5, 20)))
    some = lines[at:end]
    made = chance.choice(_LINES)(some, chance)
    return "\n".join([*lines[:at], *made, *lines[end:]])


def _moved(some: list[str], chance: Random) -> list[str]:
    return chance.sample(some, len(some))


def _indented(some: list[str], chance: Random) -> list[str]:
    more = chance.choice((" ", "  ", "\t", "    ", "\u00a0", "> ", "- ", "# ", "'"))
    return [more + line for line in some]


def _outdented(some: list[str], chance: Random) -> list[str]:
    less = chance.choice((1, 2, 4))
    return [line[less:] if line[:less].isspace() else line for line in some]


def _tabbed(some: list[str], chance: Random) -> list[str]:
    width = chance.choice((2, 4, 8))
    return [line.replace(" " * width, "\t") for line in some]


def _split(some: list[str], chance: Random) -> list[str]:
    parts: list[str] = []
    for line in some:
        at = _at(line, chance)
        parts += [line[:at], line[at:]]
    return parts


_LINES: Sequence[Callable[[list[str], Random], list[str]]] = (
    lambda _some, _chance: [],
    lambda some, _chance: some * 2,
    lambda some, chance: some * chance.choice((3, 30)),
    lambda some, _chance: ["".join(some)],
    lambda some, _chance: [" ".join(line.strip() for line in some)],
    lambda some, _chance: [line.upper() for line in some],
    lambda some, _chance: [*some, some[0][: len(some[0]) // 2]],
    _moved,
    _indented,
    _outdented,
    _tabbed,
    _split,
)


def paste(text: str, chance: Random) -> str:
    """Paste some lines of another log, or all of it."""
    other = chance.choice(sound()).split("\n")
    first = chance.randrange(len(other))
    part = other[first : first + chance.choice((1, 3, 10))] if chance.random() < 0.8 else other
    lines = text.split("\n")
    at = chance.randint(0, len(lines))
    return "\n".join([*lines[:at], *part, *lines[at:]])


def nest(text: str, chance: Random) -> str:
    """Put something deep, long or many anywhere."""
    at = _at(text, chance)
    sign, count = chance.choice("[{-?:'\"\t ("), chance.choice((3, 19, 21, 300))
    return text[:at] + (sign + chance.choice(("", " ", "\n"))) * count + text[at:]


CHANGES: Sequence[Callable[[str, Random], str]] = (
    insert_sign,
    insert_sign,
    drop_signs,
    change_sign,
    change_value,
    change_value,
    change_number,
    change_key,
    change_lines,
    change_lines,
    change_lines,
    paste,
    nest,
)


# Changes of bytes


def encoded(text: str, chance: Random) -> bytes:
    """Return a text's bytes, mostly as they should be, at times as old editors and power cuts leave them."""
    if chance.random() < 0.7:
        return text.encode("utf-8", "surrogatepass")
    for end in chance.sample(("\r\n", "\r", "\r\r\n", "\u2028", "\n\n"), 2):
        if chance.random() < 0.4:
            text = text.replace("\n", end, chance.choice((-1, -1, 3)))
    coding = chance.choice(
        ("utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "utf-32", "cp1252", "cp850", "cp437")
    )
    data = text.encode(coding, "replace")
    for _ in range(chance.choice((0, 0, 1, 4))):
        at = chance.randint(0, len(data))
        data = data[:at] + bytes([chance.randrange(256)]) + data[at + chance.choice((0, 1)) :]
    if chance.random() < 0.2:
        data = data[: chance.randint(0, len(data))]
    return data + chance.choice(ENDS)


# Whole logs


def mutated(chance: Random) -> bytes:
    """Return a sound log after a few changes."""
    text = chance.choice(sound())
    for _ in range(chance.choice((1, 1, 1, 2, 3, 6))):
        text = chance.choice(CHANGES)(text, chance)[:40_000]
    return encoded(text, chance)


def mutated_fleet(chance: Random) -> bytes:
    """Return a sound fleet file after a few changes."""
    text = chance.choice((FLEET, SAMPLE_FLEET.decode("utf-8")))
    for _ in range(chance.choice((1, 1, 2, 4))):
        text = chance.choice(CHANGES)(text, chance)[:40_000]
    return encoded(text, chance)


def made(chance: Random) -> bytes:
    """Return a log made of the words of logs, in an order that now and then makes sense."""
    lines = ["vessel: Solan Bright", f"sailed: 2026-03-04 05:30{chance.choice(('', ', Port Kerrin', 'Z', ' +14:00'))}"]
    for _ in range(chance.randint(1, 12)):
        lines += _part(chance, "", 0)
    if chance.random() < 0.2:
        chance.shuffle(lines)
    return encoded("\n".join(lines) + "\n", chance)


def _part(chance: Random, indent: str, depth: int) -> Iterator[str]:
    """Give the lines of one key with its value, which may be a mapping or a list."""
    key = chance.choice(KEYS)
    shape = chance.random()
    if depth > 3 or shape < 0.5:
        yield f"{indent}{key}: {_inline(chance, 0)}"
        return
    yield f"{indent}{key}:"
    for _ in range(chance.randint(0, 5)):
        if shape < 0.75:
            yield from _part(chance, f"{indent}  ", depth + 1)
        else:
            first, *rest = _part(chance, f"{indent}    ", depth + 1)
            yield f"{indent}  - {first.strip() if chance.random() < 0.7 else _inline(chance, 0)}"
            yield from rest


def _inline(chance: Random, depth: int) -> str:
    shape = chance.random()
    if depth > 2 or shape < 0.7:
        return chance.choice(VALUES)
    parts = [_inline(chance, depth + 1) for _ in range(chance.randint(0, 4))]
    if shape < 0.85:
        return f"[{', '.join(parts)}]"
    return "{" + ", ".join(f"{chance.choice(KEYS)}: {part}" for part in parts) + "}"


def one(seed: int, number: int) -> tuple[str, bytes, Callable[[], object]]:
    """Return what kind of log a seed and number stand for, its bytes, and what reads and reckons it."""
    chance = Random(f"{seed}/{number}")
    kind = chance.choice(("changed", "changed", "changed", "made", "fleet file"))
    if kind == "fleet file":
        data = mutated_fleet(chance)
        log = chance.choice(sound()).encode()
        return kind, data, lambda: hold_fleet(data, log)
    data = mutated(chance) if kind == "changed" else made(chance)
    fleet = wide(chance.choice((FLEET.encode(), SAMPLE_FLEET)))
    return kind, data, lambda: hold(data, fleet)


def run(numbers: Sequence[int], seed: int) -> Counter[str]:
    """Return how many logs were read, how many had a trip and problems, and how many broke a promise.

    Args:
        numbers: Of the logs.
        seed: Of the changes.
    """
    counts: Counter[str] = Counter()
    slowest = (0.0, 0)
    for number in numbers:
        kind, data, holds = one(seed, number)
        began = time.perf_counter()
        try:
            found = holds()
        except Exception:  # noqa: BLE001 - whatever it is, it is what we are after
            counts["broken promises"] += 1
            print(f"--- log {number} of seed {seed}, {len(data)} bytes\n{traceback.format_exc(limit=-4)}", flush=True)
            continue
        finally:
            slowest = max(slowest, (time.perf_counter() - began, number))
            counts["logs"] += 1
            counts[f"  {kind}"] += 1
        match found:
            case (trip, tuple() as problems) if kind != "fleet file":
                counts["with a trip"] += trip is not None
                counts["with problems"] += bool(problems)
            case _:
                counts["fleet files with problems"] += bool(found)
    print(f"slowest: log {slowest[1]}, {slowest[0]:.2f} s")
    return counts


def main() -> int:
    """Read as many logs as asked for, and print the counts; the exit status is 1 where one broke a promise."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--count", type=int, default=20_000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--only", type=int, help="print and read the log of this number alone")
    asked = parser.parse_args()
    numbers = range(asked.count) if asked.only is None else [asked.only]
    if asked.only is not None:
        print(one(asked.seed, asked.only)[1].decode("utf-8", "backslashreplace"))
    counts = run(numbers, asked.seed)
    counts.setdefault("broken promises", 0)
    for name, count in counts.items():
        print(f"{count:7} {name}")
    return int(counts["broken promises"] > 0)


if __name__ == "__main__":
    sys.exit(main())
