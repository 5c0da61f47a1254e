import pytest
from builders import choices, codes, numbers

from scorecard.criteria import Steady
from scorecard.reading.findings import Findings
from scorecard.reading.headings import find_heading_row, folded, read_headings

STEADY = Steady(count_column="Ratings counted", usual=4.5, usual_counts_as=20)


def headings_of(*titles, criteria=(), row=1):
    """Return the headings and the findings of one heading row."""
    findings = Findings(file="makers.xlsx", sheet="Makers")
    return read_headings([(row, titles)], criteria, findings), findings


@pytest.mark.parametrize("title", ["years trading", "  Years  trading ", "Years\ntrading", "YEARS\u00a0TRADING"])
def test_headings_match_whatever_their_case_spaces_and_line_breaks(title):
    headings, findings = headings_of("Maker", title, criteria=[numbers("y", "Years trading")])

    assert (2, []) == (headings.column("Years trading"), findings.problems)


def test_the_heading_row_is_the_first_of_ten_with_a_maker():
    assert (3, ["x", " MAKER "]) == find_heading_row([(1, ["My makers"]), (3, ["x", " MAKER "]), (4, ["Maker"])])


def test_a_heading_below_the_tenth_row_is_none():
    assert find_heading_row([(11, ["Maker"])]) is None


@pytest.mark.parametrize("title", ["Makers", "Name"])
def test_a_sheet_without_a_maker_column_is_a_problem(title):
    headings, findings = headings_of(title, "Rating")

    assert (None, [("A1", "no-maker-column")]) == (headings, codes(findings.problems))


def test_cells_parted_by_bars_are_told_how_to_part_them():
    findings = Findings(file="makers.csv")
    read_headings([(1, ["Maker|Rating"])], [], findings)

    assert "commas or semicolons" in findings.problems[0].wanted


def test_an_empty_sheet_has_no_maker_column():
    findings = Findings(file="makers.xlsx", sheet="Makers")
    read_headings([], [], findings)

    assert [("A1", "no-maker-column")] == codes(findings.problems)


def test_a_known_heading_that_is_there_twice_is_a_problem_at_the_second():
    headings, findings = headings_of("Maker", "Rating", "Mine", "rating", "Mine", criteria=[numbers("r", "Rating")])

    assert (2, [("D1", "doubled-heading")]) == (headings.column("Rating"), codes(findings.problems))


@pytest.mark.parametrize("heading", ["Notes", "Country", "Web page", "Contact", "Care"])
def test_a_second_column_of_texts_is_the_users_own_and_only_a_warning(heading):
    headings, findings = headings_of("Maker", heading, "Mine", heading.upper())

    assert (2, [], [("D1", "second-heading")]) == (
        headings.column(heading),
        findings.problems,
        codes(findings.warnings),
    )


def test_a_second_column_of_texts_that_a_criterion_draws_on_is_a_problem():
    _, findings = headings_of("Maker", "Country", "Country", criteria=[choices("Country", "IE", "CN")])

    assert [("C1", "doubled-heading")] == codes(findings.problems)


def test_a_weighted_criterion_without_its_column_is_a_problem_that_names_the_nearest():
    _, findings = headings_of("Maker", "Minimun order", criteria=[numbers("m", "Minimum order")], row=4)

    assert [("B4", "missing-column")] == codes(findings.problems)
    assert "Rename the heading 'Minimun order' to 'Minimum order'" == findings.problems[0].wanted
    assert [] == findings.warnings


def test_one_misspelt_heading_is_offered_for_one_criterion_alone():
    _, findings = headings_of("Maker", "Ratng", criteria=[numbers("a", "Rating"), numbers("b", "Rating 2")])

    assert [("B1", "missing-column"), ("A1", "missing-column")] == codes(findings.problems)


def test_a_misspelt_maker_column_is_a_problem_at_its_own_cell():
    _, findings = headings_of("Rating", "Makers", row=3)

    assert [("B3", "no-maker-column")] == codes(findings.problems)


def test_a_misspelt_count_column_is_a_warning_at_its_own_cell():
    criteria = [numbers("r", "Rating", steady=STEADY)]
    _, findings = headings_of("Maker", "Rating", "Rating counted", criteria=criteria)

    assert [("C1", "missing-count-column")] == codes(findings.warnings)
    assert "Rename the heading 'Rating counted' to 'Ratings counted'" == findings.warnings[0].wanted


