"""What the placeholders of a template stand for: the brief, the maker and its questions, in short plain words.

A value that is not known has words of its own, or leaves its line out, so that a message reads well whatever is blank.
Months are written out: 3/4 is March to some and April to others.
"""

from collections.abc import Mapping, Sequence
from datetime import date
from types import MappingProxyType

from scorecard.brief import Brief
from scorecard.care import ADVICE, Goods
from scorecard.codes import COUNTRIES
from scorecard.letters.plain import one_line
from scorecard.words import counted, day_words, shortest

PLACEHOLDERS: Mapping[str, str] = MappingProxyType(
    {
        "maker": "the maker's name",
        "questions": "the numbered questions: at most eight in the short message and the reminder, all in the full one",
        "item": "the goods in words",
        "quantity": "how many pieces in all, such as 200",
        "next_quantity": "the next usual quantity up, such as 300",
        "designs": "how many designs, and pieces of each",
        "print_size": "width and height of the print; without them its line is left out",
        "destination": "the country they go to",
        "currency": "the currency that you want prices in",
        "need_by": "the day by which they must be there; without it its line is left out",
        "today": "the day of the message",
        "asked_on": "“on” and the day on which you first wrote",
        "waited": "how many working days ago that was",
        "care_advice": "what to ask of care, by the kind of goods that [care] names",
        "your_name": "“[your name]”, to put your own in its place",
    }
)

LONGEST_ITEM = 500
STEPS = (1, 2, 3, 5)  # 100, 200, 300, 500, 1,000: where price lists break; common practice, no source


def next_quantity(quantity: int) -> int:
    """Return the next usual quantity above one, at which a price list may have a lower price.

    Examples
    --------
    >>> next_quantity(50), next_quantity(200), next_quantity(250), next_quantity(500)
    (100, 300, 300, 1000)
    """
    decade = int(10 ** (len(str(quantity)) - 1))
    return next(step * decade for step in (*STEPS, 10) if step * decade > quantity)


def designs_words(brief: Brief) -> str:
    """Return how many designs, and the colours and sizes of the goods where the brief says them.

    Examples
    --------
    >>> designs_words(Brief(item="mug", quantity=200, designs=4, sizes=2)), designs_words(Brief(item="mug", quantity=9))
    ('4 (50 pieces of each); sizes of the goods: 2', '1')
    """
    each, left = divmod(brief.quantity, brief.designs)
    parts = "in equal parts" if left else f"{counted(each, 'piece')} of each"
    words = [f"{brief.designs} ({parts})" if brief.designs > 1 else str(brief.designs)]
    for number, noun in ((brief.colours, "colours"), (brief.sizes, "sizes")):
        if number is not None:
            words.append(f"{noun} of the goods: {number}")
    return "; ".join(words)


def print_size_words(brief: Brief) -> str:
    """Return the size of the print, or "" where the brief does not say it.

    Examples
    --------
    >>> print_size_words(Brief(item="mug", quantity=9, print_width_mm=180, print_height_mm=80.5))
    '180 mm wide, 80.5 mm high'
    """
    sides = ((brief.print_width_mm, "wide"), (brief.print_height_mm, "high"))
    return ", ".join(f"{shortest(side)} mm {word}" for side, word in sides if side is not None)


def numbered(questions: Sequence[str]) -> str:
    """Return questions as numbered lines."""
    return "\n".join(f"{number}. {text}" for number, text in enumerate(questions, start=1))


def values_for(brief: Brief, today: date, goods: Goods | None = None) -> dict[str, str]:
    """Return what is the same for all makers, by placeholder; goods as ``[care]`` names them."""
    return {
        "item": one_line(brief.item, LONGEST_ITEM),
        "quantity": str(brief.quantity),
        "next_quantity": str(next_quantity(brief.quantity)),
        "designs": designs_words(brief),
        "print_size": print_size_words(brief),
        "destination": COUNTRIES.get(brief.destination or "", "not decided yet"),
        "currency": brief.currency or "your currency",
        "need_by": "" if brief.need_by is None else day_words(brief.need_by),
        "today": day_words(today),
        "care_advice": ADVICE[goods],
        "your_name": "[your name]",
    }


def values_of_maker(maker: str, questions: Sequence[str], asked_on: date | None, waited: int) -> dict[str, str]:
    """Return what is one maker's own, by placeholder.

    Parameters
    ----------
    maker : its name as typed
    questions : the questions in this message
    asked_on : the day on which it was first asked; None where it was not
    waited : whole working days since then
    """
    return {
        "maker": one_line(maker),
        "questions": numbered(questions),
        "asked_on": "recently" if asked_on is None else f"on {day_words(asked_on)}",
        "waited": "some working days" if asked_on is None else counted(waited, "working day"),
    }
