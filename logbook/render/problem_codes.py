"""The page that explains every problem code: what it means, a bad and a good line, what the reader did with it."""

from msgspec import Struct

from logbook.model.codes import CHAPTERS, Chapter
from logbook.model.language import ENGLISH
from logbook.render.environment import environment
from logbook.render.frame import Crumb, Frame, Site
from logbook.render.language import _, speech
from logbook.render.links import PROBLEM_CODES, PROBLEMS


class CodesPage(Struct, frozen=True, kw_only=True):
    """All that the page shows.

    Attributes:
        frame: Its place in the archive.
        chapters: The codes, by what they are about.
    """

    frame: Frame
    chapters: tuple[Chapter, ...]

    @property
    def translated(self) -> bool:
        """Tell whether the page is in another language than its explanations, which are in English as the checks are."""
        return speech().tag != ENGLISH


def codes_context(site: Site) -> CodesPage:
    """Return what the page shows; the same in every archive."""
    back = (Crumb(name=_("Log problems"), path=PROBLEMS),)
    return CodesPage(
        frame=Frame(site=site, path=PROBLEM_CODES, title=_("Problem codes"), crumbs=back), chapters=CHAPTERS
    )


def render_codes(context: CodesPage) -> str:
    """Return the page as HTML."""
    return environment().get_template("pages/codes.html").render(page=context, frame=context.frame)
