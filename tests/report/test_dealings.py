"""How things stand with makers before money moves, in words."""

from dataclasses import replace
from datetime import date

from cases import AS_OF, make_case, numbers, rated

from scorecard.assessment import assess
from scorecard.checks import Check
from scorecard.report.dealings import dealings_of, sample_words, what_samples_change
from scorecard.samples import SampleRound

CASE = rated((1,), {"Fernhill": [3], "Brightholm": [2], "Cold Quay": [1], "Dale": [0]})


def told(samples=(), checks=()):
    case = replace(CASE, samples=tuple(samples), checks=tuple(checks))
    return dealings_of(assess(case, as_of=AS_OF))


def plain(text):
    return "".join(sign for sign in text if sign not in "\u2068\u2069")


def sample(maker="Fernhill", **more):
    return SampleRound(**{"maker": maker, "row": 2, "kind": "sample"} | more)


def test_the_first_three_are_told_of_and_whoever_there_is_word_of():
    found = told(checks=[Check(maker="Dale", row=2, name="references", state="yes")])

    assert ["Fernhill", "Brightholm", "Cold Quay", "Dale"] == [plain(one.maker) for one in found.makers]


def test_nobody_ranked_is_nobody_told_of():
    assert dealings_of(assess(rated((1,), {}), as_of=AS_OF)) is None


def test_a_round_is_told_with_its_marks_and_what_is_off():
    one = sample(
        received_on=date(2026, 11, 9),
        marks={"Print": (8, 8), "Colour": (6, 7)},
        position_off_mm=(1.5, 1.5),
        wanted_lab=(50.0, 0.0, 0.0),
        measured_lab=(50.0, -1.0, 2.0),
        decision="another round",
    )

    assert (
        "sample came on 9 November 2026; marked 7 to 7.5 of 10 (print 8 and colour 6 to 7); position off by 1.5 mm; "
        "colour off by 2.4; another round"
    ) == sample_words(one)


def test_a_round_that_has_not_come_is_told_so():
    assert "sample asked for on 2 November 2026, not here yet" == sample_words(sample(asked_on=date(2026, 11, 2)))


def test_what_is_still_to_check_is_named_once_something_is_done():
    found = told(checks=[Check(maker="Fernhill", row=2, name="references", state="yes")])

    assert found.makers[0].to_check.startswith("registered name and number, who prints it, reachable")
    assert found.makers[0].to_check.endswith("(1 check done)")


def test_a_warning_sign_is_told_with_whose_guidance_says_so():
    found = told(checks=[Check(maker="Fernhill", row=2, name="who prints it", state="no")])

    assert ("it does not say who prints the goods (common practice)",) == found.makers[0].signs


def test_nothing_checked_is_told_in_one_phrase():
    assert "nothing yet of the usual checks below" == told().makers[0].to_check


def test_the_caution_on_colours_stands_where_colours_are_measured_alone():
    one = sample(wanted_lab=(50.0, 0.0, 0.0), measured_lab=(50.0, 1.0, 0.0))

    assert (1, 2) == (len(told().cautions), len(told([one]).cautions))


def marked(*marks, weight=1):
    """Four makers whose rating and sample marks are worth ten points a unit, and their sample marks."""
    criteria = [numbers("rating", 2), numbers("marks", weight, measure="sample_marks")]
    makers = {"Fernhill": [6, None], "Brightholm": [5, None], "Cold Quay": [1, None]}
    samples = [
        SampleRound(maker=maker, row=2, kind="sample", marks={"Print": (mark, mark)})
        for maker, mark in zip(makers, marks, strict=True)
    ]
    case = replace(make_case(criteria, makers), samples=tuple(samples))
    return plain(what_samples_change(assess(case, as_of=AS_OF)))


def test_what_sample_marks_change_is_told():
    # 2/3 of 60 and 1/3 of 0 against 2/3 of 50 and 1/3 of 100: 40 against 66.7; without them 60 against 50
    assert "Sample marks move Brightholm from rank 2 to 1 and Fernhill from rank 1 to 2. They change who leads." == (
        marked(0, 10, 0)
    )


def test_sample_marks_that_change_nothing_are_told_so():
    assert "Sample marks change no rank among the first makers." == marked(9, 9, 9)


def test_what_sample_marks_without_weight_would_change_is_told_at_the_mean_of_the_weights():
    # the only weight is 2: half the weight on each, 30 against 75 where it was 60 against 50
    assert (
        "Sample marks have weight 0. With a weight of 2 they would move Brightholm from rank 2 to 1 and Fernhill from "
        "rank 1 to 2. They would change who leads."
    ) == marked(0, 10, 0, weight=0)


def test_no_samples_are_nothing_to_tell():
    assert "" == plain(what_samples_change(assess(CASE, as_of=AS_OF)))


def test_the_approved_piece_is_kept():
    one = sample(decision="approved", received_on=date(2026, 11, 9))

    assert (
        "keep the approved sample of 9 November 2026: deliveries and the next order are compared with it"
        == (told([one]).makers[0].samples[-1])
    )
