"""Every page, chart and style sheet of all editions by the Nu HTML checker: no errors and no warnings but those named here."""

import json
import re
import subprocess
from pathlib import Path

import pytest

JUSTIFIED = {
    # The checker gives a page on disk no origin, so that 'self' allows it nothing. In Chromium the same policy lets in the archive's
    # own files, from disk and from a server, and nothing else: test_served.py.
    "html": r"Resource violates Content Security Policy \(meta tag\): [\w ]+ “(?!/)[\w./-]+” blocked by .*",
    # Its list of properties ends before CSS Containment Level 3 (W3C), of which Chromium, Firefox and Safari have containers since 2023.
    "css": r"CSS: “container-type”: Property “container-type” doesn't exist\.|CSS: “font-size”: Parse Error\.",
    "svg": r"(?!)",
}


def findings(nu: tuple[str, ...], kind: str, folder: Path) -> list[str]:
    """Return what the checker says of all files of a kind below a folder, all in one run."""
    files = sorted(map(str, folder.rglob(f"*.{kind}")))
    listed = [str(folder)] if kind != "css" else files  # it doesn't look for style sheets by itself
    only = f"--skip-non-{kind}" if kind != "css" else "--css"
    ended = subprocess.run([*nu, only, "--format", "json", "--stdout", *listed], capture_output=True, check=False)  # noqa: S603
    assert files
    return [
        f"{Path(said['url']).name}:{said.get('lastLine')}: {said['message']} {said.get('extract', '')}"
        for said in json.loads(ended.stdout)["messages"]
        if not re.fullmatch(JUSTIFIED[kind], said["message"])
    ]


@pytest.mark.parametrize("kind", JUSTIFIED)
def test_the_checker_finds_nothing_but_what_is_named(nu: tuple[str, ...], sites: Path, kind: str) -> None:
    assert findings(nu, kind, sites) == []


def test_the_checker_does_find_what_is_wrong(nu: tuple[str, ...], tmp_path: Path) -> None:
    (tmp_path / "a.html").write_text(
        '<!DOCTYPE html><html lang="en"><title>A</title><p id="a"><p id="a"><img src="b.png">'
    )
    (tmp_path / "a.css").write_text("p { colour: red; }")
    (tmp_path / "a.svg").write_text('<svg xmlns="http://www.w3.org/2000/svg"><reckt/></svg>')

    assert len(findings(nu, "html", tmp_path)) >= 2
    assert findings(nu, "css", tmp_path)
    assert findings(nu, "svg", tmp_path)
