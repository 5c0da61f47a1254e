"""A small linear programme, solved by the dual simplex method as its constraints come in.

Enters: costs, then constraints one by one. Leaves: the least cost, where it lies, and the multipliers that prove it.
A programme has few variables and takes in only those constraints that matter, so a dense table serves it best.
"""

from collections.abc import Hashable
from copy import copy
from fractions import Fraction
from typing import Any

import numpy as np
from numpy.typing import NDArray

NIL = 1e-12
"""In floating point, an amount this close to nil is taken as nil; costs and coefficients are best of the order of 1."""

PIVOTS_PER_VARIABLE = 50
"""Steps allowed for one constraint, by number of variables; more are a sign of going in circles."""

Numbers = NDArray[Any]
"""Floats, or whole fractions in an array of objects."""


class EndlessPivotsError(ArithmeticError):
    """Floating point did not come to an end; exact arithmetic will."""


class Programme:
    """Minimise cost·x over x ≥ 0 under constraints constant + coefficients·x ≥ 0.

    Every variable, and the slack of every constraint, is kept as an affine function of those that are nil at present
    (the nonbasic ones). With costs that are not negative, x = 0 is the answer without constraints; a constraint that
    the answer breaks is mended by exchanging nil variables, which keeps all multipliers from being negative.

    Parameters
    ----------
    cost : (variables,), not negative
    exact : whether to compute in fractions, with a choice of pivots that cannot go in circles

    References
    ----------
    Lemke (1954), Naval Research Logistics Quarterly 1, 36-47; the choice by least index: Bland (1977), Mathematics of
    Operations Research 2, 103-107 (both from memory).

    Examples
    --------
    >>> programme = Programme([1.0, 2.0])
    >>> programme.require("at least 3 in all", -3.0, [1.0, 1.0])
    True
    >>> programme.x.tolist(), float(programme.least)
    ([3.0, 0.0], 3.0)
    """

    def __init__(self, cost: Any, exact: bool = False) -> None:
        self.exact = exact
        self.variables = len(cost)
        self._nil: Any = 0 if exact else NIL
        self._rows = self.variables + 1
        self._table = self._numbers(np.zeros((self._rows, self._rows)))
        self._table[0, 1:] = self._numbers(cost)
        self._table[1 : self._rows, 1:] += self._numbers(np.eye(self.variables))
        self._nonbasic = list(range(1, self._rows))
        self._names: list[Hashable] = [None] * self._rows

    def copy(self) -> "Programme":
        """Return a programme as far as this one has come, that goes its own way."""
        other = copy(self)
        other._table, other._nonbasic, other._names = self._table.copy(), self._nonbasic.copy(), self._names.copy()
        return other

    @property
    def x(self) -> Numbers:
        """(variables,): where the least cost lies."""
        return self._table[1 : self.variables + 1, 0]

    @property
    def least(self) -> Any:
        """The least cost."""
        return self._table[0, 0]

    @property
    def multipliers(self) -> dict[Hashable, Any]:
        """By constraint, how fast the least cost grows with what it demands; those at nil are left out."""
        prices = zip(self._nonbasic, self._table[0, 1:], strict=True)
        return {self._names[row]: price for row, price in prices if row > self.variables and price > 0}

    def require(self, name: Hashable, constant: Any, coefficients: Any) -> bool:
        """Take in a constraint; return whether all of them can be met together.

        Raises
        ------
        EndlessPivotsError
            If floating point does not come to an end.
        """
        row = self._numbers(coefficients) @ self._table[1 : self.variables + 1]
        row[0] += self._numbers(constant)[()]
        if self._rows == len(self._table):
            self._table = np.concatenate([self._table, self._table])  # twice the room: what is new is written over
        self._table[self._rows] = row
        self._rows += 1
        self._names.append(name)
        return self._mend()

    def _numbers(self, values: Any) -> Numbers:
        return np.vectorize(Fraction, otypes=[object])(values) if self.exact else np.asarray(values, dtype=float)

    def _mend(self) -> bool:
        """Exchange variables until none is negative; return whether that could be done."""
        allowed = PIVOTS_PER_VARIABLE * self.variables
        while (row := self._broken()) is not None:
            column = self._entering(row)
            if column is None:
                return False
            if allowed == 0 and not self.exact:
                raise EndlessPivotsError
            allowed -= 1
            self._exchange(row, column)
        return True

    def _broken(self) -> int | None:
        """Return the row of the most negative variable (in exact arithmetic, of the first), or None."""
        values = self._table[: self._rows, 0]
        if self.exact:
            return next((row for row, value in enumerate(values) if row and value < 0), None)
        row = int(values[1:].argmin()) + 1
        return row if values[row] < -self._nil else None

    def _entering(self, row: int) -> int | None:
        """Return the column whose exchange keeps all multipliers from being negative, or None where there is none."""
        slopes, prices = self._table[row], self._table[0]
        columns = np.flatnonzero(slopes > self._nil)  # never the first: the constant of a broken row is negative
        if not columns.size:
            return None
        ratios = prices[columns] / slopes[columns]
        level: list[int] = columns[ratios <= ratios.min() + self._nil].tolist()
        return (
            min(level, key=lambda c: self._nonbasic[c - 1])
            if self.exact
            else max(level, key=slopes.tolist().__getitem__)
        )

    def _exchange(self, row: int, column: int) -> None:
        """Make the variable of a row nil in place of that of a column."""
        table, leaving = self._table[: self._rows], self._table[row].copy()
        ratios = table[:, column] / leaving[column]
        table -= np.multiply.outer(ratios, leaving)
        table[:, column] = ratios
        table[row] *= 0
        table[row, column] += 1
        self._nonbasic[column - 1] = row
