"""``cost`` as a whole process: every line of the sum, what is missing, and what stands beside."""

import json

import jsonschema
import pytest
from builders import workbook_bytes
from process import STARTED, schema_of, scorecard

CRITERIA = """title = "Lighthouse mugs"

[brief]
item = "mug"
quantity = 200
designs = 4
destination = "IE"
currency = "EUR"
need_by = 2027-05-14

[criteria.rating]
weight = 1
column = "Rating"
points = [[1, 0], [5, 100]]

[criteria.minimum]
weight = 0
column = "Minimum order"
per = "quantity"
points = [[1, 100], [2, 0]]

[currencies]
on = 2026-11-20
source = "my bank"
USD = 0.5

[import]
duty_percent = 4
tax_percent = 20
tax = "cost"
price_has_tax = true
"""
MAKERS = [
    ["Maker", "Rating", "Minimum order", "Minimum is per", "Country"],
    ["Fernhill", 4.5, 60, "design", "Portugal"],
    ["Brightholm", 4.1, 200, "order", "China"],
    ["Cold Quay", 4.9, 150, "order", "Ireland"],
    ["Dale", 3.0, 150, "order", "Ireland"],
]
HEADINGS = ["Maker", "Pieces", "Price", "Price is for", "Currency", "Price covers", "Way", "Days", "Set-up"]
HEADINGS += ["Set-up is per", "Sample price", "Sample postage", "Deposit %"]
ALL_PAID = "to my door, duty and tax paid"
QUOTES = [
    HEADINGS,
    ["Fernhill", 200, 5, "each", "EUR", "goods and freight", "road", 30, 60, "order", 12, 8, 30],
    ["Brightholm", 200, 2, "each", "USD", "goods", None, 35, 40, "order", 20, 10, 50],
    ["Cold Quay", 200, 1480, "all", "EUR", ALL_PAID],
]
FREIGHT = [
    ["Maker", "Way", "Cost", "Currency", "Days", "Freight covers"],
    ["Brightholm", "sea", 380, "USD", "45-60", "door to door"],
    ["Brightholm", "air", 900, "USD", "8-12", "door to door"],
]
DAY = ("--as-of", "2026-11-25")


@pytest.fixture
def folder(tmp_path):
    (tmp_path / "criteria.toml").write_text(CRITERIA, "utf-8")
    write(tmp_path)
    return tmp_path


def write(path, **sheets):
    kept = {"Makers": MAKERS, "Quotes": QUOTES, "Freight": FREIGHT} | sheets
    (path / "makers.xlsx").write_bytes(workbook_bytes(kept))


def cost(folder, *words):
    ran = scorecard("cost", *DAY, *words, cwd=folder)
    assert 0 == ran.status, ran.err
    return ran


def result(folder):
    return json.loads(cost(folder, "--json").out)


def test_the_result_fits_its_schema(folder):
    found = result(folder)
    jsonschema.validate(found, schema_of("cost"))

    assert ("scorecard-cost/1", "EUR", 200, "2027-05-14", ["Dale"]) == tuple(
        found[key] for key in ("schema", "currency", "wanted", "need_by", "not_quoted")
    )


def test_the_cheapest_good_piece_stands_first_and_those_with_a_cost_missing_last(folder):
    # Fernhill: 240 x 5 + 60 + 12 + 8 = 1280 for the 200 wanted; Cold Quay 1480; Brightholm lacks clearance
    costs = result(folder)["landed_costs"]

    assert [
        ("Fernhill", 6.4, True),
        ("Cold Quay", 7.4, True),
        ("Brightholm", None, False),
        ("Brightholm", None, False),
    ] == [(one["maker"], one["per_good_piece"]["low"] if one["complete"] else None, one["complete"]) for one in costs]


def test_what_freight_and_border_make_is_said_to_be_of_the_total(folder):
    # Fernhill: 12 of 1280, and 8 for the bank; an addition would be more than their part
    out = cost(folder).out

    assert ("Freight and border, of the total" in out, "border add" in out) == (True, False)


def test_order_quantity_and_surplus_are_given(folder):
    fernhill = result(folder)["landed_costs"][0]

    assert ({"low": 240, "high": 240}, {"low": 40, "high": 40}) == (fernhill["quantity"], fernhill["surplus"])


