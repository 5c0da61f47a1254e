"""The outcome of an inspection in sentences: what was found, what it cost, what to claim, until when.

Every sentence is without its full stop. What may be claimed follows from the order, the payment service's terms and the
law of the place; the sentences say so, and decide nothing.
"""

from collections.abc import Iterator
from datetime import date

from scorecard.costing.amounts import priced, unit_priced
from scorecard.errors import Place
from scorecard.inspection.faults import KINDS, MEANINGS, OTHER, Kind
from scorecard.inspection.outcome import Arrival, Count, Judged, Outcome, PiecePrice
from scorecard.inspection.plans import Plan
from scorecard.words import all_of, counted, day_words, listed, rounded

CAUTIONS = (
    "What you may claim follows from your order, from the terms of the marketplace or payment service, and from the "
    "law of the place: this is no legal advice",
    "Complain where you ordered and paid, in writing, with the photographs; a talk on the phone proves nothing later",
    "Keep the faulty pieces, the cartons and their labels until it is settled",
)
DANGER = (
    "Do not sell, give away or use any piece of this lot before somebody qualified has looked at it. Where pieces have "
    "been sold already, ask your local authority at once what to do"
)


def found_sentence(outcome: Outcome) -> str:
    """Return how many of the opened pieces are faulty."""
    arrival, faulty = outcome.arrival, outcome.faulty
    some = f"{outcome.opened} of {counted(arrival.lot, 'piece')}"
    opened = f"{some if outcome.unopened else all_of(arrival.lot, 'piece')} opened"
    if not faulty:
        return f"{opened}: no faulty piece was counted"
    minor = outcome.of("minor")
    sold = f"; {minor if minor < faulty else 'all'} of these can be sold, with a minor fault" if minor else ""
    share = rounded(float(100 * outcome.share))
    return f"{opened}: {faulty} {'is' if faulty == 1 else 'are'} faulty, {share} of 100{sold}"


def number_sentence(arrival: Arrival) -> str | None:
    """Return how many more or fewer pieces came than were ordered, by what was agreed; None where just as many came."""
    if not arrival.missing and not arrival.extra:
        return None
    came = f"{counted(arrival.missing, 'piece')} did not come"
    if arrival.extra:
        came = f"{counted(arrival.extra, 'piece')} came beyond the {arrival.ordered} ordered"
    if arrival.accepted is None:
        unsettled = "[order] of the criteria file does not say how many more were accepted, so ask what they cost you"
        return f"{came}; {unsettled}" if arrival.extra else came
    agreed = f"{arrival.accepted[0]} to {arrival.accepted[1]} pieces"
    if arrival.owed:
        all_of_it = "so the claim asks for all that are missing"
        return f"{came}; by [order] of the criteria file {agreed} were accepted, {all_of_it}"
    if arrival.beyond:
        return (
            f"{came}, {arrival.beyond} beyond the {agreed} accepted by [order] of the criteria file: say at once what "
            "is to become of them"
        )
    pay = "see that you pay only for what came" if arrival.missing else "see that you pay for them as agreed"
    return f"{came}; by [order] of the criteria file {agreed} were accepted, so nothing is claimed for this: {pay}"


def rest_sentence(outcome: Outcome) -> str | None:
    """Return what is not known of pieces that were not opened and of no sample; None where nothing is left."""
    if not outcome.unopened or outcome.judged:
        return None
    most = outcome.faulty + outcome.unopened
    return (
        f"{counted(outcome.unopened, 'piece')} were not opened: of the whole lot between {outcome.faulty} and {most} "
        "may be faulty"
    )


