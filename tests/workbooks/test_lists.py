"""Lists have names that a spreadsheet takes, each once."""

from scorecard.workbooks.entry_columns import Column, EntrySheet
from scorecard.workbooks.lists import list_names


def names(*columns):
    made = [Column(heading=heading, meaning="m", where="w", kind="choice", options=lines) for heading, lines in columns]
    return list_names([EntrySheet(name="One", about="a", columns=tuple(made))])


def test_a_list_is_named_after_the_heading_that_uses_it():
    assert {("a", "b"): "list_print_method"} == names(("Print method", ("a", "b")))


def test_columns_with_the_same_lines_share_a_list():
    assert {("a",): "list_one"} == names(("One", ("a",)), ("Two", ("a",)))


def test_lists_under_headings_that_look_alike_have_names_of_their_own():
    assert ["list_way", "list_way_2", "list_way_3"] == list(
        names(("Way", ("a",)), ("way!", ("b",)), ("=Way", ("c",))).values()
    )


def test_a_heading_in_other_letters_still_gives_a_name():
    assert {("a",): "list_column"} == names(("陶器", ("a",)))
