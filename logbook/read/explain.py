"""Plain words for lines that YAML can't read: what is wrong, its usual cause, and the line as it should be.

Knows the mistakes people make at a keyboard and the sentence for each; finding them is left to `outline`, `inside` and
the YAML parser.
"""

from typing import NamedTuple

import yaml

CODES = frozenset(
    {
        "bracket-early",
        "bracket-open",
        "code-fence",
        "colon-in-text",
        "colon-odd",
        "dash-odd",
        "comma-twice",
        "document-end",
        "escape",
        "indent",
        "key-empty",
        "key-no-value",
        "key-not-text",
        "line-broken",
        "line-unreadable",
        "mail-quote",
        "merge-key",
        "merge-mark",
        "no-colon",
        "no-comma",
        "no-dash",
        "no-space-after-colon",
        "no-space-after-dash",
        "quote-early",
        "quote-open",
        "rule-line",
        "second-document",
        "tab-indent",
        "text-indent",
        "text-start",
        "too-deep",
        "too-many-faults",
    }
)

MAX_DEPTH = 20
"""How many levels a log may be deep."""

SPECIAL = "[]{}*&!|>%@`,\"'#"
"""Signs that mean something to YAML where a text begins."""

_MAX_SHOWN = 60
_MAX_LINE = 100
_SIGN_AND_SPACE = {"-": "a dash", "?": "a question mark", ":": "a colon"}


class Why(NamedTuple):
    """What is wrong, before it is known where.

    Attributes:
        code: Which rule.
        message: What was found.
        hint: What to type instead; empty where nothing better can be said.
    """

    code: str
    message: str
    hint: str = ""


def is_plain(text: str) -> bool:
    """Tell whether a text can stand behind a key as it is, without quotes."""
    return (
        bool(text)
        and text == text.strip()
        and text[0] not in SPECIAL
        and text not in ("-", "?")
        and not text.startswith(("- ", "? ", ": "))
        and ": " not in text
        and " #" not in text
        and not text.endswith(":")
    )


def quoted(text: str) -> str:
    """Return a text in the quotes that change least of it."""
    if "'" in text and '"' not in text and "\\" not in text:
        return f'"{text}"'
    doubled = text.replace("'", "''")
    return f"'{doubled}'"


def shown(text: str) -> str:
    """Return a text short enough for a message."""
    text = text.strip()
    return text if len(text) <= _MAX_SHOWN else f"{text[:_MAX_SHOWN].rstrip()} …"


def written(lead: str, value: str) -> str:
    """Return the line as it should be, as an advice.

    Args:
        lead: What stands before the value: a key with its colon, a dash, or nothing inside brackets.
        value: The value as it should be.
    """
    line = f"{lead}{value}"
    return f"write `{line}`" if len(line) <= _MAX_LINE else "put the whole text in single quotes"


def put_in_quotes(lead: str, text: str) -> str:
    """Return the advice to put a text in quotes."""
    return written(lead, quoted(text.strip()))


def text_start(lead: str, text: str) -> Why:
    """A text begins with a sign that means something to YAML."""
    sign = text[:1]
    called = (
        f"{_SIGN_AND_SPACE[sign]} and a space" if text[:2] == f"{sign} " and sign in _SIGN_AND_SPACE else f"'{sign}'"
    )
    return Why("text-start", f"a text may not begin with {called} here", put_in_quotes(lead, text))


def colon_in_text(key: str | None, lead: str, text: str, *, free: bool) -> Why:
    """A text holds a second colon; under a key that takes no free text it is likely a mapping typed on one line."""
    what = f"the text of '{key}'" if key else "this text"
    message = f"{what} has a colon of its own, which YAML takes for another key"
    if free or key is None or text.rstrip().endswith(":"):
        return Why("colon-in-text", message, put_in_quotes(lead, text))
    hint = f"write it on lines of its own below '{key}:', or `{key}: {{{shown(text)}}}`"
    return Why("colon-in-text", message, hint)


def colon_in_brackets(text: str) -> Why:
    """Inside brackets, a text holds a second colon; likely a comma is missing."""
    message = f"'{shown(text)}' has a colon of its own, which YAML takes for another key"
    return Why("colon-in-text", message, "put a comma before the next key; or if it is a text, put it in single quotes")


def quote_open(sign: str, lead: str, text: str) -> Why:
    """A quote is never closed."""
    other = '"' if sign == "'" else "'"
    text = text.strip()
    hint = "close it at the end of the text"
    if lead and other not in text and "\\" not in text:
        hint = written(lead, f"{other}{text}{other}")
    return Why("quote-open", f"the quote {sign} that opens here is not closed", hint)


def quote_early(sign: str, column: int, lead: str, text: str) -> Why:
    """Text stands behind the quote that closes."""
    message = f"the quote {sign} closes at column {column}, and text follows"
    whole = text.strip()
    inner = whole[1:-1]
    if lead and whole.endswith(sign) and is_plain(inner):
        return Why("quote-early", message, f"leave the outer quotes off: {written(lead, inner)}")
    return Why("quote-early", message, put_in_quotes(lead, whole))


