"""Landed costs on the page."""

from dataclasses import replace
from datetime import datetime
from decimal import Decimal

import pytest
from cases import AS_OF
from ordered import PAID, case_of
from quoted import charge, offer, quote, uk

from scorecard.assessment import assess
from scorecard.costing.amounts import OPEN
from scorecard.costing.import_presets import PRESETS, preset_for
from scorecard.costing.inputs import CostSettings
from scorecard.criteria import Limit
from scorecard.report.extent import ROOMS
from scorecard.report.landed import bar_of, landed_of, widest
from scorecard.report.page import page
from scorecard.report.texts import bare

ANSWERS = {"Ash": 90, "Birch": 70, "Cedar": 50}


def landed(quotes, answers=ANSWERS, **more):
    return landed_of(assess(case_of(answers, quotes, **more), as_of=AS_OF))


def test_while_nothing_is_quoted_there_are_no_rows():
    assert () == landed({}).rows


def test_the_cheapest_stands_first_and_a_sum_with_a_gap_has_no_place():
    goods = quote(1, maker="Cedar", row=9, covers="goods", way="road", days=9)
    found = landed({"Ash": 5, "Birch": 4, "Cedar": goods})

    assert [("1.", "Birch", "4.00"), ("2.", "Ash", "5.00")] == [
        (row.place, bare(row.maker), row.per_piece) for row in found.rows[:2]
    ]
    assert ("–", True, True) == (
        found.rows[2].place,
        "freight" in found.rows[2].missing,
        found.rows[2].per_piece.startswith("at least "),
    )


def test_gaps_are_named_in_words():
    goods = quote(1, maker="Ash", covers="goods", way="road", days=9)
    (total,) = landed({"Ash": goods}).rows[0].sums

    assert total.gaps[0].startswith("Freight, ")
    assert total.gaps[0].endswith("no figure; the total is too low by them.")


def test_bars_of_the_table_are_of_one_scale():
    found = landed({"Ash": 8, "Birch": 4})

    assert [("50%", None), ("100%", None)] == [(row.bar.end, row.bar.until) for row in found.rows]


def test_a_range_goes_on_as_a_line():
    row = quote((4, 6), maker="Ash", covers=PAID)
    (found,) = landed({"Ash": row}).rows

    assert ("66.67%", "100%") == (found.bar.end, found.bar.until)


@pytest.mark.parametrize(
    ("ends", "bar"),
    [((0, 0), None), ((-5, -5), None), ((OPEN, OPEN), None), ((2, OPEN), ("50%", "100%")), ((-1, 2), ("0%", "50%"))],
)
def test_a_credit_and_what_is_not_known_have_no_bar(ends, bar):
    found = bar_of(tuple(map(Decimal, ends)), Decimal(4))

    assert bar == (found and (found.end, found.until))


def test_nothing_known_has_no_widest():
    assert (Decimal(0), Decimal(0)) == (widest([]), widest([OPEN]))


def test_every_line_of_a_sum_stands_with_its_working():
    rules = uk(charges=(charge("Clearance", 18, "clearance", group="border"),))
    found = landed(
        {"Ash": quote(5, maker="Ash", covers="goods", days=20)},
        offers=(offer("sea", 90, maker="Ash", days=40, covers="door to door"),),
        imports=rules,
    )
    (total,) = found.rows[0].sums

    # goods 1000, freight 90, duty 43.60, clearance 18, VAT 230.32
    assert [
        ("Goods", "1000.00"),
        ("Freight by sea", "90.00"),
        ("Clearance", "18.00"),
        ("Duty", "43.60"),
        ("Import tax", "230.32"),
    ] == [(line.name, line.amount) for line in total.lines]
    assert ("1381.92", "offered: 90.00 GBP") == (total.total, total.lines[1].working)


def test_a_tax_that_comes_back_is_said_to_be_paid():
    found = landed({"Ash": quote(5, maker="Ash", covers="goods", way="express")}, imports=uk(tax_is="recoverable"))
    (tax,) = [line for line in found.rows[0].sums[0].lines if line.name == "Import tax"]

    assert tax.working.endswith(" is paid")


