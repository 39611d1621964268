"""Reckon one trip: tows, catch, totals, how old the fish is, passage and landing.

Figures are as of the docking where there is one, else --at TIME, else the last thing in the log; a TIME without an
offset is in the log's zone. Exit status 1 if the log has errors; the figures leave out what they touch.
"""

import json
import sys
from argparse import ArgumentParser, Namespace

from logbook.cli.one_trip import Past, reckoned
from logbook.cli.say import in_language_of, print_problems, status_of
from logbook.cli.words import add_log


def arguments(parser: ArgumentParser) -> None:
    """Add the log, and how its figures are wanted."""
    add_log(parser)


def run(asked: Namespace) -> int:
    """Print the figures and return the exit status."""
    trip, fleet, figures = reckoned(asked.log, asked.at, past=Past.ALWAYS)
    if asked.json:
        from logbook.model.export import as_json

        print(json.dumps(as_json(figures), indent=2, ensure_ascii=False, allow_nan=False))
    else:
        from logbook.render.plain import plain_report

        with in_language_of(fleet):
            print(plain_report(trip, figures))
        print_problems(figures.problems, sys.stderr)
    return status_of(figures.problems)
