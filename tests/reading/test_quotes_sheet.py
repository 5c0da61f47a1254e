"""Replies as they came, cell by cell."""

from datetime import date
from decimal import Decimal

import pytest
from cases import AS_OF
from sourcing import BRIEF, costs_of, folder_of, problems_of

from scorecard.costing.amounts import Span
from scorecard.errors import InputError
from scorecard.reading.folder import read_folder

HEAD = ["Maker", "Price", "Price is for", "Currency"]


def quotes(path, *rows, head=HEAD, toml="", **options):
    return costs_of(path, {"Quotes": [head, *rows]}, toml, **options).quotes


def problems(path, *rows, head=HEAD, toml="", **options):
    return problems_of(path, {"Quotes": [head, *rows]}, toml, **options)


def test_a_one_line_reply_is_a_quote(tmp_path):
    (quote,) = quotes(tmp_path, ["fernhill ", 480, "all", "EUR"])

    assert ("Fernhill", Span.of(480), "all", "EUR", 2) == (
        quote.maker,
        quote.price,
        quote.price_is_for,
        quote.currency,
        quote.row,
    )


def test_an_empty_sheet_of_quotes_is_no_quote(tmp_path):
    assert costs_of(tmp_path, {"Quotes": [HEAD], "Freight": [["Maker", "Way"]]}) is None


def test_a_full_reply_is_read_from_every_column(tmp_path):
    head = [
        *HEAD,
        "Quoted on",
        "Pieces",
        "Price covers",
        "Way",
        "Days",
        "Delivery term",
        "Place",
        "Set-up",
        "Set-up again on reorder",
        "Sample price",
        "Sample postage",
        "Credited from",
        "Deposit %",
        "Valid until",
    ]
    row = ["Brightholm", "4,20 €", "each", "EUR", date(2026, 11, 2), 200, "goods", "sea", "25-30", "fob", "Ningbo"]
    row += [60, "no", 25, "12.50", 100, 30, date(2026, 12, 24)]
    (quote,) = quotes(tmp_path, row, head=head, as_of=date(2026, 11, 25))

    assert (
        Span.of("4.2"),
        date(2026, 11, 2),
        200,
        "goods",
        "sea",
        Span.of(25, 30),
        "FOB",
        "Ningbo",
        Span.of(60),
        False,
        Span.of(25),
        Span.of("12.5"),
        100,
        Span.of(30),
        date(2026, 12, 24),
    ) == (
        quote.price,
        quote.quoted_on,
        quote.pieces,
        quote.covers,
        quote.way,
        quote.days,
        quote.term,
        quote.term_place,
        quote.setup,
        quote.setup_again,
        quote.sample_price,
        quote.sample_postage,
        quote.credited_from,
        quote.deposit_percent,
        quote.valid_until,
    )


def test_dont_know_and_blank_are_costed_every_way(tmp_path):
    head = [*HEAD, "Price covers"]
    first, second = quotes(
        tmp_path, ["Fernhill", 4, "each", "EUR", "don't know"], ["Brightholm", 4, "each", "EUR", None], head=head
    )

    assert (None, None) == (first.covers, second.covers)


def test_a_blank_currency_is_the_briefs_and_said(tmp_path):
    case = read_folder_of(tmp_path, ["Fernhill", 4, "each", None])

    assert ("EUR", [("D2", "read-as")]) == (
        case.costs.quotes[0].currency,
        [(one.place.cell, one.code) for one in case.warnings if one.place.sheet == "Quotes"],
    )


def read_folder_of(path, *rows, head=HEAD):
    costs_of(path, {"Quotes": [head, *rows]})
    return read_folder(path)


def test_a_reply_in_another_currency_needs_its_rate(tmp_path):
    row = ["Fernhill", 4, "each", "USD"]

    assert [("D2", "currency-without-rate")] == problems(tmp_path, row)
    assert "USD" == quotes(tmp_path, row, toml="[currencies]\non = 2026-11-20\nUSD = 0.92\n")[0].currency


