import re
import tomllib
from datetime import date
from itertools import pairwise

import pytest

from scorecard.errors import UsageError
from scorecard.reading.criteria_file import parse_criteria, read_criteria
from scorecard.reading.kinds import find_kind, kinds
from scorecard.value_functions import Choices

NAMES = [
    "badges-and-pins",
    "enamelware-and-ceramics",
    "paper-goods",
    "printed-textiles",
    "stickers-and-prints",
]

# A word that the head of each file must hold: what that kind of goods can do to people.
CAUTIONS = {
    "badges-and-pins": ["sharp points", "small parts", "Magnets", "Cords", "children", "nickel"],
    "enamelware-and-ceramics": ["lead and cadmium", "rim", "microwave", "children"],
    "paper-goods": ["Small parts", "cords", "children", "food"],
    "printed-textiles": ["burns", "Fibre content", "children", "small parts", "skin"],
    "stickers-and-prints": ["Adhesive on skin", "children", "food", "magnets"],
}
CAUTIONS_OF_ALL = ["accredited", "licensed to practise", "own name or mark", "manufacturer", "business licence"]


def head(name):
    """Return the remarks before the first setting, as one text."""
    text = kinds()[name].read_text("utf-8").partition("\nformat")[0]
    return " ".join(line.removeprefix("#").strip() for line in text.splitlines())


def test_five_kinds_are_shipped():
    expected = NAMES

    assert expected == list(kinds())


@pytest.mark.parametrize("name", NAMES)
def test_a_shipped_file_has_neither_problem_nor_warning(name):
    reading = read_criteria(kinds()[name])

    assert reading.problems == ()
    assert reading.warnings == ()


@pytest.mark.parametrize("name", NAMES)
def test_a_shipped_file_compares_on_what_every_kind_needs(name):
    criteria = read_criteria(kinds()[name]).criteria

    drawn_on = {criterion.key: criterion.column or criterion.measure for criterion in criteria}
    expected = {
        "years_trading": "Years trading",
        "performance_rating": "Rating",
        "minimum_order_fit": "Minimum order",
        "sample_willingness": "Sample",
        "print_method": "Print method",
        "response_time": "response_days",
        "earlier_work": "Earlier work",
        "landed_cost": "landed_cost_per_piece",
        "sample_marks": "sample_marks",
        "on_time_delivery": "on_time_share",
    }
    assert expected == drawn_on


@pytest.mark.parametrize("name", NAMES)
def test_shipped_weights_add_up_to_100_and_what_is_judged_later_weighs_nothing(name):
    weights = read_criteria(kinds()[name]).criteria_set.typed_weights

    later = {key: weights[key] for key in ("landed_cost", "sample_marks", "on_time_delivery")}
    assert sum(weights.values()) == 100
    assert set(later.values()) == {0.0}


@pytest.mark.parametrize("name", NAMES)
def test_the_line_that_switches_a_criterion_on_stands_beside_it(name):
    lines = kinds()[name].read_text("utf-8").splitlines()

    switches = [
        line.partition("write this line instead:")[2].strip() for line in lines if line.startswith("weight = 0 ")
    ]
    expected = ["weight = 25", "weight = 25", "weight = 20"]
    assert expected == switches


@pytest.mark.parametrize("name", NAMES)
def test_a_rating_is_within_0_and_5_and_steadied_by_the_number_of_ratings(name):
    rating = read_criteria(kinds()[name]).criteria_set["performance_rating"]

    assert rating.within == (0.0, 5.0)
    assert rating.steady.count_column == "Ratings counted"


@pytest.mark.parametrize("name", NAMES)
def test_print_methods_range_from_suited_to_unsuited(name):
    methods = read_criteria(kinds()[name]).criteria_set["print_method"].value

    assert isinstance(methods, Choices)
    assert methods.extremes() == (0.0, 100.0)


