"""Geometry of the page's marks: where on a scale from 0 to 100 a dot and a line stand, and the same in words.

Enters: numbers. Leaves: percentages of the drawing's width, ready to be written; words stay in the page's own text.
"""

from scorecard.frozen import dataclass
from scorecard.words import rounded


@dataclass(frozen=True, slots=True, kw_only=True)
class Scale:
    """One dot, and where there is a band one line, on a scale from 0 to 100.

    Parameters
    ----------
    dot : such as "78.2%"
    start, end : of the line; None where there is no band
    words : the same in words, for those who do not see it
    """

    dot: str
    start: str | None
    end: str | None
    words: str


def band_words(low: float, high: float) -> str | None:
    """Return a band in words; None where it is no wider than one decimal shows.

    Examples
    --------
    >>> band_words(71, 90.1), band_words(71, 71.01)
    ('71.0 to 90.1', None)
    """
    ends = rounded(low), rounded(high)
    return None if ends[0] == ends[1] else " to ".join(ends)


def score_scale(score: float, low: float, high: float) -> Scale:
    """Return the mark of one maker's score and its band.

    Examples
    --------
    >>> score_scale(78.25, 71, 90.1).words
    '78.3, could be 71.0 to 90.1'
    """
    band = band_words(low, high)
    words = rounded(score) if band is None else f"{rounded(score)}, could be {band}"
    return _scale(score, (low, high) if band else None, words)


def share_scale(share: float, low: float, high: float) -> Scale:
    """Return the mark of one criterion's share, a part of 1, and of how far it can move."""
    words = (
        f"share {rounded(100 * share)} of 100, first place unchanged from {rounded(100 * low)} to {rounded(100 * high)}"
    )
    return _scale(100 * share, (100 * low, 100 * high), words)


def _scale(at: float, line: tuple[float, float] | None, words: str) -> Scale:
    start, end = (None, None) if line is None else (percent(line[0]), percent(line[1]))
    return Scale(dot=percent(at), start=start, end=end, words=words)


def percent(number: float) -> str:
    """Return a place on a scale from 0 to 100 as a percentage of its width.

    Examples
    --------
    >>> percent(78.254), percent(100.0)
    ('78.25%', '100%')
    """
    return rounded(number, 2).rstrip("0").rstrip(".") + "%"
