import pytest

from scorecard.cli.naming import MOST, named_maker, names_at
from scorecard.errors import UsageError

MAKERS = ("Tansy & Vane", "Tansy Works", "Oxlip Kilns", "Oxlip")


@pytest.mark.parametrize(
    ("typed", "position"), [("tansy w", 1), ("OXLIP", 3), ("oxlip k", 2), (" Tansy  Works ", 1), ("Oxlip Kilns", 2)]
)
def test_a_maker_is_named_whole_or_by_a_beginning_that_fits_no_other(typed, position):
    assert position == named_maker(typed, MAKERS)


@pytest.mark.parametrize(
    ("typed", "told"),
    [
        ("tansy", "MAKER tansy fits several: Tansy & Vane and Tansy Works. Write more of the name."),
        ("Oxlop", "MAKER Oxlop: no maker has this name. Is Oxlip meant?"),
        ("", "MAKER : no maker has this name. Write it as in the sheet, or a beginning of it."),
    ],
)
def test_a_name_that_fits_none_or_several_is_refused(typed, told):
    with pytest.raises(UsageError) as refused:
        named_maker(typed, MAKERS, "MAKER")

    assert told == str(refused.value)


def test_of_many_names_the_first_are_listed_and_the_rest_counted():
    makers = [f"Maker {at}" for at in range(MOST + 3)]

    assert names_at(makers, range(MOST + 3)).endswith(f"Maker {MOST - 1} and 3 more")
