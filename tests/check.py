"""Everything that guards the project, in one command: `python -m tests.check`.

Runs every step, goes on after a failure, prints each step's time and leaves with how many failed.
"""

import os
import subprocess
import sys
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]

STEPS = (
    ("form: ruff format", ("-m", "ruff", "format", "--check", "logbook", "tests")),
    ("form: ruff check", ("-m", "ruff", "check", "logbook", "tests")),
    ("types: mypy", ("-m", "mypy")),
    ("direction of the stages: import-linter", ("-c", "from importlinter.cli import lint_imports_command as c; c()")),
    ("templates: djlint", ("-m", "djlint", "--lint", "--quiet", "templates")),
    (
        "tests under coverage: pytest",
        ("-m", "coverage", "run", "-m", "pytest", "-q", "-p", "no:cacheprovider", "--ignore=tests/browser"),
    ),
    ("coverage: 95 % overall", ("-m", "coverage", "report", "--fail-under=95")),
    (
        "coverage: model, read and reckon",
        ("-m", "coverage", "report", "--fail-under=98", "--include=logbook/model/*,logbook/read/*,logbook/reckon/*"),
    ),
)

BESIDE = "tests in a browser: pytest"
"""What takes as long as all else and needs a processor of its own: it runs beside the others, and is told last."""


def main() -> int:
    """Run the steps in order and return how many failed."""
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as folder:
        return _main(Path(folder))


def _main(folder: Path) -> int:
    failed = []
    beside = ("-m", "pytest", "-q", "-p", "no:cacheprovider", f"--basetemp={folder / 'browser'}", "tests/browser")
    environment = {**os.environ, "PYTEST_DEBUG_TEMPROOT": str(folder)}  # two at once must not tidy up after each other
    with (folder / "told.txt").open("w", encoding="utf-8") as told:
        browser = subprocess.Popen([sys.executable, *beside], cwd=ROOT, stdout=told, stderr=subprocess.STDOUT)
    for name, command in STEPS:
        began = time.monotonic()
        print(f"\n== {name}", flush=True)
        ended = subprocess.run([sys.executable, *command], cwd=ROOT, check=False, env=environment)
        took = time.monotonic() - began
        verdict = "passed" if ended.returncode == 0 else "FAILED"
        print(f"== {name}: {verdict} in {took:.1f} s", flush=True)
        if ended.returncode != 0:
            failed.append(name)
    print(f"\n== {BESIDE}", flush=True)
    ended_beside = browser.wait()
    print((folder / "told.txt").read_text("utf-8", "replace"))
    print(f"== {BESIDE}: {'passed' if ended_beside == 0 else 'FAILED'}", flush=True)
    failed += [BESIDE] if ended_beside != 0 else []
    print()
    for name in failed:
        print(f"failed: {name}")
    print(f"{len(STEPS) + 1 - len(failed)} passed, {len(failed)} failed")
    return len(failed)


if __name__ == "__main__":
    sys.exit(main())
