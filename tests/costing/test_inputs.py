"""What a landed cost is reckoned from."""

from datetime import date

from scorecard.brief import Brief
from scorecard.costing.currencies import Rates
from scorecard.costing.inputs import CostInputs, CostSettings, MakerFacts
from scorecard.costing.quotes import WAYS


def test_every_way_has_its_preset_where_the_user_says_nothing():
    inputs = CostInputs(
        brief=Brief(item="mug", quantity=200), as_of=date(2026, 11, 25), makers={}, rates=Rates(home="EUR")
    )

    assert set(WAYS) == set(inputs.shipping)


def test_what_nobody_says_of_an_order_is_a_first_order_with_nothing_agreed_for_the_rest():
    settings = CostSettings()

    assert (False, "before shipment", False) == (settings.reorder, settings.balance, settings.balance_said)


def test_what_the_makers_sheet_leaves_blank_is_unknown():
    facts = MakerFacts(maker="Fernhill")

    assert (None, None, None) == (facts.minimum, facts.minimum_per, facts.country)
