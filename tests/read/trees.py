"""What the tests of the tree share: small logs, trees as plain values, and both of PyYAML's parsers."""

from typing import Any

import yaml

from logbook.model.problem import Problem
from logbook.read import events
from logbook.read.keys import TEXT_KEYS
from logbook.read.tree import Lost, Mapping, Node, Scalar, Sequence, read_tree

LOADERS = {"libyaml": events.LOADER, "python": yaml.BaseLoader}
"""The parser that the reader takes, and the one it has where there is no libyaml."""

HEAD = "vessel: Petrel\nsailed: 2026-03-04 05:30\n"


class Gone:
    """Equals what stands for something lost."""

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Gone)

    def __hash__(self) -> int:
        return 0

    def __repr__(self) -> str:
        return "LOST"


LOST = Gone()


def plain(node: Node | None) -> Any:  # noqa: ANN401 - tests look into it as they need
    """Return a tree as texts, lists and pairs; `None` as a key stands for lines that show no key."""
    if isinstance(node, Scalar):
        return node.value
    if isinstance(node, Sequence):
        return [plain(item) for item in node.items]
    if isinstance(node, Mapping):
        pairs: dict[str | None, Any] = {key.value: plain(value) for key, value in node.entries}
        return pairs | ({None: len(node.lost)} if node.lost else {})
    return LOST if isinstance(node, Lost) else None


def exact(node: Node | None) -> object:
    """Return all of a tree, places too, so that two can be compared."""
    if isinstance(node, Scalar):
        return (node.value, node.line, node.column, node.end_line, node.style, node.comment)
    if isinstance(node, Lost):
        return ("lost", node.line, node.column, node.end_line)
    if isinstance(node, Sequence):
        return (node.line, node.column, node.end_line, node.flow, [exact(item) for item in node.items])
    if isinstance(node, Mapping):
        pairs = [(exact(key), exact(value)) for key, value in node.entries]
        return (node.line, node.column, node.end_line, node.flow, pairs, [exact(lost) for lost in node.lost])
    return None


def read(text: str | bytes) -> tuple[Mapping | None, tuple[Problem, ...]]:
    """Return the tree of a log."""
    return read_tree(text if isinstance(text, bytes) else text.encode(), "trip.yaml", TEXT_KEYS)


def kept(text: str | bytes) -> Any:  # noqa: ANN401 - tests look into it as they need
    """Return what is kept of a log."""
    return plain(read(text)[0])


def told(text: str | bytes) -> list[str]:
    """Return what is said of a log, as `line:column code`."""
    return [f"{problem.place.line}:{problem.place.column} {problem.code}" for problem in read(text)[1]]


def hints(text: str) -> list[str]:
    """Return the hints of what is said of a log."""
    return [problem.hint for problem in read(text)[1]]


def value(text: str, *keys: str) -> Node:
    """Return the node below keys of a log that reads clean."""
    root, problems = read(text)
    assert problems == ()
    node: Node | None = root
    for key in keys:
        assert isinstance(node, Mapping)
        node = next(item for name, item in node.entries if name.value == key)
    assert node is not None
    return node


def library(text: str) -> object:
    """Return what PyYAML itself makes of a text, as texts only."""
    loader: Any = yaml.BaseLoader(text)
    return loader.get_single_data()
