"""A build that knows earlier ones gives the same bytes as one that knows nothing, whatever happened to the logs in between."""

import os
import random
import shutil
from pathlib import Path
from unittest.mock import patch

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from logbook.build import build, unchanged
from logbook.known import look
from logbook.model.built import Built
from logbook.model.edition import EDITIONS
from logbook.model.seen import SETTLED_NS
from logbook.publish.manifest import MANIFEST
from logbook.read.trip import read_trip
from logbook.render import pages
from logbook.render.trip import render_trip
from logbook.store.store import place_of

ROOT = Path(__file__).parents[2]

_FLEET = """\
fleet: Test Fleet
waters: N W
units: {depth: fm, catch: basket}
measures: {basket: 40 kg}
limits: {ice days: 10}
vessels:
  - {name: Solan Bright, steaming speed: 9.5 kn, nets: [{name: rockhopper}]}
  - {name: Ternbank, steaming speed: 9 kn}
ports:
  - {name: Port Kerrin, at: 59 40.0N 012 10.0W}
"""
_LOG = """\
vessel: {vessel}
sailed: 2026-{month:02}-04 05:30, Port Kerrin
tows:
  - {{shot: 18:10, hauled: 19:40, ground: The Saddle, net: rockhopper, from: 58 31.7N 015 21.3W, to: 58 33.9N 015 17.1W, catch: {{{species}: {baskets} baskets}}}}
  - {{shot: 20:30, hauled: 22:10, catch: {{cod: 9 baskets}}, remarks: {remark}}}
landed: {{docked: 2026-{month:02}-06 21:15, port: Port Kerrin, out-turn: {{cod: 350 kg}}}}
"""
_VESSELS = ("Solan Bright", "Ternbank", "Auk")


def _log(chance: random.Random, vessel: str, month: int) -> str:
    return _LOG.format(
        vessel=vessel,
        month=month,
        species=chance.choice(("haddock", "saithe", "oddfish")),
        baskets=chance.choice(("3", "12", "x")),
        remark=chance.choice(("Good marks", "torn wing", "*calm*")),
    )


def _begin(logs: Path, chance: random.Random) -> None:
    logs.mkdir()
    (logs / "fleet.yaml").write_text(_FLEET, "utf-8")
    for number, vessel in enumerate((*_VESSELS[:2], *_VESSELS[:2]), 1):
        (logs / f"log-{number}.yaml").write_text(_log(chance, vessel, number), "utf-8")


def _change(logs: Path, site: Path, chance: random.Random, what: str) -> None:  # noqa: C901 - one case a change
    files = sorted(logs.glob("log-*.yaml"))
    file = chance.choice(files)
    match what:
        case "edit":
            file.write_text(_log(chance, chance.choice(_VESSELS), chance.randint(1, 9)), "utf-8")
        case "add":
            number = len(list(logs.iterdir())) + chance.randint(10, 99)
            (logs / f"log-{number}.yaml").write_text(
                _log(chance, chance.choice(_VESSELS), chance.randint(1, 9)), "utf-8"
            )
        case "take away" if len(files) > 1:
            file.unlink()
        case "rename":
            file.rename(logs / f"log-{chance.randint(100, 999)}.yaml")
        case "fleet":
            text = _FLEET.replace("ice days: 10", f"ice days: {chance.randint(5, 9)}").replace(
                "40 kg", chance.choice(("40 kg", "42 kg"))
            )
            (logs / "fleet.yaml").write_text(text, "utf-8")
        case "damage a page":
            files = [path for path in sorted(site.rglob("*.*")) if path.is_file() and path.name != MANIFEST]
            chance.choice(files).write_bytes(b"<p>spoilt")
        case "lose a chart":
            chance.choice(sorted(site.rglob("*.svg"))).unlink()
        case "damage the store":
            place = place_of(logs)
            assert place is not None
            content = bytearray(place.read_bytes() if place.exists() else b"?" * 5000)
            for _ in range(50):
                content[chance.randrange(len(content))] = chance.randrange(256)
            place.write_bytes(content)
        case "lose the store":
            place = place_of(logs)
            assert place is not None
            place.unlink(missing_ok=True)


_CHANGES = (
    "edit", "add", "take away", "rename", "fleet", "damage a page", "lose a chart", "damage the store", "lose the store", "nothing",
)  # fmt: skip


def _whole(site: Path) -> dict[str, bytes]:
    return {
        path.relative_to(site).as_posix(): path.read_bytes()
        for path in site.rglob("*")
        if path.is_file() and not path.name.startswith(".archive")
    }


