"""What a second brief starts from: makers with what is known of them as facts, and every old figure as one to confirm.

Enters: the case of the folder before, and a day. Leaves: rows for the sheet Makers without prices, and lines for a
sheet of its own: prices, freight and days in any case, print methods and other choices once they are old, and what own
orders came to.
"""

import re
from collections.abc import Callable, Iterator, Mapping
from datetime import date
from decimal import Decimal
from math import isinf, isnan
from typing import Literal

from scorecard.answers import Answers
from scorecard.case import Case
from scorecard.checks import Check, checked, sign_of
from scorecard.codes import CURRENCY_DECIMALS
from scorecard.costing.amounts import Span, shown, unit_figure
from scorecard.costing.freight import FreightOffer
from scorecard.costing.quotes import STALE_DAYS, DaysCounted, QuoteRow
from scorecard.costing.replies import Reply, grouped
from scorecard.criteria import Criterion
from scorecard.frozen import dataclass
from scorecard.memory import same_maker
from scorecard.memory_words import record_words, totals_words
from scorecard.remembered import own_orders_of, totals_of
from scorecard.samples import kept_piece
from scorecard.words import shortest

State = Literal["to confirm", "recent: ask whether it holds", "known"]
Cell = str | float | date | None

PRICES = re.compile(
    r"\b(prices?|costs?|fees?|charges?|set-?up|deposit|freight|postage|shipping|turnaround|days|weeks|"
    r"(lead|production|delivery) time)\b",
    re.IGNORECASE,
)
DAYS = re.compile(r"\b(days?|weeks?|months?)\b", re.IGNORECASE)
FACTS = re.compile(
    r"\b(country|region|place|city|language|founded|registration|registered|(earlier|past) work)\b", re.IGNORECASE
)
METHODS = re.compile(r"\b(method|print|printing)\b", re.IGNORECASE)
CARRIED = ("Country", "Web page", "Contact", "Care", "Notes")
DAYS_TOLD: Mapping[DaysCounted | None, str] = {"working days": "working days", "days": "calendar days", None: "days"}


@dataclass(frozen=True, slots=True, kw_only=True)
class FromLastTime:
    """One thing that was so last time.

    Parameters
    ----------
    maker : "" where it is no maker's
    figure : as it was, in words
    as_of : its day; None where nobody noted it, and then it is old
    where : into which column or key the new figure goes; "" where it is but good to know
    """

    maker: str
    what: str
    figure: str
    as_of: date | None
    state: State
    where: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Carried:
    """What is carried into a new folder.

    Parameters
    ----------
    makers : rows of the sheet Makers, by heading; what is not known is left out
    checks : rows of the sheet Checks, by heading: those that came out with no, which only a new look changes
    last_time : the lines of the sheet "From last time"
    """

    makers: tuple[Mapping[str, Cell], ...]
    checks: tuple[Mapping[str, Cell], ...]
    last_time: tuple[FromLastTime, ...]


def carried(case: Case, as_of: date) -> Carried:
    """Return what a second brief starts from.

    Parameters
    ----------
    case : the folder before
    as_of : the day that stands for today
    """
    makers = tuple(_maker_row(case, at, as_of) for at in range(len(case.table)))
    lines = [line for at in range(len(case.table)) for line in _lines(case, at, as_of)]
    signs = [sign for maker in case.table.makers for sign in checked(case.checks, maker).signs]
    return Carried(makers=makers, checks=tuple(map(_check_row, signs)), last_time=tuple(lines))


def _check_row(sign: Check) -> Mapping[str, Cell]:
    row: dict[str, Cell] = {"Maker": sign.maker, "Check": sign.name, "State": sign.state, "Date": sign.checked_on}
    return {heading: value for heading, value in row.items() if value is not None}


def _maker_row(case: Case, at: int, as_of: date) -> Mapping[str, Cell]:
    """Return one maker's facts by heading."""
    table = case.table
    row: dict[str, Cell] = {"Maker": table.makers[at]}
    for criterion in case.criteria:
        if criterion.column is not None and not _is_to_confirm(case, criterion, at, as_of):
            row[criterion.column] = _cell(case, criterion, table.answers.get(criterion.key), at)
        if criterion.steady is not None:
            row[criterion.steady.count_column] = _number(case, table.counts.get(criterion.key), at)
    row["Minimum is per"] = table.minimum_per[at] if table.minimum_per else None
    row |= {heading: table.details[heading][at] for heading in CARRIED if heading in table.details}
    row["Seen on"] = _seen_on(case, at)
    return {heading: value for heading, value in row.items() if value not in (None, "")}


def _seen_on(case: Case, at: int) -> date | None:
    seen = case.table.details.get("Seen on", ())
    return date.fromisoformat(seen[at]) if seen and seen[at] else None


