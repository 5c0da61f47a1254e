import pytest

from scorecard.reading.toml_hints import hint, shown, shown_line
from scorecard.reading.toml_scan import statements


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("item = enamel mug", 'item = "enamel mug"'),
        ("item =", "delete the line"),
        ("need_by = 14.05.2027", "2027-05-14"),
        ("need_by = 14/5/27", "2027-05-14"),
        ("need_by = 14 May 2027", "2027-05-14"),
        ("weight = 15 points", "without a unit"),
        ('item = "a\\b"', "backslash"),
        ('item = "mug', "Close the text"),
        ("item = 'mug", "Close the text"),
        ("weight 15", "Write it as key = value"),
        ("points = [[0, 0]", "Close every bracket"),
        ("[criteria.a", "square brackets"),
        ("[criteria.a] b", "square brackets"),
        ("weight = 015", "a number with a point"),
    ],
)
def test_a_line_is_answered_with_what_to_write(text, word):
    [statement] = statements(text)

    assert word in hint(text, statement)


def test_a_long_or_strange_text_is_shown_short_and_plain():
    assert "a b" == shown(" a\n\tb ")
    assert "a\ufffdb" == shown("a\u202eb")
    assert 20 == len(shown("x" * 1_000_000, 20))


def test_only_the_first_line_is_shown():
    assert "a = [" == shown_line("\n a = [\n1]")
