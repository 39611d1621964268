"""Patterns that are compiled when they are first needed.

Most logs keep to a few forms; those that they do not use must not cost every start.
"""

import re
from collections.abc import Callable
from functools import cache


def form(pattern: str, flags: re.RegexFlag = re.NOFLAG) -> Callable[[], re.Pattern[str]]:
    """Return a function that gives the compiled pattern, each time the same one."""
    return cache(lambda: re.compile(pattern, flags))