@pytest.mark.parametrize(
    ("row", "found"),
    [
        (["Fernhil", 4, "each", "EUR"], [("A2", "unknown-maker")]),
        ([None, 4, "each", "EUR"], [("A2", "missing-maker")]),
        (["Fernhill", None, "each", "EUR"], [("B2", "missing-value")]),
        (["Fernhill", 0, "each", "EUR"], [("B2", "not-above-zero")]),
        (["Fernhill", -4, "each", "EUR"], [("B2", "below-zero")]),
        (["Fernhill", "about 4", "each", "EUR"], [("B2", "rough-number")]),
        (["Fernhill", 4, None, "EUR"], [("C2", "missing-value")]),
        (["Fernhill", 4, "both", "EUR"], [("C2", "not-a-choice")]),
        (["Fernhill", 4, "each", "euro"], [("D2", "not-a-currency")]),
        (["Fernhill", "4 USD", "each", "EUR"], [("B2", "other-currency")]),
    ],
)
def test_each_fault_stands_at_its_cell(tmp_path, row, found):
    assert [cell for cell, _ in found] == [cell for cell, _ in problems(tmp_path, row)]


@pytest.mark.parametrize(
    ("heading", "value", "code"),
    [
        ("Pieces", 0, "not-above-zero"),
        ("Pieces", "100-200", "not-whole"),
        ("Pieces", 1.5, "not-whole"),
        ("Deposit %", 130, "above-hundred"),
        ("Credited from", 100, "credit-without-sample"),
        ("Quoted on", date(2027, 1, 1), "day-to-come"),
        ("Valid until", "soon", "not-a-date"),
        ("Delivery term", "FOBB", "not-a-choice"),
        ("Days", date(2026, 5, 3), "date-for-number"),
    ],
)
def test_each_fault_of_a_further_column_stands_at_its_cell(tmp_path, heading, value, code):
    found = problems(tmp_path, ["Fernhill", 4, "each", "EUR", value], head=[*HEAD, heading], as_of=date(2026, 11, 25))

    assert [("E2", code)] == found


@pytest.mark.parametrize(
    ("heading", "typed", "wanted"),
    [
        ("Days", "approx. 10 working days", "Write a range such as 9-11 working days"),
        ("Days", "~10 working days, after proof", "Write a range such as 9-11 working days"),
        ("Days", "~3 weeks", "Write a range such as 14-28, or 10-20 if working days are meant"),
        ("Days", "~2 months", "Write the least and the greatest that it can be in days, as in 3-5"),
        ("Days", "5 working days at most", "If 5 working days is meant, write that alone"),
        ("Set-up", "approx 2.4k", "Write a range such as 2100-2700"),
    ],
)
def test_the_unit_of_a_rough_cell_is_not_lost(tmp_path, heading, typed, wanted):
    folder = folder_of(tmp_path, {"Quotes": [[*HEAD, heading], ["Fernhill", 4, "each", "EUR", typed]]})
    with pytest.raises(InputError) as told:
        read_folder(folder)

    assert [wanted] == [one.wanted for one in told.value.problems if one.place.cell == "E2"]


def test_the_range_that_is_offered_for_working_days_is_one_of_working_days(tmp_path):
    (quote,) = quotes(tmp_path, ["Fernhill", 4, "each", "EUR", "9-11 working days"], head=[*HEAD, "Days"])

    assert (Span.between(9, 11), "working days") == (quote.days, quote.days_counted)


def test_every_fault_of_every_row_is_told_at_once(tmp_path):
    rows = [["Fernhill", 0, "each", "EUR"], ["Nobody", 4, "both", "XXY"]]

    assert ["B2", "A3", "C3", "D3"] == [cell for cell, _ in problems(tmp_path, *rows)]


def test_two_prices_for_one_number_of_pieces_are_told_at_the_second(tmp_path):
    head = [*HEAD, "Pieces"]
    rows = [["Fernhill", 4, "each", "EUR", 200], ["Fernhill", 5, "each", "EUR", 200]]

    assert [("E3", "two-prices")] == problems(tmp_path, *rows, head=head)


def test_two_prices_are_told_at_once_with_all_other_faults(tmp_path):
    head = [*HEAD, "Pieces", "Deposit %"]
    rows = [
        ["Fernhill", 4, "each", "EUR", 200, 130],
        ["Fernhill", "dear", None, "EUR", 200, None],
        ["Brightholm", 4, "each", "USD", 100, None],
        ["Brightholm", 0, "each", "USD", 100, None],
    ]

    assert [
        ("F2", "above-hundred"),
        ("B3", "not-a-number"),
        ("C3", "missing-value"),
        ("E3", "two-prices"),
        ("D4", "currency-without-rate"),
        ("B5", "not-above-zero"),
        ("E5", "two-prices"),
    ] == problems(tmp_path, *rows, head=head)


