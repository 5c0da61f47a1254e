"""The outcome in sentences."""

from datetime import date
from decimal import Decimal

import pytest
from inspection_cases import arrival, outcome

from scorecard.errors import Place
from scorecard.inspection.outcome import PiecePrice
from scorecard.inspection.outcome_words import (
    arrived_sentence,
    claim_text,
    count_words,
    exact_sentence,
    exact_words,
    found_sentence,
    judged_sentence,
    last_day_sentence,
    money_sentence,
    noting_words,
    number_sentence,
    rest_sentence,
)
from scorecard.inspection.plans import sampling_plan
from scorecard.inspection.settings import USUAL_LIMITS

AS_OF = date(2026, 11, 25)
PRICE = PiecePrice(low=Decimal("5.923"), high=Decimal("5.923"), currency="EUR", source="what you paid in all")


@pytest.mark.parametrize(
    ("opened", "counts", "told"),
    [
        (
            200,
            {"B1": 4, "C1": 15},
            "all 200 pieces opened: 19 are faulty, 9.5 of 100; 15 of these can be sold, with a minor fault",
        ),
        (
            200,
            {"C1": 2},
            "all 200 pieces opened: 2 are faulty, 1.0 of 100; all of these can be sold, with a minor fault",
        ),
        (200, {"B1": 1}, "all 200 pieces opened: 1 is faulty, 0.5 of 100"),
        (50, {}, "50 of 200 pieces opened: no faulty piece was counted"),
    ],
)
def test_what_was_found_is_one_sentence(opened, counts, told):
    assert told == found_sentence(outcome(opened, **counts))


def test_a_lot_of_one_piece_is_told_in_the_singular():
    told = found_sentence(outcome(1, came=arrival(lot=1, ordered=1)))
    assert "the 1 piece opened: no faulty piece was counted" == told


def test_of_pieces_not_opened_only_the_bounds_are_told():
    told = rest_sentence(outcome(120, B1=2))
    assert "80 pieces were not opened: of the whole lot between 2 and 82 may be faulty" == told
    assert rest_sentence(outcome(200, B1=2)) is None  # all was opened


CELLS = {
    "faulty_at": Place(file="makers.xlsx", sheet="Orders", cell="G2"),
    "opened_at": Place(file="makers.xlsx", sheet="Orders", cell="H2"),
}


@pytest.mark.parametrize(
    ("opened", "fields", "told"),
    [
        (200, CELLS, "type 5 (minor faults too) into G2 of the sheet Orders (Faulty pieces)"),
        (
            32,
            CELLS,
            "type 5 (minor faults too) into G2 of the sheet Orders (Faulty pieces), and 32 into H2 of the sheet Orders "
            "(Pieces opened)",
        ),
        (
            200,
            CELLS | {"counted_among": 32},
            "type 5 (minor faults too) into G2 of the sheet Orders (Faulty pieces), and 200 into H2 of the sheet "
            "Orders (Pieces opened)",
        ),
        (
            32,
            {},
            "type 5 (minor faults too) into the sheet Orders, under a new heading Faulty pieces, and 32 into the sheet "
            "Orders, under a new heading Pieces opened",
        ),
    ],
)
def test_a_count_is_noted_with_the_pieces_that_were_opened(opened, fields, told):
    came = arrival(**({"counted_among": 200} | fields))

    assert told == noting_words(outcome(opened, came=came, B1=2, C1=3))


def test_without_an_order_a_row_for_it_is_to_be_made():
    told = noting_words(outcome(200, came=arrival(maker=None)))

    assert (
        "write the order into a row of the sheet Orders, with 0 under Faulty pieces and 200 under Pieces opened" == told
    )


def test_a_whole_kind_is_told_without_a_code():
    (count,) = outcome(200, major=7).counts
    assert "major faults: 7 pieces, photographs 1 to 7" == count_words(count)


def judged_words(opened, **counts):
    return [
        judged_sentence(one, 200)
        for one in outcome(opened, plan=sampling_plan(200, "II", USUAL_LIMITS), **counts).judged
    ]


def test_a_sample_within_its_limit_is_never_called_good():
    told = judged_words(32, B1=2)
    assert told[1].startswith(
        "2 pieces with a major fault: not over its limit, which allows up to 2; that does not make the lot good. The "
        "whole lot of 200 may still hold up to "
    )
    assert "which allows none; that" in told[0]
    assert told[0].endswith("of a worse lot, 5 of 100 samples show none")
    assert told[1].endswith("of a worse lot, 5 of 100 samples show no more than 2")
    assert not any(word in sentence.casefold() for sentence in told for word in ("pass", "accepted", "safe"))


