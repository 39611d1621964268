"""The landing board: who lands when, in which order, what stands larger, and that every page of it leads on."""

import json
import os
import re
import subprocess
from shutil import which

import html5lib
import pytest

from logbook.model.fleet import Fleet
from logbook.render.board import SECONDS, BoardPage, board_contexts, render_board
from logbook.render.environment import template_root
from tests.read.logs import fleet
from tests.reckon.build import moment
from tests.render.archives import MARKETS, archive_of, shown

LANDED = """\
vessel: {vessel}
sailed: 2026-03-0{day} 05:30, Port Kerrin
tows:
  - {{shot: 18:00, hauled: 20:00, ground: The Saddle, catch: {{cod: {kept} kg}}}}
landed: {{docked: 2026-03-1{day} 09:00, port: Port Kerrin{more}}}
"""
OUT = """\
vessel: {vessel}
sailed: 2026-03-1{day} 05:30, Port Kerrin
tows:
  - {{shot: 18:00, hauled: 20:00, ground: The Saddle, {place}catch: {{cod: {kept} kg}}}}
{more}"""
PLACE = "from: 58 49.4N 015 01.7W, to: 58 46.0N 015 07.6W, "


def out(vessel: str = "Solan Bright", day: int = 4, kept: int = 100, place: str = PLACE, more: str = "") -> str:
    return OUT.format(vessel=vessel, day=day, kept=kept, place=place, more=more)


def landed(vessel: str = "Solan Bright", day: int = 1, kept: int = 100, more: str = "") -> str:
    return LANDED.format(vessel=vessel, day=day, kept=kept, more=more)


def boards(*texts: str, of: Fleet | None = None, edition: str = "crew") -> tuple[BoardPage, ...]:
    return board_contexts(*shown(*texts, of=of, edition=edition))


def vessels(page: BoardPage) -> list[str]:
    return [row.trip.figures.trip.vessel for row in page.rows]


def test_those_out_stand_in_order_of_when_they_are_expected_those_not_known_last() -> None:
    many = MARKETS.replace("ports:", "  - {name: Marrick, steaming speed: 9 kn}\n  - {name: Skua}\nports:")
    (first, *_) = boards(out("Skua", 4), out("Marrick", 5), out("Solan Bright", 4), out("Albatross", 6), of=fleet(many))

    assert vessels(first) == ["Solan Bright", "Marrick", "Albatross", "Skua"]
    assert [row.docks is None for row in first.rows] == [False, False, True, True]
    assert first.rows[0].sale == moment("2026-03-16 07:00")


def test_a_landed_trip_and_one_whose_landing_is_not_logged_are_not_out() -> None:
    (first, *_) = boards(landed(), out("Solan Bright", 2), out("Solan Bright", 8))

    assert [row.trip.figures.trip.sailed for row in first.rows] == [moment("2026-03-18 05:30")]


def test_what_there_is_no_room_for_is_told() -> None:
    names = [f"Boat {number}" for number in range(8)]
    (first, *_) = boards(*(out(name) for name in names))

    assert len(first.rows) == 6
    assert first.more == 2
    assert "and 2 more" in render_board(first)


@pytest.mark.parametrize(
    ("number", "size"), [(0, "few"), (1, "few"), (2, "few"), (3, "some"), (4, "some"), (5, "full"), (9, "full")]
)
def test_the_fewer_are_out_the_larger_they_stand(number: int, size: str) -> None:
    (first, *_) = boards(*(out(f"Boat {n}") for n in range(number)), landed("Other"))

    assert first.size == size
    assert f'<body class="board {size}">' in render_board(first)
    assert len(first.landings) + len(first.sailing) <= (8 if size == "few" else 6)


def test_the_last_word_is_larger_than_what_is_expected() -> None:
    (first, *_) = boards(out())
    html = render_board(first)
    css = (template_root() / "static" / "style.css").read_text("utf-8")

    assert re.search(r'<td class="word">.*?<time datetime="2026-03-14T20:00\+00:00">Sat 14 Mar 20:00</time></td>', html)
    cells = re.search(
        r"\.board \.out tbody th, \.board \.out tbody td \{ font-size: calc\(([\d.]+) \* var\(--large\)", css
    )
    word = re.search(r"\.board \.out tbody \.word \{ font-size: calc\(var\(--large\)", css)
    assert cells is not None
    assert word is not None
    assert float(cells[1]) < 1


def test_what_one_still_fishing_is_expected_at_is_told_as_of_turning_then() -> None:
    assert "if she turned then" in render_board(boards(out())[0])
    assert "if she turned then" not in render_board(boards(out(more="turned for home: 2026-03-14 21:00\n"))[0])


def test_a_time_that_may_pass_carries_its_words_and_the_page_says_as_of_when_it_is() -> None:
    html = render_board(boards(out())[0])

    assert re.search(r'<time datetime="2026-03-15T\d\d:\d\d\+00:00" data-late="passed, no later word">', html)
    assert 'By the logs as of <time datetime="2026-03-14T20:00+00:00">Sat 14 Mar 20:00</time>' in html
    assert "coastguard" in html


def test_sailing_again_stands_until_it_has_passed_or_she_has_sailed() -> None:
    told = landed("A", 1).replace("landed:", "sails again: 2026-03-16 20:00\nlanded:")
    sailed = landed("B", 1).replace("landed:", "sails again: 2026-03-12 20:00\nlanded:")
    passed = landed("C", 1).replace("landed:", "sails again: 2026-03-13 20:00\nlanded:")
    (first, *_) = boards(told, sailed, passed, out("B", 2, place=""), out("D", 4))

    assert [row.trip.figures.trip.vessel for row in first.sailing] == ["A"]
    assert 'data-late="passed">Mon 16 Mar 20:00' in render_board(first)