@pytest.mark.parametrize(("heading", "value"), [("Pieces", "many"), ("Way", "by swan"), ("Quoted on", "soon")])
def test_prices_whose_rows_cannot_be_told_apart_are_not_said_to_be_two(tmp_path, heading, value):
    rows = [["Fernhill", 4, "each", "EUR", None], ["Fernhill", 5, "each", "EUR", value]]

    assert ["E3"] == [cell for cell, _ in problems(tmp_path, *rows, head=[*HEAD, heading])]


def test_a_missing_rate_is_told_once_with_the_cells_that_need_it(tmp_path):
    rows = [["Fernhill", 4 + at, "each", "USD", 100 * (at + 1)] for at in range(8)]
    freight = [["Maker", "Way", "Cost", "Currency"], ["Fernhill", "sea", 90, "USD"]]
    folder = {"Quotes": [[*HEAD, "Pieces"], *rows, ["Fernhill", 2, "each", "SEK", 900]], "Freight": freight}
    with pytest.raises(InputError) as caught:
        read_folder(folder_of(tmp_path, folder))

    assert [
        (
            "D2",
            "USD has no rate, here and in 8 more cells: Quotes!D3, Quotes!D4, Quotes!D5, Quotes!D6, Quotes!D7 "
            "and 3 more",
        ),
        ("D10", "SEK has no rate"),
    ] == [(one.place.cell, one.found) for one in caught.value.problems]


def test_a_whole_reply_in_the_price_cell_says_where_each_part_goes(tmp_path):
    with pytest.raises(InputError) as caught:
        read_folder(folder_of(tmp_path, {"Quotes": [HEAD, ["Fernhill", "480 all in, 100 pieces, by air", None, None]]}))
    price = caught.value.problems[0]

    assert ("B2", "not-a-number") == (price.place.cell, price.code)
    assert "Pieces: 100; Price: 480; Price is for: all; Price covers: to my door" in price.wanted
    assert price.wanted.endswith("Way: air")


def test_a_country_is_never_guessed(tmp_path):
    makers = [["Maker", "Minimum order", "Country"], ["Fernhill", 100, "Portugl"], ["Brightholm", 100, "Chnia"]]
    folder = folder_of(tmp_path, {"Makers": makers, "Quotes": [HEAD, ["Fernhill", 4, "each", "EUR"]]})
    case = read_folder(folder)

    assert case.costs.makers["Fernhill"].country is None
    assert [("C2", "Write PT if Portugal is meant"), ("C3", "Write CN if China is meant")] == [
        (one.place.cell, one.wanted) for one in case.warnings if one.code == "not-a-country"
    ]


def test_a_cell_that_is_set_aside_takes_its_row_along_and_is_listed(tmp_path):
    row = ["Fernhill", "about 4", "each", "EUR"]
    costs_of(tmp_path, {"Quotes": [HEAD, row]}, set_aside=True)
    case = read_folder(tmp_path, set_aside=True)

    assert ((), ["B2"]) == (case.costs.quotes, [one.place.cell for one in case.set_aside])


def test_a_misspelt_heading_is_told_and_a_doubled_one_refused(tmp_path):
    case = read_folder_of(tmp_path, ["Fernhill", 4, "each", "EUR", 3], head=[*HEAD, "Piecs"])

    assert [("E1", "near-heading")] == [
        (one.place.cell, one.code) for one in case.warnings if one.place.sheet == "Quotes"
    ]
    assert [("E1", "doubled-heading")] == problems(tmp_path, ["Fernhill", 4, "each", "EUR", 3], head=[*HEAD, "Price"])


@pytest.mark.parametrize("text", ["per piece", "Per  pc", "each piece", "/unit"])
def test_a_price_per_piece_is_for_each_and_listed(tmp_path, text):
    case = read_folder(folder_of(tmp_path, {"Quotes": [HEAD, ["Fernhill", 4, text, "EUR"]]}))

    assert "each" == case.costs.quotes[0].price_is_for
    assert [("C2", "read as each")] == [(one.place.cell, one.wanted) for one in case.warnings]