def test_a_sample_over_its_limit_says_from_which_number_on():
    critical, major, _ = judged_words(32, A1=1, B1=3)
    assert critical.startswith("1 piece with a critical fault: over its limit, none is allowed. ")
    assert major.startswith("3 pieces with a major fault: over its limit, 3 or more are too many. ")


@pytest.mark.parametrize(
    ("lot", "counts", "told"),
    [
        (200, {"B1": 2}, "2 pieces that cannot be sold cost 11.85 EUR"),
        (198, {}, "2 pieces that did not come cost 11.85 EUR"),
        (198, {"B1": 1}, "3 pieces that cannot be sold or did not come cost 17.77 EUR"),
        (
            198,
            {"A1": 1},  # 197 × 5.923 = 1166.831
            "3 pieces that cannot be sold or did not come cost 17.77 EUR and the other 197 pieces of the lot, none of "
            "which to sell before it is settled, cost 1166.83 EUR",
        ),
        (
            2,
            {"A1": 1},  # 199 × 5.923 = 1178.677
            "199 pieces that cannot be sold or did not come cost 1178.68 EUR and the other piece of the lot, none of "
            "which to sell before it is settled, cost 5.92 EUR",
        ),
        (200, {}, "Nothing is lost"),
    ],
)
def test_money_says_why_pieces_are_lost(lot, counts, told):
    assert told == money_sentence(outcome(lot, came=arrival(lot=lot, price=PRICE), **counts)).split(";")[0]


def test_a_sample_of_another_size_is_not_judged_where_nothing_is_certain():
    told = (
        "the limit is for 32 pieces drawn as listed, and 20 were opened, so whether it is over the limit is not settled"
    )
    assert told in judged_words(20)[1]


def test_a_smaller_sample_that_is_over_the_limit_is_over_it():
    assert judged_words(31, B1=5)[1].startswith("5 pieces with a major fault: over its limit, 3 or more are too many. ")


def test_a_larger_sample_that_is_over_the_limit_is_over_it_whichever_pieces_were_listed():
    told = "4 pieces with a major fault in 33 opened: over its limit, whichever of them are the listed ones. "
    assert judged_words(33, B1=4)[1].startswith(told)


def test_of_a_lot_that_was_opened_whole_the_number_is_known():
    assert [
        "1 piece with a critical fault in the whole lot, 0.5 of 100: over its limit",
        "5 pieces with a major fault in the whole lot, 2.5 of 100: not over its limit",
        "100 pieces with a minor fault in the whole lot, 50.0 of 100: over its limit",
    ] == judged_words(200, A1=1, B1=5, C1=100)


def test_the_claim_of_a_whole_lot_does_not_speak_of_a_sample():
    text = claim_text(outcome(200, plan=sampling_plan(200, "II", USUAL_LIMITS), B1=6))
    assert "By all its pieces, the lot is over the limit for major faults: 6 of 200." in text
    assert "sample" not in text


def test_the_claim_counts_the_pieces_that_were_opened():
    text = claim_text(outcome(31, plan=sampling_plan(200, "II", USUAL_LIMITS), B1=5))
    assert "over the limit for major faults: 5 of 31; 3 or more are too many." in text


def test_the_last_day_follows_from_the_days_of_the_order_sheet():
    came = arrival(complain_until=date(2027, 5, 17), complain_days=30)
    assert "17 May 2027, in 10 days (30 days after arrival" in last_day_sentence(came, date(2027, 5, 7))
    told = last_day_sentence(arrival(complain_until=None, complain_days=30), date(2027, 5, 7))
    assert told.startswith("The last day to complain is 30 days after arrival: write the day of arrival into")


def test_money_names_what_is_lost_what_is_lessened_and_where_the_figure_comes_from():
    told = money_sentence(outcome(200, came=arrival(price=PRICE), B1=10, C1=12))
    assert (
        "10 pieces that cannot be sold cost 59.23 EUR and 12 pieces with a minor fault cost 71.08 EUR; "
        "a piece cost 5.923 EUR at your door, by what you paid in all"
    ) == told


@pytest.mark.parametrize(
    ("fields", "into"),
    [
        ({"paid_at": Place(file="makers.xlsx", sheet="Orders", cell="L2")}, "L2 of the sheet Orders (Paid in all)"),
        ({"maker": None}, "the sheet Orders, under Paid in all, in a row for this order"),
    ],
)
def test_unknown_money_says_where_to_write_what_was_paid(fields, into):
    told = money_sentence(outcome(200, came=arrival(**fields), B1=10))
    assert f"What this comes to in money is not known: write what you paid into {into}" == told


ARRIVED_AT = Place(file="makers.xlsx", sheet="Orders", cell="F2")


