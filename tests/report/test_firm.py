from cases import make_case, numbers

from scorecard.report.firm import firm_of

TWO = [numbers("rating", 30), numbers("price", 10)]


def firm(assessed, rows, criteria=TWO):
    return firm_of(assessed(make_case(criteria, rows)))


def test_a_weight_that_can_change_the_leader_has_its_sentence(assessed):
    found = firm(assessed, {"Brightholm": [90, 10], "Cressel": [50, 50]})
    assert "Rating: Brightholm stays first from 10.0 upwards; below that, Cressel." == found.ranges[0]


def test_weights_that_cannot_change_the_leader_share_one(assessed):
    found = firm(assessed, {"Brightholm": [90, 90], "Cressel": [50, 50]})
    assert "Whatever the weight of Rating or Price, Brightholm stays first." == found.steady


def test_the_smallest_change_is_told(assessed):
    found = firm(assessed, {"Brightholm": [90, 10], "Cressel": [50, 50]})
    assert ("Moving 25.0 of 100 from Rating to Price brings Cressel level.",) == found.changes


def test_who_is_beaten_on_everything_can_never_lead(assessed):
    found = firm(assessed, {"Brightholm": [90, 90], "Cressel": [50, 50]})
    expected = ("As the answers count now, no weighting puts Cressel first.", "Brightholm beats Cressel on everything.")
    assert expected == found.never


def test_who_can_at_best_share_first_place_is_told_with_who_beats_or_equals_it(assessed):
    found = firm(assessed, {"Brightholm": [90, 90], "Cressel": [90, 50]})
    expected = (
        "As the answers count now, Cressel can at best share first place.",
        "Brightholm beats or equals Cressel on everything.",
    )
    assert expected == found.never


def test_what_is_beaten_on_all_that_has_weight_is_not_said_to_be_beaten_on_everything(assessed):
    found = firm(assessed, {"Brightholm": [90, 10], "Cressel": [50, 50]}, [numbers("rating", 30), numbers("price", 0)])
    assert "Brightholm beats Cressel on everything that has weight." == found.never[-1]


def test_that_a_weight_of_0_stays_at_0_is_said(assessed):
    found = firm(assessed, {"Brightholm": [90, 10], "Cressel": [50, 50]}, [numbers("rating", 30), numbers("price", 0)])
    assert found.weightless.startswith("Price has weight 0. What a weight for it alone would do stands in the table")


def test_without_a_weight_of_0_none_is_told_of(assessed):
    assert firm(assessed, {"Brightholm": [90, 10], "Cressel": [50, 50]}).weightless is None


def test_joint_leaders_are_not_said_to_share_at_best(assessed):
    assert () == firm(assessed, {"Brightholm": [90, 90], "Cressel": [90, 90]}).never


def test_who_beats_a_maker_outright_is_told_before_who_only_equals_it_somewhere(assessed):
    rows = {"Brightholm": [90, 50], "Cressel": [95, 80], "Dunmorrow": [50, 50]}
    found = firm(assessed, rows)
    assert ("Cressel beats Brightholm and Dunmorrow on everything.",) == found.never[1:]


def test_a_joint_lead_says_of_whom_it_speaks(assessed):
    assert firm(assessed, {"Brightholm": [5, 5], "Cressel": [5, 5]}).joint.startswith(
        "Brightholm and Cressel are level."
    )


def test_of_many_rivals_the_ten_nearest_are_told(assessed):
    rows = {"Brightholm": [90, 10]} | {f"Rival {at}": [50 - at, 50 + at] for at in range(14)}
    found = firm(assessed, rows)
    assert (10, "For 4 rivals further off, more weight would have to move.") == (len(found.changes), found.further)


def test_a_maker_without_rivals_is_alone(assessed):
    assert firm(assessed, {"Brightholm": [1, 1]}).alone
