"""Whole cases assessed: published examples from answers to the result, and laws that hold of every case.

The office location is from Goodwin and Wright, Decision Analysis for Management Judgment, chapter 3, table 3.2 [mixed],
its group weights from page 48; the three suppliers are a textbook-style exercise, "Jolly Company" [stored]; rank
reversal after Belton and Gear (1983), Omega 11(3), 228-230 [memory]. Figures in exact fractions are derived [derived].
"""

from datetime import date
from fractions import Fraction

import pytest
from cases import AS_OF, make_case, maker_of, numbers, rated, scores_of
from hypothesis import given, settings
from hypothesis import strategies as st

from scorecard.assessment import assess
from scorecard.criteria import Limit

OFFICE_WEIGHTS = (32, 26, 23, 10, 6, 3)
OFFICES = {
    "A": (100, 60, 100, 75, 0, 90),
    "B": (20, 80, 10, 30, 100, 30),
    "C": (80, 70, 0, 0, 10, 100),
    "D": (70, 50, 30, 55, 30, 90),
    "E": (40, 60, 90, 100, 60, 70),
    "F": (0, 0, 70, 0, 80, 0),
    "G": (60, 100, 20, 50, 50, 80),
}
TURNOVER_SWINGS, CONDITIONS_SWINGS = (100, 80, 70), (30, 20, 10)
SUPPLIER_CRITERIA = ("price", "quality", "delivery", "service")
SUPPLIERS = {"X": (5, 2, 3, 2), "Y": (4, 5, 4, 5), "Z": (3, 5, 3, 4)}


def result_of(case):
    return assess(case, as_of=AS_OF).as_json()


def suppliers(makers=SUPPLIERS, limits=None, **more):
    """The three suppliers on scales of 1 to 5, worth what is typed."""
    weights = dict(zip(SUPPLIER_CRITERIA, (0.6, 0.2, 0.1, 0.1), strict=True))
    criteria = [
        numbers(key, weight, (1, 1), (5, 5), limit=(limits or {}).get(key), within=(1, 5), **more)
        for key, weight in weights.items()
    ]
    return result_of(make_case(criteria, makers))


def group_value(points, swings):
    return float(sum(Fraction(p * s, sum(swings)) for p, s in zip(points, swings, strict=True)))


def grouped(turnover_weight):
    """The offices on the two groups of criteria, raw swings inside each."""
    makers = {
        name: (group_value(row[:3], TURNOVER_SWINGS), group_value(row[3:], CONDITIONS_SWINGS))
        for name, row in OFFICES.items()
    }
    criteria = [numbers("turnover", turnover_weight), numbers("conditions", 100 - turnover_weight)]
    return result_of(make_case(criteria, makers))


# offices


def test_the_offices_have_their_published_totals():
    expected = {"A": 80.8, "B": 39.4, "C": 47.4, "D": 52.3, "E": 64.8, "F": 20.9, "G": 60.2}
    assert expected == scores_of(result_of(rated(OFFICE_WEIGHTS, OFFICES)))


def test_the_difference_of_the_offices_a_and_g_is_20_6():
    scores = scores_of(result_of(rated(OFFICE_WEIGHTS, OFFICES)))
    assert pytest.approx(20.6) == scores["A"] - scores["G"]


@pytest.mark.parametrize(
    ("turnover", "office", "score"),
    [(0, "E", 81.7), (100, "E", 60.4), (0, "A", 52.5), (100, "A", 87.2)],
)
def test_the_ends_of_the_lines_over_turnovers_weight_are_as_published(turnover, office, score):
    assert pytest.approx(score, abs=0.05) == scores_of(grouped(turnover))[office]


def test_office_a_leads_down_to_the_published_turnover_weight_of_52_1():
    assert 52.1 == round(100 * grouped(81)["weight_ranges"]["turnover"]["low"], 1)


def test_that_turnover_weight_is_875_of_1679():
    assert float(f"{875 / 1679:.12g}") == grouped(81)["weight_ranges"]["turnover"]["low"]


