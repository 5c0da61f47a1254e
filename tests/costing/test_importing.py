"""Import rules as read."""

from decimal import Decimal

from scorecard.costing.importing import ImportRules, Relief


def test_relief_is_off_unless_the_user_says_that_it_holds():
    relief = Relief(up_to=Decimal(135), currency="GBP")
    rules = ImportRules(destination="GB", currency="GBP", duty_base="price", tax_base="none", relief=relief)

    assert not rules.use_relief
