"""Patterns that are compiled when they are first asked for: a list of plain numbers and dates needs few of them."""

import re
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from re import compile as pattern
else:

    class pattern:  # noqa: N801 - stands for the function
        """What ``re.compile`` gives, once a method of it is asked for."""

        def __init__(self, text: str, flags: int = 0) -> None:
            self._text, self._flags = text, flags

        def __getattr__(self, name: str) -> Any:
            """Return a method of the compiled pattern, and keep it."""
            method = getattr(re.compile(self._text, self._flags), name)
            setattr(self, name, method)
            return method


__all__ = ["pattern"]
