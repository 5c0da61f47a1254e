from cases import rated
from published import SUPPLIER_SHARES, SUPPLIERS

from scorecard.firmness import KINDS
from scorecard.report.strips import strips_of
from scorecard.report.texts import bare


def suppliers():
    rows = dict(zip("XYZ", (20 * SUPPLIERS).tolist(), strict=True))
    return rated((10 * SUPPLIER_SHARES).tolist(), rows)


def test_the_suppliers_take_their_ranks_as_often_as_exact_fractions_say(shown):
    """The exercise "Jolly Company" [stored]; X 1/32, 27/160, 4/5, Y 31/32, 1/32, 0, Z 0, 4/5, 1/5 [derived]."""
    rows = strips_of(shown(suppliers())).strips[0].rows
    expected = [("Y", ("97", "3", "<1")), ("X", ("3", "17", "80")), ("Z", ("<1", "80", "20"))]
    assert expected == [(bare(name), tuple(figure for figure, _ in cells)) for name, cells in rows]


def test_a_bar_is_as_long_as_its_figure(shown, assessed):
    found = assessed(suppliers()).firmness.rank_shares["any"].shares[0, 0]
    bar = strips_of(shown(suppliers())).strips[0].rows[0][1][0][1]
    assert f"{100 * found:.0f}%" == bar


def test_what_is_too_seldom_has_no_bar(shown):
    assert None is strips_of(shown(suppliers())).strips[0].rows[0][1][2][1]


def test_there_is_a_strip_for_every_kind(shown):
    assert len(KINDS) == len(strips_of(shown(suppliers())).strips)


def test_at_most_ten_makers_and_ten_ranks_are_shown(shown):
    found = strips_of(shown(rated((1, 2), {f"M{at}": [at, 50 - at] for at in range(12)})))
    rows = found.strips[0].rows
    assert (10, 10, 10) == (len(rows), len(rows[0][1]), len(found.ranks))


def test_what_is_left_out_is_said(shown):
    found = strips_of(shown(rated((1, 2), {f"M{at}": [at, 50 - at] for at in range(12)})))
    expected = "2 other makers and the ranks from 11 on are left out, so a row need not add up to 100."
    assert expected == found.left_out


def test_a_maker_alone_has_no_strip(shown):
    assert () == strips_of(shown(rated((1, 2), {"Brightholm": [1, 2]}))).strips
