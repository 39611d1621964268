"""The one template environment: where templates lie and how they turn values into HTML."""

from functools import lru_cache
from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path

from jinja2 import Environment, FunctionLoader, StrictUndefined

from logbook.render.shown import FILTERS


def template_root() -> Traversable:
    """Return the templates' folder: in the package once installed, beside it in a checkout."""
    installed = files("logbook") / "templates"
    if installed.is_dir():
        return installed
    return Path(__file__).resolve().parents[2] / "templates"


@lru_cache(maxsize=1)
def environment() -> Environment:
    """Return the environment, made once: everything is escaped, and a name nobody gave is an error."""
    made = Environment(
        loader=FunctionLoader(_source),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        auto_reload=False,
    )
    made.globals.clear()
    made.filters.update(FILTERS)
    return made


def _source(name: str) -> str | None:
    """Return the text of a template, or None where there is none of that name."""
    place = template_root().joinpath(*name.split("/"))
    return place.read_text("utf-8") if place.is_file() else None
