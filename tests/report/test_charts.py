from scorecard.report.charts import Scale, score_scale, share_scale


def test_a_score_without_a_band_is_a_dot_alone():
    assert Scale(dot="78.25%", start=None, end=None, words="78.3") == score_scale(78.25, 78.25, 78.25)


def test_a_band_is_a_line_and_stands_in_the_words():
    expected = Scale(dot="50%", start="0%", end="100%", words="50.0, could be 0.0 to 100.0")
    assert expected == score_scale(50, 0, 100)


def test_a_share_is_told_of_100():
    expected = "share 15.0 of 100, first place unchanged from 0.0 to 41.0"
    assert expected == share_scale(0.15, 0, 0.41).words
