"""A trip's figures under the keys that `logbook reckon --json` prints."""

import json

import msgspec

from logbook.model.export import as_json
from logbook.model.figures import TripFigures


def trip_json(figures: TripFigures) -> bytes:
    """Return the figures of a trip as JSON; what an edition does not show is null or empty."""
    made = as_json(figures)
    try:
        return msgspec.json.encode(made) + b"\n"
    except UnicodeEncodeError:  # half a letter in a text: the library takes none, and nor does a file
        text = json.dumps(made, ensure_ascii=False, allow_nan=False, separators=(",", ":"))
        return f"{text}\n".encode("utf-8", "replace")
