"""A criteria file for the next order: what comes out of it, and what stays as it was."""

import tomllib
from datetime import date

import pytest

from scorecard.criteria_edit import TakenOut, for_next_order

AS_OF = date(2026, 11, 25)
TEXT = """# my mugs
[brief]
item = "mug"        # enamel
quantity = 200
need_by = 2026-05-14

[import]
duty_percent = 4
[[import.charges]]
name = "Clearance"  # by the carrier
amount = 38

# what it sells for
[selling]
price = 18

[shipping.sea]
days = "30-45"
divisor = 0
[[shipping.charges]]
name = "Port"
amount = 20
currency = "USD"
per = "carton"
[cost]
sampled = ["Fernhill"]
charges = [{ name = "Bank", percent = 1.5, of = "goods" }]
[order]
number = "7"
deliver_by = 2026-05-01
"""


def test_prices_days_of_ways_and_days_that_are_over_come_out():
    text, taken = for_next_order(TEXT, AS_OF)

    assert (
        TakenOut("charge: Clearance", "38 per order", "[[import.charges]]"),
        TakenOut("charge: Port", "20 USD per carton", "[[shipping.charges]]"),
        TakenOut("charge: Bank", "1.5 % of goods", "[[cost.charges]]"),
        TakenOut("journey by sea", "30-45 days", "days of [shipping.sea]"),
        TakenOut("need_by of last time", "2026-05-14", "need_by of [brief]"),
        TakenOut("deliver_by of last time", "2026-05-01", "deliver_by of [order]"),
        TakenOut("duty", "4 %", "duty_percent of [import]"),
    ) == taken
    assert {
        "brief": {"item": "mug", "quantity": 200},
        "import": {},
        "selling": {"price": 18},
        "shipping": {"sea": {"divisor": 0}},
        "cost": {},
        "order": {},
    } == tomllib.loads(text)


@pytest.mark.parametrize(
    "comment", ["# my mugs", "# enamel", "# what it sells for", "# amount = 38", "\n# need_by = 2026-05-14\n"]
)
def test_comments_stay_and_charges_become_comments(comment):
    assert comment in for_next_order(TEXT, AS_OF)[0]


def test_a_day_that_is_over_comes_out_where_its_table_has_no_line_of_its_own():
    text, taken = for_next_order("brief.need_by = 2026-05-14\nbrief.quantity = 5\n", AS_OF)

    assert ({"brief": {"quantity": 5}}, 1) == (tomllib.loads(text), len(taken))


@pytest.mark.parametrize(
    ("rates", "left"),
    [
        ("USD = 0.9\non = 2026-01-05\n", {}),
        ("on = 2026-01-05\n[currencies.for_one]\nUSD = 1.1\n", {"for_one": {}}),
        ("USD = 0.9\nGBP = 1.2\non = 2026-01-05\n", {"GBP": 1.2, "on": date(2026, 1, 5)}),  # the page is paid in it
    ],
)
def test_the_day_of_rates_goes_with_the_last_of_them(rates, left):
    text = f'[brief]\ncurrency = "EUR"\n[cost]\nstorage = {{ amount = 5, currency = "GBP" }}\n[currencies]\n{rates}'

    assert left == tomllib.loads(for_next_order(text, AS_OF)[0])["currencies"]


def test_a_day_that_is_still_to_come_stays():
    text, taken = for_next_order("[brief]\nneed_by = 2026-11-25\n", AS_OF)

    assert ("[brief]\nneed_by = 2026-11-25\n", ()) == (text, taken)


@pytest.mark.parametrize(
    "charge",
    [
        'name = "Bank"\nways = [\n  "sea",\n]\namount = 3\n',
        'name = "Bank"\nways = ["sea"]\namount = 3\n',
        'name = "Bank"\n\namount = 3\n',
        'name = """Bank\n[[cost.charges]]\n"""\namount = 3\n',
    ],
)
def test_charges_in_any_form_come_out(charge):
    text, taken = for_next_order(
        f"[import]\nduty_percent = 4\n[[import.charges]]\n{charge}[selling]\nprice = 1\n", AS_OF
    )

    assert ["3 per order", "4 %"] == [one.figure.removesuffix(", by sea") for one in taken]
    assert {"import": {}, "selling": {"price": 1}} == tomllib.loads(text)


def test_a_byte_order_mark_is_dropped():
    assert "[brief]\n" == for_next_order("\N{ZERO WIDTH NO-BREAK SPACE}[brief]\n", AS_OF)[0]


RATES = """[brief]
currency = "EUR"
[currencies]
on = 2026-05-01
source = "my bank"
USD = 0.92  # what one costs
GBP = 1.17
charge_percent = 2
[currencies.for_one]
CNY = 7.8
[[import.supplied]]
currency = "GBP"
"""


def test_old_rates_come_out_but_for_those_that_another_figure_needs():
    # 1 May to 25 November 2026: 208 days
    text, taken = for_next_order(RATES, AS_OF)

    assert (
        TakenOut("rate of USD", "0.92 EUR for 1 USD", "USD of [currencies]", date(2026, 5, 1)),
        TakenOut("rate of CNY", "7.8 CNY for 1 EUR", "CNY of [currencies.for_one]", date(2026, 5, 1)),
    ) == taken
    left = tomllib.loads(text)["currencies"]
    assert ({"on", "source", "GBP", "charge_percent", "for_one"}, {}) == (set(left), left["for_one"])


