"""Care cards: what the maker answered about care, with the usual cautions of such goods, in words.

The symbols on care labels are protected marks that need a licence: there are none here. The cautions are common
practice, no source; what the law asks to stand on goods, on labels and beside them is another matter, and the tool does
not know it.
"""

import re
from collections.abc import Iterator
from typing import Literal
from unicodedata import east_asian_width

from scorecard.frozen import dataclass

Flame = Literal["burns", "holds a flame", "neither"]
Goods = Literal["textiles", "tableware", "other"]
GOODS: tuple[Goods, ...] = ("textiles", "tableware", "other")
FLAMES: tuple[Flame, ...] = ("burns", "holds a flame", "neither")

SIZES = ((8, 10, 46), (4, 24, 46), (2, 24, 96))  # cards on a page, lines that one takes, letters that a line takes

NO_SYMBOLS = "Care in words only: the symbols on care labels are protected marks, and need a licence"
CAUTIONS = (
    "Put on the card only what the maker has confirmed in writing for these very goods; a wash test of your own is "
    "cheaper than a reply to every buyer",
    "What must stand on goods or beside them (your name and address, fibre content, origin, warnings, age marks, in "
    "the language of the place) is set by local rules: ask your local authority or a licensed adviser",
)
FOR_CHILDREN = (
    "Goods for children need tests, marks and warnings of their own nearly everywhere, and their wording is laid down: "
    "a care card does not replace them"
)
TOUCHES_FOOD = (
    "Goods that touch food need a recent test report from an accredited laboratory for these very goods, decoration "
    "and all: a care card does not replace it"
)

FOOD_CAUTIONS: dict[Goods | None, str] = {
    "textiles": "Wash before first use",
    "tableware": "Wash before first use. Do not use for food or drink once it is chipped, cracked or worn",
}
FOOD_CAUTION = "Wash before first use. Do not use for food or drink once it is damaged or worn"
ADVICE: dict[Goods | None, str] = {
    "textiles": "washing temperature, bleaching, tumble drying, ironing, dry cleaning, and what wears the print",
    "tableware": "washing and drying, dishwasher and to how many cycles, microwave, and what wears the print",
    "other": "cleaning, water, sunlight, and what wears the print",
    None: "washing or cleaning, and what wears the print",
}

_DISHWASHER = re.compile(r"\bdish\s*-?washer", re.IGNORECASE)
_CYCLES = re.compile(
    r"\d[\d.,]*\s*\+?\s*(x\b|×|(full |dish ?-?washer |wash(ing)? )?(cycles?|wash(es|ings)?|times|runs|programmes)\b)",
    re.IGNORECASE,
)
_REFUSED = re.compile(r"\b(no|not|never|without|hand)\b|n't\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True, kw_only=True)
class CareFacts:
    """The table ``[care]``: what kind of goods these are. None: nobody has said yet, and nothing is guessed.

    As TOML::

        [care]
        goods = "textiles"        # "textiles", "tableware" or "other"
        touches_food = true       # food or drink, or lips
        for_children = false      # made for children, or likely to be used by them
        flame = "neither"         # "burns", "holds a flame" or "neither"
        from = "Your name, your address"

    Parameters
    ----------
    sender : what ``from`` says; "" where it is not given
    """

    goods: Goods | None = None
    touches_food: bool | None = None
    for_children: bool | None = None
    flame: Flame | None = None
    sender: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class CareCard:
    """What stands on a card.

    Parameters
    ----------
    item : the goods in words
    lines : what the maker answered, a line each
    cautions : of such goods, a line each
    sender : "" for none
    """

    item: str
    lines: tuple[str, ...]
    cautions: tuple[str, ...]
    sender: str = ""

    @property
    def per_page(self) -> int | None:
        """How many cards stand on a page; None where the text is too long for any card."""
        texts = (self.item, *self.lines, *self.cautions, self.sender)
        widths = [_width(text) for text in texts]
        return next((cards for cards, lines, width in SIZES if sum(-(-one // width) for one in widths) <= lines), None)


def _width(text: str) -> int:
    """Return how many letters' room a text takes: wide letters take two."""
    return sum(2 if east_asian_width(sign) in "WF" else 1 for sign in text)


def care_lines(answer: str) -> tuple[str, ...]:
    """Return what a maker answered, as lines: parted by line breaks and semicolons.

    Examples
    --------
    >>> care_lines("wash by hand; not for the microwave.")
    ('Wash by hand', 'Not for the microwave')
    """
    parts = (" ".join(part.split()).rstrip(".") for part in re.split(r"[;\r\n]+", answer))
    return tuple(part[0].upper() + part[1:] for part in map(str.strip, parts) if part)


def promises_dishwasher(line: str) -> bool:
    """Say whether a line promises a dishwasher without a number of cycles.

    Examples
    --------
    >>> promises_dishwasher("Dishwasher safe"), promises_dishwasher("Dishwasher, to 125 cycles (EN 12875-1)")
    (True, False)
    >>> promises_dishwasher("Not for the dishwasher"), promises_dishwasher("Dishwasher up to 60 degrees")
    (False, True)
    """
    return bool(_DISHWASHER.search(line)) and not _CYCLES.search(line) and not _REFUSED.search(line)


def usual_cautions(facts: CareFacts) -> Iterator[str]:
    """Yield the cautions that go with such goods; of what is not known, none."""
    if facts.touches_food:
        yield FOOD_CAUTIONS.get(facts.goods, FOOD_CAUTION)
    if facts.for_children is False:
        yield "Not a toy: keep it, its small parts and its packing away from small children"
    if facts.for_children:
        yield "Take off all packing, ties and labels first; let children use it with an adult near"
    if facts.flame == "burns":
        yield "Keep away from fire, open flame and heaters"
    if facts.flame == "holds a flame":
        yield "Never leave a flame alone; keep it away from children, animals and whatever burns, on a firm base"


def care_card(item: str, answer: str, facts: CareFacts) -> CareCard:
    """Return the card of some goods.

    Parameters
    ----------
    item : the goods in words
    answer : what the maker said about care
    facts : what kind of goods they are
    """
    return CareCard(item=item, lines=care_lines(answer), cautions=tuple(usual_cautions(facts)), sender=facts.sender)
