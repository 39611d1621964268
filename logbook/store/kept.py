"""What is kept, as bytes that tell of damage: sealed with a digest, or squeezed, which comes with a sum of its own."""

import hashlib
import zlib
from typing import TypeVar

import msgspec

from logbook.model.packed import unpacked
from logbook.store.store import StoreError

T = TypeVar("T")

_SEAL = 8
_SWIFT = 1
"""How hard zlib tries: it is not worth a millisecond to make what is kept smaller."""


def sealed(content: bytes) -> bytes:
    """Return content as it is kept, so that damage to it is noticed."""
    return hashlib.sha256(content).digest()[:_SEAL] + content


def unsealed(kept: object) -> bytes:
    """Return content that was sealed.

    Raises:
        StoreError: It is not what was kept.
    """
    if isinstance(kept, bytes) and hashlib.sha256(kept[_SEAL:]).digest()[:_SEAL] == kept[:_SEAL]:
        return kept[_SEAL:]
    raise StoreError("damaged")


def squeezed(content: bytes) -> bytes:
    """Return content as much of it is kept, in less room."""
    return zlib.compress(content, _SWIFT)


def unsqueezed(kept: bytes) -> bytes:
    """Return content that was squeezed.

    Raises:
        StoreError: It is not what was kept.
    """
    try:
        return zlib.decompress(kept)
    except (zlib.error, TypeError) as fault:
        raise StoreError(str(fault)) from fault


def record_of(content: bytes, kind: type[T]) -> T:
    """Return the record that content is of.

    Raises:
        StoreError: It is of no such record.
    """
    try:
        return unpacked(content, kind)
    except (msgspec.MsgspecError, RecursionError) as fault:
        raise StoreError(str(fault)) from fault
