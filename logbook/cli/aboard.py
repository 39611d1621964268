"""Say how a trip stands, on one screen: fish, hold, ice, age, when she docks and when to turn for home.

Stands as of the last thing in the log, else --at TIME (`now` for this moment); once docked, as of docking. The table
says what becomes of it on turning now or later. Exit status 1 if the log has errors.
"""

import json
from argparse import ArgumentParser, Namespace

from logbook.cli.one_trip import Past, reckoned
from logbook.cli.say import in_language_of, status_of, tell_faults
from logbook.cli.words import add_log
from logbook.reckon.as_of import until
from logbook.reckon.hail import hailed


def arguments(parser: ArgumentParser) -> None:
    """Add the log, and the moment."""
    add_log(parser)


def run(asked: Namespace) -> int:
    """Print the screen and return the exit status."""
    trip, fleet, figures = reckoned(asked.log, asked.at, past=Past.WHILE_OUT)
    if asked.json:
        from logbook.model.export import as_json

        made = as_json(figures)
        told = figures.weather
        made["icing_on_deck"] = told.icing_on_deck and {
            "icing": told.icing_on_deck,
            "at": told.icing_on_deck_at and told.icing_on_deck_at.isoformat(),
        }
        made.pop("tows")
        print(json.dumps(made, indent=2, ensure_ascii=False, allow_nan=False))
    else:
        from logbook.render.aboard import aboard_text

        with in_language_of(fleet):
            print(aboard_text(figures, hailed(until(trip, figures.trip.as_of))))
        tell_faults(asked.log, figures.problems)
    return status_of(figures.problems)
