"""Have what is read found out by the ways taken through the reader: `python tests/fuzz/atheris_read.py [FOLDER] -max_total_time=600`.

Needs atheris, which is no dependency of this project: install it beside the project's own in an environment apart. The
folder holds inputs that found something new; the options are libFuzzer's.
"""

import sys
from pathlib import Path

import atheris  # type: ignore[import-untyped]

sys.path.insert(0, str(Path(__file__).parents[2]))

with atheris.instrument_imports(include=["logbook", "yaml"]):
    from tests.fuzz.mutate import sound
    from tests.fuzz.promises import hold, hold_fleet, wide


def read(data: bytes) -> None:
    """Read and reckon a log; by its first byte, of which no log has need, at times a fleet file."""
    if data[:1] == b"\x01":
        hold_fleet(data[1:], sound()[0].encode())
    else:
        hold(data, wide())


def main() -> None:
    """Write the sound logs to the first folder named, where it is empty, and begin."""
    folders = [Path(word) for word in sys.argv[1:] if not word.startswith("-")]
    if folders and not any(folders[0].iterdir()):
        for number, log in enumerate(sound()):
            (folders[0] / f"sound-{number}").write_text(log, "utf-8")
    atheris.Setup(sys.argv, read)
    atheris.Fuzz()


if __name__ == "__main__":
    main()
