"""Rows of a plain .csv taken apart a column at a time: cells as stretches of the file's bytes, which numpy finds.

Enters: bytes, a separator, an encoding. Leaves: blocks of rows that all have as many cells, whose quotation marks do no
more than enclose cells. Whatever is written otherwise ends the blocks: from there on the csv module reads.
"""

from collections.abc import Iterable, Iterator, Sequence
from itertools import chain
from typing import Any, overload

import numpy as np
from numpy.typing import NDArray

from scorecard.frozen import dataclass
from scorecard.reading.cells import COLUMN_LIMIT

BYTES_AT_ONCE = 2**19  # few enough to stay in the processor's cache
ROWS_AT_ONCE = 2**16
LONGEST_ROW = 100_000  # bytes; a longer row is left to the csv module
PADDING = 8  # bytes beyond the end, so that a whole word can be taken at any place
LAST_LINES = 64  # bytes in which a file's last new lines mostly are
LONGEST_IN_WORDS = 64  # bytes; columns with longer cells are told apart text by text
TOGETHER_AT_MOST = 2**22  # bytes
SLOT_BITS = 16
NEWLINE, RETURN, QUOTE = b'\n\r"'
WORD_PARTS = np.array([(1 << 8 * length) - 1 for length in range(9)], dtype=np.uint64)  # its first bytes alone
STIR = np.uint64(0x9E3779B97F4A7C15)  # an odd number without a pattern

Places = NDArray[np.intp]
Bytes = NDArray[np.uint8]


