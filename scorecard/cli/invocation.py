"""How the user runs the tool, so that the commands it suggests can be copied as they stand."""

import shutil
import sys
from pathlib import Path


def program() -> str:
    """Return what to type for ``scorecard``: its name where the system finds it, else what was typed this time."""
    typed = Path(sys.argv[0])
    if typed.name == "__main__.py":
        return "python -m scorecard"
    if typed.stem != "scorecard" or shutil.which("scorecard"):
        return "scorecard"
    return quoted(sys.argv[0])


def command(words: str, folder: Path = Path()) -> str:
    """Return a command to suggest, on the folder that was named."""
    place = "" if folder == Path() else f" --folder {quoted(str(folder))}"
    return f"{program()} {words}{place}"


def quoted(text: str) -> str:
    """Return a path as it must be typed: in double quotes where it holds a space."""
    return f'"{text}"' if any(sign.isspace() for sign in text) else text
