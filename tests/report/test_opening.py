from dataclasses import replace

from cases import make_case, numbers

from scorecard.brief import Brief
from scorecard.errors import Place, Problem
from scorecard.report.opening import opening_of, set_aside_sentence, wanted_line
from scorecard.report.texts import bare


def unreadable(cell):
    return Problem(code="not-a-number", place=Place(sheet="Makers", cell=cell), found="'about 5'", wanted="Write 5")


def test_one_cell_set_aside_is_named():
    expected = "1 cell could not be read and counts as unknown: Makers!D7."
    assert expected == bare(set_aside_sentence((unreadable("D7"),)))


def test_of_many_cells_set_aside_twelve_are_named():
    said = bare(set_aside_sentence(tuple(unreadable(f"D{row}") for row in range(2, 22))))
    assert ("20 cells", "Makers!D13 and 8 more.") == (said[:8], said[-22:])


def test_nothing_set_aside_is_not_mentioned():
    assert set_aside_sentence(()) is None


def test_the_brief_is_one_line(field):
    expected = "350 ml enamel mug · 200 pieces in 4 designs · to IE · needed by 14 May 2027"
    assert expected == wanted_line(field(1))


def test_a_short_brief_says_what_it_has(field):
    case = replace(field(1), brief=Brief(item="mug", quantity=1))
    assert "mug · 1 piece" == wanted_line(case)


def test_different_leaders_by_rule_are_told(assessed):
    rows = {"Brightholm": [60], "Cressel": [(0, 100)]}
    found = opening_of(assessed(make_case([numbers("a", 1)], rows)))
    expected = (
        "Brightholm leads if the open answers turn out at their worst or in the middle, and Cressel if at their best."
    )
    assert expected == found.supporting[0]


def test_before_money_is_at_stake_three_things_are_said(field, assessed):
    said = " ".join(opening_of(assessed(field(9))).cautions)
    assert ("honest" in said, "phone number" in said, "licensed to advise" in said) == (True, True, True)
