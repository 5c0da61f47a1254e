"""``reweigh``: other weights, side by side, and saved where that is asked for."""

import json
from dataclasses import replace

import jsonschema
import openpyxl
import pytest
from cases import numbers
from process import schema_of, scorecard

from scorecard.cli.reweighing import criterion_key
from scorecard.criteria import CriteriaSet
from scorecard.errors import UsageError


@pytest.fixture
def demo(tmp_path):
    scorecard("demo", "shown", cwd=tmp_path)
    return tmp_path / "shown"


def spoil(workbook, cell, value):
    """Type something into a cell of the sheet Makers."""
    book = openpyxl.load_workbook(workbook)
    book["Makers"][cell] = value
    book.save(workbook)


def test_a_beginning_of_a_key_or_title_names_a_criterion(demo):
    said = json.loads(scorecard("reweigh", "print=15", "EARLIER=5", "--json", cwd=demo).out)

    assert (15, 5) == (said["after"]["typed_weights"]["print_method"], said["after"]["typed_weights"]["earlier_work"])


@pytest.mark.parametrize("typed", ["12.5", "12,5"])
def test_a_weight_may_have_a_decimal_point_or_comma(demo, typed):
    said = json.loads(scorecard("reweigh", f"print={typed}", "--json", cwd=demo).out)

    assert 12.5 == said["after"]["typed_weights"]["print_method"]


def test_the_heading_of_its_column_names_a_criterion(demo):
    said = json.loads(scorecard("reweigh", "rating=15", "Sample=5", "--json", cwd=demo).out)

    weights = said["after"]["typed_weights"]
    assert (15, 5) == (weights["performance_rating"], weights["sample_willingness"])


def drawing(key, column):
    """Return a criterion that draws on a column of another name."""
    return replace(numbers(key, 1), column=column)


def test_a_beginning_of_its_columns_heading_does_too():
    criteria = CriteriaSet((drawing("stars", "Rating"), drawing("price", "Price")))

    assert "stars" == criterion_key("rat", criteria)


def test_a_beginning_of_one_criterions_key_and_anothers_column_names_neither():
    criteria = CriteriaSet((drawing("response", "Hours"), drawing("fame", "Rating")))

    with pytest.raises(UsageError, match="r: this could be response or fame"):
        criterion_key("r", criteria)
    assert ("response", "fame") == (criterion_key("re", criteria), criterion_key("ra", criteria))


def test_nothing_is_saved_where_a_name_fits_several(demo):
    before = (demo / "criteria.toml").read_bytes()
    ran = scorecard("reweigh", "r=40", "--save", cwd=demo)

    assert (2, "r: this could be performance_rating or response_time.") == (ran.status, ran.err.partition(" Write")[0])
    assert before == (demo / "criteria.toml").read_bytes()


def test_a_key_goes_before_another_criterions_column():
    criteria = CriteriaSet((drawing("rating", "Stars"), drawing("fame", "Rating")))

    assert "rating" == criterion_key("Rating", criteria)


def test_two_criteria_of_one_column_are_both_named():
    criteria = CriteriaSet((drawing("near", "Country"), drawing("duty", "Country")))

    with pytest.raises(UsageError, match="near or duty"):
        criterion_key("country", criteria)


def test_what_is_set_aside_is_said_first_and_in_the_result(demo):
    spoil(demo / "makers.xlsx", "B3", "lots")
    refused = scorecard("reweigh", "years=5", cwd=demo)
    said = scorecard("reweigh", "years=5", "--set-aside", cwd=demo)
    result = json.loads(scorecard("reweigh", "years=5", "--set-aside", "--json", cwd=demo).out)

    assert (3, "Taken as unknown, since they could not be read: B3.") == (refused.status, said.out.split("\n")[0])
    assert ["B3"] == [one["cell"] for one in result["set_aside"]]
    jsonschema.validate(result, schema_of("reweigh"))


def test_more_rows_are_read_where_that_is_asked_for(demo):
    refused, said = (scorecard("reweigh", "years=5", "--rows", rows, cwd=demo) for rows in ("3", "30"))

    assert (3, 0) == (refused.status, said.status)


def test_a_weight_that_is_none_names_a_key_that_there_is(demo):
    assert "such as print_method=30." in scorecard("reweigh", "print=x", cwd=demo).err


def test_a_change_of_weight_that_changes_the_leader_is_said(demo):
    said = scorecard("reweigh", "earlier=2", "minimum=40", cwd=demo)

    assert 0 == said.status
    assert "The leader changes from Brightholm Enamel to Quillmoor Works." in said.out


def test_the_result_is_said_once(demo):
    last = scorecard("reweigh", "years=16", cwd=demo).out.rstrip("\n").split("\n")[-3]

    assert last.startswith("The leader stays Brightholm Enamel. One answer could change it: Oxlip Kilns on")