def test_below_that_turnover_weight_office_e_takes_over():
    assert "E" == grouped(81)["weight_ranges"]["turnover"]["overtaken_below"]


@pytest.mark.parametrize("turnover", range(0, 101, 4))
def test_no_other_office_is_ever_best(turnover):
    assert grouped(turnover)["leaders"] == (["E"] if turnover <= 52 else ["A"])


@pytest.mark.parametrize("turnover", range(0, 101, 10))
def test_office_g_is_always_above_c(turnover):
    scores = scores_of(grouped(turnover))
    assert scores["G"] > scores["C"]


OFFICE_RANGES = [  # low, who takes over, high, who takes over
    (4 / 55, "E", 1, None),
    (0, None, 155 / 303, "G"),
    (0, None, 1, None),
    (0, None, 37 / 82, "E"),
    (0, None, 49 / 190, "E"),
    (0, None, 337 / 434, "C"),
]


@pytest.mark.parametrize(("at", "expected"), list(enumerate(OFFICE_RANGES)))
def test_each_weight_of_the_offices_has_its_exact_range(at, expected):
    found = result_of(rated(OFFICE_WEIGHTS, OFFICES))["weight_ranges"][f"c{at + 1}"]
    low, below, high, above = expected
    assert (pytest.approx(low), below, pytest.approx(high), above) == (
        found["low"],
        found["overtaken_below"],
        found["high"],
        found["overtaken_above"],
    )


def test_the_smallest_change_of_the_offices_moves_2_fifteenths_for_e():
    changes = result_of(rated(OFFICE_WEIGHTS, OFFICES))["smallest_change"]
    least = min((one for one in changes if one["moved"] is not None), key=lambda one: one["moved"])
    assert ("E", pytest.approx(2 / 15)) == (least["rival"], least["moved"])


# suppliers


def test_the_suppliers_score_as_published_and_y_is_chosen():
    result = suppliers()
    assert ({"X": 3.9, "Y": 4.3, "Z": 3.5}, "Y") == (scores_of(result), result["leader"])


def test_y_beats_z_on_everything_and_x_does_not():
    can_lead = {one["rival"]: one["moved"] for one in suppliers()["smallest_change"]}
    # Z draws level only where all weight is on quality, the one thing on which the two are level: 1 - 0.2 moved
    assert {"X": pytest.approx(0.1), "Z": pytest.approx(0.8)} == can_lead


@pytest.mark.parametrize(
    ("key", "low", "below", "high", "above"),
    [
        ("price", 0, None, 5 / 7, "X"),
        ("quality", 1 / 13, "X", 1, None),
        ("delivery", 0, None, 1, None),
        ("service", 0, None, 1, None),
    ],
)
def test_each_weight_of_the_suppliers_has_its_exact_range(key, low, below, high, above):
    found = suppliers()["weight_ranges"][key]
    assert (pytest.approx(low), below, pytest.approx(high), above) == (
        found["low"],
        found["overtaken_below"],
        found["high"],
        found["overtaken_above"],
    )


def unknown_quality(rule):
    return suppliers({**SUPPLIERS, "Y": (4, None, 4, 5)}, unknown=rule)


def test_with_its_quality_unknown_y_lies_between_3_5_and_4_3():
    found = maker_of(unknown_quality("worst"), "Y")
    assert (3.5, 4.3) == (found["low"], found["high"])


def test_y_is_best_from_a_quality_of_3_on():
    question = unknown_quality("worst")["questions"][0]
    assert ("Y", "quality", "Y", [{"low": 3, "high": 5}]) == (
        question["maker"],
        question["criterion"],
        question["leader_then"],
        question["answers"],
    )


def test_y_loses_its_lead_to_x_with_a_quality_below_3():
    question = unknown_quality("best")["questions"][0]
    assert ("X", [{"low": 1, "high": 3}]) == (question["leader_then"], question["answers"])


def test_a_quality_of_just_3_leaves_y_and_x_level():
    assert ["X", "Y"] == suppliers({**SUPPLIERS, "Y": (4, 3, 4, 5)})["leaders"]


