"""Numbers as the machine-readable result writes them: 12 significant digits, whole where they are whole, never NaN."""

from math import isfinite, isinf
from typing import Any

import numpy as np
from numpy.typing import NDArray

POWERS = 10.0 ** np.arange(23)  # those that a float holds exactly
LEAST_USUAL, MOST_USUAL = 1e-11, 9e11
UNSURE = 1e-3  # the scaled number is nearer to its exact value than this


def figure(number: float) -> float:
    """Return a number with 12 significant digits.

    Raises
    ------
    ValueError
        where it is none, or without end

    Examples
    --------
    >>> figure(0.1 + 0.2)
    0.3
    """
    if not isfinite(number):
        raise ValueError(f"{number} is no figure")
    return float(f"{number:.12g}")


def figures(numbers: NDArray[np.float64]) -> list[Any]:
    """Return an array of numbers as nested lists of figures, each exactly what ``figure`` gives.

    A number of usual size is a whole number of its twelfth digit, divided by a power of ten; where that is next to the
    middle of two whole numbers, or the size is another, the number is written out.

    Examples
    --------
    >>> figures(np.array([[0.1 + 0.2, 50.0], [50.0, 50.0]]))
    [[0.3, 50.0], [50.0, 50.0]]
    """
    size = np.abs(numbers)
    usual = (size >= LEAST_USUAL) & (size <= MOST_USUAL)
    size = np.where(usual, size, 1.0)
    powers = POWERS[11 - np.floor(np.log10(size)).astype(int)]
    scaled = size * powers
    digits = np.rint(scaled)
    is_sure = (np.abs(scaled - digits) < 0.5 - UNSURE) & (digits >= 1e11) & (digits <= 1e12)
    found = np.copysign(np.where(numbers == 0, 0.0, digits / powers), numbers)
    for at in zip(*np.nonzero(~(usual & is_sure) & (numbers != 0)), strict=True):
        found[at] = figure(numbers[at])
    return list(found.tolist())


def plain(number: float) -> int | float | None:
    """Return an answer's number as a person would write it: whole where it is whole, None where it is open.

    Examples
    --------
    >>> plain(12.0), plain(2.5), plain(float("inf"))
    (12, 2.5, None)
    """
    if isinf(number):
        return None
    return int(number) if float(number).is_integer() and abs(number) < 1e15 else figure(number)
