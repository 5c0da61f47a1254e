from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.reading.toml_scan import DEEPEST, masked, opens_a_block, statements

marks = st.text(st.sampled_from(list("ab=[]{}\"'#,.\n\\“” 1")), max_size=60)


def paths(text):
    return [statement.path for statement in statements(text)]


def lines(text):
    return [(statement.line, statement.last_line) for statement in statements(text)]


def test_strings_and_comments_are_masked_and_code_is_not():
    assert "a = \0\0\0 \1\1\1" == masked('a = "#" # b')


@pytest.mark.parametrize("text", ['"""a"b\n"""', "'''a'b\n'''", '"a\\"b"', "'a\\'", '"“”"', "'“#”'", '"""\\""""', '""'])
def test_a_proper_string_is_masked_whole(text):
    assert "\0" * len(text) == masked(text)


@given(marks)
def test_a_mask_is_as_long_as_its_text_and_keeps_the_code(text):
    mask = masked(text)

    assert len(text) == len(mask)
    assert all(shown in ("\0", "\1", letter) for letter, shown in zip(text, mask, strict=True))


def test_a_key_is_told_with_its_table():
    text = 'title = 1\n[brief]\nitem = 1\n[criteria."a b".\'c\']\nx.y = 1\n[[d]]\n"=" = 1'

    expected = [
        ("title",),
        ("brief",),
        ("brief", "item"),
        ("criteria", "a b", "c"),
        ("criteria", "a b", "c", "x", "y"),
        ("d",),
        ("d", "="),
    ]
    assert expected == paths(text)


@pytest.mark.parametrize("text", ["a: 1", "a 1", 'a "b"', "a [1]", "a : b"])
def test_a_key_is_told_where_the_equals_sign_is_forgotten(text):
    assert [("a",)] == paths(text)


def test_words_are_not_taken_for_a_key():
    assert [None] == paths("some words")


def test_a_key_below_a_header_that_cannot_be_told_cannot_be_told_either():
    assert [None, None] == paths("[a b]\nc = 1")


def test_a_key_nested_beyond_measure_is_not_told():
    assert [None] == paths("a." * DEEPEST + "a = 1")


def test_blank_lines_and_remarks_are_no_statements():
    assert [] == statements("\n # a\n\t\n")


def test_a_list_goes_on_over_lines():
    assert [(1, 3), (5, 5)] == lines("a = [\n 1, # [\n]\n\nb = 2")


def test_a_text_over_lines_is_one_statement():
    assert [(1, 3), (4, 4)] == lines('a = """\nb = 1\n"""\nc = 2')


@pytest.mark.parametrize("after", ["b = 1", "[b]", "[b.c] # d", "b.c = 1"])
def test_a_list_that_is_never_closed_ends_where_a_key_or_a_table_begins(after):
    first, second = statements(f"a = [[0, 0], [3, 50]\n{after}")

    assert (False, 2) == (first.is_balanced, second.line)


def test_a_brace_that_is_never_closed_does_not_swallow_the_keys_below():
    assert [("a",), ("b",), ("c",)] == paths("a = { x = 1\nb = 2\n[c]")


def test_a_list_of_lists_over_lines_is_not_taken_for_tables():
    assert [(1, 4)] == lines('a = [\n["b"],\n["c", 1]\n]')


def test_the_line_ends_between_braces_are_told():
    assert (5, 12) == statements("a = {\n b = 1\n}\nc = [\n1]")[0].braces_over_lines


@pytest.mark.parametrize("text", ['a = """', "a = '''b", 'a = ["""b]'])
def test_three_quotes_that_are_never_closed_are_noticed(text):
    assert opens_a_block(text)


@pytest.mark.parametrize("text", ['a = ""', "a = ''", 'a = """b"""', 'a = "b" # """', 'a = ["", ""]'])
def test_closed_quotes_are_not_taken_for_open_ones(text):
    assert not opens_a_block(text)


@given(marks)
def test_every_line_with_code_belongs_to_one_statement(text):
    mask, found = masked(text), statements(text)

    covered = "".join(mask[statement.start : statement.end] for statement in found)
    assert len(mask.translate(str.maketrans("", "", " \1\n"))) == len(covered.translate(str.maketrans("", "", " \1\n")))
    assert all(one.last_line < other.line for one, other in pairwise(found))
