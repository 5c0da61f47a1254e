"""Warnings on quotes and freight, each at its cell: stale, at odds with themselves, not comparable as they stand."""

from collections.abc import Iterable, Sequence

from scorecard.costing.delivery_terms import covers_by_term
from scorecard.costing.inputs import CostInputs
from scorecard.costing.landed import LandedCost
from scorecard.costing.quotes import FOR_ANY_WAY
from scorecard.costing.replies import Reply, replaced
from scorecard.costing.uncounted import freight_inside, uncounted_charges, unused_offers
from scorecard.errors import Problem
from scorecard.words import day_words, listed

OLD_RATE = 180  # days; our own choice
_EXAMPLES = {  # of the place of a term, by its first letter
    "E": "the maker's door",
    "F": "the port or airport that it leaves from",
    "C": "a port near you",
    "D": "your own address",
}


def doubts(inputs: CostInputs, costs: Sequence[LandedCost]) -> tuple[Problem, ...]:
    """Return every warning, in the order of the costs.

    Parameters
    ----------
    inputs : all that was read
    costs : of ``landed_costs(inputs)``
    """
    replies = list({cost.reply.head.row: cost.reply for cost in costs}.values())
    found = [warning for reply in replies for warning in _of_reply(inputs, reply)]
    found += [warning for cost in costs for warning in _of_way(cost)]
    found += [*_points(replies), *_without_quote(inputs), *_replaced(inputs), *_uncounted(inputs, costs)]
    return tuple(dict.fromkeys([*found, *_old_rates(inputs)]))


def _of_reply(inputs: CostInputs, reply: Reply) -> Iterable[Problem]:
    head = reply.head
    for row in reply.rows:
        if row.valid_until and row.valid_until < inputs.as_of:
            yield Problem(
                code="quote-expired",
                place=row.at("Valid until"),
                found=f"The quote of {row.maker} held until {day_words(row.valid_until)}, and today is "
                f"{day_words(inputs.as_of)}",
                wanted="Ask whether the price still holds, and write the new day",
            )
    if head.term and not head.term_place.strip():
        yield Problem(
            code="term-without-place",
            place=head.at("Place"),
            found=f"The delivery term {head.term} of {head.maker} has no place, which is part of the term",
            wanted=f"Ask for the place, such as {_EXAMPLES[head.term[0]]}, and write it in",
        )
    if head.term and head.covers and head.covers != covers_by_term(head.term):
        yield Problem(
            code="covers-against-term",
            place=head.at("Price covers"),
            found=f"{head.maker} is said to cover {head.covers}, but {head.term} covers {covers_by_term(head.term)}",
            wanted="Ask which of them holds, and correct the other; both are costed until then",
        )


def _of_way(cost: LandedCost) -> Iterable[Problem]:
    head = cost.reply.head
    if head.term is not None and head.term in FOR_ANY_WAY and cost.way not in (None, "sea"):
        yield Problem(
            code="sea-term-by-another-way",
            place=head.at("Delivery term"),
            found=f"{head.term} is for sea and inland waterways only, and {head.maker} is costed by {cost.way}",
            wanted=f"Ask for {FOR_ANY_WAY[head.term]}, which says the same for any way",
        )
    missed = {offer.row: offer for reading in cost.readings for offer in reading.situation.offers_missed}
    fewest, most = cost.quantities
    pieces = str(most) if fewest == most else f"{fewest} to {most}"
    for offer in missed.values():
        yield Problem(
            code="offer-for-other-pieces",
            place=offer.at("From pieces"),
            found=f"The freight offer of {offer.maker} by {offer.way} is not for the {pieces} pieces to be ordered",
            wanted="Ask what so many cost, and add it as a row of its own",
        )


def _points(replies: Sequence[Reply]) -> Iterable[Problem]:
    named = [reply.head for reply in replies if reply.head.term]
    points = {(row.term, row.term_place.strip().casefold()) for row in named}
    if len(points) < 2 or len({row.maker for row in named}) < 2:
        return
    last = named[-1]
    terms = sorted({" ".join([row.term or "", row.term_place.strip()]).strip() for row in named})
    yield Problem(
        code="quotes-to-different-points",
        place=last.at("Delivery term"),
        found=f"The prices end at different points ({', '.join(terms)}), so they cannot be compared as they stand",
        wanted="Compare what the goods cost at your door, which adds what each price leaves out",
    )


def _replaced(inputs: CostInputs) -> Iterable[Problem]:
    """Yield replies that no longer count, since the maker quoted again on the same terms."""
    for row, later in replaced(inputs.quotes):
        day = f" of {day_words(later.quoted_on)}" if later.quoted_on else ""
        yield Problem(
            code="reply-replaced",
            place=row.at("Price"),
            found=f"The price of {row.maker} is replaced by its later reply{day} in row {later.row}, and not counted",
            wanted="Nothing, if that is so; else name the way, cover or term in which the two replies differ",
        )


def _old_rates(inputs: CostInputs) -> Iterable[Problem]:
    """Yield rates of exchange that are old, where a price or an offer is in their currency."""
    in_use = {row.currency for row in inputs.quotes} | {offer.currency for offer in inputs.offers}
    for rate in inputs.rates.rates.values():
        if rate.currency in in_use and rate.dated and (age := (inputs.as_of - rate.dated).days) > OLD_RATE:
            yield Problem(
                code="rate-old",
                place=rate.place,
                found=f"the rate of {rate.currency} is of {day_words(rate.dated)}, {age} days ago",
                wanted="Write today's rate, and its day under on",
            )


def _uncounted(inputs: CostInputs, costs: Sequence[LandedCost]) -> Iterable[Problem]:
    """Yield charges and freight offers that no sum counts."""
    situations = [reading.situation for cost in costs for reading in cost.readings]
    for charge, whys in uncounted_charges(situations) if inputs.quotes else ():
        yield Problem(
            code="charge-not-counted",
            place=charge.place,
            found=f"the charge {charge.name} is counted in no sum: {listed(whys)}",
            wanted="Nothing, if that is so; else correct pays_for, ways or what the price covers",
        )
    used = {each.offer.row for each in situations if each.offer}
    unused = {
        offer.row: (offer, situation)
        for situation in situations
        for offer in unused_offers(situation)
        if offer in inputs.offers and offer.row not in used
    }
    for offer, situation in unused.values():
        yield Problem(
            code="freight-not-counted",
            place=offer.at("Maker"),
            found=f"The freight offer of {offer.maker} by {offer.way} is not counted: {freight_inside(situation)}",
            wanted="Nothing, if that is so; else correct what the price covers, or its delivery term",
        )


def _without_quote(inputs: CostInputs) -> Iterable[Problem]:
    quoted = {row.maker for row in inputs.quotes}
    for offer in inputs.offers:
        if offer.maker not in quoted:
            yield Problem(
                code="freight-without-quote",
                place=offer.at("Maker"),
                found=f"There is a freight offer of {offer.maker}, but no price",
                wanted="Add the maker's price to the sheet Quotes, or leave the row for later",
            )
