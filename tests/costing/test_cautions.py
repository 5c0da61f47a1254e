"""Cautions: said where they are due, and never the other way."""

from dataclasses import replace

from quoted import MAKER, dollars, inputs, published, quote, uk

from scorecard.costing import cautions as texts
from scorecard.costing.cautions import cautions
from scorecard.costing.inputs import MakerFacts
from scorecard.costing.landed import landed_costs


def said(case):
    return set(cautions(case, landed_costs(case)))


def test_an_import_defers_to_customs_or_a_licensed_broker_and_warns_of_false_values():
    assert {texts.ASK_CUSTOMS, texts.TRUE_VALUE, texts.SUPPLIED, texts.SAMPLES, texts.NONE_FAULTY} == said(
        inputs(quote(5))
    )


def test_duty_paid_by_the_maker_asks_who_is_the_importer():
    found = said(inputs(quote(5, covers="to my door, duty and tax paid")))

    assert texts.DUTY_PAID in found
    assert "who is the importer" in texts.DUTY_PAID


def test_what_you_supply_counts_as_soon_as_one_maker_does_not_pay_the_duty():
    paid = quote(5, covers="to my door, duty and tax paid")
    found = [said(inputs(*quotes)) for quotes in ([paid], [paid, quote(5, maker="Brightholm", row=3)])]

    assert [False, True] == [texts.SUPPLIED in each for each in found]


def test_without_a_border_nothing_is_said_of_customs():
    near = {MAKER: MakerFacts(maker=MAKER, country="GB")}

    assert {texts.NONE_FAULTY} == said(inputs(quote(5), makers=near))


def test_tax_that_comes_back_relief_and_rates_have_their_own_cautions():
    case = replace(published(tax_is="recoverable"), imports=uk(tax_is="recoverable", use_relief=True), rates=dollars())

    assert {texts.TAX_BACK, texts.RELIEF, texts.RATES_MOVE} <= said(case)


def test_that_every_piece_counts_as_good_is_said_until_the_user_says_otherwise():
    assert texts.NONE_FAULTY not in said(published())


def test_nothing_is_said_where_nothing_is_costed():
    assert () == cautions(inputs(), ())
