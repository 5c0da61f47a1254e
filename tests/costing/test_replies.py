"""Which rows belong together, and which reply stands."""

from datetime import date

from scorecard.costing.amounts import Span
from scorecard.costing.quotes import QuoteRow
from scorecard.costing.replies import Reply, grouped, same_pieces, standing
from scorecard.errors import Place

MONDAY, FRIDAY = date(2026, 11, 16), date(2026, 11, 20)


def row(number, pieces=100, *, maker="Fernhill", **more):
    places = {
        heading: Place(sheet="Quotes", cell=f"{letter}{number}")
        for heading, letter in zip(("Maker", "Pieces", "Price"), "ACD", strict=True)
    }
    more = {"price": Span.of(4), "price_is_for": "each", "currency": "EUR"} | more
    return QuoteRow(maker=maker, row=number, pieces=pieces, places=places, **more)


def numbers(groups):
    return [[each.row for each in group] for group in groups]


def test_a_row_that_names_no_terms_continues_the_one_above():
    rows = [row(2, 100, covers="goods", quoted_on=MONDAY), row(3, 250), row(4, 500, quoted_on=MONDAY)]

    assert [[2, 3, 4]] == numbers(grouped(rows))


def test_rows_of_another_maker_between_do_not_part_a_reply():
    rows = [row(2, covers="goods"), row(3, maker="Oxlip"), row(4, 250)]

    assert [[2, 4], [3]] == numbers(grouped(rows))


def test_rows_by_other_ways_are_other_replies():
    rows = [row(2, way="sea", covers="goods and freight"), row(3, way="air", covers="goods and freight")]

    assert [[2], [3]] == numbers(grouped(rows))


def test_rows_that_name_the_same_terms_are_one_reply_wherever_they_stand():
    sea, air = {"way": "sea", "covers": "goods and freight"}, {"way": "air", "covers": "goods and freight"}
    rows = [row(2, 100, **sea), row(3, 100, **air), row(4, 250, **sea), row(5, 250, **air)]

    assert [[2, 4], [3, 5]] == numbers(grouped(rows))


def test_another_currency_is_another_reply():
    assert [[2], [3]] == numbers(grouped([row(2), row(3, currency="USD")]))


def test_a_later_reply_on_the_same_terms_replaces_the_earlier():
    rows = [row(2, quoted_on=MONDAY, covers="goods"), row(3, quoted_on=FRIDAY, covers="goods")]

    assert [3] == [reply.head.row for reply in standing(rows)["Fernhill"]]


def test_replies_on_other_terms_stand_beside_each_other():
    rows = [row(2, quoted_on=MONDAY, term="EXW"), row(3, quoted_on=FRIDAY, term="FOB", term_place="Leixoes")]

    assert [2, 3] == [reply.head.row for reply in standing(rows)["Fernhill"]]


def test_what_a_reply_does_not_say_is_looked_for_in_the_maker_s_other_replies():
    rows = [row(2, term="EXW", setup=Span.of(60)), row(3, term="FOB")]
    second = standing(rows)["Fernhill"][1]

    assert 2 == second.saying("setup", second.head).row


def test_a_row_answers_for_itself_first():
    rows = (row(2, setup=Span.of(60)), row(3, 250, setup=Span.of(0)))

    assert Span.of(0) == Reply(rows=rows).saying("setup", rows[1]).setup


def test_days_are_those_of_the_row_or_else_of_its_reply():
    rows = (row(2, days=Span.of(20)), row(3, 250), row(4, 500, days=Span.of(30)))

    assert [20, 20, 30] == [Reply(rows=rows).days(each).low for each in rows]


def test_a_reply_is_dated_by_any_of_its_rows():
    assert MONDAY == Reply(rows=(row(2), row(3, quoted_on=MONDAY))).quoted_on


def test_two_prices_for_one_number_of_pieces_are_a_problem_at_the_second():
    problems = same_pieces([row(2, 100), row(3, 250), row(4, 100)])

    assert [("two-prices", "C4")] == [(each.code, each.place.cell) for each in problems]


def test_prices_of_two_days_are_no_problem():
    assert () == same_pieces([row(2, quoted_on=MONDAY, covers="goods"), row(3, quoted_on=FRIDAY, covers="goods")])


def test_without_a_day_there_is_no_telling_which_of_two_prices_stands():
    problems = same_pieces([row(2, covers="goods"), row(3, quoted_on=FRIDAY, covers="goods")])

    assert ["C3"] == [each.place.cell for each in problems]


def test_a_second_price_for_no_quantity_is_a_problem_too():
    assert 1 == len(same_pieces([row(2, None), row(3, None)]))
