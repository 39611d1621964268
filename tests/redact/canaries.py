"""A folder of logs with a word that occurs nowhere else in everything a person can type, and who may read each of them."""

from pathlib import Path

from logbook.model.edition import CREW, OFFICE, PUBLIC

ALL = frozenset({OFFICE, CREW, PUBLIC})
INSIDE = frozenset({OFFICE, CREW})
ALONE = frozenset({OFFICE})
NOBODY: frozenset[str] = frozenset()

_FLEET = """\
fleet: Quillfleet
zone: UTC
currency: KRC
home port: Port Kerrin
waters: N W
units: {depth: fm, catch: kg, temperature: C}
measures:
  basket: 40 kg
vessels:
  - name: Quillvessel
    registration: KI 114
    steaming speed: 9.5 kn
    towing speed: 3.2 kn
    ice capacity: 30 t
    hold: {heat gain: 1.9 kW, pens: {P1: 24 t, P2: 24 t}}
    nets:
      - {name: quillnet, side: starboard, doors: 720 kg, door spread: 62 m, wing spread: 17 m}
  - name: Ternbank
    steaming speed: 9.0 kn
ports:
  - name: Port Kerrin
    at: 59 40.0N 012 10.0W
    sale: {days: Mon-Sun, time: 07:00, all ashore before: 3 h}
grounds:
  - {name: Quillground, within: [58 30N 015 40W, 59 00N 014 50W]}
# quillcomment
EDITIONS
"""

_LANDED = """\
vessel: Quillvessel
trip: quilllabel
skipper: Quillskipper
crew: [Quillhand, Quillcook]
sailed: 2026-03-04 05:30, Port Kerrin
ice loaded: 24 t
tows:
  - shot: 18:10
    hauled: 19:40
    ground: Quillground
    from: 58 31.7N 015 21.3W
    to: 58 33.9N 015 17.1W
    via: [58 32.6N 015 19.4W]
    bottom: quillbottom
    depth: 95 fm
    warp: 300 fm
    net: quillnet
    catch: {cod: {large: 700 kg}, haddock: 500 kg, halibut: 2 fish}
    undersize: {whiting: 31 kg}
    put back: {skate: 47 kg, starfish-quillback: 3 kg}
    damage: quilldamage
    gear lost: quillgearlost
    fast: quillfast
    remarks: quilltowremark
  - shot: 20:30
    hauled: 22:10
    from: 58 34.7N 015 22.9W
    to: 58 36.3N 015 18.7W
    fast: 58 35.9N 015 20.2W
    catch: {cod: {large: 534 kg}}
  - 2300-0045, 58 37.9N 15 23.8W to 58 39.7N 15 19.8W, cod large 40 kg, quillonelinewords
  - {shot: 02:00, hauled: 03:30, catch: {cod: quillunreadable}}
readings:
  - {at: 2026-03-06 08:00, temperatures: {P1: 0.4 C}, remarks: quillreading}
weather:
  - {at: 2026-03-05 08:00, wind: SW 6, swell: quillswell, visibility: quillvisibility, icing: light, remarks: quillweather}
gear:
  - {at: 2026-03-05 06:00, item: quillitem, event: mended, took: 40 min, remarks: quillgearremark}
  - {at: 2026-03-05 09:00, net: quillnet, event: mended, took: 20 min}
time lost:
  - {from: 2026-03-05 06:00, to: 10:00, why: quilllost}
rest:
  - {who: Quillhand, from: 2026-03-05 06:00, to: 12:00}
  - {who: quillwho, from: 2026-03-06 06:00, to: 12:00}
all hands:
  - {from: 2026-03-05 14:00, to: 16:00, why: quillallhands}
watches: {quillwatch: 00-06 12-18, port: 06-12 18-24}
passage:
  - {at: 2026-03-07 12:00, position: 58 55.3N 014 11.6W, remarks: quillpassage}
turned for home: 2026-03-07 08:15, 58 41.3N 015 13.7W
wants: quillwants
landed:
  port: Port Kerrin
  docked: 2026-03-07 21:15
  started landing: 22:00
  finished landing: 03:10
  out-turn: {cod: {large: 1234 kg}, haddock: 511 kg}
  quality: {cod: quillquality}
  prices: {cod: {large: 7.31/kg}, haddock: 3.93/kg}
settlement:
  expenses: {quillexpense: 613.17}
  boat's share: 50 %
  shares: {quillshare: 2, Quillcook: 1}
remarks: quillremarks
quillkey: quillvalue
"""
"""Gross 1234 × 7.31 + 511 × 3.93 = 9020.54 + 2008.23 = 11 028.77; less 613.17 that is 10 415.60."""

