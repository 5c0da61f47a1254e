"""The order sheet as values: what is ordered, and everything that keeps it from being complete."""

from dataclasses import replace
from datetime import date

import pytest
from order_folder import CRITERIA, HEADINGS, MAKERS, ORDER, QUOTES, lay_out

from scorecard.costed import with_costs
from scorecard.letters.order_words import own_notes, payment_facts, tax_facts
from scorecard.order_sheet import order_sheet
from scorecard.reading.folder import read_folder

AS_OF = date(2026, 11, 25)


def sheet(tmp_path, maker="Fernhill", as_of=AS_OF, way=None, **files):
    case = with_costs(read_folder(lay_out(tmp_path, **files), as_of=as_of), as_of)
    return order_sheet(case, case.table.makers.index(maker), as_of, way)


def missing(tmp_path, **options):
    return [one.what for one in sheet(tmp_path, **options).missing]


@pytest.mark.parametrize(
    ("lines", "day"),
    [
        ("", date(2027, 5, 11)),  # a Friday less 3 working days
        ("[schedule]\nreceiving_days = 5\n", date(2027, 5, 7)),  # from Monday the 10th on
        ("[schedule]\nreceiving_days = 0\n", date(2027, 5, 14)),
    ],
)
def test_the_pieces_arrive_early_enough_to_be_received_and_packed(tmp_path, lines, day):
    found = sheet(tmp_path, order=lines + ORDER)

    assert (day, day) == (found.arrive_by, found.deliver_by)


def test_a_day_of_delivery_that_is_typed_goes_before(tmp_path):
    order = ORDER.replace("complain_days", "deliver_by = 2027-05-13\ncomplain_days")
    found = sheet(tmp_path, order=order)

    assert date(2027, 5, 13) == found.deliver_by
    assert [
        "The day of delivery, 13 May 2027, is later than 11 May 2027: you need them by 14 May 2027, and receiving and "
        "packing take 3 working days of yours (receiving_days of [schedule], assumed)"
    ] == [note for note in own_notes(found) if "day of delivery" in note]


def test_days_quoted_that_go_past_the_day_of_delivery_are_not_called_days_to_the_door(tmp_path):
    order = ORDER.replace("complain_days", "deliver_by = 2026-12-20\ncomplain_days")

    # 5 days of November and 20 of December are left
    assert (
        "Quoted are 30 days of production and transit alone, and 25 days are left until 20 December 2026: it may come "
        "too late"
    ) in own_notes(sheet(tmp_path, order=order))


def quoted(**changes):
    """The sheet Quotes with Fernhill's row changed."""
    row = dict(zip(HEADINGS, QUOTES[1], strict=True)) | changes
    return [HEADINGS, list(row.values())]


def test_a_sheet_with_everything_is_complete(tmp_path):
    assert (True, ()) == (sheet(tmp_path).is_complete, sheet(tmp_path).missing)


@pytest.mark.parametrize(
    ("line", "what"),
    [
        ('balance = "before shipment"', "when the rest is paid: before shipment, on arrival or after checking"),
        ('method = "kiln-fired transfer"', "how it is printed"),
        ('buyer = "A. Keeper, Light Lane 1, Dingle"', "who orders: your name and address"),
        ('address = "Light Lane 1, Dingle"', "where they go"),
        ('position = "centred opposite the handle, 20 mm below the rim"', "where the print sits"),
        ("position_tolerance_mm = 2", "how far the print may sit from its place"),
        ("size_tolerance_mm = 1", "how far its size may be off"),
        ('colours = "as on the approved piece"', "what the colours are judged by"),
        ("over_percent = 5", "the accepted over- and under-run"),
        ("under_percent = 2.5", "the accepted over- and under-run"),
        ('overs = "free"', "who pays for pieces beyond the order"),
        ('packing = "each in tissue, 24 to a carton with dividers"', "how pieces and cartons are packed"),
        ('labels = "number of the carton, design and pieces"', "what stands on cartons and pieces"),
        ('pay_by = "card, through the marketplace"', "how it is paid"),
        ("complain_days = 30", "until how many days after arrival you may complain"),
        ('remedy = "made again, or paid back, as the buyer chooses"', "what the maker does about faulty pieces"),
        ('artwork = "mine"', "whose the artwork is"),
        ('tooling = "the maker\'s"', "whose tools, screens and files are"),
        ('file = "night-light.pdf"', "the artwork's file of design 2"),
    ],
)
def test_each_line_of_the_table_that_is_not_there_is_missing(tmp_path, line, what):
    assert ORDER.count(line) == 1
    assert [what] == missing(tmp_path, order=ORDER.replace(f"{line}\n", ""))


