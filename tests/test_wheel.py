"""The wheel that is installed: it holds every template and table, and works away from the checkout."""

import os
import re
import shlex
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]


def test_the_wheel_holds_every_template_and_table_and_builds_an_archive(tmp_path: Path) -> None:
    subprocess.run(
        [sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", str(tmp_path), str(ROOT)],
        check=True,
        capture_output=True,
    )
    (wheel,) = tmp_path.glob("*.whl")
    with zipfile.ZipFile(wheel) as opened:
        held = set(opened.namelist())
        opened.extractall(tmp_path / "installed")

    templates = {path.relative_to(ROOT).as_posix() for path in (ROOT / "templates").rglob("*") if path.is_file()}
    tables = {path.relative_to(ROOT).as_posix() for path in (ROOT / "logbook" / "read" / "data").iterdir()}
    assert {f"logbook/{name}" for name in templates} | tables | {"logbook/py.typed"} <= held
    assert not any(name.startswith(("tests/", "sample_logs/")) for name in held)

    ended = subprocess.run(
        [sys.executable, "-m", "logbook", "build", str(ROOT / "sample_logs"), str(tmp_path / "site")],
        check=True,
        capture_output=True,
        text=True,
        cwd=tmp_path / "installed",
        env={"PATH": "/usr/bin:/bin", "PYTHONPATH": str(tmp_path / "installed"), "HOME": str(tmp_path)},
    )
    assert "18 trips of 18 logs published" in ended.stderr


def commands(name: str) -> list[list[str]]:
    """Return the words of the commands that the README has under a mark."""
    readme = (ROOT / "README.md").read_text("utf-8")
    block = re.search(rf"<!-- {name} -->\n```sh\n(.*?)```\n<!-- end -->", readme, re.DOTALL)
    assert block is not None
    return [shlex.split(line, comments=True) for line in block[1].splitlines()]


def test_a_folder_of_wheels_is_enough_without_an_index_and_the_first_commands_work(tmp_path: Path) -> None:
    gather, install = commands("the offline commands")
    wheels, venv = tmp_path / "wheels", tmp_path / "venv"
    subprocess.run([sys.executable, "-m", "venv", str(venv)], check=True, capture_output=True)

    python = {"python3": sys.executable, "wheels": str(wheels), ".": str(ROOT)}
    gathered = subprocess.run([python.get(word, word) for word in gather], check=False, capture_output=True, text=True)
    if gathered.returncode != 0:
        if os.environ.get("CI"):
            pytest.fail(f"the wheels can't be gathered, and in CI they must be: {gathered.stderr[-2000:]}")
        pytest.skip("wheels can't be gathered on this machine: no network, or no index of packages")

    bare = {"PATH": f"{venv / 'bin'}:/usr/bin:/bin", "HOME": str(tmp_path), "PIP_CONFIG_FILE": os.devnull}
    python["python3"] = str(venv / "bin" / "python")
    alone = [python.get(word, word) for word in install] + ["--no-compile"]
    subprocess.run(alone, check=True, capture_output=True, env=bare, cwd=tmp_path)

    said = []
    for words in commands("the first commands"):
        ended = subprocess.run(words, check=False, capture_output=True, text=True, env=bare, cwd=tmp_path)
        assert ended.returncode == 0, ended.stderr
        said.append(ended.stderr)
    assert "wrote logs/solan-bright-" in said[0]
    assert "1 log: 1 note" in said[1]
    assert (tmp_path / "site" / "index.html").is_file()
    version = subprocess.run(
        ["logbook", "--version"], check=True, capture_output=True, text=True, env=bare, cwd=tmp_path
    )
    assert version.stdout.startswith("logbook ")
