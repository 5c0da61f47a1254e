from datetime import date

import pytest

from scorecard.brief import Brief
from scorecard.criteria import Firmness
from scorecard.reading.brief_table import read_brief, read_firmness
from scorecard.reading.toml_tables import Notes, Table

GOOD = {"item": "enamel mug", "quantity": 200}


def reading(reader, name, values):
    """Return what a reader makes of a table, and its problems as (code, last part of the key)."""
    notes = Notes("criteria.toml")
    result = reader(Table(values, (name,), notes))
    return result, [(problem.code, problem.place.key.removeprefix(f"{name}.")) for problem in notes.problems]


def brief(**values):
    return reading(read_brief, "brief", GOOD | values)


def firmness(**values):
    return reading(read_firmness, "firmness", values)


def test_a_brief_needs_an_item_and_a_quantity_alone():
    assert (Brief(item="enamel mug", quantity=200), []) == brief()


def test_a_brief_can_say_all_that_it_may_say():
    given = {
        "designs": 4,
        "colours": 3,
        "sizes": 2,
        "destination": "IE",
        "currency": "EUR",
        "need_by": date(2027, 5, 14),
        "print_width_mm": 180,
        "print_height_mm": 80.5,
        "decimal": ",",
    }

    assert (Brief(**GOOD, **given), []) == brief(**given)


def test_what_is_missing_is_noted_all_at_once():
    expected = [("missing-key", "item"), ("missing-key", "quantity")]

    assert (None, expected) == reading(read_brief, "brief", {})


@pytest.mark.parametrize(
    ("key", "value", "code"),
    [
        ("item", 3, "not-a-text"),
        ("item", "  ", "empty-text"),
        ("quantity", 0, "not-whole"),
        ("quantity", 12.5, "not-whole"),
        ("quantity", True, "true-false-as-number"),
        ("quantity", "200", "number-in-quotes"),
        ("quantity", float("nan"), "not-finite"),
        ("quantity", float("inf"), "not-finite"),
        ("quantity", 10**400, "number-too-large"),
        ("quantity", [200], "not-a-number"),
        ("designs", 201, "more-designs-than-pieces"),
        ("designs", 0, "not-whole"),
        ("colours", -1, "not-whole"),
        ("sizes", 1.5, "not-whole"),
        ("destination", "ie", "not-a-country"),
        ("destination", "UK", "not-a-country"),
        ("destination", "EU", "not-a-country"),
        ("currency", "eur", "not-a-currency"),
        ("currency", "€", "not-a-currency"),
        ("currency", 978, "not-a-text"),
        ("need_by", "2027-05-14", "date-in-quotes"),
        ("need_by", 20270514, "not-a-date"),
        ("print_width_mm", 0, "not-above-zero"),
        ("print_height_mm", "80 mm", "number-in-quotes"),
        ("decimal", ";", "not-an-option"),
        ("quantitty", 200, "unknown-key"),
    ],
)
def test_each_kind_of_mistake_is_noted_at_its_key(key, value, code):
    assert [(code, key)] == brief(**{key: value})[1]


def test_a_whole_number_may_be_written_with_a_point():
    assert 200 == brief(quantity=200.0)[0].quantity


@pytest.mark.parametrize(
    ("key", "value", "offer"),
    [
        ("destination", "UK", 'Write "GB"'),
        ("destination", "ie", 'Write "IE"'),
        ("destination", "Ireland", 'Write "IE"'),
        ("currency", "eur", 'Write "EUR"'),
        ("currency", "£", 'Write "GBP"'),
        ("need_by", "2027-05-14", "2027-05-14"),
    ],
)
def test_a_near_miss_is_answered_with_what_to_write(key, value, offer):
    notes = Notes("criteria.toml")
    read_brief(Table(GOOD | {key: value}, ("brief",), notes))

    assert offer in notes.problems[0].wanted


def test_a_part_with_a_problem_leaves_the_others_standing():
    result, _ = brief(destination="UK", decimal=",")

    assert (None, ",") == (result.destination, result.decimal)


def test_firmness_is_as_usual_where_nothing_is_said():
    assert (Firmness(), []) == firmness()


def test_firmness_takes_a_spread_up_to_one_and_a_seed_from_zero():
    assert (Firmness(spread=1.0, seed=0), []) == firmness(spread=1, seed=0)


@pytest.mark.parametrize(
    ("key", "value", "code"),
    [
        ("spread", 0, "not-a-part-of-one"),
        ("spread", 25, "not-a-part-of-one"),
        ("spread", "25", "number-in-quotes"),
        ("seed", -1, "not-whole"),
        ("seed", 1.5, "not-whole"),
        ("sprad", 0.2, "unknown-key"),
    ],
)
def test_each_kind_of_mistake_in_firmness_is_noted_at_its_key(key, value, code):
    assert (Firmness(), [(code, key)]) == firmness(**{key: value})
