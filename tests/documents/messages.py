"""Every message that has a code, gathered from the source: where it stands, what it says, what to write instead.

Leaves: messages by place. A call that makes a message whose code cannot be told is an error, so that none is missed.
"""

import ast
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from documents.sentences import GAP, ROOT, Sayings, function_around, modules, parsed

# what makes a message: at which place the code, what was found, and what to write instead are handed over
MAKERS: dict[str, tuple[int | str, int | str, int | str | None]] = {
    "Problem": ("code", "found", "wanted"),
    "Fault": (0, 1, 2),
    "problem": (0, 2, 3),
    "warn": (0, 2, 3),
    "fault": (0, 2, 3),
    "_problem": (1, 2, 3),
    "refusal": (1, 2, 3),
    "Finding": ("code", "text", None),
}

# messages that only warn, where the source does not show it at the call: the module, and the code or any
WARNINGS = {
    ("costing/doubts.py", "*"),
    ("costing/replies.py", "two-prices"),
    ("ordering/doubts.py", "*"),
    ("design_minimums.py", "*"),
    ("long_list.py", "long-list"),
    ("cli/caring.py", "dishwasher-without-cycles"),
    ("letters/wording.py", "no-questions"),
    ("reading/cell_values.py", "not-whole"),
    ("reading/columns.py", "read-as"),
    ("reading/csv_cells.py", "read-as-windows-1252"),
    ("reading/countries.py", "not-a-country"),
    ("reading/once_filled.py", "need-by-past"),
    ("reading/folder.py", "two-makers-files"),
    ("reading/gatekeeper.py", "open-elsewhere"),
    ("reading/headings.py", "second-heading"),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Message:
    """One message.

    Parameters
    ----------
    module : its path in the package, such as "reading/names.py"
    found, wanted : the ways in which it is put
    """

    code: str
    module: str
    line: int
    found: tuple[str, ...]
    wanted: tuple[str, ...]
    warns: bool


def messages() -> list[Message]:
    """Return every problem and warning, in the order of the source."""
    return [one for one in _all() if one.wanted]


def findings() -> list[Message]:
    """Return what can be said of artwork, in the order of the source."""
    return [one for one in _all() if not one.wanted]


@cache
def _all() -> tuple[Message, ...]:
    return tuple(one for path in modules() for one in _in_module(path))


def _in_module(path: Path) -> Iterator[Message]:
    calls = [one for one in ast.walk(parsed(path)) if isinstance(one, ast.Call) and _is_maker(one)]
    if not calls:
        return
    sayings = Sayings(path)
    for call in sorted(calls, key=lambda one: one.lineno):
        handed = _handed(call)
        if handed is None or _is_passed_on(handed[0], call):
            continue
        code, found, wanted = handed
        name = str(path.relative_to(ROOT / "scorecard").as_posix())
        for at, one in enumerate(codes := sayings.of(code)):
            if GAP in one:
                raise ValueError(f"{name}, line {call.lineno}: the code of this message cannot be told")
            said = tuple(sayings.of(found))
            yield Message(
                code=one,
                module=name,
                line=call.lineno,
                found=said[at : at + 1] if len(codes) == len(said) else said,
                wanted=tuple(sayings.of(wanted)) if wanted is not None else (),
                warns=_warns(call) or bool({(name, one), (name, "*")} & WARNINGS),
            )


def _name(call: ast.Call) -> str:
    return getattr(call.func, "id", None) or getattr(call.func, "attr", "")


def _is_maker(call: ast.Call) -> bool:
    return _name(call) in MAKERS


def _handed(call: ast.Call) -> tuple[ast.AST, ast.AST, ast.AST | None] | None:
    """Return what a call hands over as code, found and wanted; None where it is a call of another kind."""
    by_name = {one.arg: one.value for one in call.keywords}
    if {"code", "found", "wanted"} <= by_name.keys():
        return by_name["code"], by_name["found"], by_name["wanted"]
    at = [
        by_name.get(one) if isinstance(one, str) else dict(enumerate(call.args)).get(one) for one in MAKERS[_name(call)]
    ]
    return None if at[0] is None or at[1] is None else (at[0], at[1], at[2])


def _is_passed_on(code: ast.AST, call: ast.Call) -> bool:
    """Say whether a code comes from elsewhere: from a message made before, or handed in."""
    function = function_around(call)
    parameters = {one.arg for one in ast.walk(function) if isinstance(one, ast.arg)} if function else set()
    return isinstance(code, ast.Attribute) or (isinstance(code, ast.Name) and code.id in parameters)


def _warns(call: ast.Call) -> bool:
    """Say whether a message goes to ``warn``, there or by the name that it is given in its function."""
    if _name(call) == "warn":
        return True
    parent = call.parent
    if isinstance(parent, ast.Call):
        return _name(parent) == "warn"
    if isinstance(parent, ast.Assign) and isinstance(parent.targets[0], ast.Name):
        uses = [one for one in ast.walk(function_around(call)) if isinstance(one, ast.Call) and _name(one) == "warn"]
        return any(getattr(argument, "id", None) == parent.targets[0].id for one in uses for argument in one.args)
    return False
