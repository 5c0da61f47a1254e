import tomllib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.reading.toml_repairs import repaired


def values(text):
    """Return what a text means once it is put right, and the faults as (code, line, key)."""
    whole, faults = repaired(text)
    return tomllib.loads(whole), [(fault.code, fault.line, fault.path) for fault in faults]


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("“mug”", "mug"),
        ("„mug“", "mug"),
        ("‘mug’", "mug"),
        ('“mug"', "mug"),
        ('"mug”', "mug"),
        ("'mug’", "mug"),
        ("“Bob’s mug”", "Bob’s mug"),
        ("“350 ml, #2”", "350 ml, #2"),
        ('“a "b" c”', 'a "b" c'),
        ("“a\\b”", "a\\b"),
        ("“a” # “b”", "a"),
    ],
)
def test_curly_quotes_round_a_text_become_straight(typed, meant):
    assert ({"item": meant}, [("curly-quotes", 1, ("item",))]) == values(f"item = {typed}")


@pytest.mark.parametrize("text", ['a = "“b”"', "a = '“b”'", 'a = """\n“b”\n"""', "a = 1 # “b”", '"“b”" = 1'])
def test_curly_quotes_within_a_proper_text_or_a_remark_are_left_alone(text):
    assert (text, []) == repaired(text)


def test_curly_quotes_are_found_in_keys_and_lists_on_every_line():
    text = "a = [“b”,\n “c”]\nd = { “e” = 1 }"
    expected = [("curly-quotes", 1, ("a",)), ("curly-quotes", 2, ("a",)), ("curly-quotes", 3, ("d",))]

    assert ({"a": ["b", "c"], "d": {"e": 1}}, expected) == values(text)


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("12,5", 12.5),
        ("-0,25", -0.25),
        ("1,000", 1000),
        ("1,234,567", 1234567),
        ("1.234,5", 1234.5),
        ("12,5 # a", 12.5),
    ],
)
def test_a_number_with_a_comma_is_read_as_it_was_meant(typed, meant):
    assert ({"weight": meant}, [("comma-in-number", 1, ("weight",))]) == values(f"weight = {typed}")


def test_a_number_with_a_comma_is_found_between_braces():
    expected = {"limit": {"at_least": 4.5, "at_most": 5}}

    assert (expected, [("comma-in-number", 1, ("limit",))]) == values("limit = { at_least = 4,5, at_most = 5 }")


@pytest.mark.parametrize(
    "value", ["[[0, 0], [3, 50]]", "[0,5]", "[1,2,3]", '{ "a" = 1, "b" = 2 }', '"12,5"', "12 # 1,5"]
)
def test_commas_where_they_belong_are_left_alone(value):
    assert (f"points = {value}", []) == repaired(f"points = {value}")


@pytest.mark.parametrize(
    ("text", "meant"),
    [("a = 20%", 20), ("a = 12,5%", 12.5), ("a = 12.5 %", 12.5), ("a = -5%", -5)],
)
def test_a_percent_sign_is_taken_off(text, meant):
    assert ({"a": meant}, [("percent-sign", 1, ("a",))]) == values(text)


def test_percent_signs_are_found_in_lists_and_braces():
    expected = [("percent-sign", 1, ("a",)), ("percent-sign", 2, ("b",))]

    assert ({"a": [1, 2], "b": {"c": 3}}, expected) == values("a = [1%, 2]\nb = { c = 3% }")


@pytest.mark.parametrize("text", ['a = "20%"', "a = 1 # 20%"])
def test_percent_signs_in_a_text_or_a_remark_are_left_alone(text):
    assert (text, []) == repaired(text)


def test_spaces_of_another_kind_become_spaces_but_not_in_a_text():
    assert ({"a": "b\u00a0c"}, [("odd-space", 1, ("a",))]) == values('a\u00a0=\u2009"b\u00a0c"')


def test_braces_over_lines_are_joined_and_the_lines_below_keep_their_numbers():
    text = "a = {\n b = 1, # one\n c = 2,\n}\nd = 20%"
    expected = [("braces-over-lines", 1, ("a",)), ("percent-sign", 5, ("d",))]

    assert ({"a": {"b": 1, "c": 2}, "d": 20}, expected) == values(text)


def test_a_header_with_a_space_in_a_name_keeps_its_keys():
    text = "[criteria.years trading]\nweight = 12,5"
    table = ("criteria", "years trading")
    expected = [("wordy-header", 1, table), ("comma-in-number", 2, (*table, "weight"))]

    assert ({"criteria": {"years trading": {"weight": 12.5}}}, expected) == values(text)


@pytest.mark.parametrize("header", ["[a]", "[a.b]", '[a."b c"]', "[[a]]", "[ a . b ]"])
def test_a_proper_header_is_left_alone(header):
    assert (header, []) == repaired(header)


def test_faults_say_what_to_write():
    wanted = {fault.code: fault.wanted for fault in repaired("a = 12,5\nb = 1,000\nc = 20%\n[d e]")[1]}

    assert "Write the number alone: 20, or 0.2 where a part of 1 is wanted" == wanted["percent-sign"]
    assert "Write 1000, with no comma" == wanted["comma-in-number"]
    assert "Write [d_e]" == wanted["wordy-header"]


@given(st.text(st.sampled_from(list("ab=[]{}\"'#,.\n\\“”‘’%1 \u00a0")), max_size=60))
def test_putting_right_never_changes_the_number_of_lines(text):
    assert text.count("\n") == repaired(text)[0].count("\n")


keys = st.text("abc", min_size=1, max_size=3)
items = st.one_of(st.integers(0, 99), st.text("ab“”‘’%,#1 ", max_size=6))


@given(st.dictionaries(keys, st.one_of(items, st.lists(items, max_size=3)), max_size=4))
def test_what_is_sound_is_left_alone(table):
    def typed(value):
        return f'"{value}"' if isinstance(value, str) else str(value)

    listed = {key: f"[{', '.join(map(typed, v))}]" if isinstance(v, list) else typed(v) for key, v in table.items()}
    text = "\n".join(f"{key} = {value}" for key, value in listed.items())

    assert (text, []) == repaired(text)
