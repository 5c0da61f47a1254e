"""What changed since the run before, in words."""

from scorecard.report.since import due_words, rank_words, sentences_of, since_of

NOBODY = {key: [] for key in ("causes", "new", "gone", "ruled_out", "let_in", "passed", "passed_by")}
FOUND = {
    "compared_with": "2026-11-20",
    "leaders_before": ["Fernhill"],
    "leaders_now": ["Brightholm"],
    "makers": [
        {
            "maker": "Brightholm",
            "rank_before": 2,
            "rank": 1,
            "score_before": 60.04,
            "score": 75.0,
            "due_to": {"weights": -2.04, "answers": 17.0, "value_functions_and_brief": 0.0},
            "rank_due_to": NOBODY | {"passed": ["Fernhill"], "gone": ["Ash", "Birch"]},
        },
        {
            "maker": "Dale",
            "rank_before": None,
            "rank": 3,
            "score_before": 40.0,
            "score": 40.0,
            "due_to": {"weights": 0.0, "answers": 0.0, "value_functions_and_brief": 0.0},
            "rank_due_to": NOBODY | {"causes": ["limits"]},
        },
    ],
    "new": ["Oxlip"],
    "gone": [],
}


def plain(text):
    return "".join(sign for sign in text if sign not in "\u2068\u2069")


def test_no_run_before_is_nothing_to_tell():
    assert since_of({}) is None


def test_who_led_and_leads_is_one_sentence_and_who_came_another():
    assert ("Since the run of 2026-11-20: Fernhill led then, Brightholm now.", "New: Oxlip.") == sentences_of(
        FOUND, str
    )


def test_the_same_leader_is_told_as_such():
    same = FOUND | {"leaders_before": ["Brightholm"], "new": []}

    assert ("Since the run of 2026-11-20: Brightholm led then too.",) == sentences_of(same, str)


def test_each_change_names_ranks_scores_and_what_it_is_due_to():
    rows = since_of({"since_last_time": FOUND}).changes

    assert [
        (
            "Brightholm",
            "2 → 1",
            "60.0 → 75.0",
            "new answers +17.0, other weights −2.0; rank: Ash and Birch are no longer there, Fernhill fell behind it",
        ),
        ("Dale", "ruled out → 3", "40.0", "another limit"),
    ] == [(plain(row.maker), row.rank, row.score, plain(row.due_to)) for row in rows]


def test_of_many_makers_that_moved_a_rank_the_first_are_named():
    assert "rank: A, B, C and 2 more passed it" == plain(rank_words(NOBODY | {"passed_by": list("ABCDE")}))


def test_a_change_too_small_to_see_that_nobody_caused_is_said_to_be_so():
    one = FOUND["makers"][1] | {"rank_due_to": NOBODY}

    assert "less than 0.05 of a point" == since_of({"since_last_time": FOUND | {"makers": [one]}}).changes[0].due_to


def test_a_part_too_small_to_see_is_not_named():
    assert "new answers +0.1" == due_words({"answers": 0.06, "weights": 0.04, "value_functions_and_brief": -0.04})
