"""What a user typed, fit for one line of a message: no line breaks, nothing invisible that turns a line around."""

from unicodedata import category

from scorecard.words import TURNING

LONGEST = 200  # characters of a name


def one_line(text: str, longest: int = LONGEST) -> str:
    """Return text as one line, its spaces single, signs that are never meant left out, cut where it is too long.

    Examples
    --------
    >>> one_line("Kiln" + chr(10) + "Co" + chr(0x202E)), one_line("Kiln & Co", 6)
    ('Kiln Co', 'Kiln …')
    """
    line = "".join(map(_seen, " ".join(text.split())))
    return line if len(line) <= longest else f"{line[: longest - 1]}…"


def _seen(sign: str) -> str:
    return "" if sign in TURNING or category(sign) in ("Cc", "Cs") else sign
