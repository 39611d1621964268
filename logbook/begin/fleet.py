"""The texts that an empty folder of logs begins with: a fleet file that explains itself, and a few words for people."""

from collections.abc import Iterator

from logbook.begin.comment import told
from logbook.begin.example import lines_of
from logbook.begin.typed import typed
from logbook.read.keys import FLEET, VESSEL

MY_VESSEL = "My Vessel"
"""Name that stands in for a vessel's where none was given."""

_INDENT = "    "


def new_fleet_file(vessel: str, schema: str) -> str:
    """Return the text of a fleet file with one vessel, and everything else as comments to put to use.

    Args:
        vessel: The vessel's name.
        schema: Path of its schema, for editors that know such.
    """
    lines = [f"# yaml-language-server: $schema={schema}", ""]
    lines += told(
        "What does not change from trip to trip. A line that begins with # is not read: it explains, or it is an example that you "
        "put to use by taking the # away and writing your own words and figures in its place. All of it may be left out."
    )
    for key in FLEET.keys:
        lines += ["", *told(key.about)]
        if key.name == "vessels":
            lines += ["vessels:", *_vessel(vessel)]
        elif key.name == "zone":
            lines += lines_of(key)
        else:
            lines += [f"#{line}" for line in lines_of(key)]
    return "\n".join(lines) + "\n"


def _vessel(name: str) -> Iterator[str]:
    """Give the entry of a vessel of which only the name is known."""
    yield f"  - name: {typed(name)}"
    for key in VESSEL.keys:
        if key.name != "name":
            yield from (f"{_INDENT}{line}" for line in told(key.about))
            yield from (f"#{_INDENT}{line}" for line in lines_of(key))


def new_read_me(vessel: str, log: str) -> str:
    """Return what to know of the folder, in plain words.

    Args:
        vessel: The vessel's name.
        log: Name of the first trip's log.
    """
    return READ_ME.format(vessel=vessel, log=log, command_vessel=f'"{vessel}"' if " " in vessel else vessel)


READ_ME = """\
TRIP LOGS

This folder holds the logs of your trips. They are plain texts: open, change and save them in Notepad or any other editor.

  fleet.yaml     what does not change: your vessels, nets, pens, ports, grounds, and what a basket or a box weighs
  {log}
                 the log of the first trip of {vessel}
  schema         for editors that offer keys and mark mistakes as you type; leave it alone

KEEPING A LOG

1. Open the log. Put the time of sailing right, and write what you know behind each key: ice loaded, fuel, the sea's temperature.
2. Below "tows:" write each tow as it comes, on one line:

     - 2015-2150, 98 fm, cod 9 baskets, haddock 4 baskets

   A basket or a box weighs what "measures" in fleet.yaml says; kg, t, lb, st and cwt need no more than their name.
3. Save it. What you don't know you leave out.

In a command window, in the folder above this one or wherever the logs are:

  logbook check FOLDER                 says what can't be read, line by line, and what to type instead
  logbook aboard LOG                   what is aboard, how long the ice lasts, when to turn for home
  logbook build FOLDER SITE            makes the pages: then open index.html in SITE
  logbook start {command_vessel} --logs FOLDER
                                       begins the next trip's log
  logbook --help                       tells the rest

(FOLDER is this folder, LOG one of its logs, SITE a folder to put pages in.)

The program never changes a log. Nothing it reckons is a clearance: it is not the statutory logbook, not navigation, not a
finding on stability or food safety, not a record of rest.
"""