def test_rates_of_the_last_180_days_stay_and_those_without_a_day_do_not():
    stays = for_next_order(RATES.replace("2026-05-01", "2026-05-29"), AS_OF)  # 180 days
    goes = for_next_order(RATES.replace("on = 2026-05-01\n", ""), AS_OF)

    assert ((), [("0.92 EUR for 1 USD", None), ("7.8 CNY for 1 EUR", None)]) == (
        stays[1],
        [(one.figure, one.on) for one in goes[1]],
    )


def test_rates_of_duty_and_tax_come_out_to_be_looked_up_anew():
    text = '[import]\nduty_percent = 4\ntax_percent = 20\ntax = "cost"\n[import.duty_by_country]\nCN = 12\n'
    made, taken = for_next_order(text, date(2027, 11, 1))

    assert '[import]\ntax = "cost"\n' == made
    assert [("duty", "4 %"), ("import tax", "20 %"), ("duty on goods from CN", "12 %")] == [
        (one.what, one.figure) for one in taken
    ]


def test_rates_of_duty_that_were_looked_up_lately_stay():
    text = "[import]\non = 2027-10-01\nduty_percent = 4\n"

    assert (text, ()) == for_next_order(text, date(2027, 11, 1))


@pytest.mark.parametrize(
    ("charge", "figure"),
    [
        ("amount = 45", "45 GBP per order"),
        ('amount = 0.2\nper = "piece"\ncurrency = "USD"', "0.2 USD per piece"),
        (
            'percent = 0.3464\nof = "customs value"\nminimum = 33.58\nmaximum = 651.75\ncurrency = "USD"',
            "0.3464 % of customs value, at least 33.58 USD, at most 651.75 USD",
        ),
        ('amount = "5-8"\npercent = 2\nof = "goods"', "5-8 GBP per order and 2 % of goods"),
        ('amount = 90\nways = ["air", "sea"]', "90 GBP per order, by air and sea"),
        ('amount = 90\nways = "air"', "90 GBP per order, by air"),
    ],
)
def test_a_charge_is_told_with_all_that_makes_its_sum(charge, figure):
    text = f'[brief]\ncurrency = "GBP"\n[[import.charges]]\nname = "Fee"\n{charge}\non = 2026-05-01\n'

    assert [(figure, date(2026, 5, 1))] == [(one.figure, one.on) for one in for_next_order(text, AS_OF)[1]]


def test_rates_at_the_border_and_days_of_ways_are_told_with_their_day():
    text = '[import]\non = 2026-05-01\nduty_percent = 4\n[shipping.sea]\non = 2026-05-02\ndays = "30-45"\n'

    assert [("journey by sea", date(2026, 5, 2)), ("duty", date(2026, 5, 1))] == [
        (one.what, one.on) for one in for_next_order(text, AS_OF)[1]
    ]


@pytest.mark.parametrize(
    ("figures", "left"),
    [
        ("[import]\nduty_percent = 4\n", {"import": {}}),
        ("[import]\nduty_by_country = { CN = 4 }\n", {"import": {}}),
        ('[shipping.sea]\ndays = "30-45"\n', {"shipping": {"sea": {}}}),
        ('[shipping.sea]\nsource = "a page"\ndays = 30\n', {"shipping": {"sea": {"source": "a page"}}}),
    ],
)
def test_a_day_goes_with_the_last_figure_that_it_is_of(figures, left):
    assert left == tomllib.loads(for_next_order(f"{figures}on = 2026-05-01\n", AS_OF)[0])


@pytest.mark.parametrize(
    "figures",
    [
        "[import]\nfreight_in_base_percent = { air = 70 }\ntax_percent = 20\n",
        "[shipping.sea]\ndivisor = 0\ndays = 30\n",
    ],
)
def test_a_figure_that_stays_keeps_its_day(figures):
    assert "\non = 2026-05-01\n" in for_next_order(f"{figures}on = 2026-05-01\n", AS_OF)[0]


@pytest.mark.parametrize(
    ("text", "left"),
    [
        ("[import]\nduty_percent = 4\n{}[import.duty_by_country]\nCN = 12\n", {}),
        (
            "[shipping.sea]\ndays = 30\non = 2026-05-01\n{}[shipping.air]\ndays = 9\n",
            {"shipping": {"sea": {}, "air": {}}},
        ),
        ("currencies.USD = 0.9\ncurrencies.GBP = 1.2\n{}", {}),
        ("import.duty_percent = 4\nimport.tax_percent = 20\nimport.on = 2026-05-01\n{}", {}),
    ],
)
def test_figures_come_out_of_a_table_that_is_written_in_parts(text, left):
    made, taken = for_next_order(text.format("[selling]\nprice = 1\n"), AS_OF)

    assert (left | {"selling": {"price": 1}}, 2) == (tomllib.loads(made), len(taken))
