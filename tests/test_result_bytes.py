import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.result_bytes import result_bytes

NUMBERS = st.integers() | st.floats(allow_nan=False, allow_infinity=False)
TEXTS = st.text(st.characters(exclude_categories=["Cs"]))
RESULTS = st.recursive(
    st.none() | st.booleans() | NUMBERS | TEXTS, lambda inner: st.lists(inner) | st.dictionaries(TEXTS, inner)
)


@given(st.dictionaries(TEXTS, RESULTS))
def test_the_standard_library_reads_what_was_written(result):
    assert result == json.loads(result_bytes(result))


def test_letters_are_written_as_they_are():
    assert '{"maker":"Žluť & 陶器"}' == result_bytes({"maker": "Žluť & 陶器"}).decode()


@pytest.mark.parametrize("number", [2**64, -(2**63) - 1, 10**30])
def test_large_whole_numbers_are_kept(number):
    assert {"pieces": number} == json.loads(result_bytes({"pieces": number}))


def test_what_is_no_text_in_utf_8_is_an_error():
    with pytest.raises(UnicodeEncodeError):
        result_bytes({"maker": "\ud800"})