def test_the_sum_of_weights_is_said_where_it_is_not_100(demo):
    said = scorecard("reweigh", "years=30", cwd=demo)

    assert "The weights now add up to 115; shown as shares of 100." in said.out


def test_nothing_is_written_without_save(demo):
    before = (demo / "criteria.toml").read_bytes()
    scorecard("reweigh", "years=30", cwd=demo)

    assert before == (demo / "criteria.toml").read_bytes()


def test_save_keeps_comments_and_the_file_as_it_was(demo):
    before = (demo / "criteria.toml").read_text("utf-8")
    scorecard("reweigh", "years=30.5", "--save", cwd=demo)

    assert before == (demo / "criteria-before-1.toml").read_text("utf-8")
    expected = before.replace('title = "Years trading"\nweight = 15', 'title = "Years trading"\nweight = 30.5')
    assert expected == (demo / "criteria.toml").read_text("utf-8")


def test_saved_weights_are_scored(demo):
    scorecard("reweigh", "earlier=2", "minimum=40", "--save", cwd=demo)

    assert "Quillmoor Works" == json.loads(scorecard("score", "--json", cwd=demo).out)["leader"]


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["weight"], "no criterion begins so"),
        (["years"], "write a criterion, =, and a weight"),
        (["years=-1"], "weight of 0 or more"),
        (["years=ten"], "weight of 0 or more"),
        (["years=1,000"], "years=1,000: '1,000' can be 1 or 1000. Write the weight without a mark for thousands"),
        (["years=1.000"], "can be 1 or 1000"),
        (["p=3"], "could be performance_rating or print_method"),
        (["years=1", "Years trading=2"], "given twice"),
    ],
)
def test_wrong_words_are_wrong_usage(demo, words, said):
    ran = scorecard("reweigh", *words, cwd=demo)

    assert (2, True) == (ran.status, said in ran.err)


def test_all_wrong_words_are_named_at_once(demo):
    ran = scorecard("reweigh", "nothing=1", "years=x", cwd=demo)

    assert 2 == len(ran.err.strip().split("\n"))


def test_all_weights_0_are_wrong_usage(demo):
    heavy = ("years", "performance", "minimum", "earlier", "sample_w", "print", "response")
    ran = scorecard("reweigh", *(f"{name}=0" for name in heavy), cwd=demo)

    assert (2, True) == (ran.status, "All weights would be 0" in ran.err)


@pytest.mark.parametrize(
    ("table", "key", "said"),
    [
        ('method = "ranks"\nranks = ["a", "b"]', "ranks", "an order of importance"),
        ('method = "pairs"\npairs = [["a", "b", 3]]', "pairs", "comparisons by pairs"),
    ],
)
def test_weights_from_judgements_are_tried_as_parts_of_100_and_changed_in_the_file(tmp_path, table, key, said):
    criteria = "".join(f"[criteria.{name}]\npoints = [[0, 0], [9, 100]]\n" for name in "ab")
    (tmp_path / "criteria.toml").write_text(
        f'[brief]\nitem = "x"\nquantity = 1\n[weights]\n{table}\n{criteria}', "utf-8"
    )
    (tmp_path / "makers.csv").write_text("Maker,A,B\nOne,1,2\nTwo,3,1\n", "utf-8")
    tried = scorecard("reweigh", "a=30", cwd=tmp_path)
    saved = scorecard("reweigh", "a=30", "--save", cwd=tmp_path)

    # a has 75 of 100 by either judgement: 3 times b, or 3/4 by the rank order centroid of two
    assert ["A", "75", "75.0", "30", "54.5"] == tried.out.split("\n")[2].split()
    assert (0, True) == (tried.status, f"Nothing is saved. The weights in the file come from {said}" in tried.out)
    assert (2, True, "") == (saved.status, f"`{key}`" in saved.err, saved.out)


@pytest.mark.parametrize("words", [("years", "10"), ("years", "=", "10"), ("years=", "10"), ("years", "=10")])
def test_a_weight_typed_with_spaces_is_told_as_it_must_be_typed(demo, words):
    said = scorecard("reweigh", *words, cwd=demo)

    told = f"{' '.join(words)}: write criterion, = and weight without spaces between them: years=10"
    assert (2, told) == (said.status, said.err.strip())


def test_words_that_are_no_weights_keep_their_own_faults(demo):
    told = scorecard("reweigh", "zebra", "10=", cwd=demo).err.split("\n")

    assert ["zebra", "10"] == [line.partition(": ")[0] for line in told[:2]]


def test_a_folder_among_the_weights_is_told_how_it_is_named(demo):
    said = scorecard("reweigh", demo.name, "years=10", cwd=demo.parent)

    told = f"{demo.name}: a folder is named with --folder: "
    assert (2, True) == (said.status, said.err.startswith(told))
    assert said.err.rstrip().endswith(f"reweigh years=10 --folder {demo.name}")
