"""What must be said beside a sum: what a reply does not name, and where a figure is the most rather than exact."""

from collections.abc import Sequence
from decimal import Decimal

from scorecard.costing.amounts import HUNDRED, ZERO, Span, percent_of
from scorecard.costing.border_entries import counts, sales_tax_unsaid
from scorecard.costing.chargeable import in_last_carton
from scorecard.costing.entries import Entry, Situation
from scorecard.costing.maker_entries import sample_as_listed
from scorecard.costing.quantities import why_more
from scorecard.costing.quotes import COVERS
from scorecard.costing.uncounted import uncounted_notes
from scorecard.words import listed

ALL_PAID = f"“{COVERS[2]}”"


def notes_on(situation: Situation, entries: Sequence[Entry]) -> tuple[str, ...]:
    """Return the notes on a situation, sentences without the full stop."""
    found = (
        why_more(situation.inputs.brief, situation.facts, situation.quantity),
        _currency(situation),
        _surplus(situation),
        _unnamed(situation),
        _screens(situation),
        _uninsured(situation, entries),
        _country(situation),
        _sales_tax(situation),
        _freight_inside(situation),
        _arrival(situation),
        _part_carton(situation),
        *_supplied(situation),
        *uncounted_notes(situation, entries),
    )
    return tuple(note for note in found if note)


def _currency(situation: Situation) -> str:
    """Return that a price stands in a currency that nobody named."""
    head = situation.reply.head
    return "" if head.currency_named else f"Currency not named: taken as {head.currency}; ask which it is"


def _surplus(situation: Situation) -> str:
    """Return whose cost a good piece bears here, where more good ones are ordered than wanted."""
    wanted, faulty = situation.inputs.brief.quantity, situation.inputs.settings.faulty_percent or ZERO
    if percent_of(HUNDRED - faulty, Decimal(situation.quantity)) <= wanted:
        return ""
    return (
        f"A good piece is here one of the {wanted} that you wanted: those beyond carry no part of the cost, since they "
        "may not sell. How many to order counts a good piece of the whole order instead"
    )


def _unnamed(situation: Situation) -> str:
    """Return what the reply does not name: the total holds only if it is not charged."""
    missing = [] if _is_named(situation, "setup") else ["set-up"]
    sampled = situation.facts.maker in situation.inputs.settings.sampled
    missing += [] if sampled else _unnamed_of_sample(situation)
    if not missing:
        return ""
    return f"The reply names no charge for {listed(missing)}: ask; the total holds only if there is none"


def _screens(situation: Situation) -> str:
    """Return that a set-up per colour is counted once for all designs, which may each need plates or screens."""
    row, designs = situation.reply.saying("setup", situation.price.row), situation.inputs.brief.designs
    if row is None or row.setup_per != "colour" or row.setup == Span.of(0) or designs == 1:
        return ""
    return (
        f"Set-up per colour is counted once for all {designs} designs: ask whether each has plates or screens of its "
        "own, and if so write the set-up of one design, per design"
    )


def _unnamed_of_sample(situation: Situation) -> list[str]:
    """Return what is not named of a sample: its postage alone where it is free, nothing where it is a gap."""
    if _is_named(situation, "sample_price"):
        return []
    listed_as = sample_as_listed(situation)
    if listed_as == "free":
        return [] if _is_named(situation, "sample_postage") else ["the postage of the free sample"]
    return [] if listed_as == "paid" else ["a sample"]


def _is_named(situation: Situation, field: str) -> bool:
    """Say whether a charge has a figure, or is said to be unknown, which is a gap."""
    row = situation.price.row
    return bool(situation.reply.saying(field, row) or situation.reply.unsure(field, row))


def _uninsured(situation: Situation, entries: Sequence[Entry]) -> str:
    covered = "insurance" in situation.coverage.parts or any("insurance" in each.label.parts for each in entries)
    if covered or situation.coverage.insured_by_maker:
        return ""
    return "Nothing is paid for insurance: what is lost or broken on the way may be your loss"


def _country(situation: Situation) -> str:
    if situation.facts.country or "duty" in situation.coverage.parts:
        return ""
    return "Where the goods are made is not known: they are taken to cross a customs border"


def _sales_tax(situation: Situation) -> str:
    """Return what settles whether a price has sales tax inside, where nobody has said so.

    A price that is said to pay all counts as it stands: this settles it for one maker, if no tax comes back.
    """
    if not sales_tax_unsaid(situation):
        return ""
    said = (
        "Whether the price has sales tax inside is not known: ask, and write price_has_tax = true or false under "
        "[import]; it holds for every maker without a customs border between"
    )
    rules = situation.inputs.imports
    if rules is None or rules.tax_is != "cost":
        return said
    says = "the delivery term DDP" if situation.reply.head.term else f"{ALL_PAID} under Price covers"
    return f"{said}. Of this maker alone {says} says it, if its price is so"


def _freight_inside(situation: Situation) -> str:
    rules = situation.inputs.imports
    inside = situation.coverage.pays_freight and "duty" not in situation.coverage.parts
    if rules is None or not inside or not situation.crosses_border or rules.duty_base.endswith("insurance"):
        return ""
    return (
        "Duty is not charged on international freight here, but the price has it inside: the duty shown is the most; "
        "ask for an invoice that shows the freight apart"
    )


def _arrival(situation: Situation) -> str:
    term = situation.coverage.words[:3]
    if term in ("CFR", "CIF", "CPT", "CIP") and "arrival charges" not in situation.coverage.parts:
        return f"{term}: ask whether the freight in the price pays the charges at arrival too"
    return ""


def _part_carton(situation: Situation) -> str:
    """Return what a last carton that is not full means for the freight, where that is by weight."""
    offer = situation.offer
    if offer is None or offer.cost is not None or offer.carton is None:
        return ""
    held, full = in_last_carton(offer.carton, situation.quantity), offer.carton.pieces
    if held is None:
        return ""
    return (
        f"Freight by {offer.way} counts the last carton as full, though it holds {held} of {full} pieces: ask whether "
        f"a smaller one costs less; {full - held} more would cost no more freight"
    )


def _supplied(situation: Situation) -> list[str]:
    """Return what customs makes of the buyer's own artwork, tools and materials."""
    rules = situation.inputs.imports
    if rules is None or not situation.crosses_border or "duty" in situation.coverage.parts:
        return []
    return [
        f"{each.name}: added to the customs value, though you pay the maker nothing for it"
        if counts(each.what, each.made_in, rules)
        else f"{each.name}: artwork made in the importing country is not added to the customs value"
        for each in rules.supplied
    ]
