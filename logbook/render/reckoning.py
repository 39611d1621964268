"""The page that says how every figure is reckoned, what is assumed, and what none of it is."""

from msgspec import Struct

from logbook.model.fleet import Fleet
from logbook.render.cautions import CAUTIONS, Caution
from logbook.render.environment import environment
from logbook.render.formulas import CHAPTERS, Chapter
from logbook.render.frame import Frame, Site
from logbook.render.language import _
from logbook.render.links import RECKONING


class ReckoningPage(Struct, frozen=True, kw_only=True):
    """All that the page shows."""

    frame: Frame
    cautions: tuple[Caution, ...]
    chapters: tuple[Chapter, ...]
    fleet: Fleet


def reckoning_context(site: Site, fleet: Fleet) -> ReckoningPage:
    """Return what the page shows."""
    return ReckoningPage(
        frame=Frame(site=site, path=RECKONING, title=_("How it is reckoned")),
        cautions=CAUTIONS,
        chapters=CHAPTERS,
        fleet=fleet,
    )


def render_reckoning(context: ReckoningPage) -> str:
    """Return the page as HTML."""
    return environment().get_template("pages/reckoning.html").render(page=context, frame=context.frame)
