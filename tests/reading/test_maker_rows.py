from scorecard.reading.maker_rows import picked


def test_short_rows_are_filled_up():
    assert [("a", "b"), ("y", "")] == picked([["a", "x", "y"], ["b"]], [1, 3], "")


def test_a_column_may_be_picked_twice_or_alone():
    assert [("a",), ("a",)] == picked([["a"]], [1, 1], None)
    assert [("a",)] == picked([["a"]], [1], None)
