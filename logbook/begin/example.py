"""The example of a key, as lines of a file and as the value that a file holding them has."""

from logbook.read.keys import Key
from logbook.read.tree import Lost, Mapping, Node, Scalar, Sequence, read_tree

Value = str | list["Value"] | dict[str, "Value"] | None


def lines_of(key: Key) -> tuple[str, ...]:
    """Return the lines that give a key its example; an item of a list stands below its key."""
    if key.example.startswith("- "):
        return (f"{key.name}:", f"  {key.example}")
    return (f"{key.name}: {key.example}",)


def instance(key: Key) -> Value:
    """Return the value of a key's example, every scalar as text."""
    root, problems = read_tree("\n".join(lines_of(key)).encode(), "", frozenset())
    if root is None or problems:
        raise ValueError(f"the example of '{key.name}' can't be read: {key.example}")
    return _plain(root.entries[0][1])


def _plain(node: Node) -> Value:
    if isinstance(node, Scalar):
        return node.value
    if isinstance(node, Sequence):
        return [_plain(item) for item in node.items]
    if isinstance(node, Mapping):
        return {key.value: _plain(value) for key, value in node.entries}
    assert isinstance(node, Lost)  # noqa: S101 - there is no fourth
    return None
