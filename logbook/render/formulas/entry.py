"""What an explained figure is made of. Its words are marked for the catalogue here, and translated where the page shows them."""

from msgspec import Struct

from logbook.model.language import N_

LOGGED, RECKONED = N_("logged"), N_("reckoned")


class Entry(Struct, frozen=True, kw_only=True):
    """One figure explained.

    Attributes:
        id: Its place on the page, and its name in links.
        name: As it is called in tables.
        keys: Fields of the records it explains.
        how: Whether it is as a rule logged or reckoned.
        unit: Its unit; empty where it has none.
        what: What it is, and how it comes about.
        formula: The same in one line; empty where nothing is calculated.
        assumed: What is filled in where a log says nothing; empty where nothing is.
        source: Where formula or constant comes from; empty where it is plain arithmetic.
    """

    id: str
    name: str
    keys: tuple[str, ...]
    how: str
    what: str
    unit: str = ""
    formula: str = ""
    assumed: str = ""
    source: str = ""


class Chapter(Struct, frozen=True, kw_only=True):
    """Entries that belong together."""

    id: str
    title: str
    entries: tuple[Entry, ...]