def test_every_line_of_every_sum_is_printed_with_its_working(folder):
    out = cost(folder).out
    lines = [line["working"] for one in result(folder)["landed_costs"] for line in one["readings"][0]["lines"]]

    assert lines
    assert [] == [words for words in lines if " ".join(words.split()) not in " ".join(out.split())]


def test_a_one_line_reply_is_costed(folder):
    assert "2. Cold Quay: 7.40 EUR a good piece, 1480.00 in all" in cost(folder).out


def test_what_is_missing_is_named_and_never_taken_as_0(folder):
    out = cost(folder).out

    assert "Missing – clearance: no figure; the total is too low by that." in out
    assert "Brightholm, by sea: at least " in out


def test_rates_come_with_their_day_and_where_the_cheapest_changes(folder):
    write(folder, Quotes=[*QUOTES[:3], ["Cold Quay", 200, 8, "each", "USD", ALL_PAID]])
    later = CRITERIA.replace("2027-05-14", "2027-07-14")  # so that Brightholm stands by sea, at 2.63 or more
    (folder / "criteria.toml").write_text(later, "utf-8")
    # Cold Quay costs 1600 USD all paid: dearer than Fernhill's 1280 EUR from 0.8 EUR for 1 USD up
    said = " ".join(cost(folder).out.split())

    assert "Rate: 1 USD = 0.5 EUR (20 November 2026, my bank)." in said
    assert "Cold Quay comes out cheapest at 0.5 EUR for 1 USD; Fernhill from 0.8" in said
    assert "Brightholm may be cheaper at some of these rates" in said


def test_what_sampling_the_first_three_costs_is_said(folder):
    # Fernhill 12 + 8 EUR, Brightholm 20 + 10 USD at 0.5: 20 + 15; of Cold Quay nothing is known
    said = " ".join(cost(folder).out.split())

    assert "Before you sample: 2 makers sampled cost 35.00 EUR in all" in said
    assert "not known, and in no sum: the sample price and sample postage of Cold Quay" in said


def test_what_is_paid_before_anything_can_be_checked_is_said_with_the_deposit(folder):
    # 30 % of 1260 (goods and set-up)
    said = " ".join(cost(folder).out.split())

    assert "you will have paid 1280.00 EUR, 378.00 of it with the order" in said


def test_cautions_stand_beside_the_sums(folder):
    said = " ".join(cost(folder).out.split())

    assert ("ask your customs authority" in said, "lowered value" in said) == (True, True)


def test_the_next_step_names_what_is_missing(folder):
    assert "Next: find out what is missing of Brightholm (clearance), and write it in" == cost(folder).last


def test_score_puts_costs_beside_scores_and_leads_on_to_every_line(folder):
    ran = scorecard("score", *DAY, cwd=folder)
    said = " ".join(ran.out.split())

    assert "Whom to order from: price and freight are not in this ranking" in said
    assert "Fernhill 87.5 6.40 by road in time 1280.00" in said
    assert f"Next: look at every line of these costs: {STARTED} cost" == ran.last


def test_while_nothing_is_quoted_it_says_so(folder):
    write(folder, Quotes=[HEADINGS], Freight=[FREIGHT[0]])
    ran = cost(folder)

    assert "Nothing is quoted yet" in ran.out
    assert f"Next: ask for quotes: {STARTED} enquire" == ran.last
    assert ([], None) == (result(folder)["landed_costs"], result(folder)["sampling"])
    jsonschema.validate(result(folder), schema_of("cost"))


def test_a_stale_quote_warns_at_its_cell(folder):
    heads, *rows = QUOTES
    stale = [[*heads, "Valid until"], [*rows[0], "2026-11-01"], *rows[1:]]
    write(folder, Quotes=stale)
    warnings = result(folder)["warnings"]
    checked = scorecard("check", *DAY, cwd=folder).out

    assert [("quote-expired", "Quotes", "N2")] == [
        (one["code"], one["sheet"], one["cell"]) for one in warnings if one["code"] == "quote-expired"
    ]
    assert "held until 1 November 2026" in checked


def test_a_charge_named_to_harm_the_terminal_shows_as_text(folder):
    charge = '\n[[cost.charges]]\nname = "Packing\\u001b[2J"\namount = 5\n'
    (folder / "criteria.toml").write_text(CRITERIA + charge, "utf-8")

    assert "\x1b" not in cost(folder).out