def bracket_open(sign: str, *, commented: bool) -> Why:
    """A bracket is never closed."""
    closing = {"[": "]", "{": "}"}[sign]
    hint = f"close it with {closing}"
    if commented:
        hint += "; what stands behind a # is not read"
    return Why("bracket-open", f"the bracket {sign} that opens here is not closed", hint)


def bracket_early(sign: str, lead: str, text: str) -> Why:
    """Text stands behind the bracket that closes."""
    closing = {"[": "]", "{": "}"}[sign]
    message = f"text follows the {closing} that closes the bracket"
    return Why("bracket-early", message, f"if it is a text, {put_in_quotes(lead, text)}")


def bracket_other(sign: str) -> Why:
    """A bracket of the other kind closes."""
    return Why("bracket-open", f"'{sign}' closes a bracket that is not open", "close [ with ] and { with }")


def bracket_spare(sign: str) -> Why:
    """A bracket closes where none is open, behind a value that is whole."""
    return Why("bracket-early", f"the '{sign}' closes nothing, so it is left out", "take it out")


def bracket_in_text(sign: str) -> Why:
    """A text inside brackets holds a bracket."""
    return Why("bracket-early", f"a text inside brackets holds a {sign}", "put the text in single quotes")


def text_behind(text: str) -> Why:
    """Inside brackets, text stands behind what has ended."""
    return Why(
        "bracket-early",
        f"'{shown(text)}' follows without a comma",
        "put a comma before it, or the whole text in quotes",
    )


def escape(sign: str, lead: str, text: str) -> Why:
    """A backslash in double quotes means nothing."""
    single = "'" + text.strip().strip('"').replace("'", "''") + "'"
    message = f"in double quotes a backslash is special, and '\\{sign}' means nothing"
    return Why("escape", message, f"use single quotes: {written(lead, single)}")


def half_letter() -> Why:
    """Half a letter stands in an escape."""
    return Why("escape", "half of a letter is written as an escape", "type the letter itself")


def no_space_after_colon(sign: str, key: str, value: str) -> Why:
    """A colon has no space behind it."""
    return Why("no-space-after-colon", f"the '{sign}' behind '{key}' wants a space", written(f"{key}: ", shown(value)))


def colon_odd(sign: str, key: str, value: str) -> Why:
    """A colon of another script stands behind a key."""
    message = f"'{sign}' behind '{key}' is no plain colon"
    return Why("colon-odd", message, written(f"{key}: ", shown(value)) if value else f"write `{key}:`")


def no_colon(sign: str, key: str, value: str) -> Why:
    """A key has no colon."""
    hint = written(f"{key}: ", shown(value)) if value else f"write `{key}:`"
    message = f"'{sign}' stands where a colon is wanted behind '{key}'" if sign else f"'{key}' has no colon behind it"
    return Why("no-colon", message, hint)


def no_key(text: str, line: int, last: int) -> Why:
    """A line has no key; it costs the lines that stand below it, up to the last one."""
    hint = "write `key: value`; if it goes on from the line above, indent it deeper; a comment begins with #"
    below = f", so lines {line} to {last} are not read" if last > line else ""
    return Why("line-unreadable", f"'{shown(text)}' has no key{below}", hint)


def no_comma(text: str, line: int) -> Why:
    """Inside brackets, a key stands on a line of its own and no comma before it."""
    return Why("no-comma", f"there is no comma before '{shown(text)}'", f"put a comma at the end of line {line}")


def stray(text: str) -> Why:
    """A line without a key stands left of the line above, as the end of a line does that was broken in two."""
    message = f"'{shown(text)}' has no key and seems to be the end of the line above, so neither is read"
    return Why("line-broken", message, "join the two lines")


def no_dash(text: str) -> Why:
    """An item of a list has no dash."""
    return Why("no-dash", f"'{shown(text)}' stands among list items without a dash", "begin it with a dash and a space")


def no_space_after_dash(text: str) -> Why:
    """A dash has no space behind it."""
    return Why("no-space-after-dash", "the dash wants a space behind it", f"write `- {shown(text)}`")


def dash_odd(sign: str, text: str) -> Why:
    """A dash of another kind begins a line."""
    return Why("dash-odd", f"'{sign}' is no plain dash", f"write `- {shown(text)}`".replace("- `", "-`"))


def dash_among_keys() -> Why:
    """A list item stands among keys."""
    message = "a list item stands among keys"
    return Why("indent", message, "indent it below the key it belongs to, or take the dash out")


def key_below_item(text: str, line: int, last: int) -> Why:
    """A key stands below a list item that is a text; both are lost, with the lines up to the last one."""
    below = f"; lines {line} to {last} are not read" if last > line else ""
    message = f"'{shown(text)}' stands below a list item that has no keys of its own, so neither is read{below}"
    return Why("indent", message, "begin the item with `- key: value`, or put all of it on one line")