@pytest.mark.parametrize("name", NAMES)
def test_the_head_warns_of_what_the_goods_can_do(name):
    text = head(name)

    assert [] == [word for word in CAUTIONS[name] + CAUTIONS_OF_ALL if word not in text]


@pytest.mark.parametrize("name", NAMES)
def test_what_is_from_memory_of_the_literature_is_called_unverified(name):
    text = " ".join(kinds()[name].read_text("utf-8").replace("\n#", "").split())

    assert "Dickson (1966)" in text
    assert "as cited in the literature, not verified here" in text


@pytest.mark.parametrize("name", NAMES)
def test_every_default_says_that_it_is_common_practice(name):
    lines = kinds()[name].read_text("utf-8").splitlines()

    settings = [
        (above, line)
        for above, line in pairwise(lines)
        if line.startswith(("points", "choices", "steady", "weight = 1", "weight = 2"))
    ]
    assert [] == [line for above, line in settings if "common practice, change me" not in above + line]


TABLES = ("order", "currencies", "import", "shipping", "schedule", "selling", "inspection", "care")
REMARK = re.compile(r"^# (?=\[{1,2}[a-z_.]+\]{1,2}|[A-Za-z_]+ = )", re.MULTILINE)


@pytest.mark.parametrize("name", NAMES)
def test_with_every_remark_made_a_setting_a_shipped_file_has_neither_problem_nor_warning(name):
    text = REMARK.sub("", kinds()[name].read_text("utf-8"))
    settings = tomllib.loads(text)
    reading = parse_criteria(text.encode(), "criteria.toml")

    assert [] == [table for table in TABLES if table not in settings]
    assert ((), ()) == (reading.problems, reading.warnings)
    assert (reading.order.designs[0].name, "USD" in reading.costs.rates.rates) == ("Design 1", True)


@pytest.mark.parametrize("name", NAMES)
def test_what_goes_stale_has_its_day_or_the_month_of_its_source(name):
    settings = tomllib.loads(REMARK.sub("", kinds()[name].read_text("utf-8")))

    day = date(2026, 11, 25)
    assert [day] * 3 == [
        settings["currencies"]["on"],
        settings["import"]["charges"][0]["on"],
        settings["schedule"]["on"],
    ]
    assert kinds()[name].read_text("utf-8").count("of November 2026") == 2


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ("enamelware-and-ceramics", "enamelware-and-ceramics"),
        ("enamel", "enamelware-and-ceramics"),
        ("ENAMELWARE", "enamelware-and-ceramics"),
        (" b", "badges-and-pins"),
        ("printed", "printed-textiles"),
    ],
)
def test_any_unambiguous_beginning_names_a_kind(typed, name):
    assert name == find_kind(typed).stem


@pytest.mark.parametrize("typed", ["p", "", "mugs", "../criteria", "*"])
def test_an_ambiguous_or_unknown_name_is_answered_with_the_kinds_that_there_are(typed):
    with pytest.raises(UsageError, match=r"paper-goods (or|,)|paper-goods, printed-textiles and stickers-and-prints"):
        find_kind(typed)


def test_a_misspelt_kind_is_answered_with_the_nearest_one():
    with pytest.raises(UsageError, match="Did you mean paper-goods"):
        find_kind("papr-goods")


def test_an_installed_package_holds_its_own_kinds(tmp_path, monkeypatch):
    package = tmp_path / "scorecard"
    (package / "shipped_criteria").mkdir(parents=True)
    (package / "shipped_criteria" / "paper-goods.toml").touch()
    monkeypatch.setattr("scorecard.reading.kinds.files", lambda _name: package)

    expected = {"paper-goods": package / "shipped_criteria" / "paper-goods.toml"}
    assert expected == kinds()


@pytest.mark.parametrize("name", NAMES)
def test_a_shipped_file_leaves_the_decimal_mark_to_be_asked_for(name):
    assert read_criteria(kinds()[name]).brief.decimal is None
