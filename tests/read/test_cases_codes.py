"""Every code that the reader can give has a case, and every code is given somewhere: both by what its sources say."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import logbook.read
from tests.read.test_cases import cases, expected
from tests.read.test_cases_built import COMMENTS

TREES = [ast.parse(path.read_text("utf-8")) for path in sorted(Path(logbook.read.__file__).parent.glob("*.py"))]
CODE = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")


def is_codes(node: ast.AST) -> bool:
    """Tell whether a statement is a module's own list of codes."""
    targets = node.targets if isinstance(node, ast.Assign) else [node.target] if isinstance(node, ast.AnnAssign) else []
    return any(isinstance(target, ast.Name) and target.id == "CODES" for target in targets)


def texts(node: ast.AST) -> list[str]:
    """Return every text below a node that could be a code."""
    return [
        each.value
        for each in ast.walk(node)
        if isinstance(each, ast.Constant) and isinstance(each.value, str) and CODE.fullmatch(each.value)
    ]


DECLARED = {text for tree in TREES for node in tree.body if is_codes(node) for text in texts(node)}


def handed() -> Iterator[tuple[str, str]]:
    """Give the name of each function called, and the first text it is handed that could be a code."""
    for tree in TREES:
        for call in ast.walk(tree):
            if isinstance(call, ast.Call):
                named = [keyword.value for keyword in call.keywords if keyword.arg == "code"]
                given = [
                    text for node in (*call.args, *named) if isinstance(node, ast.Constant) for text in texts(node)
                ]
                name = call.func.attr if isinstance(call.func, ast.Attribute) else getattr(call.func, "id", "")
                if given:
                    yield name, given[0]


def made() -> set[str]:
    """Return the codes that problems are made with: whatever is handed to a function that is anywhere handed a code."""
    calls = list(handed())
    makers = {name for name, text in calls if text in DECLARED}
    return {text for name, text in calls if name in makers}


def test_the_sources_tell_their_codes() -> None:
    assert {"weight-unreadable", "tab-indent", "corners", "same-trip"} <= DECLARED & made()


def test_every_code_that_is_made_is_in_its_modules_list() -> None:
    assert sorted(made() - DECLARED) == []


def test_every_code_in_a_list_is_used() -> None:
    used = {text for tree in TREES for node in tree.body if not is_codes(node) for text in texts(node)}

    assert sorted(DECLARED - used) == []


def test_every_code_has_a_case() -> None:
    comments = (*(case.read_text("utf-8", "replace") for case in cases()), *COMMENTS)
    shown = {each.code for text in comments for each in expected(text)}

    assert sorted((DECLARED | made()) - shown) == []
    assert sorted(shown - DECLARED) == []
