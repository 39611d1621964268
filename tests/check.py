"""Everything that guards the project, in one command: `python -m tests.check`.

Runs every step, goes on after a failure, prints each step's time and leaves with how many failed.
"""

import subprocess
import sys
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]

STEPS = (
    ("form: ruff format", ("-m", "ruff", "format", "--check", "logbook", "tests")),
    ("form: ruff check", ("-m", "ruff", "check", "logbook", "tests")),
    ("types: mypy", ("-m", "mypy")),
    ("direction of the stages: import-linter", ("-c", "from importlinter.cli import lint_imports_command as c; c()")),
    ("templates: djlint", ("-m", "djlint", "--lint", "--quiet", "templates")),
    ("tests under coverage: pytest", ("-m", "coverage", "run", "-m", "pytest", "-q", "-p", "no:cacheprovider")),
    ("coverage: 95 % overall", ("-m", "coverage", "report", "--fail-under=95")),
    (
        "coverage: model, read and reckon",
        ("-m", "coverage", "report", "--fail-under=98", "--include=logbook/model/*,logbook/read/*,logbook/reckon/*"),
    ),
)


def main() -> int:
    """Run the steps in order and return how many failed."""
    failed = []
    for name, command in STEPS:
        began = time.monotonic()
        print(f"\n== {name}", flush=True)
        ended = subprocess.run([sys.executable, *command], cwd=ROOT, check=False)
        took = time.monotonic() - began
        verdict = "passed" if ended.returncode == 0 else "FAILED"
        print(f"== {name}: {verdict} in {took:.1f} s", flush=True)
        if ended.returncode != 0:
            failed.append(name)
    print()
    for name in failed:
        print(f"failed: {name}")
    print(f"{len(STEPS) - len(failed)} passed, {len(failed)} failed")
    return len(failed)


if __name__ == "__main__":
    sys.exit(main())
