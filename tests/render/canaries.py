"""Logs in which every text that people may type is hostile: each carries its own number, so that it is known again wherever it stands.

One log, and one vessel, port, ground and net of the fleet file, for each way of being hostile; in it every field has that text with the
number of the field behind it. Signs that editors don't show are typed as escapes in double quotes, as a program that writes logs does.
"""

import re
import unicodedata
from collections.abc import Iterator, Mapping
from pathlib import Path

FLAG = "window.canary=1"

HOSTILE: Mapping[str, str] = {
    "script": f"<script>{FLAG}</script>",
    "attribute": f'"><img src=x onerror={FLAG}>',
    "single": f"'><svg onload={FLAG}>",
    "address": f"javascript:{FLAG}",
    "link": f"[tap](javascript:{FLAG})",
    "picture": "![pic](http://canary.example/a.png)",
    "web": "[web](https://canary.example/?a=1&b=2)",
    "section": f"]]><script>{FLAG}</script>",
    "comment": f"--><script>{FLAG}</script><!--",
    "ends": f"</script></style></title></textarea></svg><script>{FLAG}</script>",
    "template": "{{7*7}} {% raw %} ${7*7} #{7*7}",
    "formula": "=cmd|' /C calc'!A0",
    "at": "@SUM(1+1)*cmd|' /C calc'!A0",
    "plus": "+1-2+cmd",
    "minus": "-2+3+cmd",
    "wide": "＝1+1",
    "separators": "one\u2028two\u2029three",
    "turned": "\u202egnp.exe\u202c",
    "isolated": "\u2066\u2067abc",
    "nul": "%00 \\0 \\x00 \\u0000",
    "lines": "one\r\nBEGIN:VALARM\nX-A:b\rc",
    "escapes": "\\N \\n \\, \\; ;x=y:z",
    "quotes": "\"double\" 'single' `tick` “curly” «angle»",
    "long": "W" * 300,
    "path": "../../x",
    "device": "CON",
    "file": "aux.yaml",
    "windows": 'C:\\con\\..\\x?*|"<>:',
    "emoji": "🐟👩\u200d👩\u200d👧🏴 cod",
    "latin": "Þór Skjærvøy Łódź",
    "han": "東京漁港",
    "greek": "Ναυτίλος судно",
    "right": "سفينة דָּג",
    "entities": "&lt;b&gt; &amp; &#60;script&#62; &notanentity",
    "percent": "%3Cscript%3E %2e%2e%2f",
    "combining": "e\u0301 é Z\u0351\u036b\u0343",
    "tab": "one\ttwo",
    "document": '<!DOCTYPE x [<!ENTITY e SYSTEM "file:///etc/passwd">]>&e;',
    "objects": "__proto__ constructor",
    "formats": "%s %d {0} {vessel} %(vessel)s",
    "dots": "... .",
}
"""Ways of being hostile, and what is typed."""

FIELDS = (
    "vessel",
    "trip",
    "skipper",
    "hand",
    "wants",
    "ground",
    "net",
    "pen",
    "bottom",
    "damage",
    "gear lost",
    "fast",
    "tow remarks",
    "species",
    "grade",
    "put back",
    "undersize",
    "reading remarks",
    "swell",
    "visibility",
    "weather remarks",
    "item",
    "gear remarks",
    "why lost",
    "who rested",
    "all hands",
    "watch",
    "passage remarks",
    "port",
    "quality",
    "expense",
    "share",
    "trip remarks",
    "unknown key",
    "registration",
    "file name",
)
"""Everything that is typed in a log or of a vessel, its ports and grounds, in words."""

SPECIES = frozenset({"species", "put back", "undersize"})
REMARKS = frozenset(field for field in FIELDS if field.endswith("remarks"))
IN_MESSAGES = SPECIES | {"unknown key"}
"""Fields that problems quote: there a sign that can't be seen is shown as one that can."""

SHOWN_IN_MARKDOWN: Mapping[str, str] = {
    # CommonMark 0.31.2, with emphasis, lists, links and escapes and nothing else; what follows says which of its sections.
    "picture": "!pic",  # 6.4 Images are not read, so 6.3 Links
    "web": "web",  # 6.3 Links
    "template": "{{77}} {% raw %} ${77} #{7*7}",  # 6.2 Emphasis: an asterisk between letters opens and closes
    "escapes": "\\N \\n \\, ; ;x=y:z".replace("\\,", ","),  # 2.4 Backslash escapes: of punctuation alone
    "windows": 'C:\\con..\\x?*|"<>:',  # 2.4
    "objects": "proto constructor",  # 6.2 Strong emphasis
}
"""What a remark shows that is not what was typed, since it is Markdown."""

TOKEN = re.compile(r"(?<= )q(\d\d)(\d\d)z(?!-)")
"""The number behind a text as it was typed; in names of files and addresses a hyphen stands before it."""

