"""The tally sheet and the outcome, as pages."""

import re
from datetime import UTC, date, datetime
from decimal import Decimal

from inspection_cases import arrival, outcome

from scorecard.inspection.drawing import drawn, spots
from scorecard.inspection.faults import fault_list
from scorecard.inspection.outcome import PiecePrice
from scorecard.inspection.plans import sampling_plan
from scorecard.inspection.settings import USUAL_LIMITS
from scorecard.letters.arrival_page import Sheet, columns_of, outcome_page, tally_page

AS_OF, MADE = date(2026, 11, 25), datetime(2026, 11, 25, 10, tzinfo=UTC)
LINES = fault_list({})


def sheet(lot=200, per_carton=None, *, sampled=False):
    plan = sampling_plan(lot, "II", USUAL_LIMITS) if sampled else None
    chosen = spots(drawn(lot, plan.opened, 1), per_carton) if plan else ()
    return Sheet(arrival=arrival(lot=lot, per_carton=per_carton), lines=LINES, plan=plan, drawn=chosen)


def tally(*args, **options):
    return tally_page(sheet(*args, **options), title="Mugs", as_of=AS_OF, made=MADE, command="scorecard inspect B1=2")


def told(*args, **counts):
    return outcome_page(outcome(*args, **counts), title="Mugs", as_of=AS_OF, made=MADE)


def test_every_fault_has_a_row_in_every_block():
    html = tally(200, 10)  # 20 cartons, in three blocks
    assert [3] * len(LINES) == [html.count(f"<td>{line.code}</td>") for line in LINES]


def test_every_carton_has_a_column():
    heads = re.findall(r'<th scope="col">(\d+)</th>', tally(200, 10))
    assert [str(at) for at in range(1, 21)] == heads


def test_many_cartons_share_columns_and_none_is_left_out():
    columns = columns_of(sheet(500, 1))
    ends = [tuple(int(end) for end in column.split("–")) for column in columns]
    assert list(range(1, 501)) == [carton for low, high in ends for carton in range(low, high + 1)]
    assert len(columns) <= 40


def test_without_cartons_the_columns_are_the_users_to_number():
    html = tally()
    assert "Write a carton&#39;s number above each column" in html or "Write a carton's number" in html


def test_a_sample_lists_each_piece_to_open_and_no_other():
    made = sheet(200, 24, sampled=True)
    found = re.findall(r"<li>Carton (\d+): <b>([\d, ]+)</b>", tally(200, 24, sampled=True))
    listed = {(int(carton), int(piece)) for carton, pieces in found for piece in pieces.split(", ")}
    assert {(spot.carton, spot.piece) for spot in made.drawn} == listed


def test_a_sample_has_columns_for_the_cartons_that_are_opened_alone():
    made = sheet(200, 1, sampled=True)
    assert len(made.drawn) == len(columns_of(made))


def test_a_sample_is_never_said_to_pass():
    assert not re.search(r"\bpass(es|ed)?\b", tally(200, 24, sampled=True), re.IGNORECASE)


def test_the_sheet_says_what_to_type():
    assert "<code>scorecard inspect B1=2</code>" in tally()


def test_the_outcome_tells_each_fault_with_its_photographs():
    assert "B1 wrong design, colour or size: 4 pieces, photographs 1 to 4" in told(200, B1=4)


def test_a_critical_fault_stops_the_sale():
    html = told(200, A1=1)
    assert ("<b>Stop.</b> Do not sell" in html, "<b>Stop.</b>" in told(200, B1=1)) == (True, False)


def test_without_faults_there_is_no_message():
    assert "<textarea" not in told(200)


def test_beside_a_message_whose_sum_is_open_stands_what_to_write_first():
    prices = (PiecePrice(low=Decimal(5), high=Decimal(high), currency="EUR", source="its quote") for high in (5, 6))
    exact, either = (told(came=arrival(price=price), B1=4) for price in prices)
    beside = re.compile(r"<h2>What to write</h2>\s*<div>\s*<p><b>The sum to claim is not exact yet.*?Paid in all")

    assert (None, True) == (beside.search(exact), beside.search(either) is not None)


def test_names_are_escaped():
    came = arrival(maker="<script>alert(1)</script>")
    html = outcome_page(outcome(200, came=came, B1=1), title="</title>", as_of=AS_OF, made=MADE)
    assert ("<script" in html, "&lt;script&gt;" in html) == (False, True)


def test_the_same_counts_and_time_give_the_same_bytes():
    assert told(200, B1=4) == told(200, B1=4)