def judged_sentence(one: Judged, lot: int) -> str:
    """Return what the counts say of one kind against its limit."""
    plan = one.plan
    found = f"{counted(one.found, 'piece')} with a {plan.kind} fault"
    few = "none" if one.found == 0 else f"no more than {one.found}"
    may_hold = f"The whole lot of {lot} may still hold up to {one.most}: of a worse lot, 5 of 100 samples show {few}"
    if one.opened == lot:
        return f"{found} in the whole lot, {rounded(100 * one.found / lot)} of 100: {one.verdict}"
    if one.verdict == "not judged":
        sample = f"the limit is for {plan.opened} pieces drawn as listed, and {one.opened} were opened"
        return f"{found}; {sample}, so whether it is over the limit is not settled. {may_hold}"
    if one.verdict == "over its limit" and one.opened > plan.opened:
        return f"{found} in {one.opened} opened: over its limit, whichever of them are the listed ones. {may_hold}"
    if one.verdict == "over its limit":
        return f"{found}: over its limit, {_too_many(plan)}. {may_hold}"
    allows = f"up to {plan.accept}" if plan.accept else "none"
    return f"{found}: not over its limit, which allows {allows}; that does not make the lot good. {may_hold}"


def _too_many(plan: Plan) -> str:
    return "none is allowed" if plan.reject == 1 else f"{plan.reject} or more are too many"


def kind_lines(outcome: Outcome) -> Iterator[tuple[Kind, str, tuple[Count, ...]]]:
    """Yield each kind with a faulty piece, what it means, and its counts."""
    for kind in KINDS:
        counts = tuple(count for count in outcome.counts if count.line.kind == kind)
        if counts:
            yield kind, MEANINGS[kind], counts


def count_words(count: Count) -> str:
    """Return a count with the numbers of its photographs."""
    name = f"{count.line.code} {count.line.text}" if count.line.text else f"{count.line.kind} faults"
    return f"{name}: {counted(count.pieces, 'piece')}, {photograph_words(count)}"


def photograph_words(count: Count) -> str:
    """Return the numbers of a count's photographs.

    Examples
    --------
    >>> from scorecard.inspection.faults import TallyLine
    >>> photograph_words(Count(line=TallyLine(code="B1", kind="major", text="chip"), pieces=3, photographs=(5, 7)))
    'photographs 5 to 7'
    """
    first, last = count.photographs
    return f"photograph {first}" if first == last else f"photographs {first} to {last}"


def _cost(price: PiecePrice, pieces: int) -> str:
    """Return what so many pieces cost: an amount, or its two ends."""
    least, most = (priced(end, price.currency) for end in price.of(pieces))
    return least if least == most else f"{least} to {most}"


def money_sentence(outcome: Outcome) -> str:
    """Return what the pieces that cannot be sold cost at the door, and where that figure comes from."""
    price, pieces = outcome.arrival.price, outcome.lost
    if price is None:
        into = _into(outcome.arrival, "Paid in all", outcome.arrival.paid_at)
        return f"What this comes to in money is not known: write what you paid {into}"
    parts = []
    if pieces:
        parts.append(f"{counted(pieces, 'piece')} that {_why_lost(outcome)} cost {_cost(price, pieces)}")
    if outcome.halted:
        rest = "the other piece" if outcome.halted == 1 else f"the other {outcome.halted} pieces"
        parts.append(
            f"{rest} of the lot, none of which to sell before it is settled, cost {_cost(price, outcome.halted)}"
        )
    elif minor := outcome.of("minor"):
        parts.append(f"{counted(minor, 'piece')} with a minor fault cost {_cost(price, minor)}")
    each = " to ".join(dict.fromkeys(unit_priced(end, price.currency) for end in (price.low, price.high)))
    return f"{listed(parts) if parts else 'Nothing is lost'}; a piece cost {each} at your door, by {price.source}"


def exact_words(outcome: Outcome) -> str | None:
    """Return what to do before a sum is claimed that is still open; None where each is exact, or none is claimed."""
    price = outcome.arrival.price
    if price is None or all(_is_exact(price, pieces) for pieces in (outcome.lost, outcome.halted)):
        return None
    return f"write exactly what you paid {_into(outcome.arrival, 'Paid in all', outcome.arrival.paid_at)}"


