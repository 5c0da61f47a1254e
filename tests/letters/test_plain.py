"""Text for one line of a message."""

from hypothesis import given
from hypothesis import strategies as st

from scorecard.letters.plain import one_line


def test_a_name_with_line_breaks_stays_on_one_line():
    assert "Kiln Subject: pay" == one_line("Kiln\r\n\u2028Subject: pay")


def test_joiners_that_scripts_need_are_kept():
    assert "می\u200cخواهم" == one_line("می\u200cخواهم")


@given(st.text(alphabet=st.characters(), max_size=300))
def test_whatever_is_typed_can_be_written_as_utf_8_on_one_line(text):
    line = one_line(text)

    assert (1, True) == (len(line.encode().decode().splitlines() or [""]), len(line) <= 200)
