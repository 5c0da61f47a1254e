"""What must be said wherever customs, tax and payment are shown. The words are cautions, not advice."""

from collections.abc import Iterable

from scorecard.costing.inputs import CostInputs
from scorecard.costing.landed import LandedCost

ASK_CUSTOMS = (
    "Duty and tax here are an estimate from your own rates: ask your customs authority or a licensed customs broker "
    "about the code, the rate and the origin of these goods before you order"
)
TRUE_VALUE = (
    "Declare what you really pay. A lowered value on the invoice, or goods for sale declared as a gift, is an offence "
    "in most countries, and the importer answers for it: refuse it if a maker offers it"
)
DUTY_PAID = (
    "Where the maker pays duty and tax, ask in writing who is the importer, which papers you get (the import entry and "
    "proof of the tax paid), and who answers if customs asks later; tax paid in somebody else's name can often not be "
    "reclaimed"
)
# UK: HMRC manual GACV06350 and GACV03100. Canada: CBSA D13-3-7. Australia: a law firm's note on the Border Force's
# practice. From memory: EU Customs Code article 71(1)(b)(iv), 19 USC 1401a(h), New Zealand, Japan, and the UK on
# artwork made at home.
SUPPLIED = (
    "Tools and materials that you give the maker free of charge count into the customs value. Artwork and design count "
    "where the work was done outside the importing country; the EU, the USA, Canada and Australia leave out work done "
    "at home, and others mostly do too: ask. What you pay the maker itself for artwork, set-up or tooling is part of "
    "the price"
)
SAMPLES = "A free sample is not a sale: customs asks for its value all the same, so ask for an invoice that states one"
RELIEF = "Relief for low values changes often and seldom holds for goods meant for sale: check it on the day"
TAX_BACK = "Tax that comes back is paid first: keep the import papers in your own name, and ask your tax adviser"
NONE_FAULTY = (
    "Every piece is counted as good: give faulty_percent under [cost] for the part that you expect to be no good"
)
RATES_MOVE = "Rates of exchange move between the quote and each payment: the sum is as of the rates' own days"


def cautions(inputs: CostInputs, costs: Iterable[LandedCost]) -> tuple[str, ...]:
    """Return the cautions that these costs call for, sentences without the full stop.

    Parameters
    ----------
    inputs : all that was read
    costs : those that are shown
    """
    situations = [reading.situation for cost in costs for reading in cost.readings]
    abroad = [each for each in situations if each.crosses_border]
    rules = inputs.imports
    due = {
        ASK_CUSTOMS: bool(abroad),
        TRUE_VALUE: bool(abroad),
        DUTY_PAID: any("duty" in each.coverage.parts for each in abroad),
        SUPPLIED: any("duty" not in each.coverage.parts for each in abroad),
        SAMPLES: bool(abroad),
        RELIEF: bool(abroad) and rules is not None and rules.use_relief,
        TAX_BACK: bool(situations) and rules is not None and rules.tax_is == "recoverable",
        NONE_FAULTY: bool(situations) and inputs.settings.faulty_percent is None,
        RATES_MOVE: bool(situations) and bool(inputs.rates.rates),
    }
    return tuple(text for text, is_due in due.items() if is_due)