def _is_to_confirm(case: Case, criterion: Criterion, at: int, as_of: date) -> bool:
    """Return whether an answer is not carried as a fact: a price or days in any case, a choice once it is old.

    A choice that its name tells to be a plain fact, such as a country or earlier work, stays one.
    """
    heading = f"{criterion.column} {criterion.title}"
    if PRICES.search(heading) or _is_money_or_days(f"{criterion.unit} {criterion.column}", criterion.unit):
        return True
    changes = criterion.choices is not None and not FACTS.search(heading)
    return (changes or bool(METHODS.search(heading))) and _state(_known_on(case, at), as_of) == "to confirm"


def _is_money_or_days(texts: str, unit: str) -> bool:
    """Return whether a unit or a heading names a currency, or a unit days."""
    words = re.findall(r"[A-Za-z]+", texts)
    named = any(word in CURRENCY_DECIMALS for word in words) or any(sign in texts for sign in "€£$¥")
    return named or bool(DAYS.search(unit)) or any(word.upper() in CURRENCY_DECIMALS for word in unit.split())


def _known_on(case: Case, at: int) -> date | None:
    """Return the day on which a maker's answers were last seen or given."""
    seen = _seen_on(case, at)
    days = [seen] if seen else []
    answered = case.table.answered_on
    if len(answered) and not isnan(answered[at]):
        days.append(date.fromordinal(int(answered[at])))
    return max(days, default=None)


def _state(day: date | None, as_of: date) -> State:
    return "to confirm" if day is None or (as_of - day).days > STALE_DAYS else "recent: ask whether it holds"


def _cell(case: Case, criterion: Criterion, answers: Answers | None, at: int) -> Cell:
    if criterion.choices is None:
        return _number(case, answers, at)
    return None if answers is None or isnan(answers.low[at]) else criterion.choices[int(answers.low[at])]


def _number(case: Case, answers: Answers | None, at: int) -> Cell:
    """Return a number as it is, and a range in words that read as the same range."""
    if answers is None or isnan(answers.low[at]):
        return None
    low, high = float(answers.low[at]), float(answers.high[at])
    if low == high:
        return low
    least, most = (_typed(end, case.brief.decimal) for end in (low, high))
    if isinf(high):
        return f"at least {least}"
    return f"up to {most}" if isinf(low) else f"{least} to {most}"


def _typed(number: float, decimal: str | None) -> str:
    """Return a number as text that needs no settling."""
    text = "" if isinf(number) else shortest(number)
    whole, point, part = text.partition(".")
    if decimal == ",":
        return text.replace(".", ",")
    return f"{whole}.{part}0" if point and len(part) == 3 and decimal is None else text


def _lines(case: Case, at: int, as_of: date) -> Iterator[FromLastTime]:
    """Yield what was so with one maker: own orders first, then every figure to confirm."""
    maker = case.table.makers[at]
    yield from _own_lines(case, maker, as_of)
    yield from _answer_lines(case, at, as_of)
    quotes = [row for row in case.costs.quotes if row.maker == maker] if case.costs else []
    days = [row.quoted_on for row in quotes if row.quoted_on]
    for reply in (Reply(rows=tuple(rows)) for rows in grouped(quotes)):
        for row in reply.rows:
            yield from _quote_lines(row, reply, as_of)
    for offer in case.costs.offers if case.costs else ():
        if offer.maker == maker:
            yield from _carton_lines(offer)
            yield from _freight_lines(offer, max(days, default=None), as_of)


def _own_lines(case: Case, maker: str, as_of: date) -> Iterator[FromLastTime]:
    totals = totals_of(case, as_of).get(maker)
    if totals is not None:
        yield _known(maker, "own orders in all", totals_words(totals), None)
    for record in own_orders_of(case):
        if same_maker(record.maker) == same_maker(maker):
            yield _known(maker, "own order", record_words(record, as_of), record.ordered)
    kept = kept_piece(case.samples, maker)
    if kept is not None:
        yield _known(maker, "approved piece", f"{kept.kind}: keep it, to compare the next one with", kept.received_on)
    for sign in checked(case.checks, maker).signs:
        yield _known(maker, "warning sign", sign_of(sign), sign.checked_on)


def _known(maker: str, what: str, figure: str, day: date | None) -> FromLastTime:
    return FromLastTime(maker=maker, what=what, figure=figure, as_of=day, state="known")


def _answer_lines(case: Case, at: int, as_of: date) -> Iterator[FromLastTime]:
    day = _known_on(case, at)
    for criterion in case.criteria:
        if criterion.column is None or not _is_to_confirm(case, criterion, at, as_of):
            continue
        value = _cell(case, criterion, case.table.answers.get(criterion.key), at)
        if value is not None:
            figure = f"{shortest(value)} {criterion.unit}".rstrip() if isinstance(value, float) else str(value)
            yield FromLastTime(
                maker=case.table.makers[at],
                what=criterion.title,
                figure=figure,
                as_of=day,
                state=_state(day, as_of),
                where=f"{criterion.column}, sheet Makers",
            )