def test_a_choice_of_a_further_sheet_is_listed_where_it_was_read_with_goodwill(tmp_path):
    rows = {"Quotes": [[*HEAD, "Price covers"], ["Fernhill", 4, "each", "EUR", "don’t know"]]}
    case = read_folder(folder_of(tmp_path, rows))

    assert [("E2", "'don’t know'", "read as 'don't know'")] == [
        (one.place.cell, one.found, one.wanted) for one in case.warnings
    ]


@pytest.mark.parametrize("sign", ["€", "eur ", "US$"])
def test_a_sign_of_one_currency_alone_is_read_as_it(tmp_path, sign):
    rates = "[currencies]\non = 2026-11-20\nUSD = 0.92\n"

    assert {"US$": "USD"}.get(sign, "EUR") == quotes(tmp_path, ["Fernhill", 4, "each", sign], toml=rates)[0].currency


def test_how_a_sign_of_currency_was_read_is_listed(tmp_path):
    rows = {"Quotes": [HEAD, ["Fernhill", 4, "each", "€"]]}
    warnings = read_folder(folder_of(tmp_path, rows)).warnings

    assert [("D2", "'€'", "read as EUR")] == [
        (one.place.cell, one.found, one.wanted) for one in warnings if one.code == "read-as"
    ]


@pytest.mark.parametrize("sign", ["$", "£", "¥", "kr"])
def test_a_sign_of_several_currencies_is_asked_about(tmp_path, sign):
    assert [("D2", "not-a-currency")] == problems(tmp_path, ["Fernhill", 4, "each", sign])


@pytest.mark.parametrize(
    ("price", "currency", "code"),
    [
        ("$3,20", "USD", "currency-without-rate"),
        ("$3,20", "$", "not-a-currency"),
        ("4,20 SEK", "kr", "not-a-currency"),
        ("4,20 €", "euros", "not-a-currency"),
    ],
)
def test_an_amount_beside_a_faulty_currency_is_no_second_problem(tmp_path, price, currency, code):
    assert [("D2", code)] == problems(tmp_path, ["Fernhill", price, "each", currency])


def test_an_amount_that_is_none_is_a_problem_whatever_its_currency(tmp_path):
    assert [("B2", "not-a-number"), ("D2", "not-a-currency")] == problems(tmp_path, ["Fernhill", "dear", "each", "kr"])


def test_an_amount_takes_the_sign_of_its_rows_currency(tmp_path):
    rates = "[currencies]\non = 2026-11-20\nUSD = 0.92\n"

    assert Span.of("3.2") == quotes(tmp_path, ["Fernhill", "$3,20", "each", "USD"], toml=rates)[0].price


def test_an_amount_in_another_currency_than_its_rows_says_where_to_name_it(tmp_path):
    with pytest.raises(InputError) as caught:
        costs_of(tmp_path, {"Quotes": [HEAD, ["Fernhill", "$3.20", "each", "EUR"]]})

    assert [
        (
            "'$3.20' is in another currency than its row, which is in EUR",
            "Write its currency under Currency, or the amount in EUR as a number alone",
        )
    ] == [(one.found, one.wanted) for one in caught.value.problems]


def test_quotes_in_one_currency_settle_it_where_the_brief_does_not(tmp_path):
    brief = BRIEF.replace('currency = "EUR"\n', "")
    rows = [["Fernhill", 4, "each", "USD"], ["Brightholm", 5, "each", "USD"]]

    assert "USD" == costs_of(tmp_path, {"Quotes": [HEAD, *rows]}, brief=brief).brief.currency


def test_quotes_in_several_currencies_need_the_briefs(tmp_path):
    brief = BRIEF.replace('currency = "EUR"\n', "")
    rows = [["Fernhill", 4, "each", "USD"], ["Brightholm", 5, "each", "GBP"]]

    assert [("brief.currency", "missing-currency")] == problems_of(tmp_path, {"Quotes": [HEAD, *rows]}, brief=brief)


def test_what_the_sheet_makers_says_of_cost_is_taken_along(tmp_path):
    costs = costs_of(tmp_path, {"Quotes": [HEAD, ["Fernhill", 4, "each", "EUR"]]})
    fernhill, brightholm = costs.makers["Fernhill"], costs.makers["Brightholm"]

    assert (Span.of(100), "design", "PT", None, None, "CN") == (
        fernhill.minimum,
        fernhill.minimum_per,
        fernhill.country,
        brightholm.minimum,
        brightholm.minimum_per,
        brightholm.country,
    )


