"""Records as bytes and back: for what is kept from one build to the next, and for telling whether two records are the same."""

from typing import Any, TypeVar, get_args, get_origin

import msgspec

from logbook.model.named import ByName

T = TypeVar("T")


def packed(record: object) -> bytes:
    """Return a record as bytes: the same for the same record, whatever the machine, and others for any other.

    Raises:
        NotImplementedError: There is something in it that is no part of a record.
    """
    return msgspec.json.encode(record, enc_hook=_pairs, order="deterministic")


def packed_as_it_stands(record: object) -> bytes:
    """Return a record as bytes with its tables in the order they have, which may have numbers for names; it holds no sets.

    Raises:
        NotImplementedError: There is something in it that is no part of a record.
    """
    return msgspec.json.encode(record, enc_hook=_pairs)


def unpacked(content: bytes, kind: type[T]) -> T:
    """Return the record of some bytes.

    Raises:
        msgspec.MsgspecError: They are not those of such a record.
        RecursionError: They are nested too deep for one.
    """
    return msgspec.json.decode(content, type=kind, dec_hook=_table)


def _pairs(value: object) -> object:
    """Return a table of names as pairs, whose order holds; sets are put in order as they are written."""
    if isinstance(value, ByName):
        return tuple(value.items())
    raise NotImplementedError(f"{type(value).__name__} is no part of a record")


def _table(kind: Any, value: object) -> object:  # noqa: ANN401 - msgspec hands over kinds of every kind
    """Return a table of names from its pairs."""
    if get_origin(kind) is not ByName:
        raise NotImplementedError(f"{kind} is no part of a record")
    if value == []:
        return ByName()
    (item,) = get_args(kind)
    # By hand, not as a list of pairs: a trip has hundreds of tables, and `convert` looks at such a type anew each time.
    return ByName([(_name(name), msgspec.convert(one, item, dec_hook=_table)) for name, one in _list(value)])


def _list(value: object) -> list[Any]:
    if isinstance(value, list):
        return value
    raise msgspec.ValidationError("a table is a list of pairs")


def _name(value: object) -> str:
    if isinstance(value, str):
        return value
    raise msgspec.ValidationError("the names in a table are text")
