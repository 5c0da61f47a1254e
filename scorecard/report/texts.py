"""What a user typed, made fit for a page: nothing invisible, nothing that turns a line around, no name without end.

Enters: an assessment. Leaves: the same one, whose names, titles and choices stand between isolate marks. So every
sentence made of it carries the marks too; ``marked`` turns them into ``<bdi>`` elements, once all else is escaped.
"""

import re
from dataclasses import replace
from unicodedata import category

from markupsafe import Markup, escape

from scorecard.assessment import Assessment
from scorecard.checks import usual
from scorecard.criteria import Criterion, Limit
from scorecard.value_functions import Choices
from scorecard.words import TURNING

OPEN, CLOSE = "\N{FIRST STRONG ISOLATE}", "\N{POP DIRECTIONAL ISOLATE}"
LONGEST = 200  # characters of a name; a page of names without end could not be read
_PLAIN = re.compile(f"{OPEN}([ -~]*){CLOSE}")
BREAKS = frozenset("\t\n\v\f\r\x1c\x1d\x1e\x85\u2028\u2029")


def visible(text: str, longest: int = LONGEST) -> str:
    """Return text with a visible sign in place of each that is not seen or turns the line around, cut where too long.

    Examples
    --------
    >>> visible("Kiln" + chr(0) + chr(0x202E) + "Co"), visible("Kiln" + chr(10) + "Co"), visible("Kiln & Co", 6)
    ('Kiln��Co', 'Kiln Co', 'Kiln …')
    """
    plain = text if text.isascii() and text.isprintable() else "".join(map(_seen, text))
    return plain if len(plain) <= longest else f"{plain[: longest - 1]}…"


def _seen(sign: str) -> str:
    if sign in BREAKS:
        return " "
    if sign in TURNING or category(sign) in ("Cc", "Cs") or _no_character(ord(sign)):
        return "\N{REPLACEMENT CHARACTER}"
    return sign


def _no_character(code: int) -> bool:
    return code & 0xFFFE == 0xFFFE or 0xFDD0 <= code <= 0xFDEF


def isolate(text: str, longest: int = LONGEST) -> str:
    """Return text made visible, between marks that keep its direction from its surroundings."""
    return f"{OPEN}{visible(text, longest)}{CLOSE}"


def bare(text: str) -> str:
    """Return text without the isolate marks."""
    return text.replace(OPEN, "").replace(CLOSE, "")


def without_needless_marks(text: str) -> str:
    """Return text without the isolate marks around plain ASCII, which turns no line around."""
    return _PLAIN.sub(r"\1", text) if OPEN in text else text


def marked(text: str) -> Markup:
    """Return text escaped, its isolate marks as ``<bdi>`` elements where they are needed."""
    escaped = without_needless_marks(str(escape(text)))
    return Markup(escaped.replace(OPEN, "<bdi>").replace(CLOSE, "</bdi>"))  # noqa: S704 - all else is escaped


def sentence(words: str) -> str:
    """Return words as a sentence, with a capital and a full stop.

    Examples
    --------
    >>> sentence("moving 4.2 of 100 decides it")
    'Moving 4.2 of 100 decides it.'
    """
    return f"{words[:1].upper()}{words[1:]}."


def presentable(assessment: Assessment) -> Assessment:
    """Return the same assessment with every name, title, choice and unit made visible and isolated."""
    case = assessment.case
    table = replace(case.table, makers=tuple(isolate(name) for name in case.table.makers))
    criteria = replace(case.criteria, criteria=tuple(_presentable(one) for one in case.criteria))
    brief = replace(case.brief, item=isolate(case.brief.item))
    samples = tuple(replace(one, maker=isolate(one.maker)) for one in case.samples)
    checks = tuple(replace(one, maker=isolate(one.maker), name=_check_name(one.name)) for one in case.checks)
    case = replace(
        case,
        title=isolate(case.title),
        brief=brief,
        table=table,
        criteria=criteria,
        samples=samples,
        checks=checks,
    )
    return replace(assessment, case=case)


def _check_name(name: str) -> str:
    """Return the name of a check of the user's own made visible; those of the usual list are the tool's own words."""
    return name if usual(name) else isolate(name)


def _presentable(criterion: Criterion) -> Criterion:
    value = criterion.value
    if isinstance(value, Choices):
        value = Choices(tuple((isolate(name), points) for name, points in value.table))
    return replace(
        criterion,
        title=isolate(criterion.title),
        value=value,
        unit=visible(criterion.unit) if criterion.unit.isascii() else isolate(criterion.unit),
        limit=None if criterion.limit is None else _presentable_limit(criterion.limit),
    )


def _presentable_limit(limit: Limit) -> Limit:
    one_of, none_of = (
        None if choices is None else tuple(isolate(choice) for choice in choices)
        for choices in (limit.one_of, limit.none_of)
    )
    return replace(limit, one_of=one_of, none_of=none_of)
