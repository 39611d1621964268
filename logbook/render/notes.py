"""Remarks, typed as Markdown, to safe HTML: emphasis, lists and links; no raw HTML, no pictures, no headings."""

import re
from collections.abc import Sequence
from functools import lru_cache
from urllib.parse import urlsplit

from markdown_it import MarkdownIt
from markdown_it.renderer import RendererHTML
from markdown_it.token import Token
from markdown_it.utils import EnvType, OptionsDict
from markupsafe import Markup

LONGEST = 20_000
"""Characters up to which a remark is taken as Markdown; a longer one is shown as plain text, since odd ones cost too much."""

_PLAIN = re.compile(r"[A-Za-z(][^\\*_\[\]<>&\"\t\n\r\0\x0b\x0c\x1c-\x1f\x85\u2028\u2029]*")
"""Text that Markdown can't change: one line that begins with a letter and has no sign of it."""

_SCHEMES = frozenset({"http", "https", "mailto"})


def note(text: str) -> Markup:
    """Return a remark as paragraphs and lists; nothing for nothing."""
    stripped = text.strip()
    if not stripped:
        return Markup("")
    if _PLAIN.fullmatch(stripped):
        return Markup(f"<p>{stripped}</p>\n")  # noqa: S704 - there is no sign in it that would need escaping
    if len(stripped) > LONGEST:
        return Markup("<p>{}</p>\n").format(Markup("<br>\n").join(stripped.splitlines()))
    return Markup(_parser().render(stripped))  # noqa: S704 - the parser escapes all that it was not told to read


def plain(text: str) -> str:
    """Return a remark on one line, for where no HTML can stand."""
    return " ".join(text.split())


@lru_cache(maxsize=1)
def _parser() -> MarkdownIt:
    """Return the parser, made once: nothing but what is named here is read as Markdown."""
    made = MarkdownIt("zero", {"html": False, "breaks": True})
    made.enable(["emphasis", "list", "paragraph", "newline", "escape", "link"])
    made.validateLink = _may_be_linked  # type: ignore[method-assign]
    made.add_render_rule("link_open", _link_open)
    return made


def _may_be_linked(url: str) -> bool:
    """Tell whether a link may be made of an address: of the web or of mail, and nothing else."""
    try:
        return urlsplit(url).scheme in _SCHEMES
    except ValueError:
        return False


def _link_open(
    renderer: RendererHTML, tokens: Sequence[Token], position: int, options: OptionsDict, env: EnvType
) -> str:
    """Return the opening tag of a link, which tells the other side nothing of this archive."""
    tokens[position].attrSet("rel", "noopener noreferrer nofollow")
    return renderer.renderToken(tokens, position, options, env)
