"""The one template environment: where templates lie and how they turn values into HTML."""

from collections.abc import Mapping
from functools import cache, lru_cache
from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path

from jinja2 import BytecodeCache, Environment, FunctionLoader, StrictUndefined
from jinja2.bccache import Bucket
from markupsafe import Markup

from logbook.render.language import _, _c, _n, chosen, speech
from logbook.render.shown import FILTERS, many, missing, not_known
from logbook.render.told import told


def template_root() -> Traversable:
    """Return the templates' folder: in the package once installed, beside it in a checkout."""
    installed = files("logbook") / "templates"
    if installed.is_dir():
        return installed
    return Path(__file__).resolve().parents[2] / "templates"


class Compiled(BytecodeCache):
    """Templates as they were compiled, by earlier runs and in this one: it takes a third of a second, to load them a hundredth.

    Attributes:
        new: What was compiled in this run, by a key of the template's name.
    """

    def __init__(self, kept: Mapping[str, bytes]) -> None:
        """Begin with what earlier runs compiled; what was made of another text is not used."""
        self._kept, self.new = kept, dict[str, bytes]()

    def load_bytecode(self, bucket: Bucket) -> None:
        """Fill in what is known of a template."""
        if bucket.key in self._kept:
            bucket.bytecode_from_string(self._kept[bucket.key])

    def dump_bytecode(self, bucket: Bucket) -> None:
        """Take what was compiled."""
        self.new[bucket.key] = bucket.bytecode_to_string()


def compiled(kept: Mapping[str, bytes]) -> Compiled:
    """Have templates loaded by what earlier runs compiled, and return what notes down those compiled from now on."""
    known = Compiled(kept)
    environment().bytecode_cache = known
    return known


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
    made.newstyle_gettext = True  # type: ignore[attr-defined] # the extension's
    made.globals.update(_=_phrase, gettext=_phrase, ngettext=_counted, pgettext=_in_context)
    made.filters.update(FILTERS, chosen=chosen, told=told)
    return made


def _phrase(text: str, /, **values: object) -> Markup:
    return _filled(_(text), values)


def _counted(one: str, more: str, number: int, /, **values: object) -> Markup:
    return _filled(_n(one, more, number), {"num": number, **values})


def _in_context(context: str, text: str, /, **values: object) -> Markup:
    return _filled(_c(context, text), values)


def _filled(phrase: str, values: dict[str, object]) -> Markup:
    """Return a phrase, which is HTML, with values in it, which are escaped; `%%` is a sign of per cent.

    The extension's own functions do the same, and cost a page half a millisecond more.
    """
    return Markup(phrase) % values if values else _by_itself(phrase)  # noqa: S704 - the phrase is our own


@cache
def _by_itself(phrase: str) -> Markup:
    return Markup(phrase) % {}  # noqa: S704 - the same


def _source(name: str) -> str | None:
    """Return the text of a template, or None where there is none of that name."""
    place = template_root().joinpath(*name.split("/"))
    return place.read_text("utf-8") if place.is_file() else None
