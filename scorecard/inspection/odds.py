"""How likely a sample lets a bad lot through, and how bad a lot may be after a sample: exact, in whole numbers.

Pieces are drawn without putting them back, so that the number of faulty ones among them is hypergeometric; counts of
ways are whole numbers of any length, and no figure is rounded before it is shown.
"""

from fractions import Fraction
from math import comb


def slips_through(lot: int, faulty: int, opened: int, accept: int) -> Fraction:
    """Return the chance that a sample holds at most so many faulty pieces.

    Parameters
    ----------
    lot : pieces in all
    faulty : of these, at most ``lot``
    opened : pieces drawn, at most ``lot``
    accept : the most faulty pieces with which the lot is still within its limit

    Raises
    ------
    ValueError
        If more pieces are faulty, or opened, than there are.

    References
    ----------
    The hypergeometric distribution, summed from 0 to ``accept``.

    Examples
    --------
    >>> slips_through(10, 1, 5, 0), slips_through(200, 200, 32, 2)
    (Fraction(1, 2), Fraction(0, 1))
    """
    if not (0 <= faulty <= lot and 0 <= opened <= lot):
        raise ValueError("neither faulty nor opened pieces can be more than the lot")
    good = lot - faulty
    ways = sum(comb(faulty, found) * comb(good, opened - found) for found in range(min(accept, opened) + 1))
    return Fraction(ways, comb(lot, opened))


def most_faulty(lot: int, opened: int, found: int, doubt: Fraction = Fraction(1, 20)) -> int:
    """Return the most faulty pieces that a lot may well hold, after a sample.

    Parameters
    ----------
    lot, opened : pieces in all, and drawn
    found : faulty ones among those drawn
    doubt : a lot with more faulty pieces than returned shows so few in fewer samples than this part of all

    Returns
    -------
    at least ``found``, at most ``found`` and all pieces that were not opened

    References
    ----------
    The exact one-sided upper confidence bound for a finite lot, by inverting the hypergeometric test.

    Examples
    --------
    >>> most_faulty(200, 200, 3), most_faulty(200, 50, 0)
    (3, 10)
    """
    low, high = found, found + lot - opened
    while low < high:
        middle = (low + high + 1) // 2
        if slips_through(lot, middle, opened, found) >= doubt:
            low = middle
        else:
            high = middle - 1
    return low
