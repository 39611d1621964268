"""Which languages pages come in, and how phrases are marked for translation where they are only written down."""

from collections.abc import Mapping

ENGLISH = "en"

LANGUAGES: Mapping[str, tuple[str, ...]] = {
    ENGLISH: ("English",),
    "nb": ("norsk bokmål", "bokmål", "norsk", "no", "Norwegian Bokmål", "Norwegian"),
}
"""Language tags (BCP 47) of the languages there are catalogues of, with other words for each."""


def N_(text: str) -> str:  # noqa: N802 - the name that gettext's tools look for
    """Return a phrase as it is; marks it for the catalogue, to be translated where it is shown."""
    return text