def test_a_criterion_of_weight_0_may_lack_its_column():
    _, findings = headings_of("Maker", criteria=[numbers("m", "Price", weight=0)])

    assert [] == findings.problems + findings.warnings


def test_a_measure_may_lack_its_column():
    _, findings = headings_of("Maker", criteria=[numbers("m", measure="response_days")])

    assert [] == findings.problems + findings.warnings


def test_a_typed_measure_has_a_heading_of_its_own():
    headings, _ = headings_of("Maker", "response days", criteria=[numbers("m", measure="response_days")])

    assert 2 == headings.column("Response days")


@pytest.mark.parametrize("title", ["Response days", "Response time", "response_days", "RESPONSE  TIME"])
def test_a_typed_measure_is_met_by_its_heading_its_key_or_its_criterions_title(title):
    criteria = [numbers("m", measure="response_days", title="Response time")]
    headings, findings = headings_of("Maker", title, criteria=criteria)

    assert (2, [], []) == (headings.column("Response days"), findings.problems, findings.warnings)


def test_the_documented_heading_of_a_measure_wins_with_a_warning_at_the_other():
    criteria = [numbers("m", measure="response_days", title="Response time")]
    headings, findings = headings_of("Maker", "Response time", "Response days", criteria=criteria)

    assert (3, []) == (headings.column("Response days"), findings.problems)
    assert [("B1", "second-heading")] == codes(findings.warnings)


def test_a_measures_title_takes_no_column_that_another_criterion_draws_on():
    criteria = [numbers("m", measure="sample_marks", title="Rating"), numbers("r", "Rating")]
    headings, _ = headings_of("Maker", "Rating", criteria=criteria)

    assert (2, None) == (headings.column("Rating"), headings.column("Sample marks"))


@pytest.mark.parametrize("title", ["Notes", "Maker", "Asked on"])
def test_a_measures_title_takes_no_column_of_the_tools_own(title):
    headings, findings = headings_of(
        "Maker", "Asked on", "Notes", criteria=[numbers("m", measure="sample_marks", title=title)]
    )

    assert (None, []) == (headings.column("Sample marks"), findings.problems)


@pytest.mark.parametrize(
    ("titles", "noted"),
    [
        (["Asked on"], [("A1", "missing-day-column")]),
        (["Asked on", "Answerd on"], [("C1", "missing-day-column")]),
        (["Answered on"], [("A1", "missing-day-column")]),
        ([], []),
        (["Asked on", "Answered on"], []),
        (["Asked on", "Response days"], []),
    ],
)
def test_one_day_column_without_the_other_is_a_warning(titles, noted):
    _, findings = headings_of("Maker", *titles, criteria=[numbers("m", measure="response_days")])

    assert ([], noted) == (findings.problems, codes(findings.warnings))


def test_a_steadied_criterion_without_its_count_is_a_warning():
    _, findings = headings_of("Maker", "Rating", criteria=[numbers("r", "Rating", steady=STEADY)])

    assert ([], [("A1", "missing-count-column")]) == (findings.problems, codes(findings.warnings))


def test_a_misspelt_heading_is_a_warning_that_offers_the_right_one():
    _, findings = headings_of("Maker", "Minimum per", criteria=[numbers("m", measure="response_days")])

    assert [("B1", "near-heading")] == codes(findings.warnings)
    assert "'Minimum is per'" in findings.warnings[0].wanted


def test_a_heading_like_one_that_is_there_is_the_users_own():
    _, findings = headings_of("Maker", "Notes", "Notes 2", criteria=[numbers("m", measure="response_days")])

    assert [] == findings.warnings


def test_without_criteria_no_heading_looks_misspelt():
    _, findings = headings_of("Maker", "Minimum per")

    assert [] == findings.warnings


def test_headings_of_the_users_own_are_left_alone():
    _, findings = headings_of("Maker", "Gut feeling", 2026, None, "", criteria=[choices("c", "a", column="Notes")])

    assert ([("A1", "missing-column")], []) == (codes(findings.problems), findings.warnings)


def test_a_heading_is_folded_to_single_spaces():
    assert "a b" == folded(" A\n  B ")


@pytest.mark.parametrize(("more", "found"), [(499, []), (500, [("SG1", "too-many-columns")])])
def test_a_heading_beyond_the_most_columns_is_a_problem_at_its_cell(more, found):
    assert found == codes(headings_of("Maker", *(f"mine {at}" for at in range(more)))[1].problems)
