"""The table [order]: what it gives, and each thing that can be wrong with it, at its key."""

from datetime import date
from decimal import Decimal

import pytest
from sourcing import folder_of, problems_of

from scorecard.order_terms import USUAL_APPROVALS
from scorecard.reading.folder import read_folder


def order_of(path, toml):
    return read_folder(folder_of(path, toml=toml)).order


def test_without_the_table_nothing_is_said(tmp_path):
    assert order_of(tmp_path, "") is None


def test_numbers_are_kept_as_typed(tmp_path):
    found = order_of(tmp_path, "[order]\nover_percent = 2.5\nposition_tolerance_mm = 0\ndeliver_by = 2027-05-01")

    assert (Decimal("2.5"), 0, date(2027, 5, 1)) == (found.over_percent, found.position_tolerance_mm, found.deliver_by)


def test_the_usual_approvals_hold_until_others_are_given(tmp_path):
    assert USUAL_APPROVALS == order_of(tmp_path, "[order]\nnumber = '3'").approvals


def test_approvals_of_ones_own_take_their_place(tmp_path):
    assert ("a strike-off",) == order_of(tmp_path, "[order]\napprovals = ['a  strike-off']").approvals


@pytest.mark.parametrize(
    ("line", "key", "code"),
    [
        ("positoin = 'left'", "order.positoin", "unknown-key"),
        ("position = 3", "order.position", "not-a-text"),
        ("position = ''", "order.position", "empty-text"),
        (f"packing = '{'a' * 501}'", "order.packing", "text-too-long"),
        ("over_percent = 101", "order.over_percent", "too-high"),
        ("under_percent = -1", "order.under_percent", "below-zero"),
        ("size_tolerance_mm = -0.5", "order.size_tolerance_mm", "below-zero"),
        ("overs = 'half'", "order.overs", "not-an-option"),
        ("artwork = 'yours'", "order.artwork", "not-an-option"),
        ("tooling = true", "order.tooling", "not-an-option"),
        ("approvals = []", "order.approvals", "approvals"),
        ("approvals = ['a', ' ']", "order.approvals", "approvals"),
        ("approvals = [1]", "order.approvals", "not-a-list"),
        ("complain_days = 0", "order.complain_days", "not-whole"),
        ("deliver_by = '2027-05-01'", "order.deliver_by", "date-in-quotes"),
        ("designs = 3", "order.designs", "not-a-list"),
        ("[[order.designs]]\nname = 'one'", "order.designs", "designs-differ"),
        ("[[order.designs]]\npeices = 3", "order.designs[0].peices", "unknown-key"),
        ("[[order.designs]]\npieces = 0", "order.designs[0].pieces", "not-whole"),
        ("[[order.designs]]\nwidth_mm = 0", "order.designs[0].width_mm", "not-above-zero"),
    ],
)
def test_what_is_wrong_is_a_problem_at_its_key(tmp_path, line, key, code):
    assert (key, code) in problems_of(tmp_path, toml=f"[order]\n{line}")


def test_delivery_after_the_day_of_need_is_a_problem(tmp_path):
    from sourcing import BRIEF

    brief = BRIEF.replace("[criteria", "need_by = 2027-05-14\n\n[criteria", 1)
    found = problems_of(tmp_path, toml="[order]\ndeliver_by = 2027-05-15", brief=brief)

    assert [("order.deliver_by", "after-need-by")] == found
