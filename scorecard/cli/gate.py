"""The one place where failures become sentences on standard error and an exit status."""

import codecs
import json
import os
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from dataclasses import replace
from functools import wraps
from io import TextIOWrapper
from typing import Any, TextIO

import typer

from scorecard.cli.invocation import with_program
from scorecard.errors import InputError, Problem, ScorecardError
from scorecard.words import counted

SHOWN = 200  # problems printed; --json prints all


def gated(command: Callable[..., None]) -> Callable[..., None]:
    """Return a command whose failures are told in sentences, or as JSON where that was asked for."""

    @wraps(command)
    def run(*args: Any, **options: Any) -> None:
        try:
            command(*args, **options)
        except InputError as error:
            tell_problems(error, as_json=bool(options.get("as_json")))
            raise typer.Exit(error.exit_status) from None
        except ScorecardError as error:
            say(str(error))
            raise typer.Exit(error.exit_status) from None
        except BrokenPipeError:
            _close_quietly()
        except (typer.Exit, typer.Abort):
            raise
        except Exception as error:
            if _is_of_a_stream(error):
                raise
            _own_fault(error)

    return run


def open_what_is_closed() -> None:
    """Put nothing in place of a closed standard stream, so that no file is opened under its number."""
    for handle in range(3):
        try:
            os.fstat(handle)
        except OSError:
            os.open(os.devnull, os.O_RDWR)


def replace_what_cannot_be_shown() -> None:
    """Let a letter that the terminal's or the file's encoding lacks be printed as a mark, rather than end the run."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, TextIOWrapper):
            stream.reconfigure(errors="replace")


def say(message: str) -> None:
    """Print a message for the user to standard error; where that takes none, the exit status still stands."""
    try:
        typer.echo(message, err=True)
    except OSError:
        _mute(sys.stderr)


def tell_problems(error: InputError, *, as_json: bool, heading: str | None = "nothing was computed:") -> None:
    """Print every problem of the files: as the result where JSON was asked for, and in words on standard error.

    The heading tells what comes of them; None where that was said before.
    """
    if as_json:
        from scorecard.problem_result import problems_result

        show_json(problems_result(error.problems, error.warnings, error.set_aside))
        return
    if heading:
        say(f"{counted(len(error.problems), 'problem')} to mend; {heading}")
    tell(error.problems)
    warnings = [one for one in error.warnings if one.code != "read-as"]
    if warnings:
        say(f"{counted(len(warnings), 'warning')} besides:")
        tell(warnings)
    if error.set_aside:
        say(f"{counted(len(error.set_aside), 'cell')} would be taken as unknown:")
        tell(error.set_aside)


def tell(problems: "tuple[Problem, ...] | list[Problem]") -> None:
    """Print problems or warnings, one a line."""
    for problem in problems[:SHOWN]:
        say(f"  {replace(problem, wanted=with_program(problem.wanted))}")
    if len(problems) > SHOWN:
        say(f"  … and {len(problems) - SHOWN} more; --json lists them all")


def show_json(result: dict[str, Any]) -> None:
    """Print a machine-readable result to standard output, whole in any encoding."""
    lines = json.dumps(result, ensure_ascii=False, allow_nan=False)
    typer.echo(lines if _can_hold(lines) else json.dumps(result, allow_nan=False))


def _can_hold(lines: str) -> bool:
    """Say whether standard output is UTF-8, and the lines hold nothing that even this lacks."""
    if codecs.lookup(getattr(sys.stdout, "encoding", None) or "utf-8").name != "utf-8":
        return False
    try:
        lines.encode()
    except UnicodeEncodeError:
        return False
    return True


def _own_fault(error: Exception) -> None:
    if os.environ.get("SCORECARD_TRACEBACK"):
        raise error
    say(
        f"The tool itself failed ({type(error).__name__}: {error}). Your files were not changed. "
        "Set SCORECARD_TRACEBACK=1 and run it again to see where."
    )
    raise typer.Exit(1)


def _is_of_a_stream(error: Exception) -> bool:
    """Say whether it is what a run says that could not be written: of a file, the name would be known."""
    return isinstance(error, OSError) and error.filename is None


@contextmanager
def told_where_unsaid() -> Iterator[None]:
    """End a run whose words have nowhere to go, such as a file on a full disk, in one sentence and with status 1."""
    try:
        yield
    except OSError as error:
        if not _is_of_a_stream(error):
            raise
        _mute(sys.stdout)
        say(f"What this run had to say could not be written: {error.strerror}. What it keeps in files is whole.")
        raise SystemExit(1) from None


def _mute(stream: TextIO) -> None:
    """Let what is still to be said go nowhere, without a fault at the end."""
    with suppress(OSError, ValueError):
        os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())


def _close_quietly() -> None:
    _mute(sys.stdout)
    raise typer.Exit(1)
