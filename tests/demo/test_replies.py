"""The demo's replies: one that is a single line, one without freight, one by sea and by air."""

from datetime import date, timedelta

from scorecard.demo.replies import reply_rows
from scorecard.demo.scenario import MAKERS
from scorecard.workbooks.entry_columns import FREIGHT, QUOTES

DAY = date(2027, 2, 1)


def rows(sheet):
    return reply_rows(DAY)[sheet]


def test_days_are_counted_from_the_day_on_which_the_demo_is_laid_out():
    assert all(row["Quoted on"] < DAY < row.get("Valid until", DAY + timedelta(1)) for row in rows("Quotes"))


def test_every_value_has_its_column():
    for sheet in (QUOTES, FREIGHT):
        assert {column.heading for column in sheet.columns} >= {heading for row in rows(sheet.name) for heading in row}


def test_every_maker_is_one_of_the_demo_that_answered():
    answered = {maker[0] for maker in MAKERS if maker[11] is not None}

    assert answered >= {row["Maker"] for sheet in ("Quotes", "Freight") for row in rows(sheet)}


def test_six_makers_quoted():
    assert 6 == len({row["Maker"] for row in rows("Quotes")})