def indent(column: int, wanted: int) -> Why:
    """A line does not stand under those it belongs to."""
    message = f"this line begins at column {column}, the lines it belongs to at column {wanted}"
    return Why("indent", message, f"begin it at column {wanted}")


def text_indent(column: int, wanted: int) -> Why:
    """A line of a block of text begins too far left."""
    message = f"this line of text begins at column {column}, the first one at column {wanted}"
    return Why("text-indent", message, "line the text up")


def tab_indent(lines: list[int], *, kept: bool) -> Why:
    """Lines are indented by tabs."""
    where = f"line {lines[0]} begins" if len(lines) == 1 else f"lines {ranges(lines)} begin"
    end = "" if kept else "; it is not certain where this belongs, so it is left out"
    return Why("tab-indent", f"{where} with a tab{end}", "indent with spaces only")


def ranges(lines: list[int]) -> str:
    """Return line numbers as a person lists them: `5-9, 12`."""
    parts: list[list[int]] = []
    for line in lines:
        if parts and line == parts[-1][1] + 1:
            parts[-1][1] = line
        else:
            parts.append([line, line])
    shown_parts = [f"{first}-{last}" if last > first else f"{first}" for first, last in parts]
    return ", ".join(shown_parts)


def second_document(*, other: bool) -> Why:
    """A line of three dashes stands in the middle."""
    if other:
        return Why("second-document", "a second log begins here; it is not read", "keep one trip a file")
    return Why("second-document", "'---' ends a log", "take the line out")


def document_end() -> Why:
    """A line of three dots stands in the middle."""
    return Why("document-end", "'...' ends a log", "take the line out")


def code_fence(lines: list[int]) -> Why:
    """The log was pasted with the fences of a message."""
    which = f"line {lines[0]}" if len(lines) == 1 else f"lines {ranges(lines)}"
    return Why("code-fence", "the log was pasted with the ``` of a message", f"take {which} out")


def mail_quote(lines: list[int]) -> Why:
    """Lines begin with the sign that mail programs put before what they quote."""
    which = f"line {lines[0]} begins" if len(lines) == 1 else f"lines {ranges(lines)} begin"
    return Why("mail-quote", f"{which} with '>', as mail programs put before what they quote", "take the signs out")


def merge_mark() -> Why:
    """Two versions of a file were joined."""
    message = "a mark is left from joining two versions of this file"
    return Why("merge-mark", message, "keep one of the versions and take the marks out")


def rule_line() -> Why:
    """A line is drawn to set things apart."""
    return Why("rule-line", "a drawn line is left out", "begin it with #")


def key_not_text() -> Why:
    """A key is no plain word."""
    return Why("key-not-text", "a key has to be a plain word or two", "write `key: value`")


def key_empty() -> Why:
    """No key stands before a colon."""
    return Why("key-empty", "there is no key before the colon", "write `key: value`")


def key_no_value(key: str) -> Why:
    """A key inside brackets has no value."""
    message = f"'{shown(key)}' stands inside brackets without a value"
    return Why("key-no-value", message, "write `key: value`, or - where it is not known")


def comma_twice() -> Why:
    """A comma stands where nothing is parted."""
    return Why("comma-twice", "a comma too many is left out", "take it out")


def merge_key() -> Why:
    """A merge key."""
    return Why("merge-key", "'<<' is not for logs", "write the keys out")


def too_deep() -> Why:
    """Too many brackets or levels."""
    return Why("too-deep", f"this is nested more than {MAX_DEPTH} levels deep", "take some of the levels out")


def too_many_inside() -> Why:
    """There is more wrong inside brackets than anyone reads."""
    return Why("too-many-faults", "there is too much wrong inside these brackets", "write it on lines of its own")


def too_many() -> Why:
    """There are more faults than anyone reads."""
    message = "there is too much wrong above; from here on nothing is read"
    return Why("too-many-faults", message, "put right what is above, then check again")


def of_yaml(fault: yaml.YAMLError, lines: list[str]) -> tuple[int, int, Why]:
    """Return where the YAML parser stopped, from 1, and why, as far as nobody has found out before it.

    Args:
        fault: What it raised.
        lines: The text's lines.
    """
    mark, context = getattr(fault, "problem_mark", None), getattr(fault, "context_mark", None)
    if mark is None or (context is not None and "flow" in (getattr(fault, "context", None) or "")):
        mark = context or mark
    line, column = (mark.line + 1, mark.column + 1) if mark else (1, 1)
    line = min(line, len(lines))
    while line > 1 and not lines[line - 1].strip():
        line, column = line - 1, 1
    message = f"YAML can't read '{shown(lines[line - 1][column - 1 :] or lines[line - 1])}'"
    return line, column, Why("line-unreadable", message, "put texts with signs in them in single quotes")
