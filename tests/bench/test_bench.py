"""A short bench, the whole way, beside stand-ins for site generators.

How real ones are started was tried with Hugo 0.168, Eleventy 3.1, MkDocs 1.6 and Pelican 4.12; here it is held fast.
"""

import re
import sys
import tempfile
from pathlib import Path

import pytest

from tests.bench import runs, stand_in
from tests.bench.__main__ import BETWEEN, main
from tests.bench.measured import CommandError, Used
from tests.bench.peers import Peer, peers
from tests.bench.runs import FLOOR, OURS, Bench, Run, Work
from tests.bench.tables import Runs, cpu, shown, told, wall


@pytest.fixture(autouse=True)
def in_haste(monkeypatch: pytest.MonkeyPatch) -> None:
    """Do once what a bench does three times, and wait for no disk; these tests time nothing."""
    monkeypatch.setattr(runs, "TIMES", 1)
    monkeypatch.setattr(runs, "settle", lambda: None)


@pytest.fixture
def with_stand_ins(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Let Hugo and Pelican be there and no other, and give the folder for temporary files."""
    stand_in.install("hugo", tmp_path / "bin")
    stand_in.install_module("pelican", tmp_path / "modules")
    stand_in.install_module("mkdocs", tmp_path / "modules")
    (tmp_path / "modules" / "mkdocs" / "__main__.py").write_text("raise SystemExit('no module named mkdocs')", "utf-8")
    monkeypatch.setenv("PATH", str(tmp_path / "bin"))
    monkeypatch.setenv("PYTHONPATH", str(tmp_path / "modules"))
    (tmp_path / "temporary").mkdir()
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path / "temporary"))
    return tmp_path / "temporary"


def test_a_short_bench_prints_its_tables_and_leaves_nothing_behind(
    with_stand_ins: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    readme = tmp_path / "README.md"
    readme.write_text("Before.\n<!-- the bench -->\nold\n<!-- end -->\nAfter.\n", "utf-8")

    status = main(["--trips", "3", "--tows", "4", "--rounds", "1", "--into", str(readme)])

    printed = capsys.readouterr().out
    assert status == 0
    assert "Compared with Hugo 9.8.7, Pelican 9.8.7. Not installed, so left out: Eleventy, MkDocs." in printed
    assert re.search(r"^\| full build, time \| 3 \| [\d,.]+ \| [\d,.]+ \|", printed, re.MULTILINE)
    assert re.search(r"^\| check, logs a second of processor time \| [\d,.]+ \|", printed, re.MULTILINE)
    rows = dict(re.findall(r"^\| ([\w ]+) \| 3 \| [\d,.]+ \| [\d,.]+ \| [\d,]+ \| (\d*) \|", printed, re.MULTILINE))
    assert set(rows) == set(Work)
    assert rows[Work.NOTHING] == "0"
    assert int(rows[Work.FULL]) > int(rows[Work.ONE]) > 0
    assert readme.read_text("utf-8") == f"Before.\n<!-- the bench -->\n{printed.strip()}\n<!-- end -->\nAfter.\n"
    assert list(with_stand_ins.iterdir()) == []


def test_generators_are_started_as_they_want_to_be(with_stand_ins: Path, tmp_path: Path) -> None:
    for name in ("eleventy", "hugo"):
        stand_in.install(name, tmp_path / "bin")
    (tmp_path / "modules" / "mkdocs" / "__main__.py").unlink()
    (tmp_path / "modules" / "mkdocs").rmdir()
    stand_in.install_module("mkdocs", tmp_path / "modules")
    found = [peer for peer in peers(sys.executable) if isinstance(peer, Peer)]
    bench = Bench(tmp_path / "bench", 2, 3, found)

    made = [run for peer in found for run in bench._of(peer, 0)]

    pelican = "pelican content --settings pelicanconf.py --output out-pelican --quiet"
    cached = f"{pelican} --extra-settings CACHE_CONTENT=true LOAD_CONTENT_CACHE=true"
    started = (tmp_path / "bench" / "peers" / stand_in.NOTES).read_text("utf-8").splitlines()
    assert started == [
        *["hugo --quiet --config hugo.toml --destination out-hugo"] * 3,
        *["eleventy --quiet --config=eleventy.config.cjs"] * 3,
        "mkdocs build --quiet",
        pelican,
        *[cached] * 3,  # once to fill what it keeps
    ]
    assert [(run.who, run.work) for run in made] == [
        (peer, work)
        for peer in ("Hugo", "Eleventy", "MkDocs", "Pelican")
        for work in (Work.FULL, Work.NOTHING, Work.ONE)
    ]
    assert not list((tmp_path / "bench" / "peers").glob("out-*"))


def test_a_generator_that_leaves_pages_or_tows_out_is_not_measured(with_stand_ins: Path, tmp_path: Path) -> None:
    (hugo, *_) = peers(sys.executable)
    assert isinstance(hugo, Peer)
    bench = Bench(tmp_path / "bench", 2, 3, [hugo])
    bench.trips = 3

    with pytest.raises(CommandError, match="not 3 pages"):
        bench._generate(hugo, hugo.full)


def test_readme_has_the_place_that_the_tables_go_to() -> None:
    assert len(BETWEEN.findall((runs.ROOT / "README.md").read_text("utf-8"))) == 1


def run(who: str, work: Work, turn: int, took: float) -> Run:
    return Run(who=who, work=work, trips=10, turn=turn, used=Used(wall_s=took, cpu_s=took / 2, peak_mb=1, told=""))


def test_a_ratio_is_of_runs_of_the_same_round() -> None:
    measured = Runs(
        [
            run(OURS, Work.FULL, 0, 1), run("Hugo", Work.FULL, 0, 2),
            run("Hugo", Work.FULL, 1, 40), run(OURS, Work.FULL, 1, 10),
            run(OURS, Work.FULL, 2, 3), run("Hugo", Work.FULL, 2, 3),
        ]
    )  # fmt: skip

    assert measured.ratio(wall, "Hugo", Work.FULL, 10) == 0.5
    assert measured.ratio(cpu, "Hugo", Work.ONE, 10) is None


def test_with_no_generator_the_tables_tell_of_ours_alone() -> None:
    text = told(Runs([run(OURS, Work.NOTHING, 0, 3), run(FLOOR, Work.NOTHING, 0, 2)]), [], ["Hugo", "Pelican"])

    assert text.startswith(
        "Compared with no other. Not installed, so left out: Hugo, Pelican.\n\n| ours | 10 trips | aim |"
    )
    assert "| nothing changed, time ÷ `python -c pass` | 1.5 | at most 15 at 10,000 |" in text


@pytest.mark.parametrize(
    ("figure", "said"),
    [(None, ""), (0.03321, "0.033"), (0.5, "0.50"), (1, "1.0"), (9.949, "9.9"), (9.96, "10"), (12345.6, "12,346")],
)
def test_figures_have_two_digits_that_count(figure: float | None, said: str) -> None:
    assert shown(figure) == said
