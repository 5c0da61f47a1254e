"""Trying answers one by one: points and limits worked out by hand, and small cases to try them on."""

from itertools import pairwise

import numpy as np
from cases import choices, make_case, numbers, standing_of
from hypothesis import strategies as st

from scorecard.criteria import Limit

STEP = 0.25


def worth(criterion, answer):
    """Return the points of one answer, by hand."""
    if criterion.choices is not None:
        return dict(criterion.value.table)[criterion.choices[int(answer)]]
    knots = criterion.value.knots
    if answer <= knots[0][0]:
        return knots[0][1]
    for (x0, y0), (x1, y1) in pairwise(knots):
        if answer <= x1:
            return y0 + (y1 - y0) * (answer - x0) / (x1 - x0)
    return knots[-1][1]


def passes(criterion, answer):
    limit = criterion.limit or Limit()
    if criterion.choices is not None:
        return criterion.choices[int(answer)] not in (limit.none_of or ())
    above = limit.at_least is None or answer >= limit.at_least
    return above and (limit.at_most is None or answer <= limit.at_most)


def tries(standing, maker, at):
    """Return answers to try in the place of an open one: every choice, or a grid over the range."""
    criterion, typed = standing.criteria[at], standing.countings[at].typed
    low, high = float(typed.low[maker]), float(typed.high[maker])
    if criterion.choices is not None:
        return [float(place) for place in range(len(criterion.choices))] if np.isnan(low) else [low]
    low = -4.0 if not low > -4 else low
    high = 14.0 if not high < 14 else max(high, low)
    return [*np.arange(low, max(high, low) + STEP / 2, STEP), *([max(high, low)])]


KNOT_POINTS = st.lists(st.integers(0, 10).map(lambda tens: 10.0 * tens), min_size=4, max_size=4)
TYPED = st.one_of(
    st.none(),
    st.integers(-2, 12),
    st.tuples(st.integers(-2, 12), st.integers(0, 6)).map(lambda pair: (pair[0], pair[0] + pair[1])),
    st.integers(-2, 12).map(lambda end: (end, None)),
    st.integers(-2, 12).map(lambda end: (None, end)),
)
RULE = st.one_of(st.sampled_from(["worst", "middle", "best"]), st.integers(0, 100))


@st.composite
def numbers_criteria(draw, key):
    knots = zip((0.0, 2.0, 5.0, 10.0), draw(KNOT_POINTS), strict=True)
    limit = draw(
        st.one_of(
            st.none(),
            st.builds(Limit, at_least=st.integers(-1, 9)),
            st.builds(Limit, at_most=st.integers(0, 11)),
        )
    )
    return numbers(key, draw(st.integers(0, 4)), *knots, limit=limit, unknown=draw(RULE))


@st.composite
def cases(draw):
    table = dict(zip(("a", "b", "c"), draw(KNOT_POINTS), strict=False))
    limit = draw(st.one_of(st.none(), st.just(Limit(none_of=("b",)))))
    third = choices("third", draw(st.integers(1, 4)), table, limit=limit, unknown=draw(RULE))
    criteria = [draw(numbers_criteria("first")), draw(numbers_criteria("second")), third]
    row = st.tuples(TYPED, TYPED, st.one_of(st.none(), st.sampled_from("abc")))
    rows = draw(st.lists(row, min_size=1, max_size=4))
    return make_case(criteria, {f"maker {at}": one for at, one in enumerate(rows)})


def standings():
    """Return points, limits and ranking of such cases."""
    return cases().map(standing_of)
