"""What the maker is paid: goods, set-up, sample and its postage, less a sample that is credited."""

from dataclasses import replace
from decimal import Decimal

from scorecard.costing.amounts import ZERO, End, Span, priced, times, unit_priced
from scorecard.costing.entries import (
    GOODS,
    SAMPLE,
    SAMPLE_CREDITED,
    SAMPLE_POSTAGE,
    SETUP,
    Entry,
    Gap,
    Situation,
    entry,
    no_figure,
)
from scorecard.costing.inputs import SampleIs
from scorecard.costing.prices import price_words
from scorecard.costing.quantities import how_many, is_uncounted, minimum_gaps, possible_units
from scorecard.costing.quotes import QuoteRow

_PAID_SAMPLE = Gap(
    "sample",
    "sample: the sheet Makers says that samples are paid, and no reply says how much; the total is too low by that. "
    "Write 0 as its Sample price if you want none",
)


def maker_entries(situation: Situation, end: End) -> list[Entry]:
    """Return what the maker is paid, at one end of what is possible; a sample already paid for is left out."""
    return [goods_entry(situation, end), *setup_entries(situation, end), *sample_entries(situation, end)]


def goods_entry(situation: Situation, end: End) -> Entry:
    """Return the goods at the price for the quantity."""
    price = situation.price
    unit = price.row.price.at(end)
    shown_price = Span(unit, unit) if unit.is_finite() else price.row.price
    words = price_words(price, shown_price)
    return entry(GOODS, price.total.at(end), price.row.currency, words, situation.inputs.rates)


def setup_entries(situation: Situation, end: End) -> list[Entry]:
    """Return the set-up, by what it is charged per, and whether a reorder pays it again; none where none is named."""
    row = situation.reply.saying("setup", situation.price.row)
    if row is None or row.setup is None:
        return []
    counts = _setup_counts(situation, row)
    count = counts[0] if end == "low" else counts[-1]
    amount = times(row.setup.at(end), Decimal(count))
    words = f"{unit_priced(row.setup.at(end), row.currency)} × {count}"
    words += _setup_unit(row, counts, counted=not is_uncounted(situation.inputs.brief, row.setup_per))
    return [entry(SETUP, amount, row.currency, words, situation.inputs.rates)]


def maker_gaps(situation: Situation) -> list[Gap]:
    """Return what the maker is paid besides, of which the amount, or how often it is due, is not known."""
    brief, reply, first = situation.inputs.brief, situation.reply, situation.price.row
    gaps = minimum_gaps(brief, situation.facts)
    row = reply.saying("setup", first) or reply.unsure("setup", first)
    is_due = row is not None and row.setup != Span.of(0) and _setup_counts(situation, row)[-1] > 0
    if row is not None and is_due:
        gaps += [no_figure("set-up")] if row.setup is None else []
        gaps += [how_many(row.setup_per, "set-up")] if row.setup_per and is_uncounted(brief, row.setup_per) else []
    if situation.facts.maker not in situation.inputs.settings.sampled:
        labels = {"sample_price": SAMPLE, "sample_postage": SAMPLE_POSTAGE}
        gaps += [no_figure(label.name.lower()) for field, label in labels.items() if reply.unsure(field, first)]
        gaps += [_PAID_SAMPLE] if sample_as_listed(situation) == "paid" and not _is_bought(situation) else []
    return gaps


def sample_as_listed(situation: Situation) -> SampleIs | None:
    """Return whether a sample is free or paid by the sheet Makers, where no reply says what it costs."""
    reply, first = situation.reply, situation.price.row
    says = reply.saying("sample_price", first) or reply.unsure("sample_price", first)
    return None if says else situation.facts.sample


def _is_bought(situation: Situation) -> bool:
    """Return whether the order is placed already, so that no sample comes before it any more."""
    return situation.facts.maker in situation.inputs.ordered


def _setup_counts(situation: Situation, row: QuoteRow) -> tuple[int, ...]:
    """Return how often set-up may be charged, least first; of one that costs nothing it does not matter."""
    if row.setup == Span.of(0):
        return (1,)
    counts = possible_units(situation.inputs.brief, row.setup_per)
    if not situation.inputs.settings.reorder or row.setup_again is True:
        return counts
    return (0,) if row.setup_again is False else (0, *counts)


def _setup_unit(row: QuoteRow, counts: tuple[int, ...], *, counted: bool) -> str:
    if row.setup_per:
        return f" (per {row.setup_per}{'' if counted else ', and how many is not known'})"
    return " (it is not said per what)" if len(counts) > 1 else ""


def sample_entries(situation: Situation, end: End) -> list[Entry]:
    """Return the sample, its postage, and the sample credited to the order."""
    credit = credit_entries(situation, end)
    if situation.facts.maker in situation.inputs.settings.sampled:
        return credit
    return [*bought_sample(situation, end), *credit]


def bought_sample(situation: Situation, end: End) -> list[Entry]:
    """Return sample price and postage, as far as they are given."""
    found = []
    for label, field in ((SAMPLE, "sample_price"), (SAMPLE_POSTAGE, "sample_postage")):
        row = situation.reply.saying(field, situation.price.row)
        if row is not None:
            span: Span = getattr(row, field)
            amount = _sample_at(span, end, situation) if label is SAMPLE else span.at(end)
            words = f"quoted: {priced(amount, row.currency)}"
            found.append(entry(label, amount, row.currency, words, situation.inputs.rates))
    return found


def _sample_at(price: Span, end: End, situation: Situation) -> Decimal:
    # a sample that is credited in full cancels out, however dear it is
    return price.low if price.high is None and is_credited(situation) else price.at(end)


def is_credited(situation: Situation) -> bool:
    """Return whether this order is large enough for the sample's price to come off the bill."""
    row = situation.reply.saying("credited_from", situation.price.row)
    return row is not None and row.credited_from is not None and situation.quantity >= row.credited_from


def credit_entries(situation: Situation, end: End) -> list[Entry]:
    """Return the sample's price as it comes off the bill; what was paid before is credited too."""
    row = situation.reply.saying("sample_price", situation.price.row)
    if row is None or row.sample_price is None or not is_credited(situation):
        return []
    price = row.sample_price
    spent = situation.facts.maker in situation.inputs.settings.sampled
    opposite: End = "high" if end == "low" else "low"
    amount = price.low if price.high is None else price.at(opposite if spent else end)
    words = f"comes off the bill for {situation.quantity} pieces: {priced(amount, row.currency)}"
    made = entry(SAMPLE_CREDITED, amount, row.currency, words, situation.inputs.rates)
    return [replace(made, cost=ZERO - made.cost, paid=ZERO - made.paid)]