@pytest.mark.parametrize(
    ("fields", "told"),
    [
        ({"maker": None}, None),
        ({"arrived_on": AS_OF, "arrived_at": ARRIVED_AT}, None),
        (
            {"arrived_at": ARRIVED_AT},
            "The sheet does not say that this order has arrived: once it has, type the day into F2 of the sheet Orders "
            "(Arrived on)",
        ),
    ],
)
def test_an_order_that_by_the_sheet_has_not_arrived_is_to_be_dated(fields, told):
    assert told == arrived_sentence(arrival(**fields))


@pytest.mark.parametrize(
    ("last", "told"),
    [
        (date(2026, 12, 5), "The last day to complain is 5 December 2026, in 10 days"),
        (AS_OF, "The last day to complain is 25 November 2026, today"),
        (date(2026, 11, 24), "The last day to complain, 24 November 2026, was 1 day ago; write all the same, and ask"),
    ],
)
def test_the_last_day_to_complain_is_counted_from_today(last, told):
    assert told == last_day_sentence(arrival(complain_until=last), AS_OF)


def test_an_unknown_last_day_is_to_be_looked_up_at_once():
    place = Place(file="makers.xlsx", sheet="Orders", cell="I2")
    told = last_day_sentence(arrival(complain_at=place), AS_OF)
    assert told.startswith("The last day to complain is not known: look it up today")
    assert told.endswith("write it into I2 of the sheet Orders (Complain until)")


CLAIM = """\
Hello Fernhill,

This is about my order of 1 September 2026: 200 pieces of mug. It arrived on 20 November 2026.

Missing: 3 pieces; 197 of 200 came.
I opened 197 of 197 pieces. 10 of them have faults:
Critical (could hurt somebody, or may not be sold at all):
- another fault [say which]: 1 piece, photograph 1
Major (cannot be sold as what was ordered):
- wrong design, colour or size: 4 pieces, photographs 2 to 5
Minor (can be sold, though it is not as approved):
- [say which faults]: 5 pieces, photographs 6 to 10

For 8 pieces I ask you to send good ones at your cost, or to pay back what they cost me at my door: 47.38 EUR.
Since 1 piece has a fault that could hurt somebody or may not be sold at all, I can sell none of the lot for now. \
For the other 192 pieces too I ask you to show in writing that they are free of it, or to take them back and pay back \
what they cost me. They cost me 1137.22 EUR at my door.
Please answer within five working days.

[your name]
"""


def test_the_claim_is_ready_to_copy():
    came = arrival(lot=197, price=PRICE, ordered_on=date(2026, 9, 1), arrived_on=date(2026, 11, 20))
    # 8 × 5.923 = 47.384; 192 × 5.923 = 1137.216
    assert CLAIM == claim_text(outcome(197, came=came, A4=1, B1=4, minor=5))


OPEN_PRICE = PiecePrice(low=Decimal("5.70"), high=Decimal("6.84"), currency="GBP", source="its quote")
PAID_AT = Place(file="makers.xlsx", sheet="Orders", cell="H2")
GAP = "[the exact sum, once you have written what you paid]"


def test_a_claim_never_names_two_sums_and_what_was_paid_is_to_be_written_first():
    found = outcome(200, came=arrival(price=OPEN_PRICE, paid_at=PAID_AT), A1=1, B1=5)

    assert f"pay back what they cost me at my door: {GAP}." in claim_text(found)
    assert f"They cost me {GAP} at my door." in claim_text(found)
    assert "write exactly what you paid into H2 of the sheet Orders (Paid in all)" == exact_words(found)
    assert exact_sentence(found) == (
        "The sum to claim is not exact yet, and of two sums a maker pays the lower: write exactly what you paid into "
        "H2 of the sheet Orders (Paid in all), and run this again. If time runs short, complain without a sum"
    )


def test_without_the_column_a_new_heading_is_named():
    found = outcome(200, came=arrival(price=OPEN_PRICE), B1=5)

    assert "write exactly what you paid into the sheet Orders, under a new heading Paid in all" == exact_words(found)


@pytest.mark.parametrize(
    ("price", "counts"), [(PRICE, {"B1": 5}), (None, {"B1": 5}), (OPEN_PRICE, {"C1": 5}), (OPEN_PRICE, {})]
)
def test_where_no_open_sum_is_claimed_nothing_is_to_be_written_first(price, counts):
    found = outcome(200, came=arrival(price=price, paid_at=PAID_AT), **counts)

    assert (None, None, False) == (exact_words(found), exact_sentence(found), GAP in (claim_text(found) or ""))


def test_a_sum_that_is_the_same_at_both_ends_is_claimed():
    """1 piece at 5.921 or 5.923 is 5.92 at either; 5 of them are 29.61 or 29.62."""
    near = PiecePrice(low=Decimal("5.921"), high=Decimal("5.923"), currency="EUR", source="its quote")
    one, five = (outcome(200, came=arrival(price=near, paid_at=PAID_AT), B1=pieces) for pieces in (1, 5))

    assert (None, True) == (exact_words(one), "at my door: 5.92 EUR." in claim_text(one))
    assert GAP in claim_text(five)