def test_problems_of_quotes_stop_the_run(folder):
    write(folder, Quotes=[HEADINGS, ["Nobody", 200, 5, "each", "EUR"]])
    ran = scorecard("cost", *DAY, "--json", cwd=folder)

    assert (3, ["unknown-maker"]) == (ran.status, [one["code"] for one in json.loads(ran.out)["problems"]])


# the composite example, UK basis [derived; invented figures, worked out on paper line by line, half up to the penny],
# from the files to the result

PAPER = """[brief]
item = "mug"
quantity = 200
destination = "GB"
currency = "GBP"

[criteria.rating]
weight = 1
column = "Rating"
points = [[1, 0], [5, 100]]

[criteria.landed]
weight = 1
measure = "landed_cost_per_piece"
points = [[1, 100], [3, 0]]

[currencies]
on = 2026-11-20
[currencies.for_one]
USD = 1.25

[[shipping.charges]]
name = "Collection and export"
pays_for = ["loading", "collection", "export clearance", "origin charges", "loading on board"]
amount = 45
currency = "USD"
[[shipping.charges]]
name = "Insurance"
amount = 5
currency = "USD"

[import]
duty_percent = 4
tax_percent = 20
tax = "TAX"
[[import.charges]]
name = "Clearance"
amount = 18

[cost]
faulty_percent = 3
[[cost.charges]]
name = "Bank fee"
amount = 12
group = "payment"
"""


@pytest.mark.parametrize(("tax", "total", "piece"), [("cost", 441.84, 2.2775), ("recoverable", 370.20, 1.9082)])
def test_the_composite_example_comes_out_of_the_files(tmp_path, tax, total, piece):
    heads = ["Maker", "Pieces", "Price", "Price is for", "Currency", "Price covers", "Set-up", "Set-up is per"]
    sheets = {
        "Makers": [["Maker", "Rating", "Country"], ["Fernhill", 4.5, "China"]],
        "Quotes": [[*heads, "Sample price"], ["Fernhill", 200, 1.2, "each", "USD", "goods", 60, "order", 0]],
        "Freight": [
            ["Maker", "Way", "Cost", "Currency", "Freight covers"],
            ["Fernhill", "air", 58.9, "USD", "from the port to my door"],
        ],
    }
    (tmp_path / "criteria.toml").write_text(PAPER.replace("TAX", tax), "utf-8")
    (tmp_path / "makers.xlsx").write_bytes(workbook_bytes(sheets))
    scored = json.loads(scorecard("score", *DAY, "--json", cwd=tmp_path).out)
    (cost_of,) = scored["landed_costs"]

    assert (True, total, piece) == (cost_of["complete"], cost_of["total"]["high"], cost_of["per_good_piece"]["high"])
    assert piece == scored["makers"][0]["criteria"]["landed"]["answer"]
    assert scored["landed_costs"] == result(tmp_path)["landed_costs"]


OF_SAMPLE = """
[criteria.willing]
weight = 1
column = "Sample"
choices = { "free" = 100, "Paid" = 60, "paid, credited to the order" = 80, "gratis" = 90 }
"""


@pytest.mark.parametrize(
    ("sample", "gaps", "note"),
    [
        ("free", [], "set-up and the postage of the free sample"),
        ("paid", ["sample"], "set-up"),
        ("paid, credited to the order", [], "set-up and a sample"),
        ("gratis", [], "set-up and a sample"),  # a word of the user's own
        (None, [], "set-up and a sample"),
    ],
)
def test_what_the_column_sample_says_counts_where_no_reply_says_it(tmp_path, sample, gaps, note):
    (tmp_path / "criteria.toml").write_text(CRITERIA.replace("[currencies]", f"{OF_SAMPLE}\n[currencies]"), "utf-8")
    makers = [[*row, "Sample" if row[0] == "Maker" else sample] for row in MAKERS]
    write(tmp_path, Makers=makers)
    (cold_quay,) = [one for one in result(tmp_path)["landed_costs"] if one["maker"] == "Cold Quay"]

    assert gaps == [gap["name"] for gap in cold_quay["gaps"]]
    assert f"The reply names no charge for {note}: ask; the total holds only if there is none" in cold_quay["notes"]


def test_the_column_sample_is_the_users_own_where_no_criterion_draws_on_it(folder):
    write(folder, Makers=[[*row, "Sample" if row[0] == "Maker" else "paid"] for row in MAKERS])

    assert [] == next(one["gaps"] for one in result(folder)["landed_costs"] if one["maker"] == "Cold Quay")
