"""What the user typed and a sum does not count: charges, freight offers, a tax rate, each with the reason.

Enters: one situation. Leaves: notes beside its sum, and what is counted nowhere, for the warnings.
"""

from collections.abc import Iterable, Sequence

from scorecard.costing.amounts import priced, shown
from scorecard.costing.border_entries import in_tax_base, rules_in_use
from scorecard.costing.charge_entries import charges_of, least_of_tax_charges, why_not
from scorecard.costing.charges import Charge
from scorecard.costing.delivery_terms import coverages
from scorecard.costing.entries import Entry, Situation
from scorecard.costing.freight import FreightOffer


def uncounted_notes(situation: Situation, entries: Sequence[Entry]) -> list[str]:
    """Return what a sum leaves out of what the user typed, sentences without the full stop."""
    charges = [charge for charge in charges_of(situation) if not charge.ways or situation.way in charge.ways]
    whys = {charge.name: why_not(charge, situation) for charge in charges}
    found = [f"{name}: not counted, since {why}" for name, why in whys.items() if why]
    offers = unused_offers(situation)
    found += [f"The freight offer by {each.way}: not counted, since {freight_inside(situation)}" for each in offers]
    return [*found, *_packing(situation, entries), *_untaxed(situation), *_circular(situation, entries)]


def freight_inside(situation: Situation) -> str:
    """Return that the price pays the freight, as a clause."""
    return f"freight is in the price ({situation.coverage.words})"


def unused_offers(situation: Situation) -> list[FreightOffer]:
    """Return the maker's freight offers where its reply pays the freight, however it is read."""
    head = situation.reply.head
    if not all(each.pays_freight for each in coverages(head.covers, head.term, head.term_place, None)):
        return []
    return [offer for offer in situation.inputs.offers if offer.maker == situation.facts.maker]


def uncounted_charges(situations: Sequence[Situation]) -> Iterable[tuple[Charge, tuple[str, ...]]]:
    """Yield the charges that no situation counts, each with the reasons."""
    for charge in charges_of(situations[0]) if situations else ():
        whys = [why_not(charge, situation) for situation in situations]
        if all(whys):
            yield charge, tuple(dict.fromkeys(whys))


def _packing(situation: Situation, entries: Sequence[Entry]) -> list[str]:
    """Return the packing that is paid for besides the usual, which every price has inside."""
    words = situation.coverage.words
    return [
        f"{each.label.name}: counted besides the usual packing, which is in the price ({words}); leave it out if the "
        "maker does not charge it apart"
        for each in entries
        if "packing" in each.label.parts
    ]


def _untaxed(situation: Situation) -> list[str]:
    rules = situation.inputs.imports
    if rules is None or rules.tax_percent is None or rules.tax_base != "none" or not situation.crosses_border:
        return []
    percent = rules.tax_percent.at("low")
    return [f"Import tax: your {shown(percent)} % is not counted, since no tax is charged at this border (tax_base)"]


def _circular(situation: Situation, entries: Sequence[Entry]) -> list[str]:
    """Return that import tax is not charged on what is a part of it, or on its least alone."""
    rules = rules_in_use(situation)
    if rules is None or rules.tax_percent is None or rules.tax_base == "none":
        return []
    home, made = situation.inputs.rates.home, {each.label.key: each for each in entries}
    to_the_door = rules.tax_base == "and all costs to the door"
    return [
        f"{least.label.name}: a part of the tax itself, so import tax is charged on "
        f"{f'its least, {priced(least.paid, home)}, alone' if least.paid else 'none of it'}"
        for least in least_of_tax_charges(situation, "low")
        if in_tax_base(least) and (to_the_door or least.label.in_tax_base) and made[least.label.key].paid > least.paid
    ]
