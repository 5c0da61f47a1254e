"""The columns of the sheet Makers follow from the criteria."""

from scorecard.brief import Brief
from scorecard.criteria import Criterion, Steady
from scorecard.value_functions import Choices, PiecewiseLinear
from scorecard.workbooks.entry_columns import BROWSING
from scorecard.workbooks.entry_makers import entry_sheets, makers_columns

BRIEF = Brief(item="enamel mug", quantity=200, designs=4)
LINE = PiecewiseLinear(((0, 0), (1, 100)))


def criterion(column, **others):
    return Criterion(
        key=str(column).lower(), weight=1, value=LINE, **({"title": str(column), "column": column} | others)
    )


DESIGNS_OWN = [  # the criteria of the design's example, in its order
    criterion("Years trading", unit="years"),
    criterion("Rating", within=(0, 5), steady=Steady(count_column="Ratings counted", usual=4.5, usual_counts_as=20)),
    criterion("Minimum order"),
    criterion("Earlier work"),
    criterion("Sample"),
    criterion("Print method"),
    criterion(None, title="Response time", measure="response_days"),
]


def named(criteria, brief=BRIEF):
    return {column.heading: column for column in makers_columns(criteria, brief)}


def test_the_columns_of_a_first_ranking_come_first():
    expected = ["Maker", "Years trading", "Rating", "Minimum order", "Print method"]

    assert expected == [heading for heading, column in named(DESIGNS_OWN).items() if column.is_first]
    assert expected == list(named(DESIGNS_OWN))[:5]


def test_the_other_columns_come_after_in_the_order_of_the_file():
    expected = (
        "Ratings counted, Earlier work, Sample, Minimum is per, Country, Web page, Contact, Asked on, Answered on, "
        "Care, Seen on, Notes"
    )

    assert expected.split(", ") == list(named(DESIGNS_OWN))[5:]


def test_ratings_are_counted_while_browsing():
    assert BROWSING == named(DESIGNS_OWN)["Ratings counted"].when


def test_a_measure_has_no_column():
    assert named([]) == named([criterion(None, title="Response time", measure="response_days")])


def test_headings_of_a_first_ranking_are_known_whatever_their_case():
    assert ["Maker", "RATING"] == list(named([criterion("Country"), criterion("RATING")]))[:2]


def test_a_column_that_two_criteria_draw_on_stands_there_once():
    columns = makers_columns([criterion("Rating"), criterion("rating ", title="Other")], BRIEF)

    assert 1 == sum(column.heading.strip().casefold() == "rating" for column in columns)


def test_a_criterion_on_a_column_that_is_always_there_gives_it_its_choices():
    made_in = Criterion(
        key="country", title="Made in", weight=1, column="country", value=Choices((("IE", 100), ("FR", 50)))
    )

    assert [("IE", "FR")] == [c.options for c in makers_columns([made_in], BRIEF) if c.heading.casefold() == "country"]


def test_a_column_says_which_criterion_it_serves_and_its_bounds():
    rating = named([criterion("Rating", title="Performance rating", within=(0, 5))])["Rating"]

    assert "What its buyers give it on average, from 0 to 5; your criterion Performance rating" == rating.meaning


def test_a_column_that_the_tool_does_not_know_says_which_criterion_it_serves():
    assert "What you compare makers on; your criterion G" == named([criterion("Glaze", title="G")])["Glaze"].meaning


def test_with_several_designs_the_unit_of_the_minimum_is_said_to_matter():
    one = Brief(item="enamel mug", quantity=200)

    assert (True, False) == tuple("you want" in named([], brief)["Minimum is per"].meaning for brief in (BRIEF, one))


def test_makers_is_the_one_sheet_to_begin_with():
    assert ["Makers"] == [sheet.name for sheet in entry_sheets([], BRIEF) if not sheet.until_quotes]
