"""Real order sizes, and prices and offers that stay for the pieces they were given for."""

import pytest
from quoted import MAKER, TODAY, inputs, landed, offer, quote
from sized import ALL_PAID, minimum, prices, wanting

from scorecard.costing.landed import landed_costs
from scorecard.ordering.sizes import at_quantity, of_makers, order_sizes, settled


def sizes(*rows, wanted=200, designs=1, **more):
    read = settled(inputs(*rows, brief=wanting(wanted, designs), **more))
    return [(size.pieces, size.whys) for size in order_sizes(read)[rows[0].maker]]


def test_sizes_are_what_is_wanted_each_break_and_the_least_quoted():
    assert [(100, ("price break", "minimum")), (200, ("wanted",)), (250, ("price break",))] == sizes(
        *prices(p100="5.00", p250="4.00")
    )


def test_what_is_wanted_is_raised_to_the_minimum():
    assert [(300, ("wanted", "minimum"))] == sizes(*prices(p1="2.10"), wanted=120, makers=minimum(300))[:1]


def test_a_minimum_per_design_is_raised_for_each_design():
    assert [(400, ("wanted", "minimum"))] == sizes(*prices(p1="2.10"), designs=4, makers=minimum(100, "design"))


def test_a_break_below_the_minimum_is_no_size():
    assert [150, 200] == [pieces for pieces, _ in sizes(*prices(p100="5.00", p150="4.50"), makers=minimum(150))]


def test_an_open_unit_of_the_minimum_gives_both_sizes():
    assert [100, 200, 400] == [pieces for pieces, _ in sizes(*prices(p1="5"), designs=4, makers=minimum(100, None))]


def test_a_reply_without_a_number_of_pieces_has_the_wanted_size_alone():
    assert [(200, ("wanted",))] == sizes(quote(5, covers=ALL_PAID))


def test_a_price_from_one_piece_on_makes_no_order_of_one():
    assert [(100, ("price break",)), (200, ("wanted",))] == sizes(*prices(p1="6.00", p100="5.00"))


def test_a_price_for_one_quantity_alone_is_no_break():
    assert [(250, ("wanted", "minimum"))] == sizes(*prices(p250="4.00"))


def test_a_row_without_pieces_beside_a_break_is_no_size():
    rows = [quote(5, covers=ALL_PAID), quote(4, row=3, pieces=250, covers=ALL_PAID)]

    assert [(200, ("wanted",)), (250, ("price break",))] == sizes(*rows)


def test_a_price_for_all_stays_for_the_pieces_wanted():
    read = settled(inputs(quote(900, price_is_for="all", covers=ALL_PAID)))
    (cost,) = landed_costs(at_quantity(read, 300))

    assert ["price"] == [gap.name for gap in cost.gaps]


def test_a_freight_cost_stays_for_the_pieces_wanted():
    read = settled(inputs(quote(5, covers="goods"), offers=(offer("sea", 300, covers="door to door"),)))
    at = {pieces: landed_costs(at_quantity(read, pieces))[0] for pieces in (200, 300)}

    assert (False, True) == tuple("freight" in [gap.name for gap in at[pieces].gaps] for pieces in (200, 300))


@pytest.mark.parametrize(
    "given",
    [
        offer("sea", rate_per_kg=1),
        offer("sea", 300, from_pieces=100),
        offer("sea", 300, to_pieces=900),
        offer("sea", rate_per_kg=1, from_pieces=100),
    ],
)
def test_an_offer_that_is_a_rate_or_names_its_pieces_stays_as_it_is(given):
    assert (given,) == settled(inputs(quote(5), offers=(given,))).offers


def test_settled_inputs_cost_the_same_at_the_pieces_wanted():
    rows = (quote(900, price_is_for="all"), quote(5, maker="Oxlip", row=3))
    offers = (offer("sea", 300), offer("air", 40, maker="Oxlip", row=3))
    plain, still = landed(*rows, offers=offers), landed_costs(settled(inputs(*rows, offers=offers)))

    assert [(one.low, len(one.gaps)) for one in plain] == [(one.low, len(one.gaps)) for one in still]


def test_only_the_makers_asked_for_are_kept():
    offers = (offer("sea", 300), offer("air", 40, maker="Oxlip", row=3))
    read = inputs(quote(5), quote(4, maker="Oxlip", row=3), offers=offers)
    kept = of_makers(read, ["Oxlip"])

    assert (["Oxlip"], ["Oxlip"]) == ([row.maker for row in kept.quotes], [one.maker for one in kept.offers])
    assert (MAKER, TODAY) == (read.quotes[0].maker, read.as_of)
