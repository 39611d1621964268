"""Digests of what things hang on, by which it is known whether they have changed."""

import hashlib


def digest(*parts: bytes) -> bytes:
    """Return a digest of some bytes, another one for the same bytes parted elsewhere."""
    made = hashlib.sha256()
    for part in parts:
        made.update(f"{len(part)}\0".encode())
        made.update(part)
    return made.digest()
