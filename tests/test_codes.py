import pytest

from scorecard.codes import (
    COUNTRIES,
    CURRENCY_DECIMALS,
    CURRENCY_SIGNS,
    amount_range,
    country_offered,
    currency_offered,
    money,
    money_range,
)

# Codes that babel lists and ISO 3166-1 does not assign: exceptional reservations, groupings and private codes.
NOT_ASSIGNED = {"AC", "CP", "CQ", "DG", "EA", "EU", "EZ", "IC", "QO", "TA", "UN", "XA", "XB", "XK", "ZZ"}

# Unicode's data gives what shops use in daily life; ISO 4217 gives these more decimals.
FEWER_IN_DAILY_LIFE = {"AFN", "ALL", "IQD", "IRR", "KPW", "LAK", "LBP", "MGA", "MMK", "RSD", "SOS", "SYP", "YER"}


def test_all_249_assigned_country_codes_are_listed():
    expected = 249

    assert expected == len(COUNTRIES)


@pytest.mark.peers
def test_the_country_codes_are_those_of_unicode_s_data_less_the_codes_that_are_not_assigned():
    babel = pytest.importorskip("babel")
    territories = babel.Locale("en").territories

    expected = {code for code in territories if len(code) == 2 and code.isalpha()} - NOT_ASSIGNED

    assert expected == set(COUNTRIES)


@pytest.mark.peers
def test_country_names_start_as_unicode_s_do_but_for_names_written_out():
    babel = pytest.importorskip("babel")
    territories = babel.Locale("en").territories

    different = {code for code, name in COUNTRIES.items() if name != territories[code].replace(" & ", " and ")}

    written_out = "BL BQ CD CG CI CV GS HK HM KN LC MF MM MO PM PS SH TC UM VC VI"
    assert different <= set(written_out.split(" "))


@pytest.mark.peers
def test_the_currencies_are_the_tender_of_some_country_today():
    core = pytest.importorskip("babel.core")
    tender = {
        code
        for history in core.get_global("territory_currencies").values()
        for code, _begins, ends, is_tender in history
        if ends is None and is_tender
    }

    assert tender - {"BGN"} == set(CURRENCY_DECIMALS)  # Bulgaria has had the euro since 2026


@pytest.mark.peers
def test_decimals_are_unicode_s_but_where_daily_life_has_fewer_than_the_standard():
    numbers = pytest.importorskip("babel.numbers")

    different = {
        code for code, decimals in CURRENCY_DECIMALS.items() if numbers.get_currency_precision(code) != decimals
    }

    assert different == FEWER_IN_DAILY_LIFE


@pytest.mark.parametrize(("code", "decimals"), [("EUR", 2), ("JPY", 0), ("KWD", 3), ("ISK", 0), ("HUF", 2)])
def test_decimals_are_those_of_the_standard(code, decimals):
    assert decimals == CURRENCY_DECIMALS[code]


def test_every_sign_belongs_to_a_listed_currency():
    assert set(CURRENCY_SIGNS) <= set(CURRENCY_DECIMALS)


@pytest.mark.parametrize(
    ("text", "offered"),
    [
        ("IE", "IE"),
        ("ie", "IE"),
        ("UK", "GB"),
        ("uk", "GB"),
        ("Ireland", "IE"),
        ("United Kingdon", "GB"),
        ("X", None),
        ("XX", None),
        ("", None),
        ("z" * 100_000, None),
    ],
)
def test_a_country_is_offered_for_a_near_miss(text, offered):
    assert offered == country_offered(text)


@pytest.mark.parametrize(
    ("text", "offered"),
    [
        ("EUR", "EUR"),
        ("gbp", "GBP"),
        ("£", "GBP"),
        ("euro", "EUR"),
        ("kr", None),
        ("¥", None),
        ("", None),
        ("XX", None),
    ],
)
def test_a_currency_is_offered_for_a_near_miss(text, offered):
    assert offered == currency_offered(text)


@pytest.mark.parametrize(
    ("amount", "currency", "shown"),
    [
        (-18, "EUR", "\N{MINUS SIGN}18.00"),
        (-1234.5, "JPY", "\N{MINUS SIGN}1235"),
        (-0.004, "EUR", "0.00"),
        (0, "EUR", "0.00"),
        (18, "EUR", "18.00"),
    ],
)
def test_money_below_zero_has_a_minus_sign_and_zero_none(amount, currency, shown):
    assert shown == money(amount, currency)


@pytest.mark.parametrize(
    ("ends", "shown"),
    [
        ((500, float("inf")), ("500.00 or more", "500.00 EUR or more")),
        ((500, 500.001), ("500.00", "500.00 EUR")),
        ((-2, 3), ("\N{MINUS SIGN}2.00 to 3.00", "\N{MINUS SIGN}2.00 to 3.00 EUR")),
        ((float("inf"), float("inf")), ("no known amount", "no known amount")),
    ],
)
def test_a_range_of_money_has_its_currency_behind_its_last_figure(ends, shown):
    assert shown == (money_range(*ends, "EUR"), amount_range(*ends, "EUR"))