@dataclass(frozen=True, slots=True, eq=False)
class Spans(Sequence[str]):
    """Cells of one column, each a stretch of the file's bytes that becomes a text when it is asked for.

    Parameters
    ----------
    content : the file's bytes, padded
    encoding : of its letters
    starts, ends : (cells,)
    """

    content: Bytes
    encoding: str
    starts: Places
    ends: Places

    def __len__(self) -> int:
        return len(self.starts)

    @overload
    def __getitem__(self, at: int) -> str: ...
    @overload
    def __getitem__(self, at: slice) -> "Spans": ...
    def __getitem__(self, at: int | slice) -> "str | Spans":
        """Return one cell as text, or some cells."""
        if isinstance(at, slice):
            return self.only(at)
        return self.content[self.starts[at] : self.ends[at]].tobytes().decode(self.encoding)

    def __iter__(self) -> Iterator[str]:
        """Yield every cell as text."""
        return iter(self.texts())

    def only(self, chosen: Any) -> "Spans":
        """Return the cells that a slice, a mask or positions choose."""
        return Spans(self.content, self.encoding, self.starts[chosen], self.ends[chosen])

    def texts(self) -> list[str]:
        """Return every cell as text: all at once where they are short, and hold no new line."""
        lengths = self.ends - self.starts + 1
        total = int(lengths.sum())
        if total <= TOGETHER_AT_MOST:
            ends = np.cumsum(lengths)
            together = self.content[np.repeat(self.starts - (ends - lengths), lengths) + np.arange(total)]
            together[ends - 1] = NEWLINE
            texts = together.tobytes().decode(self.encoding).split("\n")
            if len(texts) == len(self) + 1:
                return texts[:-1]
        return [self[at] for at in range(len(self))]

    def distinct(self) -> tuple[list[str], Places]:
        """Return the different texts, in no particular order, and for each cell the position of its text among them."""
        if not len(self) or (self.ends - self.starts).max() > LONGEST_IN_WORDS:
            return _distinct_texts(self.texts())
        words = self._words()
        key = words[0]
        for word in words[1:]:
            key = (key ^ key >> np.uint64(29)) * STIR + word
        first, places = distinct_keys(key)
        if any((word[first][places] != word).any() for word in words):  # two texts of one key
            return _distinct_texts(self.texts())
        return self.only(first).texts(), places

    def _words(self) -> list[NDArray[np.uint64]]:
        """Return the bytes of every cell, eight to a word, as many words as the longest needs."""
        lengths = self.ends - self.starts
        at_any_place = np.ndarray((len(self.content) - PADDING,), "<u8", self.content.data, strides=(1,))
        count = max(-(-int(lengths.max()) // 8), 1)
        starts = (np.minimum(self.starts + 8 * word, len(at_any_place) - 1) for word in range(count))
        rest = (np.clip(lengths - 8 * word, 0, 8) for word in range(count))
        return [at_any_place[start] & WORD_PARTS[length] for start, length in zip(starts, rest, strict=True)]


def joined(parts: Sequence[Sequence[str]]) -> Sequence[str]:
    """Return texts one part after another; stretches of one file stay what they are."""
    spans = [part for part in parts if isinstance(part, Spans)]
    if len(spans) < len(parts) or not spans:
        return list(chain.from_iterable(parts))
    ends = (np.concatenate(some) for some in zip(*((part.starts, part.ends) for part in spans), strict=True))
    return Spans(spans[0].content, spans[0].encoding, *ends)


def different(texts: Sequence[str]) -> Iterable[str]:
    """Return each text once; of stretches of a file without making a text of every cell."""
    return texts.distinct()[0] if isinstance(texts, Spans) else set(texts)


def _distinct_texts(texts: list[str]) -> tuple[list[str], Places]:
    """Return the different texts, and for each text its position among them."""
    positions = {text: at for at, text in enumerate(dict.fromkeys(texts))}
    return list(positions), np.array([positions[text] for text in texts], dtype=np.intp)


def distinct_keys(keys: NDArray[np.uint64]) -> tuple[Places, Places]:
    """Return where each different key stands once, and for each key its position among those.

    A key's slot says where another of its slot stands, most often an equal one; the few others are sorted.
    """
    slots = (keys * STIR >> np.uint64(64 - SLOT_BITS)).astype(np.intp)
    standing = np.empty(1 << SLOT_BITS, dtype=np.intp)
    standing[slots] = np.arange(len(keys))
    chosen = standing[slots]
    astray = np.flatnonzero(keys[chosen] != keys)
    if astray.size:
        _, first, group = np.unique(keys[astray], return_index=True, return_inverse=True)
        chosen[astray] = astray[first[group]]
    number = np.zeros(len(keys), dtype=np.intp)
    number[chosen] = 1
    first = np.flatnonzero(number)
    number[first] = np.arange(len(first))
    return first, number[chosen]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class PlainRows:
    """Some rows below one another.

    Parameters
    ----------
    numbers : their numbers in the sheet
    end : the byte of the file at which the next row starts
    columns : the cells of the columns asked for
    """

    numbers: range
    end: int
    columns: tuple[Spans, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PlainCsv:
    """A .csv as far as it is plain.

    Parameters
    ----------
    content : the file's bytes
    encoding : one in which the bytes of the signs below 128 stand for nothing else
    separator : of its cells
    positions : of the columns asked for, from 1
    most : rows that are wanted
    """

    content: bytes
    encoding: str
    separator: str
    positions: Sequence[int]
    most: int

    def rows(self, start: int, number: int) -> Iterator[PlainRows]:
        """Yield rows from the byte at which that of this number starts, many at once, up to one that is not plain."""
        content = _padded(self.content)
        parts = list[tuple[Places, Places]]()
        first, last = number, number + self.most
        for table in _tables(content, start, ord(self.separator)):
            ends = table[: last - number]
            if not ends.size or not max(self.positions) <= ends.shape[1] <= COLUMN_LIMIT:
                break
            starts = np.concatenate([[start], ends.ravel()[:-1] + 1]).reshape(ends.shape)
            parts.append(self._chosen(content, starts, ends))
            start, number = int(ends[-1, -1]) + 1, number + len(ends)
            if number - first >= ROWS_AT_ONCE:
                yield self._joined(content, parts, range(first, number), start)
                parts, first = [], number
        if parts:
            yield self._joined(content, parts, range(first, number), start)

    def _chosen(self, content: Bytes, starts: Places, ends: Places) -> tuple[Places, Places]:
        """Return where the cells of the columns asked for start and end, both (columns, rows)."""
        ends = ends.copy()
        ends[:, -1] -= content[ends[:, -1] - 1] == RETURN
        at = np.array(self.positions) - 1
        starts, ends = starts.T[at], ends.T[at]
        enclosed = content[starts] == QUOTE
        return starts + enclosed, ends - enclosed

    def _joined(self, content: Bytes, parts: list[tuple[Places, Places]], numbers: range, end: int) -> PlainRows:
        starts, ends = (np.concatenate(some, axis=1) for some in zip(*parts, strict=True))
        spans = zip(starts, ends, strict=True)
        columns = tuple(Spans(content, self.encoding, first, last) for first, last in spans)
        is_all = end == len(content) - PADDING
        return PlainRows(numbers=numbers, end=len(self.content) if is_all else end, columns=columns)


def _length(content: bytes) -> int:
    """Return how many bytes stand before the last new line, or new lines; few are looked through without a copy."""
    end = content[-LAST_LINES:]
    kept = end.rstrip(b"\r\n")
    return len(content) - len(end) + len(kept) if kept else len(content.rstrip(b"\r\n"))


def _padded(content: bytes) -> Bytes:
    """Return a file's bytes without empty rows at its end, with a new line and padding."""
    length = _length(content)
    padded = np.zeros(length + 1 + PADDING, dtype=np.uint8)
    padded[:length] = np.frombuffer(content, dtype=np.uint8, count=length)
    padded[length] = NEWLINE
    return padded


def _tables(content: Bytes, start: int, separator: int) -> Iterator[Places]:
    """Yield where the cells of rows end, (rows, width), some rows at a time, up to one that is not plain."""
    while start < len(content) - PADDING:
        part = content[start : min(start + BYTES_AT_ONCE, len(content) - PADDING)]
        marks = np.flatnonzero((part == separator) | (part == NEWLINE) | (part == QUOTE))
        kinds = part[marks]
        quotes = kinds == QUOTE
        within = np.bitwise_xor.accumulate(quotes.view(np.uint8)).view(np.bool_)
        is_end = ~(quotes | within)
        row_ends = np.flatnonzero(is_end & (kinds == NEWLINE))
        if not row_ends.size:
            return
        whole = slice(int(row_ends[-1]) + 1)
        ends = _as_rows(marks[whole][is_end[whole]], marks[row_ends])
        if ends is None or not _enclose_cells(part, marks[whole][quotes[whole]], separator):
            return
        if not _returns_end_lines(part[: int(marks[row_ends[-1]]) + 1], marks[kinds == NEWLINE]):
            return
        yield ends + start
        start += int(marks[row_ends[-1]]) + 1


def _enclose_cells(part: Bytes, quotes: Places, separator: int) -> bool:
    """Say whether quotation marks stand in pairs around cells, and nowhere else."""
    if not quotes.size:
        return True
    before, after = part[quotes[0::2] - 1], part[quotes[1::2] + 1]
    opens = (before == separator) | (before == NEWLINE)
    closes = (after == separator) | (after == NEWLINE) | (after == RETURN)
    opens[0] |= quotes[0] == 0
    return bool(opens.all() and closes.all())


def _returns_end_lines(part: Bytes, lines: Places) -> bool:
    """Say whether a carriage return stands nowhere but before a new line."""
    before_lines = part[lines[lines < len(part)] - 1]
    return int(np.count_nonzero(part == RETURN)) == int(np.count_nonzero(before_lines == RETURN))


def _as_rows(ends: Places, row_ends: Places) -> Places | None:
    """Return the ends of cells as (rows, width), or None where rows differ in width, or one is very long."""
    rows = len(row_ends)
    if len(ends) % rows:
        return None
    table = ends.reshape(rows, -1)
    longest = np.diff(row_ends, prepend=-1).max()
    return table if (table[:, -1] == row_ends).all() and longest <= LONGEST_ROW else None
