"""Replies: which rows of the sheet Quotes belong together, and which reply stands where a maker quoted again.

A row that names neither way, cover, term nor place continues the row of the same maker above it, unless it has another
day or currency. Rows that name the same of all these are one reply. On the same terms a later reply replaces an
earlier.
"""

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from datetime import date

from scorecard.costing.amounts import Span
from scorecard.costing.quotes import QuoteRow
from scorecard.errors import Problem
from scorecard.frozen import dataclass

Terms = tuple[str, str | None, str | None, str | None, str, str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Reply:
    """One reply of a maker: its prices, all on the same terms.

    Parameters
    ----------
    rows : at least one, in sheet order; the first settles way, cover, term and place
    others : rows of the maker's other replies that stand, which are asked for what this one does not say
    """

    rows: tuple[QuoteRow, ...]
    others: tuple[QuoteRow, ...] = ()

    @property
    def head(self) -> QuoteRow:
        """The row that settles the terms."""
        return self.rows[0]

    @property
    def quoted_on(self) -> date | None:
        """The day of the reply."""
        return next((row.quoted_on for row in self.rows if row.quoted_on), None)

    def saying(self, field: str, first: QuoteRow | None = None) -> QuoteRow | None:
        """Return the row that answers for a field: this row, else this reply, else the maker's other replies.

        None where none says anything, and where the first that does says that it is not known.
        """
        row = self._first_with(field, first)
        return row if row is not None and getattr(row, field) is not None else None

    def unsure(self, field: str, first: QuoteRow | None = None) -> QuoteRow | None:
        """Return the row that says of a field that it is not known, where that is the first word of it."""
        row = self._first_with(field, first)
        return row if row is not None and getattr(row, field) is None else None

    def _first_with(self, field: str, first: QuoteRow | None) -> QuoteRow | None:
        rows = ((first,) if first else ()) + self.rows + self.others
        return next((row for row in rows if getattr(row, field) is not None or field in row.unknown), None)

    def days(self, row: QuoteRow) -> Span | None:
        """Return the days of one row, else those that this reply gives elsewhere."""
        return row.days or next((other.days for other in self.rows if other.days), None)


def _terms(row: QuoteRow) -> Terms:
    return (row.maker, row.covers, row.way, row.term, row.term_place.strip().casefold(), row.currency)


def _continues(row: QuoteRow, above: QuoteRow | None) -> bool:
    says_nothing = not (row.covers or row.way or row.term or row.term_place.strip())
    return says_nothing and above is not None and _same_day(row, above) and row.currency == above.currency


def _same_day(row: QuoteRow, head: QuoteRow) -> bool:
    return row.quoted_on is None or row.quoted_on == head.quoted_on


def grouped(rows: Iterable[QuoteRow]) -> list[list[QuoteRow]]:
    """Return the rows by reply, in the order in which the replies begin."""
    groups: list[list[QuoteRow]] = []
    last: dict[str, list[QuoteRow]] = {}
    first: dict[tuple[Terms, date | None], list[QuoteRow]] = {}
    for row in rows:
        key = (_terms(row), row.quoted_on)
        group = _home_of(row, first.get(key), last.get(row.maker))
        if group is None:
            groups.append(group := [])
            first.setdefault(key, group)
        group.append(row)
        last[row.maker] = group
    return groups


def _home_of(row: QuoteRow, alike: list[QuoteRow] | None, above: list[QuoteRow] | None) -> list[QuoteRow] | None:
    """Return the reply that a row belongs to: the one above that it continues, else one on the same terms and day."""
    if above and _continues(row, above[0]):
        return above
    return alike or (above if above and row.quoted_on is None and _terms(row) == _terms(above[0]) else None)


def _by_terms(rows: Iterable[QuoteRow]) -> list[list[list[QuoteRow]]]:
    """Return the replies, those on the same terms together."""
    kept: dict[Terms, list[list[QuoteRow]]] = {}
    for group in grouped(rows):
        kept.setdefault(_terms(group[0]), []).append(group)
    return list(kept.values())


def standing(rows: Iterable[QuoteRow]) -> Mapping[str, tuple[Reply, ...]]:
    """Return the replies that stand, by maker in sheet order: on the same terms, the latest alone."""
    by_maker: dict[str, list[list[QuoteRow]]] = {}
    for groups in _by_terms(rows):
        by_maker.setdefault(groups[0][0].maker, []).append(_latest(groups))
    return {maker: tuple(_replies(groups)) for maker, groups in by_maker.items()}


def replaced(rows: Iterable[QuoteRow]) -> Iterator[tuple[QuoteRow, QuoteRow]]:
    """Yield every row of a reply that a later one on the same terms replaces, with the first row of that later one."""
    for groups in _by_terms(rows):
        latest = _latest(groups)
        yield from ((row, latest[0]) for group in groups if group is not latest for row in group)


def _latest(groups: Sequence[list[QuoteRow]]) -> list[QuoteRow]:
    return max(groups, key=lambda group: group[0].quoted_on or date.min)


def _replies(groups: Sequence[list[QuoteRow]]) -> Iterable[Reply]:
    for group in groups:
        others = tuple(row for other in groups if other is not group for row in other)
        yield Reply(rows=tuple(group), others=others)


def same_pieces(rows: Iterable[QuoteRow], unread: Collection[int] = ()) -> tuple[Problem, ...]:
    """Return a problem for every price that a reply gives a second time for one number of pieces.

    Replies on the same terms of which one has no day count as one: there is no telling which of them stands.

    Parameters
    ----------
    rows : as read, be their prices sound or not
    unread : numbers of rows whose pieces could not be read, which are left out
    """
    problems = []
    seen: dict[tuple[Terms, date | None, int | None], QuoteRow] = {}
    groups = grouped(rows)
    undated = {_terms(group[0]) for group in groups if group[0].quoted_on is None}
    for group in groups:
        terms = _terms(group[0])
        for row in (one for one in group if one.row not in unread):
            key = (terms, None if terms in undated else group[0].quoted_on, row.pieces)
            if key in seen:
                problems.append(_twice(row, seen[key]))
            seen.setdefault(key, row)
    return tuple(problems)


def _twice(row: QuoteRow, earlier: QuoteRow) -> Problem:
    pieces = "the same quantity" if row.pieces is None else f"{row.pieces} pieces"
    return Problem(
        code="two-prices",
        place=row.at("Pieces"),
        found=f"{row.maker} has a second price for {pieces}, after the one in {earlier.at('Price')}",
        wanted="Keep the price that holds, or give each reply its day, way or cover",
    )
