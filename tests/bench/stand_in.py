"""Stands for a site generator in tests: makes a page of each text, notes how it was started, and knows no Markdown but tables."""

import shutil
import sys
from collections.abc import Sequence
from pathlib import Path

NOTES = "started.txt"


def install(name: str, bin_folder: Path) -> None:
    """Put a command of that name on a path."""
    bin_folder.mkdir(exist_ok=True)
    command = bin_folder / name
    command.write_text(f'#!/bin/sh\nexec "{sys.executable}" "{__file__}" {name} "$@"\n', "utf-8")
    command.chmod(0o755)


def install_module(name: str, folder: Path) -> None:
    """Put a module of that name, to be run with `-m`, in a folder."""
    (folder / name).mkdir(parents=True)
    started = f"import runpy, sys\nsys.argv.insert(1, {name!r})\nrunpy.run_path({__file__!r}, run_name='__main__')\n"
    (folder / name / "__main__.py").write_text(started, "utf-8")


def main(name: str, words: Sequence[str]) -> None:
    """Tell the version, or build."""
    if words[0] in ("version", "--version"):
        sys.stdout.write(f"{name} v9.8.7+made-up, of 2026\n")
        return
    out = Path(words[words.index("--destination") + 1] if "--destination" in words else f"out-{name}")
    shutil.rmtree(out, ignore_errors=True)
    for text in Path("content").glob("*.md"):
        page = out / text.stem / "index.html" if name == "hugo" else out / f"{text.stem}.html"
        page.parent.mkdir(parents=True, exist_ok=True)
        lines = text.read_text("utf-8").splitlines()
        page.write_text("\n".join(f"<tr>{line}" if line.startswith("| ") else line for line in lines), "utf-8")
    with Path(NOTES).open("a", encoding="utf-8") as notes:
        notes.write(f"{name} {' '.join(words)}\n")


if __name__ == "__main__":
    main(sys.argv[1], sys.argv[2:])