def test_a_price_is_exactly_as_typed(tmp_path):
    (quote,) = quotes(tmp_path, ["Fernhill", 0.1, "each", "EUR"])

    assert Decimal("0.1") == quote.price.low


USD = "[currencies]\non = 2026-11-20\nUSD = 0.92\n"
TERMS = ["Maker", "Pieces", "Price", "Price is for", "Currency", "Price covers", "Quoted on"]


def test_a_blank_currency_of_a_row_that_continues_a_reply_is_that_replys(tmp_path):
    rows = [
        ["Fernhill", 250, 3.2, "each", "USD", "goods", date(2026, 11, 20)],
        ["Fernhill", 500, 2.8, "each", None, None, None],
        ["Fernhill", 900, 2.5, "each", None, None, date(2026, 11, 20)],
    ]

    assert ["USD"] * 3 == [one.currency for one in quotes(tmp_path, *rows, head=TERMS, toml=USD)]


def test_a_currency_taken_from_the_reply_above_is_listed(tmp_path):
    rows = [["Fernhill", 250, 3.2, "each", "USD", "goods"], ["Fernhill", 500, 2.8, "each", None, None]]
    case = read_folder(folder_of(tmp_path, {"Quotes": [TERMS[:-1], *rows]}, USD))

    assert [("E3", "read as USD, as in row 2, whose reply this row continues")] == [
        (one.place.cell, one.wanted) for one in case.warnings if one.place.sheet == "Quotes" and one.code == "read-as"
    ]


@pytest.mark.parametrize(("covers", "day"), [("goods", None), (None, date(2026, 11, 21))])
def test_a_blank_currency_of_a_reply_of_its_own_is_the_briefs(tmp_path, covers, day):
    rows = [
        ["Fernhill", 250, 3.2, "each", "USD", "goods and freight", date(2026, 11, 20)],
        ["Fernhill", 500, 2.8, "each", None, covers, day],
    ]

    assert ["USD", "EUR"] == [one.currency for one in quotes(tmp_path, *rows, head=TERMS, toml=USD)]


CHARGES = [*HEAD, "Set-up", "Sample price", "Sample postage", "Deposit %"]


def test_a_charge_that_is_said_to_be_unknown_is_told_from_one_left_blank(tmp_path):
    (quote,) = quotes(tmp_path, ["Fernhill", 4, "each", "EUR", "?", "n/a", None, "unknown"], head=CHARGES)

    assert frozenset({"setup", "sample_price", "deposit_percent"}) == quote.unknown


def test_a_charge_that_cannot_be_read_is_unknown_once_it_is_set_aside(tmp_path):
    row = ["Fernhill", 4, "each", "EUR", "abc", 10, None, None]
    (quote,) = quotes(tmp_path, row, head=CHARGES, set_aside=True)

    assert frozenset({"setup"}) == quote.unknown


# the minimum order


PLAIN = BRIEF.split("[criteria")[0] + '[criteria.years]\nweight = 1\ncolumn = "Years"\npoints = [[0, 0], [10, 100]]\n'
ONE = {"Quotes": [HEAD, ["Fernhill", 4, "each", "EUR"]]}


def minimum_of(path, headings, row, brief):
    sheets = ONE | {"Makers": [["Maker", "Years", "Minimum is per", *headings], ["Fernhill", 5, "order", *row]]}
    return costs_of(path, sheets, brief=brief).makers["Fernhill"].minimum


RATED = PLAIN.replace("points =", 'per = "quantity"\npoints =')
TITLED = PLAIN.replace('column = "Years"', 'title = "Fit"\ncolumn = "minimum  ORDER"')
LEAST = PLAIN.replace('column = "Years"', 'per = "quantity"\nunit = "pieces"\ncolumn = "Least"')
MONEY = PLAIN.replace('column = "Years"', 'unit = "EUR"\ncolumn = "Minimum order"')
NAMED = PLAIN.replace(
    'column = "Years"\npoints = [[0, 0], [10, 100]]', 'column = "Minimum order"\nchoices = { 500 = 9 }'
)


