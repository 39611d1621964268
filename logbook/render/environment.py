"""The one template environment: where templates lie and how they turn values into HTML."""

from functools import lru_cache
from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path

from jinja2 import Environment, FunctionLoader, StrictUndefined

from logbook.render.language import _, _c, _n, chosen, speech
from logbook.render.shown import FILTERS, many, missing, not_known
from logbook.render.told import told


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
        optimized=False,  # nor is a filter of a constant worked out once, in the language of that moment: templates have none
        extensions=["jinja2.ext.i18n"],
    )
    made.policies["ext.i18n.trimmed"] = True
    made.globals.clear()
    made.globals.update(many=many, missing=missing, not_known=not_known, speech=speech)
    made.install_gettext_callables(_, _n, newstyle=True, pgettext=_c)  # type: ignore[attr-defined] # the extension's
    made.globals["_"] = made.globals["gettext"]
    del made.globals["npgettext"]
    made.filters.update(FILTERS, chosen=chosen, told=told)
    return made


def _source(name: str) -> str | None:
    """Return the text of a template, or None where there is none of that name."""
    place = template_root().joinpath(*name.split("/"))
    return place.read_text("utf-8") if place.is_file() else None