@pytest.mark.parametrize(
    ("changes", "what"),
    [
        ({"Deposit %": None}, "the deposit"),
        ({"Deposit %": "30-40"}, "the deposit"),
        ({"Place": None}, "the delivery term and its place"),
        ({"Set-up": None}, "what set-up costs, 0 if nothing"),
        ({"Price": "5-6"}, "one exact figure for: goods"),
        ({"Valid until": "2026-11-24"}, "a price that holds: this one held until 24 November 2026"),
        ({"Valid until": None, "Quoted on": "2026-01-02"}, "whether the price still holds: it is 327 days old"),
        ({"Valid until": None, "Quoted on": None}, "on which day the price was quoted"),
    ],
)
def test_each_part_of_the_quote_that_is_open_is_missing(tmp_path, changes, what):
    assert [what] == missing(tmp_path, Quotes=quoted(**changes))


HOME = [MAKERS[0], ["Fernhill", 4.5, 60, "design", "Ireland"], *MAKERS[2:]]


def test_a_sheet_is_not_complete_while_nobody_knows_whether_the_price_has_sales_tax_inside(tmp_path):
    found = sheet(tmp_path, criteria=CRITERIA.replace("price_has_tax = true\n", ""), Makers=HOME)

    # 200 × 5 + 2 × 60 = 1120, and 20 % of it 224
    assert [("whether the price has sales tax inside", "price_has_tax in [import] of the criteria file")] == [
        (one.what, one.where) for one in found.missing
    ]
    assert ((1120, 1344), [""]) == (found.bill.total, [one.value for one in tax_facts(found)])


def test_a_sales_tax_that_comes_on_top_is_in_the_payments_of_a_complete_sheet(tmp_path):
    found = sheet(tmp_path, criteria=CRITERIA.replace("price_has_tax = true", "price_has_tax = false"), Makers=HOME)

    # 30 % of 1344 is 403.20
    assert (True, (1344, 1344)) == (found.is_complete, found.bill.total)
    assert "403.20 EUR (30 % of the bill)" == payment_facts(found)[0].value
    assert [] == tax_facts(found)


def test_what_is_paid_before_checking_is_the_deposit_with_its_sales_tax_where_the_rest_waits(tmp_path):
    criteria = CRITERIA.replace("price_has_tax = true", "price_has_tax = false")
    order = ORDER.replace('balance = "before shipment"', 'balance = "after checking"')

    assert "Before you can check anything you will have paid 403.20 EUR" in own_notes(
        sheet(tmp_path, criteria=criteria, order=order, Makers=HOME)
    )


def test_of_another_country_without_a_border_the_tax_office_is_to_be_asked(tmp_path):
    criteria = CRITERIA.replace("price_has_tax = true", "price_has_tax = false")
    notes = [own_notes(sheet(tmp_path, criteria=criteria)), own_notes(sheet(tmp_path, criteria=criteria, Makers=HOME))]

    assert [1, 0] == [sum(one.startswith("Between two countries") for one in each) for each in notes]


def test_without_a_rate_the_sales_tax_is_asked_for_once_and_at_its_key(tmp_path):
    criteria = CRITERIA.replace("tax_percent = 20\n", "").replace("price_has_tax = true", "price_has_tax = false")

    assert ["one exact rate of the sales tax that comes on top of the price"] == missing(tmp_path, criteria=criteria)


def test_a_price_without_a_last_day_is_good_for_half_a_year(tmp_path):
    assert [] == missing(tmp_path, Quotes=quoted(**{"Valid until": None, "Quoted on": "2026-05-29"}))


def test_what_the_price_covers_is_missing_before_what_follows_from_it(tmp_path):
    found = missing(tmp_path, Quotes=quoted(**{"Delivery term": None, "Place": None}))

    assert ["what the price covers", "the delivery term and its place"] == found


def test_a_cost_without_a_figure_is_missing(tmp_path):
    assert ["what these cost you: clearance"] == missing(tmp_path, maker="Brightholm", way="sea")


def test_without_a_quote_the_quote_is_missing(tmp_path):
    found = sheet(tmp_path, maker="Cold Quay", Quotes=QUOTES[:2])

    assert ["a quote"] == [one.what for one in found.missing]
    assert (None, None) == (found.bill, found.cost)


def test_a_way_that_is_not_quoted_is_missing(tmp_path):
    assert ["a quote by air"] == missing(tmp_path, way="air")


def test_a_minimum_above_the_brief_is_what_is_ordered(tmp_path):
    found = sheet(tmp_path, Makers=[MAKERS[0], ["Fernhill", 4.5, 300, "order", "Portugal"], *MAKERS[2:]])

    assert ((300, 300), [150, 150]) == (found.quantity, [one.pieces for one in found.designs])