@pytest.mark.parametrize(
    ("headings", "row", "brief", "expected"),
    [
        (["Minimum order"], [500], PLAIN, Span.of(500)),  # no criterion draws on it
        (["Minimum order"], [500], TITLED, Span.of(500)),  # one does, without per
        (["Minimum order"], [500], RATED, Span.of(500)),  # per = "quantity" on another column
        (["Minimum order", "Least"], [500, 900], LEAST, Span.of(500)),
        (["Least"], [900], LEAST, Span.of(900)),
        ([], [], RATED, Span.of(5)),  # per without a unit is in pieces
        ([], [], PLAIN, None),
        (["Minimum order"], [None], PLAIN, None),
        (["Minimum order"], [500], MONEY, None),  # in money
        (["Minimum order"], ["500"], NAMED, None),  # in words
    ],
)
def test_costs_take_the_minimum_from_its_own_column_whatever_the_criteria_are(tmp_path, headings, row, brief, expected):
    assert expected == minimum_of(tmp_path, headings, row, brief)


def test_a_minimum_that_cannot_be_read_is_a_problem_at_its_cell_though_no_criterion_draws_on_it(tmp_path):
    makers = [["Maker", "Years", "Minimum order"], ["Fernhill", 5, "a few"]]

    assert [("C2", "not-a-number")] == problems_of(tmp_path, ONE | {"Makers": makers}, brief=PLAIN)


def test_with_set_aside_a_quote_without_a_rate_counts_as_unreadable_with_the_rows_that_continue_it(tmp_path):
    head = ["Maker", "Quoted on", "Pieces", "Price", "Price is for", "Currency"]
    rows = [
        head,
        ["Brightholm", None, 200, 4, "each", "USD"],
        ["Brightholm", None, 500, 3, "each", None],
        ["Fernhill", None, 200, 5, "each", "EUR"],
    ]
    case = read_folder(folder_of(tmp_path, {"Quotes": rows}), as_of=AS_OF, set_aside=True)

    assert [("F2", "currency-without-rate")] == [(one.place.cell, one.code) for one in case.set_aside]
    assert ["Fernhill"] == [quote.maker for quote in case.costs.quotes]
    assert "USD = … (what one USD costs" in case.set_aside[0].wanted


@pytest.mark.parametrize("typed", [1e308, "1" + "0" * 60, "5 - 1" + "0" * 13])
def test_a_price_beyond_all_measure_is_refused_at_its_cell(tmp_path, typed):
    assert [("B2", "too-high")] == problems(tmp_path, ["Fernhill", typed, "each", "EUR"])


@pytest.mark.parametrize(
    ("typed", "days", "counted", "read_as"),
    [
        ("12 working days", Span.of(12), "working days", "12 working days"),
        ("12-15 Business Days.", Span.of(12, 15), "working days", "12 to 15 working days"),
        ("20 calendar days", Span.of(20), "days", "20 calendar days"),
        ("at least 20 calendar days", Span(Decimal(20), None), "days", "20 or more calendar days"),
        ("12 days", Span.of(12), None, "12"),  # which may be either
    ],
)
def test_days_may_say_which_days_they_are(tmp_path, typed, days, counted, read_as):
    costs_of(tmp_path, {"Quotes": [[*HEAD, "Days"], ["Fernhill", 480, "all", "EUR", typed]]})
    case = read_folder(tmp_path, as_of=AS_OF)

    assert [(days, counted)] == [(one.days, one.days_counted) for one in case.costs.quotes]
    assert [("E2", f"read as {read_as}")] == [
        (one.place.cell, one.wanted) for one in case.warnings if one.place.cell == "E2"
    ]


@pytest.mark.parametrize(("typed", "days"), [(12, Span.of(12)), ("?", None), (None, None)])
def test_days_that_do_not_say_so_are_left_open(tmp_path, typed, days):
    (quote,) = quotes(tmp_path, ["Fernhill", 480, "all", "EUR", typed], head=[*HEAD, "Days"])

    assert (days, None) == (quote.days, quote.days_counted)


def test_weeks_and_two_kinds_of_days_are_still_no_number_of_days(tmp_path):
    rows = [["Fernhill", 480, "all", "EUR", typed] for typed in ("3 weeks", "5 calendar days or 3 working days")]

    assert ["E2", "E3"] == [cell for cell, _ in problems(tmp_path, *rows, head=[*HEAD, "Days"]) if cell[0] == "E"]
