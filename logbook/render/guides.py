"""The guides: keeping a log, publishing, and what is promised; written in Markdown beside the templates, one file a language.

They are our own text, so all of Markdown's common form is read, and tables. What is typed in an example stays English in every
language, since keys are.
"""

from collections.abc import Iterator, Sequence
from functools import lru_cache

from markdown_it import MarkdownIt
from markdown_it.token import Token
from markupsafe import Markup, escape
from msgspec import Struct

from logbook.model.language import ENGLISH
from logbook.model.names import slug
from logbook.model.page import Page
from logbook.render.environment import environment, template_root
from logbook.render.frame import Frame, Site
from logbook.render.language import speech
from logbook.render.links import guide_page

GUIDES = ("keeping", "publishing", "promises")
"""Names of their files and pages, in the order they are listed."""


class Guide(Struct, frozen=True, kw_only=True):
    """A guide.

    Attributes:
        name: Name of its file and page.
        tag: Language tag of what it is written in.
        title: Its heading.
        body: What stands below that, as HTML.
    """

    name: str
    tag: str
    title: str
    body: Markup


class GuidePage(Struct, frozen=True, kw_only=True):
    """All that a guide's page shows."""

    frame: Frame
    guide: Guide


def guide_pages(site: Site) -> Iterator[Page]:
    """Give the pages of the guides; strangers are given what is promised, not how logs are kept and published."""
    for name in GUIDES if site.policy.words else GUIDES[-1:]:
        guide = guide_of(name, speech().tag)
        frame = Frame(site=site, path=guide_page(name), title=guide.title)
        html = (
            environment().get_template("pages/guide.html").render(page=GuidePage(frame=frame, guide=guide), frame=frame)
        )
        yield Page(path=frame.path, content=html.encode())


@lru_cache(maxsize=16)
def guide_of(name: str, tag: str) -> Guide:
    """Return a guide in a language; in English where it has not been written in that one."""
    own = template_root() / "guides" / tag / f"{name}.md"
    if tag == ENGLISH or not own.is_file():
        own, tag = template_root() / "guides" / f"{name}.md", ENGLISH
    parser = MarkdownIt("commonmark", {"html": False}).enable("table")
    head, tokens = _parts(parser.parse(own.read_text("utf-8")))
    body = parser.renderer.render(tokens, parser.options, {})
    return Guide(name=name, tag=tag, title=head, body=Markup(body))  # noqa: S704 - our own text, and raw HTML is off


def _parts(tokens: Sequence[Token]) -> tuple[str, list[Token]]:
    """Return the title and what follows it, with tables and examples that can be reached and read out."""
    title, rest, words, heading = tokens[1].content, list(tokens[3:]), "", ""
    made: list[Token] = []
    for place, token in enumerate(rest):
        if token.type == "heading_open":
            words = rest[place + 1].content
            heading = slug(words)
            token.attrSet("id", heading)
        elif token.type == "th_open":
            token.attrSet("scope", "col")
        elif token.type == "table_open":
            made.append(_html(f'<div class="scroll" role="region" tabindex="0" aria-labelledby="{heading}">\n'))
        elif token.type == "fence":
            token.attrSet("tabindex", "0")
        made.append(token)
        if token.type == "table_open":
            made.append(_html(f'<caption class="unseen">{escape(words)}</caption>\n'))
        elif token.type == "table_close":
            made.append(_html("</div>\n"))
    return title, made


def _html(text: str) -> Token:
    return Token("html_block", "", 0, content=text)