def test_what_is_already_paid_stands_apart():
    row = quote(5, maker="Ash", covers=PAID, sample_price=20)
    found = landed({"Ash": row}, settings=CostSettings(sampled=frozenset({"Ash"})))

    assert [("Sample", "20.00")] == [(line.name, line.amount) for line in found.rows[0].spent]


def test_what_users_typed_cannot_turn_a_line_round():
    costs = CostSettings(charges=(charge("Pack\u202eing", 5),))
    found = landed({"A\u202esh": 5}, answers={"A\u202esh": 1}, settings=costs)

    assert "\u202e" not in str(found)


def test_more_than_fit_are_counted():
    costs, sums = ROOMS[0].costs, ROOMS[0].sums
    answers = {f"maker {at:03}": at for at in range(costs + 5)}
    found = landed(dict.fromkeys(answers, 5), answers=answers)

    assert (costs, 5, sums) == (len(found.rows), found.left, len(found.detailed))
    assert found.sums.startswith(f"Of {costs + 5} sums {sums} stand here line by line: of the ways that stand for")


def test_sums_of_the_ways_that_stand_for_their_makers_come_first():
    cheap = [offer("sea", 10, maker="Ash"), offer("air", 20, maker="Ash")]
    rows = {"Ash": quote(1, maker="Ash", covers="goods"), "Birch": quote(9, maker="Birch", row=3, covers=PAID)}
    room = replace(ROOMS[0], sums=2)
    found = landed_of(assess(case_of(ANSWERS, rows, offers=tuple(cheap)), as_of=AS_OF), room)

    assert [("Ash", True), ("Birch", True)] == sorted((bare(row.maker), row.is_chosen) for row in found.detailed)
    assert "Every line of every sum stands here." == landed(rows).sums


def test_who_has_not_quoted_is_named():
    assert "Not quoted yet: Ash and Cedar." == bare(landed({"Birch": 5}).beside[-1])


def test_cautions_about_customs_and_payment_stand_with_the_sums():
    goods = quote(1, maker="Ash", covers="goods", way="road", days=9)
    said = " ".join(landed({"Ash": goods}).cautions)

    assert ("customs broker" in said, "lowered value" in said) == (True, True)


def test_the_page_sets_every_sum_and_takes_what_was_typed_for_text():
    answers = {"Ash <b>": 90, "Birch": 70}
    costs = CostSettings(charges=(charge("Pack <script>", 5),))
    assessment = assess(case_of(answers, {"Ash <b>": 5, "Birch": 4}, settings=costs), as_of=AS_OF)
    found = page(assessment, assessment.as_json(), made=datetime(2026, 11, 25, 9, 30))

    section = found.split('id="costs"')[1].split('id="arithmetic"')[0]

    assert (True, True) == ("Every line of every sum stands here" in section, "Pack &lt;script&gt;" in section)
    assert (False, False) == ("<script>" in section, "Ash <b>" in section)
    assert (True, False) == ("Freight and border, of the total" in section, "border add" in section)


def test_a_ruled_out_maker_stands_below_without_a_place_and_with_the_reason():
    found = landed({"Ash": 5, "Birch": 4, "Cedar": 1}, limit=Limit(at_least=60))

    assert [("1.", ""), ("2.", ""), ("–", "A: 50 is below the limit of 60")] == [
        (row.place, row.out) for row in found.rows
    ]


def test_the_page_calls_nobody_the_cheapest_who_is_ruled_out():
    goods = quote(1, maker="Cedar", row=9, covers="goods", way="sea", days=30)
    more = {"offers": (offer("sea", 9, maker="Cedar", covers="door to door"),), "limit": Limit(at_least=60)}

    assert not any("Cedar" in words for words in landed({"Ash": 5, "Birch": 4, "Cedar": goods}, **more).said)


@pytest.mark.parametrize("preset", PRESETS, ids=lambda preset: preset.name)
def test_the_source_of_the_bases_at_the_border_stands_whole(preset):
    rules = preset_for(min(preset.countries))
    found = landed({"Ash": quote(5, maker="Ash", covers="goods", way="express")}, imports=rules)
    (said,) = [words for words in found.beside if "Bases at the border" in words]

    assert (True, True) == (preset.legal in said, rules.seen in said)
