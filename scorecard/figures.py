"""Numbers as the machine-readable result writes them: 12 significant digits, whole where they are whole, never NaN."""

from math import isinf
from typing import Any

import numpy as np
from numpy.typing import NDArray


def figure(number: float) -> float:
    """Return a number with 12 significant digits.

    Examples
    --------
    >>> figure(0.1 + 0.2)
    0.3
    """
    return float(f"{number:.12g}")


def figures(numbers: NDArray[np.float64]) -> list[Any]:
    """Return an array of numbers as nested lists of figures; each number is worked out once, since most recur.

    Examples
    --------
    >>> figures(np.array([[0.1 + 0.2, 50.0], [50.0, 50.0]]))
    [[0.3, 50.0], [50.0, 50.0]]
    """
    once, places = np.unique(numbers, return_inverse=True)
    found = np.array([figure(number) for number in once.tolist()], dtype=float)
    return list(found[places].reshape(numbers.shape).tolist())


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
