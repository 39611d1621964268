"""Finds the command that is meant and runs it; what goes wrong ends in a message and an exit status, not in a traceback.

Exit status: 0 clean (warnings allowed), 1 errors in logs, 2 wrong usage, 3 could not write, 130 interrupted.
"""

import os
import sys
from importlib import import_module

from logbook import __version__
from logbook.cli.say import CLEAN, INTERRUPTED, NOT_WRITTEN, WRONG_USAGE, Failure, complain
from logbook.cli.words import parser_of

COMMANDS = {
    "start": "begin the log of a vessel's next trip, or an empty folder of logs",
    "check": "what is wrong in the logs, line by line",
    "explain": "what the code of a problem means, with a bad and a good line",
    "reckon": "the figures of one trip",
    "aboard": "how the trip stands: fish, hold, ice, age, and when to turn for home",
    "hail": "the message to send ashore",
    "ice": "the ice to take for a planned trip",
    "here": "what was caught near a place at this time of other years, and fasts near it",
    "build": "publish the archive of a folder of logs",
    "export": "the archive's files for other programs, without its pages",
    "scrub": "a copy of a log to show to strangers: its faults kept, names and places replaced",
    "schema": "what editors need to know of logs and fleet files",
    "completion": "what a shell needs to complete this program's words",
}
"""Every command, whose module in this package has its name, and what it does."""

HELP = """\
usage: logbook COMMAND ...

Trip logs kept in any text editor: checked, reckoned and published as an archive.

Commands (logbook COMMAND --help says more of each):
{commands}

Examples:
  logbook start --fleet logs             an empty folder of logs, with a first trip to fill in
  logbook start 'Solan Bright' --logs sample_logs
  logbook check sample_logs              what is wrong in the logs, line by line
  logbook explain weight-unreadable      what that code means; without one, a list of all
  logbook reckon LOG                     the figures of one trip
  logbook reckon LOG --json              the same for other programs
  logbook aboard LOG                     what is aboard, how long the ice lasts, when to turn
  logbook hail LOG                       what to send ashore
  logbook here '58 52N 015 10W'          the same ground at this time of other years
  logbook ice --vessel 'Solan Bright' --days 7 --catch '40 t' --sea '8 C'
  logbook build sample_logs site         publish the archive; open site/index.html
  logbook export sample_logs tables      tables, tracks, a feed and a calendar for other programs

Options:
  -h, --help     this text
  --version      which version this is

Exit status: 0 clean (warnings allowed), 1 errors in logs, 2 wrong usage, 3 could not write."""


def main() -> None:
    """Run the command and leave with its exit status; no traceback for what a user can mend."""
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="backslashreplace")
    try:
        status = _run(sys.argv[1:])
        sys.stdout.flush()
    except KeyboardInterrupt:
        status = INTERRUPTED
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        status = CLEAN
    except Failure as fault:
        complain(str(fault))
        status = fault.status
    except OSError as fault:
        where = f"{fault.filename}: " if fault.filename else ""
        complain(f"{where}{fault.strerror or fault}")
        status = NOT_WRITTEN
    sys.exit(status)


def _run(words: list[str]) -> int:
    """Run the command that the words begin with and return its exit status."""
    name = words[0] if words else ""
    if name in COMMANDS:
        command = import_module(f"logbook.cli.{name}")
        parser = parser_of(name, command.__doc__ or "")
        command.arguments(parser)
        status: int = command.run(parser.parse_args(words[1:]))
        return status
    if name == "--version":
        print(f"logbook {__version__}")
        return CLEAN
    if name in {"-h", "--help"}:
        print(_help())
        return CLEAN
    if not words:
        print(_help(), file=sys.stderr)
        return WRONG_USAGE
    raise Failure(_no_command(name), WRONG_USAGE)


def _help() -> str:
    return HELP.format(commands="\n".join(f"  {name:<10} {said}" for name, said in COMMANDS.items()))


def _no_command(name: str) -> str:
    import difflib

    near = difflib.get_close_matches(name, COMMANDS, n=1)
    hint = f"did you mean {near[0]}?" if near else "logbook --help lists the commands"
    return f"there is no command '{name}'; {hint}"