def test_the_last_landings_are_the_latest_first_over_the_scale_or_estimated() -> None:
    (first, *_) = boards(
        landed("A", 1), landed("B", 3, more=", out-turn: {cod: 90 kg}"), landed("C", 2), landed("D", 4), landed("E", 5)
    )
    html = render_board(first)

    assert [line.trip.figures.trip.vessel for line in first.landings] == ["E", "D", "B", "C"]
    assert html.count("est.") == 3
    assert "90\xa0kg" in html or "90\u202fkg" in html


def test_the_best_haul_is_of_the_week_before_the_last_word() -> None:
    early = out("A", 1, kept=900)
    late = out("B", 9, kept=50)
    (first, *_) = boards(early, late)
    html = render_board(first)

    assert first.best is not None
    assert first.best.vessel == "B"
    assert '<a href="trips/b-2026-03-19.html#tow-1"><bdi>B</bdi>, tow 1</a>' in html


def test_every_page_leads_to_the_next_and_the_last_to_the_first() -> None:
    pages = {page.frame.path: render_board(page) for page in boards(landed(), out("B"))}
    path, seen = "board.html", []
    for _ in pages:
        seen.append(path)
        found = re.search(r'<meta http-equiv="refresh" content="(\d+); url=([^"]+)">', pages[path])
        assert found
        assert int(found[1]) == SECONDS
        path = found[2]

    assert len(pages) == 2
    assert path == "board.html"
    assert sorted(seen) == sorted(pages)


def test_every_page_has_its_own_chart_with_its_name_and_its_words_and_a_way_back() -> None:
    pages = boards(landed(), out("B"))

    assert [page.caption for page in pages] == [
        "Landings by month and species, tonnes",
        "Catch per hour by ground, kg/h",
    ]
    for page in pages:
        html = render_board(page)
        assert page.chart is not None
        assert f'<img src="{page.chart.path}"' in html
        assert f'alt="{page.chart.alt}"' in html
        assert '<h1><a href="index.html">' in html


def test_without_a_chart_and_without_a_trip_the_board_still_reads_itself_anew() -> None:
    (only,) = boards()
    html = render_board(only)

    html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(html)
    assert only.after == "board.html"
    assert "No vessel is out by these logs." in html
    assert "None is logged yet." in html
    assert "<figure>" not in html
    assert "as of" not in html


def test_names_of_any_length_and_letters_are_names() -> None:
    name = "<script>alert(1)</script> 🐟 " + "x" * 300
    (first, *_) = boards(out(name, place="").replace("vessel: ", "vessel: '").replace("\nsailed", "'\nsailed", 1))
    html = render_board(first)

    assert "<script>alert" not in html
    assert "x" * 300 in html


def test_the_same_trips_in_another_order_give_the_same_board() -> None:
    texts = (out("Skua", place=""), out("Auk", place=""), landed("B"))

    assert [render_board(page) for page in boards(*texts)] == [render_board(page) for page in boards(*reversed(texts))]


def test_an_edition_shows_no_more_on_the_board_than_elsewhere() -> None:
    log = out(more="wants: canary-wants\nremarks: canary-remarks\nskipper: Canary Skipper\n").replace(
        "catch:", "fast: canary-fast, damage: canary-damage, catch:"
    )
    told = "".join(render_board(page) for page in boards(log, edition="public"))

    assert "anary" not in told
    assert "58" not in told
    assert "sale" not in told.replace("Solan Bright", "")


def test_the_charts_of_the_board_are_files_of_the_archive() -> None:
    files = archive_of(landed(), out("B"), edition="crew")

    assert {"board.html", "board-2.html", "charts/fleet-board-landings.svg", "charts/fleet-board-grounds.svg"} <= set(
        files
    )
    assert b"script-src 'self'" in files["board.html"]
    found = re.search(rb'<script src="(board\.[0-9a-f]{8}\.js)" defer></script>', files["board.html"])
    assert found
    assert found[1].decode() in files


def test_a_time_that_has_passed_is_marked_once_and_unmarked_where_it_has_not() -> None:
    # ECMA-262 for Date.parse; the page is no more than what the script asks of one
    if which("node") is None:
        (pytest.fail if os.environ.get("CI") else pytest.skip)("Node.js is missing")
    script = (template_root() / "static" / "board.js").read_text("utf-8")
    page = """
    let now = Date.parse("2026-03-15T10:00:00+00:00"); Date.now = () => now;
    const timers = []; globalThis.window = { setInterval: (f, ms) => timers.push([f, ms]) };
    const time = (when) => ({ dateTime: when, dataset: { late: "passed, no later word" }, nextElementSibling: null,
      after(made) { made.remove = () => { this.nextElementSibling = null; }; this.nextElementSibling = made; } });
    const times = [time("2026-03-15T09:59:00+00:00"), time("2026-03-15T12:00:00+01:00"), time("nonsense")];
    globalThis.document = { querySelectorAll: () => times,
      createElement: () => ({ classList: { contains(name) { return this.of.className === name; } } }) };
    const create = document.createElement;
    document.createElement = () => { const made = create(); made.classList.of = made; return made; };
    const told = () => times.map((one) => one.nextElementSibling && one.nextElementSibling.textContent);
    """
    after = (
        "const first = told(); now += 3700000; timers[0][0](); timers[0][0](); const second = told();"
        "now -= 9000000; timers[0][0](); console.log(JSON.stringify([first, second, told(), timers.map((t) => t[1])]));"
    )
    ended = subprocess.run(["node", "-e", page + script + after], capture_output=True, text=True, check=True)  # noqa: S603, S607 - the machine's own

    late = "passed, no later word"
    assert json.loads(ended.stdout) == [[late, None, None], [late, late, None], [None, None, None], [30000]]
