"""How the tool puts things in words: numbers at their shortest, lists with "and", the nearest known word."""

from collections.abc import Iterable, Sequence
from datetime import UTC, date, datetime
from decimal import Decimal
from difflib import SequenceMatcher, get_close_matches
from math import floor, log10

MONTHS = (
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
)
TURNING = frozenset("\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069\ufeff")
"""Signs that turn a line around."""

CLOSE = 0.6  # how much of two words must be alike for one to be offered for the other


def printable(text: str) -> str:
    """Return a text on one line, with a space for each letter that cannot be seen."""
    return "".join(letter if letter.isprintable() else " " for letter in text)


def plain_command(words: str) -> str:
    """Return a command as it is put where nobody knows how the user starts the tool.

    Examples
    --------
    >>> plain_command("score")
    'scorecard score'
    """
    return f"scorecard {words}"


def shortest(number: float) -> str:
    """Return a number as a person would type it: 12 rather than 12.0, and never an exponent below 1e16.

    Examples
    --------
    >>> shortest(12.0), shortest(0.1), shortest(-3), shortest(0.00002)
    ('12', '0.1', '-3', '0.00002')
    """
    value = float(number)
    if value.is_integer() and abs(value) < 1e16:
        return str(int(value))
    return format(Decimal(repr(value)), "f") if 0 < abs(value) < 1 else repr(value)


JUST_MORE = 1 + 5e-13  # lifts a half, and what is one in its 12 digits, above the half


def rounded(number: float, decimals: int = 1) -> str:
    """Return a number with so many decimals, halves away from 0 as in a spreadsheet, and no minus sign before zero.

    What is a half in its 12 significant digits counts as one, whatever sums left in the digits after them.

    Examples
    --------
    >>> rounded(78.25), rounded(70.24999999999999), rounded(-0.04), rounded(4, 0)
    ('78.3', '70.3', '0.0', '4')
    """
    text = f"{number * JUST_MORE:.{decimals}f}"
    return text.lstrip("-") if float(text) == 0 else text


def decimals_meant(half_width: float) -> int:
    """Return how many decimals of a figure of 100 mean anything: none whose unit is smaller than the half-width.

    Parameters
    ----------
    half_width : a part of 1

    Examples
    --------
    >>> decimals_meant(0.004), decimals_meant(0.001), decimals_meant(0.0)
    (0, 1, 1)
    """
    return 1 if half_width == 0 else min(1, max(0, floor(1e-9 - log10(100 * half_width))))


def drawn(share: float, half_width: float) -> str:
    """Return a share of random draws as so many of 100: no finer than the draws allow, and all only where it was all.

    Parameters
    ----------
    share, half_width : parts of 1

    Examples
    --------
    >>> drawn(0.613, 0.004), drawn(0.613, 0.001), drawn(0.002, 0.004), drawn(0.999, 0.004)
    ('61', '61.3', 'under 1', 'over 99')
    """
    decimals = decimals_meant(half_width)
    figure, least = rounded(100 * share, decimals), 10**-decimals
    if float(figure) == 0:
        return f"under {rounded(least, decimals)}"
    return f"over {rounded(100 - least, decimals)}" if float(figure) == 100 and share < 1 else figure


def listed(words: Iterable[str], link: str = "and") -> str:
    """Return words as a list in a sentence.

    Examples
    --------
    >>> listed(["a", "b", "c"]), listed(["a", "b"], "or"), listed(["a"])
    ('a, b and c', 'a or b', 'a')
    """
    *first, last = list(words) or [""]
    return f"{', '.join(first)} {link} {last}" if first else last


def all_of(number: int, noun: str) -> str:
    """Return all of so many things in a sentence.

    Examples
    --------
    >>> all_of(200, "piece"), all_of(1, "piece")
    ('all 200 pieces', 'the 1 piece')
    """
    return f"{'the' if number == 1 else 'all'} {counted(number, noun)}"


def counted(number: int, noun: str, plural: str | None = None) -> str:
    """Return a number with its noun.

    Examples
    --------
    >>> counted(1, "maker"), counted(3, "maker"), counted(2, "reply", "replies")
    ('1 maker', '3 makers', '2 replies')
    """
    return f"{number} {noun if number == 1 else plural or noun + 's'}"


def span_of_days(low: float, high: float | None) -> str:
    """Return days that something takes, as every command and page puts them.

    Parameters
    ----------
    high : None where it is open

    Examples
    --------
    >>> span_of_days(25, 30), span_of_days(1, 1), span_of_days(30, None)
    ('25 to 30 days', '1 day', '30 days or more')
    """
    least = f"{shortest(low)} {'day' if low == 1 else 'days'}"
    if high is None:
        return f"{least} or more"
    return least if low == high else f"{shortest(low)} to {shortest(high)} days"


def moment_words(moment: datetime) -> str:
    """Return a day and a time as one says them.

    Examples
    --------
    >>> moment_words(datetime(2026, 11, 30, 21, 33, 27, tzinfo=UTC))
    '30 November 2026, 21:33 UTC'
    """
    return f"{day_words(moment.date())}, {moment.astimezone(UTC):%H:%M} UTC"


def day_words(day: date) -> str:
    """Return a day with its month in words, whatever language the machine speaks.

    Examples
    --------
    >>> day_words(date(2027, 5, 14))
    '14 May 2027'
    """
    return f"{day.day} {MONTHS[day.month - 1]} {day.year}"


def nearest(word: str, known: Sequence[str]) -> str | None:
    """Return the known word that looks most like this one, ignoring case, or None where none is close.

    Examples
    --------
    >>> nearest("Minimun order", ["Rating", "Minimum order"])
    'Minimum order'
    """
    folded = {name.casefold().strip(): name for name in reversed(known)}
    close = get_close_matches(word.casefold().strip(), folded, n=1, cutoff=CLOSE)
    return folded[close[0]] if close else None


def nearest_first(word: str, known: Sequence[str]) -> list[str]:
    """Return known words, those first that look much like this one, hold it or are held by it; the rest as they come.

    Examples
    --------
    >>> nearest_first("credited", ["free", "paid", "paid, credited to the order"])
    ['paid, credited to the order', 'free', 'paid']
    >>> nearest_first("yes", ["free", "paid", "none"])
    ['free', 'paid', 'none']
    """
    typed = word.casefold().strip()

    def likeness(name: str) -> float:
        folded = name.casefold().strip()
        ratio = SequenceMatcher(None, folded, typed).ratio()
        return 1 + ratio if typed and (folded in typed or typed in folded) else ratio if ratio >= CLOSE else 0.0

    return sorted(known, key=likeness, reverse=True)


def known_words(share: float) -> str:
    """Return a known share in words, which never makes something nothing, nor nearly all all.

    Examples
    --------
    >>> known_words(0.55), known_words(0.999), known_words(0.001), known_words(1.0)
    ('55 of 100', 'over 99 of 100', 'under 1 of 100', '100 of 100')
    """
    whole = rounded(100 * share, 0)
    if whole == "100" and share < 1 - 1e-9:
        whole = "over 99"
    if whole == "0" and share > 1e-9:
        whole = "under 1"
    return f"{whole} of 100"