def test_with_a_critical_fault_the_money_covers_the_whole_lot():
    told = money_sentence(outcome(200, came=arrival(price=PRICE), A1=1, B1=2, C1=3))  # 197 × 5.923 = 1166.831
    assert told.startswith(
        "3 pieces that cannot be sold cost 17.77 EUR and the other 197 pieces of the lot, none of which to sell before "
        "it is settled, cost 1166.83 EUR; "
    )


def test_without_a_price_the_claim_names_no_money_and_one_other_piece_is_told_in_the_singular():
    told = claim_text(outcome(2, came=arrival(lot=2, ordered=2), A1=1))
    assert "or to pay back what they cost me at my door.\n" in told
    assert "For the other piece too I ask you to show in writing that they are free of it" in told
    assert told.endswith("pay back what they cost me.\nPlease answer within five working days.\n\n[your name]\n")


def test_without_a_critical_fault_or_another_piece_nothing_is_said_of_the_rest():
    assert "none of the lot" not in claim_text(outcome(200, B1=2))
    assert "none of the lot" not in claim_text(outcome(1, came=arrival(lot=1, ordered=1), A1=1))


def test_a_sample_over_its_limit_asks_about_the_rest():
    plan = sampling_plan(200, "II", USUAL_LIMITS)
    told = claim_text(outcome(32, plan=plan, B1=3))
    assert "By the sample, the lot is over the limit for major faults: 3 of 32; 3 or more are too many." in told
    assert 1 == told.count("over the limit")
    assert "please say how we go on with the pieces that are not opened yet" in told
    assert "not opened yet" not in claim_text(outcome(32, plan=plan, B1=2))  # 2 are within it


def test_without_faults_there_is_nothing_to_claim():
    assert claim_text(outcome(200)) is None


def test_a_claim_for_missing_pieces_alone_speaks_of_no_opened_ones():
    text = claim_text(outcome(190, came=arrival(lot=190, ordered=200)))

    assert "Missing: 10 pieces; 190 of 200 came." in text
    assert "I opened" not in text


def test_a_claim_for_minor_faults_alone_asks_for_a_lower_price_and_no_new_pieces():
    text = claim_text(outcome(200, C1=3))
    assert "For 3 pieces with a minor fault I ask you for a lower price." in text
    assert "send good ones" not in text


AGREED = (245, 260)  # of 250, up to 2 % fewer and 4 % more


@pytest.mark.parametrize(
    ("lot", "accepted", "told"),
    [
        (250, AGREED, None),
        (247, None, "3 pieces did not come"),
        (
            247,
            AGREED,
            "3 pieces did not come; by [order] of the criteria file 245 to 260 pieces were accepted, so nothing is "
            "claimed for this: see that you pay only for what came",
        ),
        (
            244,
            AGREED,
            "6 pieces did not come; by [order] of the criteria file 245 to 260 pieces were accepted, so the claim asks "
            "for all that are missing",
        ),
        (
            260,
            AGREED,
            "10 pieces came beyond the 250 ordered; by [order] of the criteria file 245 to 260 pieces were accepted, "
            "so nothing is claimed for this: see that you pay for them as agreed",
        ),
        (
            265,
            AGREED,
            "15 pieces came beyond the 250 ordered, 5 beyond the 245 to 260 pieces accepted by [order] of the criteria "
            "file: say at once what is to become of them",
        ),
        (
            265,
            None,
            "15 pieces came beyond the 250 ordered; [order] of the criteria file does not say how many more were "
            "accepted, so ask what they cost you",
        ),
    ],
)
def test_how_many_came_is_told_by_what_was_agreed(lot, accepted, told):
    assert told == number_sentence(arrival(lot=lot, ordered=250, accepted=accepted))


def agreed_claim(lot, accepted=AGREED):
    return claim_text(outcome(lot, came=arrival(lot=lot, ordered=250, accepted=accepted, price=PRICE)))


def test_pieces_missing_within_what_was_agreed_are_not_claimed():
    assert [None, None] == [agreed_claim(245), agreed_claim(260)]


def test_fewer_than_were_agreed_are_claimed_up_to_the_order():
    told = agreed_claim(244)
    assert "Missing: 6 pieces; 244 of 250 came, and at least 245 were agreed." in told
    assert "For 6 pieces I ask you to send good ones at your cost" in told


def test_more_than_were_agreed_are_told_to_the_maker():
    told = agreed_claim(265)
    assert "Too many: 265 came, 15 more than the 250 ordered, 5 beyond the most that were agreed." in told
    assert "For 5 pieces too many I have agreed to no price." in told
    assert "Too many: 265 came, 15 more than the 250 ordered." in agreed_claim(265, None)