def _quote_lines(row: QuoteRow, reply: Reply, as_of: date) -> Iterator[FromLastTime]:
    """Yield what a row of a reply said."""
    pieces = f" for {row.pieces} pieces" if row.pieces else ""
    figures = (
        (f"price{pieces}", f"{_money(row.price, row)} {_each(row)}{_terms(reply.head)}", "Price"),
        ("lead time", _days(row.days, DAYS_TOLD[row.days_counted]), "Days"),
        ("set-up", _setup(row), "Set-up"),
        ("set-up again on reorder", {True: "yes", False: "no", None: ""}[row.setup_again], "Set-up again on reorder"),
        ("sample price", _money(row.sample_price, row), "Sample price"),
        ("sample postage", _money(row.sample_postage, row), "Sample postage"),
        ("deposit", _ends(row.deposit_percent, shown, "%") if row.deposit_percent else "", "Deposit %"),
    )
    for what, figure, heading in figures:
        if figure:
            yield FromLastTime(
                maker=row.maker,
                what=what,
                figure=figure,
                as_of=reply.quoted_on,
                state=_state(reply.quoted_on, as_of),
                where=f"{heading}, sheet Quotes",
            )


def _terms(head: QuoteRow) -> str:
    """Return what the prices of a reply cover, and on which terms."""
    covers = f", covering {head.covers}" if head.covers else ""
    term = f", {head.term} {head.term_place}".rstrip() if head.term else ""
    way = f", by {head.way}" if head.way else ""
    return f"{covers}{term}{way}"


def _setup(row: QuoteRow) -> str:
    per = f" per {row.setup_per}" if row.setup_per else ""
    return f"{_money(row.setup, row)}{per}" if row.setup else ""


def _each(row: QuoteRow) -> str:
    return "each" if row.price_is_for == "each" else "for all"


def _money(span: Span | None, row: QuoteRow | FreightOffer) -> str:
    if span is None:
        return ""
    return _ends(span, lambda end: unit_figure(end, row.currency), row.currency)


def _ends(span: Span, told: Callable[[Decimal], str], unit: str) -> str:
    """Return a figure, or the ends of its range, with their unit."""
    if span.high is None:
        return f"{told(span.low)} {unit} or more"
    return f"{told(span.low) if span.is_known else f'{told(span.low)} to {told(span.high)}'} {unit}"


def _days(span: Span | None, told: str = "days") -> str:
    return "" if span is None else _ends(span, shown, told)


def _carton_lines(offer: FreightOffer) -> Iterator[FromLastTime]:
    """Yield how a maker packs: a fact, which the next freight is reckoned from."""
    if offer.carton is None:
        return
    carton = offer.carton
    sides = " × ".join(shown(side) for side in (carton.length_cm, carton.width_cm, carton.height_cm))
    yield FromLastTime(
        maker=offer.maker,
        what=f"carton by {offer.way}",
        figure=f"{carton.pieces} pieces, {sides} cm, {shown(carton.kg)} kg",
        as_of=None,
        state="known",
        where="the columns of the carton, sheet Freight",
    )


def _freight_lines(offer: FreightOffer, day: date | None, as_of: date) -> Iterator[FromLastTime]:
    """Yield what an offer of freight said; it has no day, so the last quote of its maker stands for it."""
    ends = {str(pieces) for pieces in (offer.from_pieces, offer.to_pieces) if pieces}
    pieces = f" for {' to '.join(sorted(ends, key=int))} pieces" if ends else ""
    figures = (
        (f"freight by {offer.way}{pieces}", _paid_for(offer.cost, offer), "Cost"),
        (f"freight by {offer.way}, a kg", _paid_for(offer.rate_per_kg, offer), "Rate per kg"),
        (
            f"freight by {offer.way}, a revenue ton",
            _paid_for(offer.rate_per_revenue_ton, offer),
            "Rate per revenue ton",
        ),
        (f"journey by {offer.way}", _days(offer.days), "Days"),
    )
    for what, figure, heading in figures:
        if figure:
            yield FromLastTime(
                maker=offer.maker,
                what=what,
                figure=figure,
                as_of=day,
                state=_state(day, as_of),
                where=f"{heading}, sheet Freight",
            )


def _paid_for(span: Span | None, offer: FreightOffer) -> str:
    """Return a sum with the part of the journey that it pays for, where the offer says so."""
    return f"{_money(span, offer)}, {offer.covers}" if span and offer.covers else _money(span, offer)