_LOG = """\
vessel: {vessel}
trip: {trip}
skipper: {skipper}
crew: [{hand}, B. Second]
sailed: 2026-{month:02}-{day:02} 05:30
ice loaded: 24 t
wants: {wants}
tows:
  - shot: 2026-{month:02}-{day:02} 18:10
    hauled: 19:40
    ground: {ground}
    from: 58 31.7N 015 21.3W
    to: 58 33.9N 015 17.1W
    bottom: {bottom}
    depth: 95 fm
    net: {net}
    pens: [{pen}]
    catch: {{{species}: {{{grade}: 700 kg}}, haddock: 500 kg}}
    undersize: {{{undersize}: 31 kg}}
    put back: {{{put_back}: 47 kg}}
    damage: {damage}
    gear lost: {gear_lost}
    fast: {fast}
    remarks: {tow_remarks}
  - {{shot: 20:30, hauled: 22:10, catch: {{cod: 534 kg}}}}
readings:
  - {{at: 23:00, temperatures: {{{pen}: 0.4 C}}, remarks: {reading_remarks}}}
weather:
  - {{at: 23:10, wind: SW 6, swell: {swell}, visibility: {visibility}, remarks: {weather_remarks}}}
gear:
  - {{at: 23:20, item: {item}, event: mended, took: 40 min, remarks: {gear_remarks}}}
time lost:
  - {{from: 23:20, to: 23:50, why: {why_lost}}}
rest:
  - {{who: {who_rested}, from: 23:00, to: 23:30}}
all hands:
  - {{from: 23:00, to: 23:20, why: {all_hands}}}
watches: {{{watch}: 00-06 12-18, other: 06-12 18-24}}
passage:
  - {{at: 23:50, position: 58 55.3N 014 11.6W, remarks: {passage_remarks}}}
landed:
  port: {port}
  docked: 2026-{month:02}-{after:02} 21:15
  started landing: 22:00
  finished landing: 23:10
  out-turn: {{{species}: {{{grade}: 690 kg}}, haddock: 511 kg}}
  quality: {{haddock: {quality}}}
  prices: {{haddock: 3.93/kg}}
settlement:
  expenses: {{{expense}: 613.17}}
  boat's share: 50 %
  shares: {{{share}: 2}}
remarks: {trip_remarks}
{unknown_key}: 1
"""


def token(way: str, field: str) -> str:
    """Return the number that stands behind a hostile text."""
    return f"q{list(HOSTILE).index(way):02}{FIELDS.index(field):02}z"


def typed(way: str, field: str) -> str:
    """Return what a field holds."""
    return f"{HOSTILE[way]} {token(way, field)}"


def read(way: str, field: str) -> str:
    """Return what the reader makes of it: a tab and a carriage return that were escaped in YAML are spaces, and a warning."""
    return typed(way, field).translate({ord("\t"): " ", ord("\r"): " "})


def expected(way: str, field: str, *, markdown: bool = False) -> tuple[str, ...]:
    """Return the ways in which a field may stand in what is published.

    Args:
        way: The way of being hostile.
        field: The field.
        markdown: Whether what stands there was read as Markdown where that is what the field holds.
    """
    text = read(way, field)
    if field == "file name":
        return ("".join(sign if sign.isprintable() else sign.encode("unicode_escape").decode() for sign in _name(way)),)
    if markdown and way in SHOWN_IN_MARKDOWN:
        return (f"{SHOWN_IN_MARKDOWN[way]} {token(way, field)}",)
    shown = "".join(" " if sign.isspace() else sign if sign.isprintable() else "\ufffd" for sign in text)
    folded = " ".join(unicodedata.normalize("NFC", unicodedata.normalize("NFC", text).casefold()).split())
    return (text, *((folded,) if field in SPECIES else ()), *((shown,) if field in IN_MESSAGES else ()))


def named(text: str) -> Iterator[tuple[str, str]]:
    """Give the ways and fields whose numbers stand in a text."""
    ways = list(HOSTILE)
    for way, field in TOKEN.findall(text):
        yield ways[int(way)], FIELDS[int(field)]


def every() -> Iterator[tuple[str, str]]:
    """Give each way of being hostile with each field."""
    return ((way, field) for way in HOSTILE for field in FIELDS)


def quoted(text: str) -> str:
    """Return a text in double quotes, signs that can't be seen as YAML's escapes."""
    out = []
    for sign in text:
        if sign in '"\\':
            out.append(f"\\{sign}")
        elif sign == " " or sign.isprintable():
            out.append(sign)
        else:
            out.append(f"\\u{ord(sign):04x}")
    return f'"{"".join(out)}"'


def plant(folder: Path) -> Path:
    """Write the logs below a folder, and return the folder of logs."""
    logs = folder / "logs"
    logs.mkdir(parents=True)
    for number, way in enumerate(HOSTILE):
        fields = {field.replace(" ", "_"): quoted(typed(way, field)) for field in FIELDS}
        month, day = number // 14 + 1, number % 14 * 2 + 1
        text = _LOG.format(**fields, month=month, day=day, after=day + 1)
        (logs / f"{_name(way)}.yaml").write_text(text, "utf-8")
    (logs / "fleet.yaml").write_text(_fleet(), "utf-8")
    return logs


def _name(way: str) -> str:
    """Return the name of a log: as hostile as a name can be that is no hidden file and can be a file's here."""
    told = HOSTILE[way].translate({ord("/"): "%", ord("\n"): "", ord("\r"): "", ord("\t"): ""})[:80]
    return f"{told.lstrip('.')} {token(way, 'file name')}"


def _fleet() -> str:
    lines = [
        f"fleet: {quoted(title())}",
        "waters: N W",
        f"currency: {quoted('<b>K&C')}",
        f"home port: {quoted(typed('script', 'port'))}",
        "vessels:",
    ]
    for way in HOSTILE:
        lines += [
            f"  - name: {quoted(typed(way, 'vessel'))}",
            f"    registration: {quoted(typed(way, 'registration'))}",
            f"    hold: {{heat gain: 1.9 kW, pens: {{{quoted(typed(way, 'pen'))}: 24 t}}}}",
            f"    nets: [{{name: {quoted(typed(way, 'net'))}, side: starboard}}]",
        ]
    lines.append("ports:")
    lines += [f"  - {{name: {quoted(typed(way, 'port'))}, at: 59 40.0N 012 10.0W}}" for way in HOSTILE]
    return "\n".join(lines) + "\n"


def title() -> str:
    """Return the name of the fleet."""
    return f"<Fleet> & \"Sons\" '{{{{7*7}}}}' </title><script>{FLAG}</script>"
