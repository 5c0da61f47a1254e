"""The sheets of makers by criteria."""

from cases import choices, make_case, numbers
from result_books import lines, opened, values, varied_case, written

from scorecard.criteria import Steady

STEADY = Steady(count_column="Ratings counted", usual=50, usual_counts_as=10)


def book():
    criteria = [
        numbers("work", 3, unknown="middle"),
        numbers("speed", 1, per_quantity=True, unit="pieces"),
        choices("sample", 0, {"free": 100, "none": 0}),
    ]
    return values(written(make_case(criteria, {"Ash": [90, (200, 400), "free"], "Birch": [None, 40, None]})))


def test_points_are_what_answers_are_worth():
    # 40 pieces of an order of 200 count as 0.2; unknown counts as the middle of what is possible
    assert [("Ash", 90, 1.5, 100), ("Birch", 50, 0.2, 50)] == list(lines(book()["Points"], "ABCD"))


def test_only_open_answers_stand_on_lowest_and_highest():
    found = book()

    assert [("Ash", None, 1, None), ("Birch", 0, None, 0)] == list(lines(found["Lowest"], "ABCD"))
    assert [("Ash", None, 2, None), ("Birch", 100, None, 100)] == list(lines(found["Highest"], "ABCD"))


def test_contributions_are_share_times_points():
    assert [("Ash", 67.5, 0.375, 0, 67.875), ("Birch", 37.5, 0.05, 0, 37.55)] == list(
        lines(book()["Contributions"], "ABCDE")
    )


def test_answers_stand_as_typed_with_what_they_count_as():
    assert [("Ash", 90, "200 to 400", "free", "1 to 2"), ("Birch", None, 40, None, 0.2)] == list(
        lines(book()["Answers"], "ABCDE")
    )


def test_a_unit_stands_over_its_answers():
    assert ["Work", "Speed (pieces)", "Sample", "Speed, counts as"] == [
        book()["Answers"].cell(7, at).value for at in range(2, 6)
    ]


def test_a_steadied_answer_shows_what_it_counts_as():
    from scorecard.answers import Answers

    counts = {"work": Answers([10.0], [10.0])}
    case = make_case([numbers("work", 1, steady=STEADY)], {"Ash": [90]}, counts=counts)

    assert [("Ash", 90, 70)] == list(lines(values(written(case))["Answers"], "ABC"))  # (10·90 + 10·50) / 20


def test_a_makers_row_is_the_same_on_all_sheets():
    found = values(written(varied_case()))
    order = list(lines(found["Points"], "A"))

    assert {tuple(order)} == {
        tuple(lines(found[name], "A")) for name in ("Lowest", "Highest", "Contributions", "Answers")
    }
    assert order[:6] == list(lines(found["Scores"], "B"))


def test_beyond_500_makers_the_sheets_for_reading_hold_the_first_500():
    case = make_case([numbers("work", 1)], {f"Maker {at}": [at / 10] for at in range(501)})

    found = opened(written(case))

    assert {"Points": 508, "Contributions": 507, "Answers": 507} == {
        name: found[name].max_row for name in ("Points", "Contributions", "Answers")
    }
    assert "The first 500 lines of the sheet Points are here." in found["Answers"]["A2"].value
