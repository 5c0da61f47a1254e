"""Which rows belong together, and which reply stands."""

from datetime import date

import pytest

from scorecard.costing.amounts import Span
from scorecard.costing.quotes import QuoteRow
from scorecard.costing.replies import Reply, grouped, replaced, same_pieces, standing
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


def test_a_row_on_the_terms_of_a_reply_belongs_to_it_though_another_continued_it_between():
    rows = [row(2, 100, covers="goods", quoted_on=MONDAY), row(3, 250), row(4, 500, covers="goods")]

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


def with_breaks(earlier, later):
    """Return two replies on the same terms, each with a second row that names none of them."""
    return [
        row(2, 100, covers="goods", quoted_on=earlier),
        row(3, 250),
        row(4, 100, covers="goods", quoted_on=later),
        row(5, 250),
    ]


@pytest.mark.parametrize(
    ("earlier", "later", "stands", "gone"),
    [(MONDAY, FRIDAY, [4, 5], [(2, 4), (3, 4)]), (FRIDAY, MONDAY, [2, 3], [(4, 2), (5, 2)])],
)
def test_a_replaced_reply_goes_with_all_its_rows(earlier, later, stands, gone):
    rows = with_breaks(earlier, later)
    (reply,) = standing(rows)["Fernhill"]

    assert (stands, stands[0], ()) == ([each.row for each in reply.rows], reply.head.row, reply.others)
    assert gone == [(row.row, later.row) for row, later in replaced(rows)]
    assert 1 == len(standing(rows[:3])["Fernhill"])  # its other reply has one row alone


def test_a_dated_reply_replaces_one_without_a_day():
    rows = [row(2, covers="goods"), row(3, covers="goods", quoted_on=FRIDAY)]

    assert [(2, 3)] == [(row.row, later.row) for row, later in replaced(rows)]


def test_nothing_is_replaced_by_a_reply_on_other_terms():
    assert [] == list(replaced([row(2, covers="goods", quoted_on=MONDAY), row(3, term="FOB", quoted_on=FRIDAY)]))


def test_replies_on_other_terms_stand_beside_each_other():
    rows = [row(2, quoted_on=MONDAY, term="EXW"), row(3, quoted_on=FRIDAY, term="FOB", term_place="Leixoes")]

    assert [2, 3] == [reply.head.row for reply in standing(rows)["Fernhill"]]


def test_what_a_reply_does_not_say_is_looked_for_in_the_maker_s_other_replies():
    rows = [row(2, term="EXW", setup=Span.of(60)), row(3, term="FOB")]
    second = standing(rows)["Fernhill"][1]

    assert 2 == second.saying("setup", second.head).row


def test_the_other_replies_of_a_maker_are_those_that_it_is_not():
    rows = [row(2, term="EXW"), row(3, 250), row(4, term="FOB")]

    assert [([2, 3], [4]), ([4], [2, 3])] == [
        tuple(numbers([reply.rows, reply.others])) for reply in standing(rows)["Fernhill"]
    ]


def test_the_first_word_of_a_field_counts_be_it_that_it_is_not_known():
    asked, told = row(2, unknown=frozenset({"setup"})), row(3, 250, setup=Span.of(60))
    reply = Reply(rows=(asked, told))

    assert (None, asked) == (reply.saying("setup"), reply.unsure("setup"))
    assert (told, None) == (reply.saying("setup", told), reply.unsure("setup", told))
    assert (None, None) == (reply.saying("days"), reply.unsure("days"))


def test_a_row_answers_for_itself_first():
    rows = (row(2, setup=Span.of(60)), row(3, 250, setup=Span.of(0)))

    assert Span.of(0) == Reply(rows=rows).saying("setup", rows[1]).setup


def test_days_are_those_of_the_row_or_else_of_its_reply():
    rows = (row(2), row(3, 250, days=Span.of(20)), row(4, 500), row(5, 1000, days=Span.of(30)))

    assert [20, 20, 20, 30] == [Reply(rows=rows).days(each).low for each in rows]


def test_a_reply_is_dated_by_any_of_its_rows():
    assert MONDAY == Reply(rows=(row(2), row(3, quoted_on=MONDAY))).quoted_on


def test_two_prices_for_one_number_of_pieces_are_a_problem_at_the_second():
    problems = same_pieces([row(2, 100), row(3, 250), row(4, 100)])

    assert [("two-prices", "C4")] == [(each.code, each.place.cell) for each in problems]


def test_prices_of_two_days_are_no_problem():
    assert () == same_pieces(with_breaks(MONDAY, FRIDAY))


def test_without_a_day_there_is_no_telling_which_of_two_prices_stands():
    problems = same_pieces([row(2, covers="goods"), row(3, 250), row(4, quoted_on=FRIDAY, covers="goods")])

    assert ["C4"] == [each.place.cell for each in problems]


@pytest.mark.parametrize(("pieces", "words"), [(None, "the same quantity"), (100, "100 pieces")])
def test_a_second_price_is_named_with_its_quantity_or_without_one(pieces, words):
    (problem,) = same_pieces([row(2, pieces), row(3, pieces)])

    assert f"Fernhill has a second price for {words}, after the one in " == problem.found.removesuffix(
        str(row(2).at("Price"))
    )


def test_a_row_whose_pieces_could_not_be_read_is_left_out():
    assert () == same_pieces([row(2, None), row(3, None)], unread={3})
