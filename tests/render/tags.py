"""What tags a page has, as the tests of pages ask for them."""

from html.parser import HTMLParser


class Tags(HTMLParser):
    """Every tag of a page with its attributes."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.tags: list[tuple[str, dict[str, str]]] = []
        self.feed(text)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, {name: value or "" for name, value in attrs}))
