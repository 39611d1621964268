"""Texts in XML: every sign that it allows comes back from a reader as it was typed."""

from collections.abc import Iterable
from xml.etree.ElementTree import Element, SubElement, tostring


def said(parent: Element, name: str, words: str, **attributes: str) -> None:
    """Add an element that holds words."""
    SubElement(parent, name, attributes).text = "".join(_allowed(words))


def document(root: Element) -> bytes:
    """Return a document as a file."""
    body: bytes = tostring(root, encoding="utf-8")
    # A carriage return would be read as a line feed (XML 1.0 section 2.11), had it not been written by its number.
    return b'<?xml version="1.0" encoding="UTF-8"?>\n' + body.replace(b"\r", b"&#13;") + b"\n"


def _allowed(words: Iterable[str]) -> Iterable[str]:
    """Give the characters that XML 1.0 allows; others have no place in it, however they are written."""
    for letter in words:
        if letter in "\t\n\r" or " " <= letter <= "\ud7ff" or "\ue000" <= letter <= "\ufffd" or letter > "\uffff":
            yield letter
