"""The templates as trees: they choose and arrange, they don't reckon and never trust a text."""

import re
from pathlib import Path

import pytest
from jinja2 import nodes

from logbook.render import environment as made
from logbook.render.environment import environment, template_root
from tests.untranslated import texts_of

ROOT = Path(str(template_root()))
TEMPLATES = sorted(path.relative_to(ROOT).as_posix() for path in ROOT.rglob("*.html"))

UNITS = {"kg", "m", "t"}

SUMS = (nodes.Mul, nodes.Div, nodes.FloorDiv, nodes.Mod, nodes.Pow, nodes.Add)


def tree(name: str) -> nodes.Template:
    return environment().parse((ROOT / name).read_text("utf-8"))


@pytest.mark.parametrize("name", TEMPLATES)
def test_a_template_trusts_no_text(name: str) -> None:
    filters = {node.name for node in tree(name).find_all(nodes.Filter)}

    assert not filters & {"safe", "forceescape", "striptags", "attr"}
    assert not list(tree(name).find_all((nodes.MarkSafe, nodes.ScopedEvalContextModifier)))


@pytest.mark.parametrize("name", TEMPLATES)
def test_a_template_does_not_reckon(name: str) -> None:
    assert not list(tree(name).find_all(SUMS))
    # the one difference: a cell that spans all columns but the first
    differences = [
        node
        for node in tree(name).find_all(nodes.Sub)
        if getattr(node.left, "attr", getattr(node.left, "name", "")) != "span"
    ]
    assert not differences
    rounding = {"round", "sum", "int", "float", "abs", "min", "max"}
    assert not {node.name for node in tree(name).find_all(nodes.Filter)} & rounding


@pytest.mark.parametrize("name", TEMPLATES)
def test_all_that_a_template_says_of_its_own_is_a_phrase_of_the_catalogue(name: str) -> None:
    outputs = (node for output in tree(name).find_all(nodes.Output) for node in output.nodes)
    bare = "".join(node.data if isinstance(node, nodes.TemplateData) else "0" for node in outputs)

    assert {text for text in texts_of(bare) if re.search("[A-Za-z]", text)} <= UNITS


def test_what_stands_in_a_phrase_is_escaped_and_what_the_phrase_says_is_not() -> None:
    phrases = environment().from_string(
        """{{ _("<i>%(name)s</i>", name=typed) }} {% trans typed %}<i>{{ typed }}</i>{% endtrans %} {{ typed|chosen }}"""
    )

    assert phrases.render(typed="<b>%s</b>") == (
        "<i>&lt;b&gt;%s&lt;/b&gt;</i> <i>&lt;b&gt;%s&lt;/b&gt;</i> &lt;b&gt;%s&lt;/b&gt;"
    )


@pytest.mark.parametrize("name", TEMPLATES)
def test_a_template_has_no_script_in_it_and_no_style_of_its_own(name: str) -> None:
    text = (ROOT / name).read_text("utf-8")

    scripts = re.findall(r"<script[^>]*>(?!</script>)|<script(?! src=)", text)
    assert scripts == []
    assert "<style" not in text
    assert " style=" not in text
    assert "javascript:" not in text


@pytest.mark.parametrize("name", TEMPLATES)
def test_every_template_has_a_line_in_their_list(name: str) -> None:
    assert f"`{name}`" in (ROOT / "README.md").read_text("utf-8")


def test_everything_is_escaped_and_unknown_names_are_errors() -> None:
    assert environment().from_string("{{ text }}").render(text="<b>") == "&lt;b&gt;"
    assert environment().undefined.__name__ == "StrictUndefined"
    assert set(environment().globals) == {
        "_",
        "gettext",
        "many",
        "missing",
        "ngettext",
        "not_known",
        "pgettext",
        "speech",
    }


def test_a_template_that_is_not_there_is_none() -> None:
    assert made._source("pages/nowhere.html") is None


@pytest.mark.parametrize("name", TEMPLATES)
def test_no_filter_is_of_a_constant(name: str) -> None:
    # Jinja2 works such a filter out once, in the language of that moment.
    assert re.findall(r"\{\{-?\s*(?:none|true|false|\"[^\"]*\"|[\d.]+)\s*\|", (ROOT / name).read_text("utf-8")) == []
