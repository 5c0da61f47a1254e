"""One open answer as a question to its maker: short sentences in plain words, which translate well by machine.

Well-known columns have sentences of their own; any other criterion is asked by its title, and a criterion's own
``question`` goes before both. What is known already as a range is said with it.
"""

from collections.abc import Iterable, Mapping
from types import MappingProxyType

from scorecard.brief import Brief
from scorecard.calculation import Calculation
from scorecard.criteria import Criterion
from scorecard.frozen import dataclass
from scorecard.letters.placeholders import fill
from scorecard.letters.plain import one_line
from scorecard.reasons import answer_words
from scorecard.words import counted, day_words, listed

LONGEST_QUESTION = 500
ORDER_UNITS = frozenset({"day", "days", "working day", "working days", "week", "weeks", "%"})

COVERS = (
    "(a) the goods only",
    "(b) the goods and the freight",
    "(c) everything to our door, with duty and tax paid",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class KnownQuestion:
    """A sentence for a well-known column, and whether the criterion's choices are what a maker can answer with."""

    sentence: str
    offers_choices: bool = True


def _asks(sentence: str) -> KnownQuestion:
    return KnownQuestion(sentence=sentence)


KNOWN: Mapping[str, KnownQuestion] = MappingProxyType(
    {
        "years trading": _asks("How many years have you been in business?"),
        "minimum order": _asks("What is your minimum order, in pieces?"),
        "print method": _asks("Which print method do you use for this item?"),
        "sample": _asks("Can you send a sample before the order?"),
        "earlier work": KnownQuestion(
            sentence="Have you made goods with artwork like ours? Please send photographs. Please name the method.",
            offers_choices=False,
        ),
        "lead time": _asks("How many working days do you need for {pieces}?"),
        "production days": _asks("How many working days do you need to make {pieces}?"),
        "unit price": _asks("What is the price of one piece for {pieces}?"),
        "price": _asks("What is the price of one piece for {pieces}?"),
        "set-up": _asks("What is the set-up cost for each design?"),
        "deposit": _asks("How much is the deposit, in percent?"),
        "country": _asks("In which country do you make the goods?"),
        "material": _asks("Which material do you offer for this item?"),
        "colours": _asks("How many colours can you print?"),
        "packing": _asks("How do you pack each piece?"),
        "certificates": _asks("Which certificates do you have for this item?"),
        "test reports": _asks("Which test reports do you have for this very product?"),
        "languages": _asks("In which languages can we write to you?"),
    }
)


def question_text(calculation: Calculation, maker: int, criterion: int) -> str:
    """Return what to ask a maker about one open answer.

    Parameters
    ----------
    calculation : of a case on a day
    maker, criterion : positions
    """
    one, brief = calculation.case.criteria.criteria[criterion], calculation.case.brief
    typed = calculation.countings[criterion].typed
    low, high = float(typed.low[maker]), float(typed.high[maker])
    per = of_what(brief) if asks_unit(calculation, maker, criterion) else ""
    said = one_line(answer_words(one, low, high))
    if low == high:  # the number is known, what it is per is not
        return f"{one_line(one.column or one.title)}: our note says {said}. {per}"
    parts = [
        sentence_of(one, brief),
        _choices_words(one),
        _range_words(one, said, brief) if low < high else "",
        per,
    ]
    return " ".join(filter(None, parts))


def can_you_questions(brief: Brief) -> tuple[str, ...]:
    """Return what to ask before a quote where nothing else is open: whether the goods can be made, and by the day."""
    designs = f", in {brief.designs} designs" if brief.designs > 1 else ""
    can_make = f"Can you make {counted(brief.quantity, 'piece')} of this item{designs}?"
    if brief.need_by is None:
        return (can_make,)
    return can_make, f"Can the goods arrive by {day_words(brief.need_by)}?"


def price_questions(brief: Brief) -> tuple[str, ...]:
    """Return the least that a quote must say: the price, what it covers, and the days."""
    pieces, currency = counted(brief.quantity, "piece"), f", in {brief.currency}" if brief.currency else ""
    return (
        f"What is the price of one piece for {pieces}{currency}?",
        f"What does this price cover? Please choose: {'; '.join(COVERS)}.",
        f"How many working days do you need to make {pieces}?",
    )


def asks_unit(calculation: Calculation, maker: int, criterion: int) -> bool:
    """Return whether a maker has still to say what its answer is per: the whole order, or each design."""
    one, table = calculation.case.criteria.criteria[criterion], calculation.case.table
    fewest, most = calculation.countings[criterion].pieces
    return one.per_quantity and bool(fewest[maker] < most[maker]) and not any(table.minimum_per[maker : maker + 1])


def sentence_of(criterion: Criterion, brief: Brief) -> str:
    """Return the question itself.

    Parameters
    ----------
    criterion : whose answer is wanted
    brief : what is wanted, for how many pieces
    """
    if criterion.question:
        return one_line(criterion.question, LONGEST_QUESTION)
    known = known_question(criterion)
    if known is not None:
        return fill(known.sentence, {"pieces": counted(brief.quantity, "piece")})
    unit = f" ({one_line(criterion.unit)})" if criterion.unit else ""
    return f"Please tell us: {one_line(criterion.title)}{unit}."


def known_question(criterion: Criterion) -> KnownQuestion | None:
    """Return the sentence for a well-known column, title or key; None where there is none."""
    names = (criterion.column or "", criterion.title, criterion.key.replace("_", " "))
    return next((KNOWN[name] for name in map(folded, names) if name in KNOWN), None)


def folded(name: str) -> str:
    """Return a heading without case and outer space."""
    return " ".join(name.casefold().split())


def _choices_words(criterion: Criterion) -> str:
    """Return the choices in the order of the alphabet, so that none shows which one is wanted."""
    known = known_question(criterion)
    if criterion.choices is None or criterion.question or (known is not None and not known.offers_choices):
        return ""
    return f"Please choose: {lettered(criterion.choices)}. If it is another answer, please write it."


def lettered(choices: Iterable[str]) -> str:
    """Return choices by the alphabet, each with its letter.

    Examples
    --------
    >>> lettered(["paid", "free"])
    '(a) free; (b) paid'
    """
    lines = sorted(map(one_line, choices), key=str.casefold)
    return "; ".join(f"({letters(at)}) {line}" for at, line in enumerate(lines))


def letters(position: int) -> str:
    """Return the letters of a place in a list, from 0.

    Examples
    --------
    >>> letters(0), letters(25), letters(26)
    ('a', 'z', 'aa')
    """
    before = letters(position // 26 - 1) if position >= 26 else ""
    return f"{before}{chr(ord('a') + position % 26)}"


def _range_words(criterion: Criterion, said: str, brief: Brief) -> str:
    depends = depends_on_the_order(criterion, brief)
    which = f"Which number is right for {counted(brief.quantity, 'piece')}?" if depends else "Please give one number."
    return f"Our note says: {said}. {which}"


def depends_on_the_order(criterion: Criterion, brief: Brief) -> bool:
    """Return whether a number may be another for another order: days, a part of the price, money."""
    return folded(criterion.unit) in ORDER_UNITS or criterion.unit == brief.currency


def of_what(brief: Brief) -> str:
    """Return the question what a minimum is per: the whole order, or what the goods come in several of."""
    units = ["for the whole order", *(f"for each {unit}" for unit in _several(brief))]
    return f"Is this number {listed(units, 'or')}?"


def _several(brief: Brief) -> list[str]:
    counts = {"design": brief.designs, "colour": brief.colours or 1, "size": brief.sizes or 1}
    return [unit for unit, number in counts.items() if number > 1]
