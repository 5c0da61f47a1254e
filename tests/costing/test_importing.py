"""Import rules as read."""

from decimal import Decimal

from scorecard.costing.importing import ImportRules, Relief


def test_relief_is_off_unless_the_user_says_that_it_holds():
    relief = Relief(up_to=Decimal(135), currency="GBP")
    rules = ImportRules(destination="GB", currency="GBP", duty_base="price", tax_base="none", relief=relief)

    assert not rules.use_relief


def test_no_part_of_a_tax_is_local_where_nobody_says_so():
    assert 0 == ImportRules(destination="GB", currency="GBP", duty_base="price", tax_base="none").local_part_of_tax
