"""Templates that an earlier run compiled are loaded as they are; what was made of another text is compiled anew."""

from collections.abc import Iterator

import pytest

from logbook.render import environment as made
from logbook.render.environment import compiled, environment


@pytest.fixture(autouse=True)
def _alone() -> Iterator[None]:
    environment.cache_clear()
    yield
    environment.cache_clear()


def page() -> None:
    environment().get_template("parts/table.html")


def test_what_was_compiled_once_is_not_compiled_again() -> None:
    first = compiled({})
    page()
    environment.cache_clear()

    again = compiled(first.new)
    page()

    assert len(first.new) == 1
    assert again.new == {}


def test_what_was_compiled_of_another_text_is_compiled_anew(monkeypatch: pytest.MonkeyPatch) -> None:
    first = compiled({})
    page()
    environment.cache_clear()
    monkeypatch.setattr(made, "_source", lambda _: "{{ 1 }}")

    again = compiled(first.new)
    page()

    assert again.new.keys() == first.new.keys()
    assert again.new != first.new
