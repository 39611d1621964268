"""A trip's figures under the keys that `logbook reckon --json` prints."""

import json

from logbook.model.export import as_json
from logbook.model.figures import TripFigures


def trip_json(figures: TripFigures) -> bytes:
    """Return the figures of a trip as JSON; what an edition does not show is null or empty."""
    made = json.dumps(as_json(figures), ensure_ascii=False, allow_nan=False, separators=(",", ":"))
    return (made + "\n").encode("utf-8", "replace")
