from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from scorecard.report.line_chart import ROW, Crossing, Drawn, apart, line_chart, score_steps

LINES = [
    Drawn(place="1", name="Brightholm", start=60, end=100, leads=True),
    Drawn(place="2", name="Cressel", start=80, end=60, leads=True),
]


def em(place):
    return float(place.removesuffix("em"))


def crossing(share):
    return Crossing(share=share, score=70, words=f"from {share} of 100 Brightholm leads")


def test_a_line_runs_from_its_score_at_nothing_to_its_score_at_all():
    chart = line_chart(LINES, [], now=20, room=10)
    top, bottom = em(chart.top), em(chart.bottom)
    # the ground holds 60 to 100, so 80 is halfway down
    assert [(bottom, top), ((top + bottom) / 2, bottom)] == [(em(line.start), em(line.end)) for line in chart.lines]


def test_the_figures_of_the_grid_hold_every_score():
    assert ["100", "90", "80", "70", "60"] == [tick.figure for tick in line_chart(LINES, [], now=20, room=10).ticks]


def test_a_crossing_stands_at_its_share_and_on_its_score():
    chart = line_chart(LINES, [crossing(25)], now=20, room=10)
    mark = chart.marks[0]
    expected = em(chart.top) + 0.75 * (em(chart.bottom) - em(chart.top))
    assert ("25%", expected) == (mark.x, em(mark.y))


def test_words_of_crossings_have_a_row_each():
    marks = line_chart(LINES, [crossing(share) for share in (10, 30, 60, 90)], now=20, room=10).marks
    assert [round(ROW * place, 2) for place in range(4)] == sorted(em(mark.row) for mark in marks)


def test_words_run_away_from_the_nearer_side():
    marks = line_chart(LINES, [crossing(10), crossing(90)], now=20, room=10).marks
    assert [("10%", False, "90%"), ("90%", True, "90%")] == [(mark.x, mark.leftwards, mark.rest) for mark in marks]


def test_no_upright_line_of_one_half_passes_behind_words_of_that_half():
    """Words to the right of their line: a line further right starts below them; on the right half likewise."""
    marks = line_chart(LINES, [crossing(share) for share in (5, 20, 40, 55, 70, 95)], now=20, room=10).marks
    rows = {float(mark.x.removesuffix("%")): em(mark.row) for mark in marks}
    assert (True, True) == (rows[5.0] < rows[20.0] < rows[40.0], rows[95.0] < rows[70.0] < rows[55.0])


def test_the_words_of_the_present_share_stay_inside():
    anchors = [line_chart(LINES, [], now=now, room=10).now_anchor for now in (0, 50, 100)]
    assert ["start", "middle", "end"] == anchors


def test_more_names_than_fit_make_the_ground_higher():
    many = [Drawn(place=str(at), name=f"M{at}", start=50, end=50, leads=False) for at in range(20)]
    names = [em(line.name_at) for line in line_chart(many, [], now=20, room=10).lines]
    assert 1.4 <= min(b - a for a, b in pairwise(names))


SCORES = st.lists(st.floats(0, 100), min_size=1, max_size=12)


@given(SCORES)
def test_the_grid_has_two_to_six_figures_around_every_score(scores):
    step, lowest, highest = score_steps(scores)
    assert 0 <= lowest <= min(scores) <= max(scores) <= highest <= 100
    assert 1 <= (highest - lowest) // step <= 5


@given(SCORES)
def test_places_apart_keep_their_distance_their_order_and_their_bounds(wanted):
    found = apart(wanted, 2.0, 0.0, 100.0)
    order = sorted(range(len(wanted)), key=lambda at: (wanted[at], at))
    placed = [found[at] for at in order]
    assert all(b - a >= 2 - 1e-9 for a, b in pairwise(placed))
    assert 0 <= placed[0] <= placed[-1] <= 100 + 1e-9


@given(SCORES)
def test_places_that_are_apart_already_stay(wanted):
    far = [2.5 * at + 2 * score / 100 for at, score in enumerate(wanted)]
    assert [round(place, 9) for place in far] == [round(place, 9) for place in apart(far, 0.5, 0.0, 100.0)]


def test_places_move_as_little_as_can_be():
    """Three that want 5, 5 and 5.5 with 1 between them: the first at mean(5, 4, 3.5) by least squares."""
    assert [round(place, 9) for place in (12.5 / 3, 15.5 / 3, 18.5 / 3)] == [
        round(place, 9) for place in apart([5.0, 5.0, 5.5], 1.0, 0.0, 9.0)
    ]
