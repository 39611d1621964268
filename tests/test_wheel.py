"""The wheel that is installed: it holds every template and table, and works away from the checkout."""

import subprocess
import sys
import zipfile
from pathlib import Path

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
