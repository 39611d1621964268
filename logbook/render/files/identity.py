"""Names that never change for what other programs keep: made from the fleet, the trip and the landing, never by chance."""

from uuid import UUID, uuid5

_OURS = UUID("6f0d3f5e-2a5c-4c0e-9b0b-7d3f1c5a9e84")


def identity(name: str, *parts: str) -> UUID:
    """Return the same UUID for the same fleet and parts, and another for any other.

    Source:
        RFC 9562 section 5.5 (version 5, made from a name).
    """
    return uuid5(_OURS, "\x1f".join((name, *parts)).encode("utf-8", "replace").decode())
