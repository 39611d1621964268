"""Sentences as comments of a YAML file, short enough for an editor's window."""

import textwrap

_WIDTH = 100


def told(text: str) -> list[str]:
    """Return a text as the lines of a comment."""
    return textwrap.wrap(text, _WIDTH, initial_indent="# ", subsequent_indent="# ", break_on_hyphens=False)