def _silent(_stage: str) -> None:
    """Say nothing."""


@pytest.mark.parametrize("logs_are", ["just changed", "long as they are"])
@settings(max_examples=6)
@given(
    seed=st.integers(0, 2**32),
    edition=st.sampled_from(EDITIONS),
    changes=st.lists(st.sampled_from(_CHANGES), min_size=1, max_size=4),
)
def test_known_or_not_the_bytes_are_the_same(
    tmp_path_factory: pytest.TempPathFactory, logs_are: str, seed: int, edition: str, changes: list[str]
) -> None:
    folder, chance = tmp_path_factory.mktemp("fleet"), random.Random(seed)
    logs, site = folder / "logs", folder / "site"

    def built(logs: Path, site: Path) -> Built:
        # Where logs are long as they are, a build that meets nothing new is over before it reads any.
        with patch.object(unchanged, "SETTLED_NS", SETTLED_NS if logs_are == "just changed" else -1):
            return build(logs, site, _silent, (edition,))

    _begin(logs, chance)
    built(logs, site)
    for number, what in enumerate(changes):
        _change(logs, site, chance, what)
        known = built(logs, site)
        apart = folder / f"apart-{number}"
        shutil.copytree(logs, apart / "logs")
        new = built(apart / "logs", apart / "site")

        assert _whole(site) == _whole(apart / "site"), what
        assert [str(one).replace(str(logs), "") for one in known.problems] == [
            str(one).replace(str(apart / "logs"), "") for one in new.problems
        ]


def test_what_has_not_changed_is_neither_drawn_nor_rendered_again(tmp_path: Path) -> None:
    logs, site = tmp_path / "logs", tmp_path / "site"
    _begin(logs, random.Random(1))
    build(logs, site, _silent, ("office",))
    file = logs / "log-1.yaml"
    file.write_text(file.read_text("utf-8").replace("cod: 9 baskets", "cod: 8 baskets"), "utf-8")
    with (
        patch.object(pages, "render_trip", wraps=render_trip) as rendered,
        patch.object(pages, "_draw", wraps=pages._draw) as drawn,
    ):
        build(logs, site, _silent, ("office",))
    charts = [call.args[0].path for call in drawn.call_args_list]

    assert {call.args[0].figures.trip.vessel for call in rendered.call_args_list} == {"Solan Bright"}
    assert not any("ternbank" in path for path in charts)
    assert any("solan-bright" in path for path in charts)


def test_a_log_is_read_again_only_where_it_has_changed(tmp_path: Path) -> None:
    logs, site = tmp_path / "logs", tmp_path / "site"
    _begin(logs, random.Random(2))
    build(logs, site, _silent)
    (logs / "log-2.yaml").write_text(_log(random.Random(3), "Ternbank", 2), "utf-8")

    with patch.object(look, "read_trip", side_effect=AssertionError), pytest.raises(AssertionError):
        build(logs, site, _silent)
    with patch.object(look, "read_trip", wraps=read_trip) as read:
        build(logs, site, _silent)
    assert [call.args[1] for call in read.call_args_list] == ["log-2.yaml"]


def test_what_is_wrong_in_a_fleet_file_further_down_is_told_by_every_build(tmp_path: Path) -> None:
    logs, site = tmp_path / "logs", tmp_path / "site"
    _begin(logs, random.Random(4))
    below = logs / "own"
    below.mkdir()
    (below / "fleet.yaml").write_text("fleet: Own\nlimits: {ice days: soon}\n", "utf-8")
    (below / "log-9.yaml").write_text(_log(random.Random(5), "Auk", 7), "utf-8")

    first = build(logs, site, _silent, ("office",))
    page = (site / "problems.html").read_bytes()
    again = build(logs, site, _silent, ("office",))

    assert "number-unreadable" in {
        problem.code for problem in first.problems if problem.place.file.endswith("own/fleet.yaml")
    }
    assert again.problems == first.problems
    assert (site / "problems.html").read_bytes() == page


@pytest.mark.skipif(os.name == "nt", reason="folders there have no such rights")
def test_the_store_is_its_users_alone(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    logs = tmp_path / "logs"
    _begin(logs, random.Random(6))
    build(logs, tmp_path / "site", _silent)

    place = place_of(logs)
    assert place is not None
    assert place.is_file()
    assert place.parent.stat().st_mode & 0o077 == 0
