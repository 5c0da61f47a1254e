"""The template engine: a text with named placeholders such as {maker}, and nothing besides.

A doubled brace stands for one brace. There is no code, no look into values, no format: what stands between braces is a
known name or a fault. Values are put in as they are and never read as templates.
"""

import re
from collections.abc import Collection, Mapping

from scorecard.frozen import dataclass

_TOKEN = re.compile(r"\{\{|\}\}|\{([^{}\n]*)\}|[{}]")


@dataclass(frozen=True, slots=True, kw_only=True)
class PlaceholderFault:
    """What is wrong at one place of a template.

    Parameters
    ----------
    name : what stands between the braces; a lone brace is itself
    line : counted from 1
    is_lone_brace : whether it is a brace without its fellow
    """

    name: str
    line: int
    is_lone_brace: bool = False


def faults_of(template: str, known: Collection[str]) -> tuple[PlaceholderFault, ...]:
    """Return every unknown placeholder and every lone brace, in order.

    Parameters
    ----------
    template : the text
    known : the names that may stand between braces

    Examples
    --------
    >>> faults_of("Dear {maker}, {{ok}}" + chr(10) + "{item.price}", {"maker", "item"})
    (PlaceholderFault(name='item.price', line=2, is_lone_brace=False),)
    """
    faults = []
    for token in _TOKEN.finditer(template):
        name = token[1]
        if token[0] in ("{{", "}}") or name in known:
            continue
        line = template.count("\n", 0, token.start()) + 1
        faults.append(
            PlaceholderFault(name=name if name is not None else token[0], line=line, is_lone_brace=name is None)
        )
    return tuple(faults)


def names_in(template: str) -> frozenset[str]:
    """Return the names that stand between braces."""
    return frozenset(token[1] for token in _TOKEN.finditer(template) if token[1] is not None)


def fill(template: str, values: Mapping[str, str]) -> str:
    """Return a template with its placeholders replaced; a line that holds one with nothing to say is left out whole.

    Parameters
    ----------
    template : the text
    values : by placeholder, "" where there is nothing to say

    Raises
    ------
    ValueError
        If the template has a fault: check it with ``faults_of`` first.

    Examples
    --------
    >>> fill("Dear {maker}: {{as it is}}", {"maker": "Oxlip {item} Kilns"})
    'Dear Oxlip {item} Kilns: {as it is}'
    """
    faults = faults_of(template, values.keys())
    if faults:
        raise ValueError(f"the template's line {faults[0].line} holds {faults[0].name!r}, which is no placeholder")
    return "\n".join(_filled(line, values) for line in template.split("\n") if all(map(values.get, names_in(line))))


def _filled(line: str, values: Mapping[str, str]) -> str:
    return _TOKEN.sub(lambda token: token[0][0] if token[1] is None else values[token[1]], line)
