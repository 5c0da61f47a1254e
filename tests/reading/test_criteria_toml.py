import tomllib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.reading.criteria_toml import read_tables


def faults(text):
    """Return the faults as (code, line, key)."""
    return [(fault.code, fault.line, fault.path) for fault in read_tables(text).faults]


def test_sound_text_is_read_as_the_standard_library_reads_it():
    text = 'title = "a"\r\n[b]\r\nc = [1, 2]\r\n'
    tables = read_tables(text)

    assert (tomllib.loads(text), (), True) == (tables.values, tables.faults, tables.is_whole)


def test_the_line_of_every_key_is_told():
    assert {("a",): 1, ("b",): 3, ("b", "c"): 4} == read_tables("a = 1\n\n[b]\nc = 2\n").lines


def test_headers_behind_a_hash_are_told_with_their_lines():
    text = "[a]\n# [b.c]  # later\nd = 1\n#[[e]]\n# [not, one]\n# a remark on [f]\n"

    assert {2: "[b.c]", 4: "[[e]]"} == read_tables(text).off == read_tables(text + "x = y z\n").off


def test_lines_that_cannot_be_read_are_all_listed_and_the_rest_is_read():
    text = "a = b c\nd = 1\n[e]\nf 2\ng = [1\nh = 3\n"
    tables = read_tables(text)

    expected = [("not-toml", 1, ("a",)), ("not-toml", 4, ("e", "f")), ("not-toml", 5, ("e", "g"))]
    assert expected == sorted(faults(text), key=lambda fault: fault[1])
    assert {"d": 1, "e": {"h": 3}} == tables.values


def test_a_key_that_stands_twice_has_its_own_sentence_and_the_first_counts():
    text = "a = 1\na = 2\n[b]\nc.d = 1\nc.d = 2\n"
    tables = read_tables(text)

    assert [("stands-twice", 2, ("a",)), ("stands-twice", 5, ("b", "c", "d"))] == faults(text)
    assert {"a": 1, "b": {"c": {"d": 1}}} == tables.values


def test_a_table_that_stands_twice_does_not_mix_its_keys_with_others():
    text = "[a]\nx = 1\n[b]\ny = 2\n[a]\nx = 3\n"
    tables = read_tables(text)

    assert [("stands-twice", 5, ("a",))] == faults(text)
    assert ({"a": {"x": 1}, "b": {"y": 2}}, False) == (tables.values, tables.is_whole)


def test_a_name_that_stands_twice_between_braces_is_noticed():
    assert [("stands-twice", 1, ("a",))] == faults("a = { b = 1, b = 2 }")


def test_a_lost_header_does_not_give_its_keys_to_the_table_above():
    tables = read_tables("[a]\nx = 1\n[b\ny = 2\n")

    assert ({"a": {"x": 1}}, False) == (tables.values, tables.is_whole)


def test_a_lost_line_whose_key_is_known_leaves_the_rest_whole():
    assert read_tables("a = b c\n").is_whole
    assert not read_tables("a b c\n").is_whole


def test_a_remark_with_a_forbidden_character_is_one_fault():
    assert [("not-toml", 1, None)] == faults("# \x01\na = 1")


@pytest.mark.parametrize("value", ["[" * 3000 + "]" * 3000, "9" * 5000, '"""', "'''x", "[1, 2", "{ a = 1", "1]", "}"])
def test_what_makes_a_parser_give_up_is_a_fault_at_its_key(value):
    text = f"a = {value}\nb = 1\n"

    assert [("not-toml", 1, ("a",))] == faults(text)
    assert {"b": 1} == read_tables(text).values


def test_a_file_of_another_kind_ends_with_a_last_word():
    found = faults("some words\n" * 10_000)

    assert "too-many-faults" == found[-1][0]
    assert len(found) <= 201


@given(st.text(st.sampled_from(list("ab=[]{}\"'#,.\n\\“”% 1-:T\r\t\0\x7f")), max_size=80))
def test_any_text_gives_tables_or_faults(text):
    tables = read_tables(text)

    try:
        expected = tomllib.loads(text)
    except ValueError:
        assert tables.faults
    else:
        assert tables.faults or expected == tables.values
