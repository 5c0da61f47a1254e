import json
import re
import tomllib

import numpy as np
import pytest
from cases import AS_OF, choices, make_case, numbers
from markupsafe import Markup
from squeezed import PARTS, sources, squeezed

from scorecard.assessment import assess
from scorecard.criteria import CriteriaSet, Limit, Steady, WeightsNote
from scorecard.report.extent import extent_of
from scorecard.report.texts import bare, presentable
from scorecard.report.trying import HERE, data_of, script

HOSTILE = ("</script><script>alert(1)</script>", "<!--<script>", "evil\u202efdp.exe\x00", "=1+1", "javascript:alert(1)")


def data(case):
    """Return what travels with the page, as the script reads it."""
    return json.loads(text(case))


def text(case):
    found = presentable(assess(case, as_of=AS_OF))
    return data_of(found, extent_of(found))


@pytest.fixture(scope="module")
def told(field):
    return data(field(14))


@pytest.fixture(scope="module")
def found(field):
    return presentable(assess(field(14), as_of=AS_OF))


def travelling(found):
    return sorted(extent_of(found).tried)


def test_points_travel_to_the_last_bit(found, told):
    low = [[one[0] if isinstance(one, list) else one for one in maker["points"]] for maker in told["makers"]]
    assert found.points.low[travelling(found)].tolist() == low


def test_open_points_travel_with_what_they_can_reach(found, told):
    reach = [[one[2] if isinstance(one, list) else one for one in maker["points"]] for maker in told["makers"]]
    assert found.points.reach[travelling(found)].tolist() == reach


def test_makers_travel_in_the_order_of_the_sheet(found, told):
    assert [bare(found.case.table.makers[at]) for at in travelling(found)] == [
        maker["name"] for maker in told["makers"]
    ]


def test_unknown_answers_are_named(found, told):
    unknown = [np.flatnonzero(~found.points.known[at]).tolist() for at in travelling(found)]
    assert unknown == [maker["unknown"] for maker in told["makers"]]


def test_every_open_answer_can_be_tried(found, told):
    asked = {(bare(found.case.table.makers[one.maker]), one.criterion) for one in found.questions}
    assert asked == {(maker["name"], int(at)) for maker in told["makers"] for at in maker["open"]}


def test_nobody_and_one_alone_have_no_weights_to_try():
    alone = make_case([numbers("a", 1)], {"Brightholm": [1]})
    nobody = make_case([numbers("a", 1, limit=Limit(at_least=50))], {"Brightholm": [1], "Ellerby": [2]})
    assert (None, None) == (text(alone), text(nobody))


def test_nothing_in_the_data_can_end_its_element():
    case = make_case([choices("a", 1, dict.fromkeys(HOSTILE, 5.0))], {name: [name] for name in HOSTILE})
    assert not re.search("[<>&\u202e\u2068\u2069]", text(case))


def test_hostile_names_are_read_back_as_they_are_shown():
    case = make_case([numbers("a", 1)], {name: [5] for name in HOSTILE})
    shown = [name.replace("\u202e", "\ufffd").replace("\x00", "\ufffd") for name in HOSTILE]
    assert shown == [bare(maker["name"]) for maker in data(case)["makers"]]


def test_the_data_is_markup_of_its_own(field):
    assert isinstance(text(field(3)), Markup)


@pytest.mark.parametrize("key", ["years_trading", "Jahre im Geschäft", 'with "quotes"', "a.b", "bidi\u202ekey", "\x7f"])
def test_a_line_is_headed_by_its_table(key):
    case = make_case([numbers(key, 1, title="Title")], {"Brightholm": [1], "Ellerby": [2]})
    heading = data(case)["criteria"][0]["heading"]
    assert {"criteria": {key: {"weight": 3}}} == tomllib.loads(f"{heading}\nweight = 3\n")


@pytest.mark.parametrize(("method", "needs_all"), [("typed", False), ("ranks", True), ("pairs", True)])
def test_weights_from_judgements_need_every_line(method, needs_all):
    case = make_case([numbers("a", 1)], {"Brightholm": [1], "Ellerby": [2]})
    note = WeightsNote(method=method, ratio=0.0)
    lines = data(case.with_criteria(CriteriaSet(case.criteria.criteria, note)))["lines"]
    assert (needs_all, needs_all) == (lines["all"], "delete the table [weights]" in lines["above"])


def test_limits_bounds_and_ratings_travel_with_numbers():
    steady = Steady(count_column="Ratings", usual=4.5, usual_counts_as=20)
    one = numbers("a", 1, (4, 0), (5, 100), within=(0, 5), limit=Limit(at_least=4.0), steady=steady, unit="stars")
    told = data(make_case([one], {"Brightholm": [4.5], "Ellerby": [5]}))["criteria"][0]
    assert ([[4, 0], [5, 100]], [0, 5], [4.5, 20]) == (told["knots"], told["within"], told["steady"])


def test_choices_travel_with_whether_they_pass():
    one = choices("a", 1, {"free": 100, "none": 0}, limit=Limit(none_of=("none",)))
    told = data(make_case([one], {"Brightholm": ["free"], "Ellerby": ["free"]}))["criteria"][0]["choices"]
    assert [True, False] == [choice["passes"] for choice in told]


def test_makers_that_do_not_travel_are_counted():
    rows = {f"M{at}": [at % 97] for at in range(501)}
    assert 401 == data(make_case([numbers("a", 1)], rows))["left_out"]


def test_the_script_reads_no_markup_and_no_code_from_texts():
    assert not re.search(
        r"innerHTML|outerHTML|insertAdjacent|document\.write|\beval\b|new Function|DOMParser", script()
    )


def test_every_script_of_the_folder_is_part_of_the_page():
    assert sorted(PARTS) == sorted(file.stem for file in (HERE / "scripts").glob("*.js"))


def test_the_pages_script_is_what_is_written():
    assert squeezed(sources()) == script(), "run: python tests/squeezed.py"


@pytest.mark.parametrize(
    ("code", "small"),
    [
        ("const count = 1; // one\nreturn count + +count;", "const a=1;return a+ +a;\n"),
        ("one.two = `${one} and ${{ one }.one}`;", "a.two=`${a} and ${{one:a}.one}`;\n"),
        ('if (/[/"]/.test(one)) { one("a  b"); }', 'if(/[/"]/.test(a)){a("a  b")}\n'),
        ("const { one, two: three } = yes ? one : three;", "const{one:a,two:b}=c?a:b;\n"),
    ],
)
def test_squeezing_shortens_names_and_leaves_texts_alone(code, small):
    assert small == squeezed(code)
