"""The wording of the messages: the user's own template files where they are there, else the ones that ship.

Enters: a sourcing folder. Leaves: three templates, with every problem in the user's files and what was noticed besides.
"""

from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Literal, get_args

from scorecard.errors import Place, Problem
from scorecard.frozen import dataclass
from scorecard.letters.placeholders import PlaceholderFault, faults_of, names_in
from scorecard.letters.plain import one_line
from scorecard.letters.values import PLACEHOLDERS
from scorecard.words import nearest

Kind = Literal["short", "full", "reminder"]

KINDS: tuple[Kind, ...] = get_args(Kind)
SHIPPED = Path(__file__).parent / "templates"
LARGEST = 100_000  # bytes; a message as long as a book is another file
LONGEST_SHOWN = 60


@dataclass(frozen=True, slots=True, kw_only=True)
class Wording:
    """The templates, and what was found in the user's own.

    Parameters
    ----------
    short, full, reminder : templates; the shipped one in place of one with a problem
    problems, warnings : of the user's files, in the order of the kinds and lines
    """

    short: str
    full: str
    reminder: str
    problems: tuple[Problem, ...] = ()
    warnings: tuple[Problem, ...] = ()


def file_name(kind: Kind) -> str:
    """Return the name of a template file, in the user's folder as among the shipped ones."""
    return f"enquiry-{kind}.txt"


@cache
def shipped(kind: Kind) -> str:
    """Return a template as it ships."""
    return (SHIPPED / file_name(kind)).read_text(encoding="utf-8")


def read_wording(folder: Path) -> Wording:
    """Return the templates of a sourcing folder.

    Parameters
    ----------
    folder : which may hold ``enquiry-short.txt``, ``enquiry-full.txt`` and ``enquiry-reminder.txt``
    """
    texts: dict[Kind, str] = {}
    problems: list[Problem] = []
    warnings: list[Problem] = []
    for kind in KINDS:
        path = folder / file_name(kind)
        text = _text_of(path) if path.exists() else shipped(kind)
        if isinstance(text, Problem):
            problems.append(text)
            continue
        texts[kind] = text
        problems.extend(_problem(path.name, fault) for fault in faults_of(text, PLACEHOLDERS))
        warnings.extend(_warnings(path.name, text))
    return Wording(
        short=texts.get("short", shipped("short")),
        full=texts.get("full", shipped("full")),
        reminder=texts.get("reminder", shipped("reminder")),
        problems=tuple(problems),
        warnings=tuple(warnings),
    )


def _text_of(path: Path) -> str | Problem:
    place = Place(file=path.name)
    try:
        content = path.read_bytes()
    except OSError as error:
        found = f"it cannot be read ({error.strerror or error})"
        return Problem(
            code="cannot-be-read", place=place, found=found, wanted="Make it a plain text file that you may read"
        )
    if len(content) > LARGEST:
        found = f"it has {len(content)} bytes, more than a message"
        return Problem(code="file-too-large", place=place, found=found, wanted=f"Keep it under {LARGEST} bytes")
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError:
        return Problem(
            code="not-utf-8", place=place, found="it is not in UTF-8", wanted="Save it as UTF-8 in your editor"
        )
    return text.replace("\r\n", "\n").replace("\r", "\n")


def _problem(file: str, fault: PlaceholderFault) -> Problem:
    name = one_line(fault.name, LONGEST_SHOWN)
    place = Place(file=file, key=name)
    if fault.is_lone_brace:
        found, wanted = f"line {fault.line} has a lone {name}", f"For a plain brace write {name}{name}"
        return Problem(code="lone-brace", place=place, found=found, wanted=f"{wanted}; else finish the placeholder")
    close = nearest(name, tuple(PLACEHOLDERS))
    hint = f"Write {{{close}}} if that is meant; known are" if close else "Write one of"
    known = ", ".join(f"{{{one}}}" for one in PLACEHOLDERS)
    found = f"line {fault.line} has {{{name}}}, which is not a placeholder"
    return Problem(code="unknown-placeholder", place=place, found=found, wanted=f"{hint} {known}")


def _warnings(file: str, text: str) -> Iterator[Problem]:
    if "questions" not in names_in(text):
        place = Place(file=file, key="questions")
        found = "the template has no {questions}, so its message asks none of them"
        yield Problem(code="no-questions", place=place, found=found, wanted="Add a line with {questions}")
