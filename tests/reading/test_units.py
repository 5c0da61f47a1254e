import pytest

from scorecard.reading.units import ColumnUnit, currencies, is_known_unit


@pytest.mark.parametrize(
    ("unit", "word"),
    [
        ("days", "day"),
        ("days", "d"),
        ("day", "Days"),
        ("days", "days."),
        ("pieces", "pcs"),
        ("pcs", "piece"),
        ("years", "yrs."),
        ("%", "per cent"),
        ("marks", "mark"),
        ("EUR", "€"),
        ("EUR", "eur"),
        ("€", "EUR"),
        ("EUR per piece", "€"),
        ("EUR per piece", "€/pc"),
        ("€/piece", "EUR per piece"),
        ("USD", "$"),
        ("AUD", "$"),
        ("CNY", "¥"),
        ("PLN", "zł"),
        ("XOF", "XOF"),
        ("days", ""),
        ("", ""),
    ],
)
def test_a_word_that_says_the_columns_unit_may_follow(unit, word):
    assert ColumnUnit(unit).allows_after(word, currency_before=False)


@pytest.mark.parametrize(
    ("unit", "word"),
    [
        ("days", "h"),
        ("days", "weeks"),
        ("days", "working days"),
        ("working days", "days"),
        ("EUR", "$"),
        ("EUR", "GBP"),
        ("days", "€"),
        ("", "days"),
        ("", "€"),
        ("", "%"),
        ("EUR", "€ per kg"),
        ("g", "kg"),
    ],
)
def test_a_word_that_says_another_unit_may_not(unit, word):
    assert not ColumnUnit(unit).allows_after(word, currency_before=False)


def test_what_a_price_is_for_may_follow_a_currency_before_the_number():
    assert ColumnUnit("EUR per piece").allows_after("per piece", currency_before=True)


def test_a_currency_stands_before_or_after_not_both():
    assert not ColumnUnit("EUR").allows_after("€", currency_before=True)


def test_a_sign_may_stand_for_several_currencies():
    assert {"JPY", "CNY"} == currencies("¥")


def test_a_word_is_no_currency():
    assert frozenset() == currencies("days")


def test_weeks_are_known_as_a_unit():
    assert is_known_unit("Weeks")


def test_only_percent_columns_are_percentages():
    assert (True, False) == (ColumnUnit("%").is_percent, ColumnUnit("days").is_percent)


@pytest.mark.parametrize(("unit", "word"), [("pieces", "units"), ("ratings", "reviews"), ("years", "y")])
def test_the_trades_other_words_for_a_unit_are_known(unit, word):
    assert ColumnUnit(unit).allows_after(word, currency_before=False)


@pytest.mark.parametrize(("unit", "is_whole"), [("pieces", True), ("colours", True), ("ratings", True), ("kg", False)])
def test_whole_things_are_told_from_what_can_be_parted(unit, is_whole):
    assert is_whole == ColumnUnit(unit).is_of_whole_things
