from dataclasses import replace

from cases import choices, make_case, numbers

from scorecard.criteria import Limit
from scorecard.report.asking import MOST_ASKED, contacts_of, questions_of, ruled_out_of
from scorecard.report.texts import bare


def ruled_out(found):
    return ruled_out_of(found, found.as_json(), (0,))[0]


def test_a_ruled_out_maker_has_its_reasons_and_what_lets_it_in(assessed):
    method = choices("b", 1, {"kiln": 100, "glue": 0}, limit=Limit(none_of=("glue",)))
    criteria = [numbers("a", 1, limit=Limit(at_least=50)), method]
    row = ruled_out(assessed(make_case(criteria, {"Brightholm": [20, "glue"], "Cressel": [60, "kiln"]})))
    expected = ("A: 20 is below the limit of 50", "B: “glue” is not accepted"), ("A: at least 50", "B: kiln")
    assert expected == (row.why, row.let_in_by)


def test_score_and_rank_are_those_it_would_have(assessed):
    criteria = [numbers("a", 1, limit=Limit(at_least=50))]
    row = ruled_out(assessed(make_case(criteria, {"Brightholm": [20], "Cressel": [60]})))
    assert ("20.0", "2") == (row.score, row.rank)


def test_a_question_that_could_change_the_leader_says_how(assessed):
    found = questions_of(assessed(make_case([numbers("a", 1)], {"Brightholm": [60], "Cressel": [None]})))
    one = found.deciding[0]
    assert ("Cressel", "A", "unknown", "100.0", "B3") == (one.maker, one.criterion, one.now, one.carries, one.cell)


def test_whose_cells_are_named_is_said(assessed):
    found = questions_of(assessed(make_case([numbers("a", 1)], {"Brightholm": [60], "Cressel": [None]})))
    assert "the sheet Makers of makers.xlsx" == bare(found.cells_of)


def test_an_answer_that_may_rule_its_maker_out_is_asked_though_it_carries_nothing(assessed):
    criteria = [numbers("a", 0, limit=Limit(at_least=50)), numbers("b", 1)]
    found = questions_of(assessed(make_case(criteria, {"Brightholm": [60, 60], "Cressel": [None, 20]})))
    assert ["may rule it out"] == [one.change for one in found.others]


def test_open_answers_of_weight_0_are_counted_as_such(assessed):
    criteria = [numbers("a", 0), numbers("b", 1)]
    found = questions_of(assessed(make_case(criteria, {"Brightholm": [None, 60], "Cressel": [None, 20]})))
    expected = ("2 open answers are left out: their criteria have weight 0.",)
    assert ((), expected) == (found.others, found.left_out)


def test_open_answers_that_are_worth_the_same_throughout_are_counted_as_such(assessed):
    found = questions_of(assessed(make_case([numbers("a", 1)], {"Brightholm": [(200, 300)], "Cressel": [20]})))
    expected = ("1 open answer is left out: whatever it turns out to be, the points are the same.",)
    assert ((), expected) == (found.others, found.left_out)


def test_of_many_questions_the_first_are_shown(assessed):
    rows = {f"M{at}": [None, at] for at in range(MOST_ASKED + 5)}
    found = questions_of(assessed(make_case([numbers("a", 1), numbers("b", 9)], rows)))
    shown = len(found.deciding) + len(found.others)
    assert (MOST_ASKED, True) == (shown, found.left_out[0].startswith("5 more questions"))


def test_an_answer_that_the_tool_computes_belongs_into_a_row(assessed):
    case = make_case([replace(numbers("a", 1), column=None, measure="response_days")], {"Brightholm": [None]})
    table = replace(case.table, letters={"maker": "A"})
    assert "row 2" == questions_of(assessed(replace(case, table=table))).others[0].cell


def details(assessed, page, note=""):
    case = make_case([numbers("a", 1)], {"Brightholm": [1]}, details={"Web page": (page,), "Notes": (note,)})
    return contacts_of(assessed(case), (0,))


def test_a_web_page_is_linked_with_its_host(assessed):
    one = details(assessed, "https://pots.example/mugs")[0].details[0]
    assert ("https://pots.example/mugs", "pots.example") == (one.href, bare(one.host))


def test_an_address_that_could_do_harm_is_only_told(assessed):
    one = details(assessed, "javascript:alert(1)")[0].details[0]
    assert (None, "javascript:alert(1)") == (one.href, bare(one.text))


def test_a_maker_of_whom_nothing_is_noted_is_left_out(assessed):
    assert [] == details(assessed, "")
