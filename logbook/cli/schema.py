"""Write what editors need to offer the keys of a log, to say what each means and to mark what is wrong.

Two JSON Schemas (draft-07) go into FOLDER, trip.schema.json for logs and fleet.schema.json for fleet files; older ones there are
put in their place. An editor finds a log's schema by its first line, which `logbook start` writes. Plain Notepad needs none
of it.
"""

from argparse import ArgumentParser, Namespace
from pathlib import Path

from logbook.cli.say import CLEAN, shown, tell


def arguments(parser: ArgumentParser) -> None:
    """Add where they go."""
    parser.add_argument("folder", metavar="FOLDER", type=Path, help="where they go, e.g. logs/schema")


def run(asked: Namespace) -> int:
    """Write both and return the exit status."""
    for path in write_schemas(asked.folder):
        tell(f"wrote {shown(path)}")
    return CLEAN


def write_schemas(folder: Path) -> tuple[Path, ...]:
    """Write both schemas into a folder and return their paths."""
    from logbook.begin.schema import FLEET_FILE, TRIP_FILE, as_text, fleet_schema, trip_schema

    folder.mkdir(parents=True, exist_ok=True)
    made = {TRIP_FILE: trip_schema(), FLEET_FILE: fleet_schema()}
    for name, schema in made.items():
        (folder / name).write_text(as_text(schema), encoding="utf-8", newline="\n")
    return tuple(folder / name for name in made)