def exact_sentence(outcome: Outcome) -> str | None:
    """Return why a sum that is still open is not claimed yet, and what to do first; None where each is exact."""
    words = exact_words(outcome)
    if words is None:
        return None
    return (
        f"The sum to claim is not exact yet, and of two sums a maker pays the lower: {words}, and run this again. If "
        "time runs short, complain without a sum"
    )


def _is_exact(price: PiecePrice, pieces: int) -> bool:
    low, high = price.of(pieces)
    return low == high


def _why_lost(outcome: Outcome) -> str:
    unsold, owed = outcome.of("critical", "major"), outcome.arrival.owed
    return listed([*(["cannot be sold"] if unsold else []), *(["did not come"] if owed else [])], "or")


def arrived_sentence(arrival: Arrival) -> str | None:
    """Return that the sheet does not say when an order arrived; None where it does, or no order is noted."""
    if arrival.maker is None or arrival.arrived_on is not None:
        return None
    into = _into(arrival, "Arrived on", arrival.arrived_at)
    return f"The sheet does not say that this order has arrived: once it has, type the day {into}"


def last_day_sentence(arrival: Arrival, as_of: date) -> str:
    """Return the last day to complain, and how many days that leaves."""
    last, days = arrival.complain_until, arrival.complain_days
    if last is None and days is not None:
        into = _into(arrival, "Arrived on", arrival.arrived_at)
        return f"The last day to complain is {counted(days, 'day')} after arrival: write the day of arrival {into}"
    if last is None:
        return (
            "The last day to complain is not known: look it up today in the terms of the order and of the payment "
            f"service, then write it {_into(arrival, 'Complain until', arrival.complain_at)}"
        )
    left = (last - as_of).days
    if left < 0:
        ago = counted(-left, "day")
        return f"The last day to complain, {day_words(last)}, was {ago} ago; write all the same, and ask"
    when = "today" if left == 0 else f"in {counted(left, 'day')}"
    told = f"The last day to complain is {day_words(last)}, {when}"
    if days is None:
        return told
    return f"{told} ({counted(days, 'day')} after arrival, by your order sheet; the payment service may end sooner)"


def noting_words(outcome: Outcome) -> str:
    """Return what to type into the sheet Orders: a sample's count goes with the pieces that were opened.

    Faulty pieces of every kind count, as everywhere; the pieces opened are left out where the sheet counts among just
    so many.
    """
    arrival = outcome.arrival
    minor = " (minor faults too)" if outcome.of("minor") else ""
    if arrival.maker is None:
        return (
            "write the order into a row of the sheet Orders, with "
            f"{outcome.faulty}{minor} under Faulty pieces and {outcome.opened} under Pieces opened"
        )
    words = f"type {outcome.faulty}{minor} {_into(arrival, 'Faulty pieces', arrival.faulty_at)}"
    if outcome.opened == arrival.counted_among:
        return words
    return f"{words}, and {outcome.opened} {_into(arrival, 'Pieces opened', arrival.opened_at)}"


def _into(arrival: Arrival, heading: str, place: Place | None) -> str:
    """Return where something of the order is typed: its cell, or the column or row that is yet to be made."""
    if arrival.maker is None:
        return f"into the sheet Orders, under {heading}, in a row for this order"
    if place is None:
        return f"into the sheet Orders, under a new heading {heading}"
    return f"into {place.cell} of the sheet Orders ({heading})"


def claim_text(outcome: Outcome) -> str | None:
    """Return the message to the maker, ready to copy; None where there is nothing to claim."""
    if not outcome.lost and not outcome.of("minor") and not outcome.arrival.beyond:
        return None
    return "\n".join([*_about(outcome), "", *_found(outcome), "", *_asks(outcome), "", "[your name]", ""])


