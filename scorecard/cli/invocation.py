"""How the user started the tool, so that the commands it suggests can be typed as they stand."""

import os
import re
import shlex
import shutil
import sys
from dataclasses import replace
from pathlib import Path

from scorecard.frozen import dataclass

HERE = Path()
PLAIN = set("_./:+,=@%-")  # signs that no shell takes for its own
LONGEST = 100  # characters of a path that is written into a file


@dataclass(frozen=True, slots=True, kw_only=True)
class Invocation:
    """How a run was started: what to type for ``scorecard``, on which folder and files, and how they are read.

    The day is no part of it: what is suggested is done later.

    Parameters
    ----------
    program : as ``program()`` returns it
    folder, criteria, makers : as named on the command line
    rows : how many rows are read; None for the usual number
    set_aside : whether unreadable cells are taken as unknown, which ``check`` never does
    """

    program: str
    folder: Path = HERE
    criteria: Path | None = None
    makers: Path | None = None
    rows: int | None = None
    set_aside: bool = False

    def command(self, words: str) -> str:
        """Return a command to suggest, on the same folder and files.

        Examples
        --------
        >>> Invocation(program="scorecard", folder=Path("my mugs")).command("score")
        'scorecard score --folder "my mugs"'
        """
        options = {
            "--folder": None if self.folder == HERE else self.folder,
            "--criteria": self.criteria,
            "--makers": self.makers,
            "--rows": self.rows,
        }
        told = [f"{option} {quoted(str(value))}" for option, value in options.items() if value is not None]
        aside = ["--set-aside"] if self.set_aside and not words.startswith("check") else []
        return " ".join([self.program, words, *told, *aside])

    def in_files(self) -> "Invocation":
        """Return the same for pages and workbooks, which may be passed on: without absolute paths.

        A folder so named is left out, since the command works inside it; of a single file the name stays.
        """
        return replace(
            self,
            program=program_in_files(),
            folder=self.folder if _may_be_shown(self.folder) else HERE,
            criteria=_shown(self.criteria),
            makers=_shown(self.makers),
        )


def command(words: str, folder: Path = HERE) -> str:
    """Return a command to suggest, on a folder alone."""
    return Invocation(program=program(), folder=folder).command(words)


def program() -> str:
    """Return what to type for ``scorecard``: its name where the system finds it, else what was typed this time."""
    return _program(in_files=False)


def program_in_files() -> str:
    """Return the same for pages and workbooks: ``scorecard`` where only an absolute path would do."""
    return _program(in_files=True)


def _program(*, in_files: bool) -> str:
    started = Path(sys.argv[0])
    as_module = started.parts[-2:] == ("scorecard", "__main__.py")
    if not as_module and started.stem != "scorecard":
        return "scorecard"
    typed = _as_typed(sys.orig_argv[0] or "python" if as_module else sys.argv[0])
    if in_files and not _may_be_shown(Path(typed)):
        return "scorecard"
    return f"{quoted(typed)} -m scorecard" if as_module else quoted(typed)


def _as_typed(program: str) -> str:
    """Return a program as a user types it: its name where the system finds it so, or the way from here."""
    path = Path(program)
    if not path.is_absolute():
        return program
    found = shutil.which(path.name)
    if found and Path(found).absolute().with_suffix("") == path.with_suffix(""):
        return path.name
    near = os.name == "nt" and path.is_relative_to(Path.cwd())  # only Windows makes what was typed absolute
    return str(path.relative_to(Path.cwd())) if near else program


def _may_be_shown(path: Path) -> bool:
    return not path.is_absolute() and str(path).isprintable() and len(str(path)) <= LONGEST


def _shown(path: Path | None) -> Path | None:
    return path if path is None or _may_be_shown(path) else Path(path.name)


def with_program(text: str) -> str:
    """Return a sentence in which ``scorecard start`` and the like are put as this user must type them."""
    return re.sub(r"\bscorecard (?=(?:demo|start|check|score)\b)", lambda _: f"{program()} ", text)


def quoted(text: str) -> str:
    """Return a path as it must be typed: in quotes where it holds anything that a shell would take for its own.

    Examples
    --------
    >>> quoted("mugs"), quoted("my mugs"), quoted("cups&saucers")
    ('mugs', '"my mugs"', '"cups&saucers"')
    """
    windows = os.name == "nt"
    if text and all(sign.isalnum() or sign in PLAIN or (windows and sign == "\\") for sign in text):
        return text
    return f'"{text}"' if windows or not set('"$`\\!') & set(text) else shlex.quote(text)