def test_service_of_at_least_3_rules_x_out():
    result = suppliers(limits={"service": Limit(at_least=3)})
    assert [("Y", 1), ("Z", 2), ("X", None)] == [(one["maker"], one["rank"]) for one in result["makers"]]


def test_price_of_at_least_5_leaves_x_alone():
    result = suppliers(limits={"price": Limit(at_least=5)})
    assert ("X", None) == (result["leader"], result["margin"])


# rank reversal


def belton_and_gear(**more):
    return result_of(rated((1, 1, 1), {"A": (1, 9, 8), "B": (9, 1, 9), "C": (1, 1, 1), **more}))


def test_a_copy_of_a_maker_moves_nobodys_score():
    alone = scores_of(belton_and_gear())
    assert alone | {"D": alone["B"]} == scores_of(belton_and_gear(D=(9, 1, 9)))


def test_a_copy_of_a_maker_does_not_turn_the_order_round():
    leaders = belton_and_gear()["leader"], belton_and_gear(D=(9, 1, 9))["leaders"]
    assert ("B", ["B", "D"]) == leaders


# laws of whole cases

ROWS = st.lists(
    st.lists(
        st.one_of(
            st.none(),
            st.integers(0, 100),
            st.tuples(st.integers(0, 100), st.integers(0, 100)).map(lambda ends: tuple(sorted(ends))),
        ),
        min_size=3,
        max_size=3,
    ),
    min_size=1,
    max_size=5,
)
WEIGHTS = st.lists(st.integers(0, 5), min_size=3, max_size=3).filter(any)


def named(rows):
    return {f"maker {at}": row for at, row in enumerate(rows)}


def cells(result):
    return [cell for maker in result["makers"] for cell in maker["criteria"].values()]


@settings(max_examples=30)
@given(ROWS, WEIGHTS)
def test_points_lie_between_their_ends_and_within_0_and_100(rows, weights):
    found = cells(result_of(rated(weights, named(rows))))
    assert all(0 <= cell["low"] <= cell["points"] <= cell["high"] <= 100 for cell in found)


@settings(max_examples=30)
@given(ROWS, WEIGHTS)
def test_contributions_add_up_to_the_score(rows, weights):
    makers = result_of(rated(weights, named(rows)))["makers"]
    sums = [sum(cell["contribution"] for cell in maker["criteria"].values()) for maker in makers]
    assert pytest.approx(sums, abs=1e-8) == [maker["score"] for maker in makers]


@settings(max_examples=30)
@given(ROWS, WEIGHTS, st.integers(2, 50))
def test_scaling_all_weights_changes_nothing_but_what_was_typed(rows, weights, factor):
    once = result_of(rated(weights, named(rows)))
    scaled = result_of(rated([weight * factor for weight in weights], named(rows)))
    kept = ("leaders", "margin", "makers", "questions", "smallest_change", "shares")
    assert [once[key] for key in kept] == [scaled[key] for key in kept]


@settings(max_examples=30)
@given(ROWS, WEIGHTS)
def test_adding_a_maker_changes_nobodys_score_or_band(rows, weights):
    whole = named([*rows, [50, None, (20, 70)]])
    fewer = named(rows)

    def told(case):
        return {one["maker"]: (one["score"], one["low"], one["high"]) for one in result_of(case)["makers"]}

    assert told(rated(weights, fewer)).items() <= told(rated(weights, whole)).items()


def test_an_assessment_has_its_tables():
    frames = assess(rated((1, 1), {"A": (1, None), "B": (2, 3)}), as_of=AS_OF).frames()
    assert ["A", "B"] == sorted(frames["makers"]["maker"])


def test_without_a_day_the_clocks_day_stands_for_today():
    case = rated((1,), {"Fernhill": [90]})
    before, found, after = date.today(), assess(case).as_of, date.today()

    assert before <= found <= after


def test_what_is_no_day_is_refused_in_words():
    with pytest.raises(TypeError, match=r"as_of is '2026-11-25', which is not a day\. Give a datetime\.date"):
        assess(rated((1,), {"Fernhill": [90]}), as_of="2026-11-25")