def _about(outcome: Outcome) -> Iterator[str]:
    arrival = outcome.arrival
    yield "Hello," if arrival.maker is None else f"Hello {arrival.maker},"
    yield ""
    ordered = f" of {day_words(arrival.ordered_on)}" if arrival.ordered_on else ""
    came = f" It arrived on {day_words(arrival.arrived_on)}." if arrival.arrived_on else ""
    yield f"This is about my order{ordered}: {counted(arrival.ordered, 'piece')} of {arrival.item}.{came}"


def _found(outcome: Outcome) -> Iterator[str]:
    arrival = outcome.arrival
    if arrival.owed:
        agreed = f", and at least {arrival.accepted[0]} were agreed" if arrival.accepted else ""
        yield f"Missing: {counted(arrival.owed, 'piece')}; {arrival.lot} of {arrival.ordered} came{agreed}."
    if arrival.beyond:
        most = f", {arrival.beyond} beyond the most that were agreed" if arrival.accepted else ""
        yield f"Too many: {arrival.lot} came, {arrival.extra} more than the {arrival.ordered} ordered{most}."
    if outcome.counts:
        yield f"I opened {outcome.opened} of {arrival.lot} pieces. {outcome.faulty} of them have faults:"
    for kind, meaning, counts in kind_lines(outcome):
        yield f"{kind.capitalize()} ({meaning}):"
        yield from (
            f"- {_fault(count)}: {counted(count.pieces, 'piece')}, {photograph_words(count)}" for count in counts
        )
    yield from (
        f"{_by(outcome)}, the lot is over the limit for {one.plan.kind} faults: {one.found} of {one.opened}"
        f"{'' if one.opened > one.plan.opened else f'; {_too_many(one.plan)}'}."
        for one in outcome.judged
        if one.verdict == "over its limit"
    )


def _claimed(price: PiecePrice, pieces: int) -> str:
    """Return what so many pieces cost, as the maker is told it; a gap to fill where that is open."""
    return _cost(price, pieces) if _is_exact(price, pieces) else "[the exact sum, once you have written what you paid]"


def _about_the_rest(outcome: Outcome) -> str:
    """Return what a claim asks about the pieces without a fault that keeps them from sale, after a critical one."""
    price, halted = outcome.arrival.price, outcome.halted
    money = f" They cost me {_claimed(price, halted)} at my door." if price else ""
    found, rest = outcome.of("critical"), "piece" if halted == 1 else f"{halted} pieces"
    has = "has a fault" if found == 1 else "have faults"
    return (
        f"Since {counted(found, 'piece')} {has} that could hurt somebody or may not be sold at all, I can sell none of "
        f"the lot for now. For the other {rest} too I ask you to show in writing that they are free of it, or to take "
        f"them back and pay back what they cost me.{money}"
    )


def _by(outcome: Outcome) -> str:
    return "By the sample" if outcome.unopened else "By all its pieces"


def _fault(count: Count) -> str:
    """Return a fault as the maker is told of it, without the sheet's code."""
    if count.line.text == OTHER:
        return "another fault [say which]"
    return count.line.text or "[say which faults]"


def _asks(outcome: Outcome) -> Iterator[str]:
    price = outcome.arrival.price
    lost, minor = outcome.lost, outcome.of("minor")
    if lost:
        money = f": {_claimed(price, lost)}" if price else ""
        yield (
            f"For {counted(lost, 'piece')} I ask you to send good ones at your cost, or to pay back what they cost "
            f"me at my door{money}."
        )
    if outcome.halted:
        yield _about_the_rest(outcome)
    if minor and not outcome.halted:
        yield f"For {counted(minor, 'piece')} with a minor fault I ask you for a lower price. What do you offer?"
    if outcome.arrival.beyond:
        yield (
            f"For {counted(outcome.arrival.beyond, 'piece')} too many I have agreed to no price. Please say what you "
            "want done with them."
        )
    if outcome.unopened and any(one.verdict == "over its limit" for one in outcome.judged):
        yield "Since this is a sample only, please say how we go on with the pieces that are not opened yet."
    yield "Please answer within five working days."