def test_pieces_of_the_designs_that_do_not_add_up_are_missing(tmp_path):
    order = ORDER.replace('name = "Harbour light"', "pieces = 120").replace('name = "Night light"', "pieces = 70")

    assert ["the pieces of each design, which make 190 of 200"] == missing(tmp_path, order=order)


def test_a_design_below_the_makers_minimum_per_design_is_missing(tmp_path):
    order = ORDER.replace('name = "Harbour light"', 'name = "Harbour light"\npieces = 160')
    found = sheet(tmp_path, order=order.replace('name = "Night light"', 'name = "Night light"\npieces = 40'))

    where = "pieces of each [[order.designs]], or Minimum order in row 2 of the sheet Makers"
    assert [("Night light: 40, below the minimum of 60 per design", where)] == [
        (one.what, one.where) for one in found.missing
    ]


def test_pieces_that_do_not_split_evenly_are_missing(tmp_path):
    criteria = CRITERIA.replace("quantity = 200", "quantity = 201")

    assert ["the pieces of each design"] == missing(tmp_path, criteria=criteria)


def test_a_minimum_that_is_not_known_exactly_leaves_the_quantity_open(tmp_path):
    found = missing(tmp_path, Makers=[MAKERS[0], ["Fernhill", 4.5, "100-150", "design", "Portugal"], *MAKERS[2:]])

    assert any(what.startswith("how many must be ordered: 200 to 300 pieces") for what in found)


def test_a_day_of_delivery_that_is_over_is_missing(tmp_path):
    order = ORDER.replace("complain_days", "deliver_by = 2026-11-24\ncomplain_days")

    assert ["a day of delivery that is still to come: 24 November 2026 is over"] == missing(tmp_path, order=order)


def test_the_bounds_are_whole_pieces_within_the_percentages(tmp_path):
    order = ORDER.replace("over_percent = 5", "over_percent = 3.3").replace(
        "under_percent = 2.5", "under_percent = 1.2"
    )

    # 200 × 1.033 = 206.6, and 200 × 0.988 = 197.6: within them lie 198 to 206
    assert (198, 206) == sheet(tmp_path, order=order).bounds


def test_a_criteria_file_without_the_table_lacks_all_of_it(tmp_path):
    found = sheet(tmp_path, order="")

    assert 14 < len(found.missing)
    assert "where they go" in [one.what for one in found.missing]


METHOD = """
[criteria.print_method]
weight = 1
column = "Print method"
choices = { "kiln" = 100, "sticker" = 0 }
limit = { none_of = ["sticker"] }
"""


def with_method(method):
    heads, first, *others = MAKERS
    return [[*heads, "Print method"], [*first, method], *([*one, "kiln"] for one in others)]


def test_the_print_method_is_the_makers_answer_and_missing_where_unknown(tmp_path):
    order = ORDER.replace('method = "kiln-fired transfer"\n', "")
    known = sheet(tmp_path, order=order, criteria=CRITERIA + METHOD, Makers=with_method("kiln"))
    unknown = sheet(tmp_path / "other", order=order, criteria=CRITERIA + METHOD, Makers=with_method(None))

    assert ("kiln", []) == (known.method, [one.what for one in known.missing])
    assert ("", ["how it is printed"]) == (unknown.method, [one.what for one in unknown.missing])


def test_nothing_is_said_of_a_rest_that_nobody_settled(tmp_path):
    facts = payment_facts(sheet(tmp_path, order=ORDER.replace('balance = "before shipment"', "")))

    assert ("The rest is due", "") in [(one.name, one.value) for one in facts]
    assert not any("before the goods are sent" in one.value for one in facts)


def test_a_maker_that_the_limits_rule_out_is_said_to_be(tmp_path):
    found = replace(sheet(tmp_path), ruled_out=("print method: sticker is not accepted",))

    assert "Your own limits rule this maker out: print method: sticker is not accepted" == own_notes(found)[0]


def test_a_last_sample_that_was_not_approved_is_said_first(tmp_path):
    rounds = [["Maker", "Round", "Received on", "Decision"], ["Fernhill", "sample", "2026-11-01", "approved"]]
    rounds += [["Fernhill", "pre-production sample", "2026-11-10", "another round"]]
    found = sheet(tmp_path, Samples=rounds)

    assert own_notes(found)[0].startswith("The last pre-production sample of 10 November 2026 was not approved")
    assert not any("not approved" in note for note in own_notes(sheet(tmp_path / "b", Samples=rounds[:2])))
