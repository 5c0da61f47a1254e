"""What a landed cost is reckoned from."""

from datetime import date

from scorecard.brief import Brief
from scorecard.costing.currencies import Rates
from scorecard.costing.inputs import CostInputs
from scorecard.costing.quotes import WAYS


def test_every_way_has_its_preset_where_the_user_says_nothing():
    inputs = CostInputs(
        brief=Brief(item="mug", quantity=200), as_of=date(2026, 11, 25), makers={}, rates=Rates(home="EUR")
    )

    assert set(WAYS) == set(inputs.shipping)
