import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.render import notes
from logbook.render.notes import note


@pytest.mark.parametrize(
    ("typed", "shown"),
    [
        ("", ""),
        ("  \n ", ""),
        ("Good marks at the turn.", "<p>Good marks at the turn.</p>\n"),
        ("*wing* torn", "<p><em>wing</em> torn</p>\n"),
        ("**wing** torn", "<p><strong>wing</strong> torn</p>\n"),
        ("one\ntwo", "<p>one<br>\ntwo</p>\n"),
        ("one\n\ntwo", "<p>one</p>\n<p>two</p>\n"),
        ("- a net\n- a door", "<ul>\n<li>a net</li>\n<li>a door</li>\n</ul>\n"),
        ("<script>alert(1)</script>", "<p>&lt;script&gt;alert(1)&lt;/script&gt;</p>\n"),
        ("fish & <b>chips</b>", "<p>fish &amp; &lt;b&gt;chips&lt;/b&gt;</p>\n"),
        ("&amp; stays", "<p>&amp;amp; stays</p>\n"),
        ("# No heading", "<p># No heading</p>\n"),
        ("{{ 7*7 }} and $x$", "<p>{{ 7*7 }} and $x$</p>\n"),
        ("![a](http://elsewhere.example/x.png)", None),
        ("[x](javascript:alert(1))", "<p>[x](javascript:alert(1))</p>\n"),
        ("[x](file:///etc/passwd)", "<p>[x](file:///etc/passwd)</p>\n"),
        ("[x](../index.html)", "<p>[x](../index.html)</p>\n"),
        ("[x](data:text/html,1)", "<p>[x](data:text/html,1)</p>\n"),
    ],
)
def test_a_remark_is_shown_as_typed_or_as_the_markdown_it_is(typed: str, shown: str | None) -> None:
    if shown is not None:
        assert str(note(typed)) == shown
    assert "<img" not in note(typed)


@pytest.mark.parametrize(
    "address", ["https://elsewhere.example/a?b=1&c=2", "http://elsewhere.example", "mailto:a@b.example"]
)
def test_links_of_the_web_and_of_mail_tell_nothing_of_where_they_stand(address: str) -> None:
    html = str(note(f"see [there]({address})"))

    assert f'href="{address.replace("&", "&amp;")}"' in html
    assert 'rel="noopener noreferrer nofollow"' in html


@given(st.text(max_size=200))
def test_nothing_typed_becomes_a_tag_that_was_not_meant(text: str) -> None:
    html = str(note(text))
    for known in (
        "<p>",
        "</p>",
        "<em>",
        "</em>",
        "<strong>",
        "</strong>",
        "<br>",
        "<ul>",
        "</ul>",
        "<li>",
        "</li>",
        "</ol>",
        "<ol>",
        "</a>",
    ):
        html = html.replace(known, "")

    assert not [piece for piece in html.split("<")[1:] if not piece.startswith(("a href=", "ol start="))]


@given(st.from_regex(notes._PLAIN, fullmatch=True).map(str.strip))
def test_plain_text_comes_out_as_the_parser_would_have_it(text: str) -> None:
    assert str(note(text)) == notes._parser().render(text)


def test_an_address_that_is_none_is_not_linked() -> None:
    assert not notes._may_be_linked("http://[")


def test_an_over_long_remark_is_plain_text_whole() -> None:
    html = str(note("[" * 30_000 + "\nend"))

    assert html.count("[") == 30_000
    assert "<br>\nend" in html
