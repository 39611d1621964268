"""Write a copy of LOG that can be shown to strangers: every fault kept, with stand-ins for all that says whose log it is.

Names of people, vessels, ports, grounds and nets, remarks, comments, positions, prices and expenses are replaced, by chance and so that nobody
can go back; the same name gets the same stand-in. Positions keep their distances from each other. Lines and columns stay, and so do
dates, times, weights, depths and kinds of fish: look the copy over before you send it. The log's fleet file is written the
same way beside the copy, since names that it knows are read by it. Nothing that is there already is written over.
"""

from argparse import ArgumentParser, Namespace
from pathlib import Path

from logbook.cli.say import CLEAN, NOT_WRITTEN, Failure, many, shown, tell
from logbook.cli.words import existing_file

COPY = "scrubbed-log.txt"
"""Name of the copy: one that Notepad opens and that no folder of logs takes for a log."""


def arguments(parser: ArgumentParser) -> None:
    """Add which log, and where its copy goes."""
    parser.add_argument("log", metavar="LOG", type=existing_file, help="a log, or a fleet file; it is only read")
    parser.add_argument(
        "-o", "--out", metavar="OUT", type=Path, default=Path(COPY), help=f"the copy; {COPY} here where none is named"
    )


def run(asked: Namespace) -> int:
    """Write the copies, say how far they are what the log is, and return the exit status."""
    from logbook.disguise.log import disguise, disguise_fleet
    from logbook.model.fleet import FLEET_FILE
    from logbook.read.folder import nearest_fleet_file

    log: Path = asked.log
    fleet = nearest_fleet_file(log)
    if log.name.casefold() == FLEET_FILE:
        made = disguise_fleet(log.read_bytes())
    else:
        made = disguise(log.read_bytes(), fleet.read_bytes() if fleet is not None else None)
    copies = [(asked.out, made.log)]
    if made.fleet is not None:
        copies.append((asked.out.with_name(f"{asked.out.stem}-fleet{asked.out.suffix}"), made.fleet))
    for path, _ in copies:
        if path.exists():
            raise Failure(f"{shown(path)} is there already; name another with -o", NOT_WRITTEN)
    for path, data in copies:
        with path.open("xb") as file:
            file.write(data)
    names = " and ".join(shown(path) for path, _ in copies)
    tell(f"{names} written; {many(made.faults, 'problem')} as in {shown(log)}")
    if made.other:
        lines = ", ".join(f"line {line} [{code}]" for line, code in made.other[:5])
        tell(f"but {many(len(made.other), 'problem')} could not be kept: {lines}")
    tell("look it over before you send it: dates, times, weights, depths and kinds of fish are as they were")
    return CLEAN
