"""General-purpose site generators, each with the barest set-up of its own: how it is asked for its version and has a folder built.

All read the same Markdown in `content/`; feeds, search, sitemaps and sorting by tags are off, and the theme is what the page needs and
nothing else. MkDocs and Pelican are modules of a Python, Hugo and Eleventy commands on the path. One that is not there is left out.
"""

import re
import shutil
import subprocess
from collections.abc import Iterator, Mapping
from pathlib import Path

from msgspec import Struct

CONTENT = "content"


class Peer(Struct, frozen=True, kw_only=True):
    """A site generator.

    Attributes:
        name: Its name.
        start: The words that start it.
        version: Its version.
        setup: The files it wants, by their paths in the folder that it is started in.
        full: What it is told so that everything is built.
        again: What it is told where it has built before; None where that is its full build all over, and a slow one.
        out: Where its pages come, in that folder.
        keeps: What it keeps for the next time, in that folder; empty where it keeps nothing.
    """

    name: str
    start: tuple[str, ...]
    version: str
    setup: Mapping[str, str]
    full: tuple[str, ...]
    again: tuple[str, ...] | None
    out: str
    keeps: str = ""


def peers(python: str) -> Iterator[Peer | str]:
    """Give the generators that are there, and of the others their names.

    Args:
        python: The Python that MkDocs and Pelican are installed for.
    """
    for name, start, asks, make in (
        ("Hugo", ("hugo",), "version", _hugo),
        ("Eleventy", ("eleventy",), "--version", _eleventy),
        ("MkDocs", (python, "-m", "mkdocs"), "--version", _mkdocs),
        ("Pelican", (python, "-m", "pelican"), "--version", _pelican),
    ):
        version = _version((*start, asks))
        yield make(start, version) if version else name


def _version(asking: tuple[str, ...]) -> str | None:
    """Return what a command says of its version; None where there is no such command."""
    found = shutil.which(asking[0])
    if found is None:
        return None
    told = subprocess.run([found, *asking[1:]], capture_output=True, text=True, check=False)
    version = re.search(r"(?<![\d.])\d+\.\d+[\d.]*\d", told.stdout)
    return version.group() if told.returncode == 0 and version else None


def set_up(peer: Peer, folder: Path) -> None:
    """Write a generator's own files beside the Markdown."""
    for path, text in peer.setup.items():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_text(text, "utf-8")


_FRAME = '<!DOCTYPE html>\n<html lang="en"><head><meta charset="utf-8"><title>{title}</title></head>\n<body>{body}</body></html>\n'
"""The whole theme, but for how each says title and content."""


def _framed(title: str, body: str) -> str:
    return _FRAME.format(title=title, body=body)


def _listed(each: str, link: str, title: str, end: str) -> str:
    """Return a page that lists all pages, in a template language of braces and percent signs."""
    return _framed("Trips", f'<ul>{each}<li><a href="{{{{ {link} }}}}">{{{{ {title} }}}}</a></li>{end}</ul>')


def _hugo(start: tuple[str, ...], version: str) -> Peer:
    config = f"""baseURL = "/"
title = "Trips"
contentDir = "{CONTENT}"
layoutDir = "hugo-layouts"
disableKinds = ["taxonomy", "term", "RSS", "sitemap", "robotsTXT", "404"]
"""
    return Peer(
        name="Hugo",
        start=start,
        version=version,
        setup={
            "hugo.toml": config,
            "hugo-layouts/_default/single.html": _framed("{{ .Title }}", "{{ .Content }}"),
            "hugo-layouts/index.html": _listed(
                "{{ range .Site.RegularPages }}", ".RelPermalink", ".Title", "{{ end }}"
            ),
        },
        full=("--quiet", "--config", "hugo.toml", "--destination", "out-hugo"),
        again=("--quiet", "--config", "hugo.toml", "--destination", "out-hugo"),
        out="out-hugo",
    )


def _eleventy(start: tuple[str, ...], version: str) -> Peer:
    listed = _listed("{% for page in collections.all %}", "page.url", "page.data.title", "{% endfor %}")
    config = f"""module.exports = function (config) {{
  config.addTemplate("index.njk", `---
title: Trips
eleventyExcludeFromCollections: true
---
{listed}`);
  config.addGlobalData("layout", "page.njk");
  return {{
    markdownTemplateEngine: false,
    dir: {{ input: "{CONTENT}", includes: "../eleventy-includes", output: "out-eleventy" }},
  }};
}};
"""
    return Peer(
        name="Eleventy",
        start=start,
        version=version,
        setup={
            "eleventy.config.cjs": config,
            "eleventy-includes/page.njk": _framed("{{ title }}", "{{ content | safe }}"),
        },
        full=("--quiet", "--config=eleventy.config.cjs"),
        again=("--quiet", "--config=eleventy.config.cjs"),
        out="out-eleventy",
    )


def _mkdocs(start: tuple[str, ...], version: str) -> Peer:
    config = f"""site_name: Trips
docs_dir: {CONTENT}
site_dir: out-mkdocs
use_directory_urls: false
plugins: []
theme: {{name: null, custom_dir: mkdocs-theme}}
"""
    return Peer(
        name="MkDocs",
        start=start,
        version=version,
        setup={
            "mkdocs.yml": config,
            "mkdocs-theme/main.html": _framed("{{ page.title }}", "{{ page.content }}"),
            "mkdocs-theme/sitemap.xml": "",  # an empty one is not written
        },
        full=("build", "--quiet"),
        again=None,
        out="out-mkdocs",
    )


def _pelican(start: tuple[str, ...], version: str) -> Peer:
    config = """SITENAME = "Trips"
TIMEZONE = "UTC"
THEME = "pelican-theme"
THEME_STATIC_PATHS = STATIC_PATHS = PLUGINS = ARTICLE_PATHS_EXCLUDED = []
ARTICLE_PATHS = [""]
DIRECT_TEMPLATES = ["index"]
SLUGIFY_SOURCE = "basename"
ARTICLE_SAVE_AS = ARTICLE_URL = "{slug}.html"
AUTHOR_SAVE_AS = CATEGORY_SAVE_AS = TAG_SAVE_AS = ""
FEED_ALL_ATOM = CATEGORY_FEED_ATOM = TRANSLATION_FEED_ATOM = AUTHOR_FEED_ATOM = AUTHOR_FEED_RSS = None
CACHE_PATH = "pelican-cache"
CHECK_MODIFIED_METHOD = "mtime"
"""
    told = (CONTENT, "--settings", "pelicanconf.py", "--output", "out-pelican", "--quiet")
    cached = ("--extra-settings", "CACHE_CONTENT=true", "LOAD_CONTENT_CACHE=true")
    return Peer(
        name="Pelican",
        start=start,
        version=version,
        setup={
            "pelicanconf.py": config,
            "pelican-theme/templates/article.html": _framed("{{ article.title }}", "{{ article.content }}"),
            "pelican-theme/templates/index.html": _listed(
                "{% for article in articles %}", "article.url", "article.title", "{% endfor %}"
            ),
        },
        full=told,
        again=(*told, *cached),
        out="out-pelican",
        keeps="pelican-cache",
    )
