"""The files that all pages load, the style sheet and the scripts, each named for what is in it, so that they and a page always belong together."""

import hashlib

from logbook.model.page import Page
from logbook.render.environment import template_root

SCRIPTS = ("board", "find", "keys", "tables")
_DIGITS = 8


def style_file() -> Page:
    """Return the style sheet."""
    return _named("style", "css")


def script_files() -> tuple[tuple[str, Page], ...]:
    """Return the scripts with the names that templates know them by."""
    return tuple((name, _named(name, "js")) for name in SCRIPTS)


def _named(name: str, kind: str) -> Page:
    content = (template_root() / "static" / f"{name}.{kind}").read_bytes()
    return Page(path=f"{name}.{hashlib.sha256(content).hexdigest()[:_DIGITS]}.{kind}", content=content)