_AT_SEA = """\
vessel: Ternbank
trip: 14
skipper: Quillmaster
sailed: 2026-03-20 05:30, Port Kerrin
tows:
  - {shot: 18:10, hauled: 19:40, ground: Quillrecent, from: 59 11.3N 016 12.7W, to: 59 13.1N 016 08.9W, depth: 77 fm, warp: 260 fm, bottom: quillmud, catch: {cod: 900 kg}}
  - {shot: 21:00, hauled: 22:30, from: 59 14.9N 016 07.3W, to: 59 16.7N 016 04.7W, fast: 59 15.7N 016 05.9W, catch: {cod: 800 kg}}
passage:
  - {at: 2026-03-21 02:00, position: 59 21.9N 015 51.1W}
turned for home: 2026-03-20 23:45, 59 17.6N 016 03.3W
"""

_NOTHING = "quillnothing: [\n"

WORDS = {
    "quillfleet": ALL,
    "quillvessel": ALL,
    "quillground": ALL,
    "quillnet": ALL,
    "quillskipper": INSIDE,
    "quillmaster": INSIDE,
    "quilllabel": INSIDE,
    "quillbottom": INSIDE,
    "whiting": INSIDE,
    "skate": INSIDE,
    "quillback": INSIDE,
    "quilldamage": INSIDE,
    "quillgearlost": INSIDE,
    "quillfast": INSIDE,
    "quilltowremark": INSIDE,
    "quillonelinewords": INSIDE,
    "quillreading": INSIDE,
    "quillswell": INSIDE,
    "quillvisibility": INSIDE,
    "quillweather": INSIDE,
    "quillitem": INSIDE,
    "quillgearremark": INSIDE,
    "quilllost": INSIDE,
    "quillpassage": INSIDE,
    "quillwants": INSIDE,
    "quillquality": INSIDE,
    "quillremarks": INSIDE,
    "quillhand": ALONE,
    "quillcook": ALONE,
    "quillwho": ALONE,
    "quillwatch": ALONE,
    "quillunreadable": ALONE,
    "quillfile": ALONE,
    "quillempty": ALONE,
    "quillsubfolder": ALONE,
    "quillexpense": ALONE,
    "quillshare": ALONE,
    "quillkey": ALONE,
    "quillvalue": NOBODY,
    "quillallhands": ALONE,
    "quillcomment": NOBODY,
    "quilllogs": NOBODY,
}
"""Each word with the editions that show it; what an edition may show but has no place for is shown by none."""

MONEY = ("7.31", "3.93", "9020.54", "2008.23", "11028.77", "613.17", "10415.6", "5207.8")
"""Sums as they stand in a page whose spaces have been taken out."""

EXACT_ROWS = ("58°31.7", "58°33.9", "58°34.7", "58°36.3", "58°37.9", "58°39.7")
PASSAGE = ("58°55.3", "014°11.6")
DEGREES = {
    "tracks": (58.5283, -15.3550, 58.5650, -15.2850, 58.5783, -15.3817, 58.6050, -15.3117, 58.6317, -15.3967, 58.6617),
    "passage": (58.9217, -14.1933, 58.6883, -15.2283),
    "held back": (59.1883, -16.2117, 59.2183, -16.1483, 59.2483, -16.1217, 59.2783, -16.0783, 59.3650, 59.2933),
    "fasts": (58.5983, -15.3367, 59.2617, -16.0983),
}
"""The same in decimal degrees, with the turn for home: minutes over sixty."""
FAST_TYPED = "58°35.9"
HELD_BACK = ("59°11.3", "59°13.1", "59°14.9", "59°16.7", "59°21.9")
HELD_FAST = "59°15.7"
RECTANGLE, HELD_RECTANGLE = "46D4", "47D3"
"""By their middles 58.55 N 15.3 W and 59.2 N 16.2 W: ICES statistical rectangles, half a degree by one."""


def plant(folder: Path, editions: str = "") -> Path:
    """Write the logs below a folder and return the folder of logs.

    Args:
        folder: Where.
        editions: The line of the fleet file that says what editions show.
    """
    logs = folder / "quilllogs"
    (logs / "quillsubfolder").mkdir(parents=True)
    (logs / "fleet.yaml").write_text(_FLEET.replace("EDITIONS", editions))
    (logs / "quillsubfolder" / "quillfile.yaml").write_text(_LANDED)
    (logs / "ternbank.yaml").write_text(_AT_SEA)
    (logs / "quillempty.yaml").write_text(_NOTHING)
    return logs
