"""Every letter and every cell of the tables, against MIL-STD-105E, tables I and II-A, as published."""

import pytest
from published_sampling import COLUMNS, LETTERS_BY_LOT, SINGLE_PLANS, rows

from scorecard.inspection.sampling_tables import LETTERS, LEVELS, LIMITS, SIZES, cell, code_letter

CELLS = [
    (letter, limit, told) for letter, _, *cells in rows(SINGLE_PLANS) for limit, told in zip(LIMITS, cells, strict=True)
]


def as_published(found):
    return {"down": "v", "up": "^"}.get(found) or f"{found[0]}/{found[1]}"


@pytest.mark.parametrize("end", [0, 1], ids=["least of each range", "greatest of each range"])
def test_every_lot_has_the_published_letter(end):
    expected = [tuple(row[2:]) for row in rows(LETTERS_BY_LOT)]
    found = [tuple(code_letter(int(row[end]), level) for level in LEVELS) for row in rows(LETTERS_BY_LOT)]
    assert (15, expected) == (len(found), found)


def test_every_letter_has_the_published_sample():
    assert {letter: int(size) for letter, size, *_ in rows(SINGLE_PLANS)} == SIZES


def test_the_limits_are_the_published_columns():
    assert tuple(float(head) for head in COLUMNS.split()) == LIMITS


def test_every_cell_is_the_published_one():
    assert CELLS == [(letter, limit, as_published(cell(letter, limit))) for letter, limit, _ in CELLS]


def test_all_letters_and_limits_were_compared():
    assert (16 * 12, 16) == (len(CELLS), len(LETTERS))
