"""Write the message to send ashore: who, when she docks, what is aboard and how old, the sale, what she wants.

Plain text under 600 characters. The weights are the skipper's own, in the units they were typed in. For one still
fishing the docking is that of turning now. Exit status 1 if the log has errors.
"""

import json
from argparse import ArgumentParser, Namespace

from logbook.cli.one_trip import Past, reckoned
from logbook.cli.say import in_language_of, status_of, tell_faults
from logbook.cli.words import add_log
from logbook.reckon.hail import reckon_hail
from logbook.render.hail import hail_text


def arguments(parser: ArgumentParser) -> None:
    """Add the log, and the moment of the hail."""
    add_log(parser)


def run(asked: Namespace) -> int:
    """Print the hail and return the exit status."""
    trip, fleet, figures = reckoned(asked.log, asked.at, past=Past.NEVER)
    hail = reckon_hail(trip, figures)
    with in_language_of(fleet):
        text = hail_text(hail)
    if asked.json:
        from logbook.model.export import record_as_json

        made = record_as_json(hail) | {"text": text, "characters": len(text)}
        print(json.dumps(made, indent=2, ensure_ascii=False, allow_nan=False))
    else:
        print(text)
        tell_faults(asked.log, figures.problems)
    return status_of(figures.problems)
