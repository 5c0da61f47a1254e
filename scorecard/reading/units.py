"""The units and currencies that may stand beside a number: those of its column, in any usual spelling.

Enters: a column's unit, as the criteria file gives it. Leaves: which words beside a number say the same.
"""

import re
from dataclasses import field
from itertools import pairwise

from scorecard.codes import CURRENCY_DECIMALS
from scorecard.frozen import dataclass

# one meaning a line, the usual spellings of each; common practice, no source
SPELLINGS = (
    ("piece", "pieces", "pc", "pcs", "unit", "units"),
    ("rating", "ratings", "review", "reviews"),
    ("year", "years", "yr", "yrs", "y"),
    ("month", "months"),
    ("week", "weeks", "wk", "wks"),
    ("working day", "working days", "business day", "business days"),
    ("calendar day", "calendar days"),
    ("day", "days", "d"),
    ("hour", "hours", "hr", "hrs", "h"),
    ("minute", "minutes", "min", "mins"),
    ("gram", "grams", "gramme", "grammes", "g"),
    ("kilogram", "kilograms", "kilo", "kilos", "kg", "kgs"),
    ("millimetre", "millimetres", "millimeter", "millimeters", "mm"),
    ("centimetre", "centimetres", "centimeter", "centimeters", "cm"),
    ("gross",),  # twelve dozen, or a weight or price before something is taken off
    ("%", "percent", "per cent", "pct"),
    ("colour", "colours", "color", "colors"),
)
CURRENCY_SIGNS = {
    "€": ("EUR",),
    "£": ("GBP",),
    "¥": ("JPY", "CNY"),
    "円": ("JPY",),
    "元": ("CNY",),
    "rmb": ("CNY",),
    "$": ("USD", "AUD", "CAD", "HKD", "MXN", "NZD", "SGD", "TWD"),
    "us$": ("USD",),
    "a$": ("AUD",),
    "c$": ("CAD",),
    "hk$": ("HKD",),
    "nz$": ("NZD",),
    "s$": ("SGD",),
    "r$": ("BRL",),
    "zł": ("PLN",),
    "kč": ("CZK",),
    "ft": ("HUF",),
    "kr": ("DKK", "ISK", "NOK", "SEK"),
    "fr": ("CHF",),
    "lei": ("RON",),
    "лв": ("BGN",),
    "₹": ("INR",),
    "rs": ("INR", "PKR", "LKR"),
    "₩": ("KRW",),
    "₺": ("TRY",),
    "₫": ("VND",),
    "฿": ("THB",),
    "₱": ("PHP",),
    "rp": ("IDR",),
    "rm": ("MYR",),
    "₴": ("UAH",),
    "₪": ("ILS",),
    "₦": ("NGN",),
}
CURRENCY_CODES = frozenset(code for codes in CURRENCY_SIGNS.values() for code in codes) | {"ZAR", "AED", "EGP", "BDT"}
ANY_MONEY = "¤"  # the unit of amounts whose currency could not be told
WHOLE_THINGS = frozenset({"piece", "colour", "design", "item", "order", "rating", "buyer"})
# how many of the first are one of the second; neither days in a month nor hours in a day, which are not always the same
ONE_IS = {("month", "year"): 12, ("minute", "hour"): 60, ("gram", "kilogram"): 1000, ("millimetre", "centimetre"): 10}
OF_A_WEEK = {"day": ((7, 1), (5, 1)), "calendar day": ((7, 1),), "working day": ((5, 1),)}
KINDS_OF_DAYS = frozenset({"working day", "calendar day"})
NO_BREAK = r"[^\s/,;+()–-]+"
MEANINGS = {spelling: group[0] for group in SPELLINGS for spelling in group}


def _folded(word: str) -> str:
    """Return a unit for comparing: no case, single spaces, no closing full stop."""
    return " ".join(word.casefold().split()).rstrip(".").strip()


def _meaning(word: str) -> str:
    """Return what a unit means: one spelling for all that say the same, a final s being of no account."""
    folded = _folded(word)
    return MEANINGS.get(folded) or (folded[:-1] if folded.endswith("s") and len(folded) > 2 else folded)


def _per(word: str) -> str:
    """Return what a currency is for: "/pc" and "per piece" are both a piece."""
    return _meaning(re.sub(r"^(?:/|per\b)", "", _folded(word)))


def _parted(unit: str) -> tuple[str, str]:
    """Return a unit's first word, and what follows it."""
    head = re.split(r"[\s/]", unit.strip(), maxsplit=1)[0]
    return head, unit.strip()[len(head) :].strip()


def currencies(word: str) -> frozenset[str]:
    """Return the ISO 4217 codes that a sign or code can stand for; none for another word."""
    if word.upper() in CURRENCY_CODES:
        return frozenset({word.upper()})
    return frozenset(CURRENCY_SIGNS.get(_folded(word), ()))


def days_named(text: str) -> str:
    """Return which days a text says that it means; "days" where it does not say.

    Examples
    --------
    >>> days_named("3-5 business days"), days_named("12 calendar days, at most"), days_named("12 days")
    ('working days', 'calendar days', 'days')
    """
    words = re.findall(r"[^\W\d_]+", text)
    named = {_meaning(f"{first} {second}") for first, second in pairwise(words)} & KINDS_OF_DAYS
    return f"{named.pop()}s" if len(named) == 1 else "days"


def is_known_unit(word: str) -> bool:
    """Say whether a word is a unit at all."""
    return _folded(word) in MEANINGS


@dataclass(frozen=True, slots=True)
class ColumnUnit:
    """The unit of a column.

    Parameters
    ----------
    unit : as the criteria file gives it: "days", "EUR", "€ per piece"; "" where there is none
    also : another unit that says the same in this column; "" where there is none
    """

    unit: str
    also: str = ""
    codes: frozenset[str] = field(init=False)
    rest: str = field(init=False)

    def __post_init__(self) -> None:
        head, rest = _parted(self.unit)
        unlisted = {head} if re.fullmatch(r"[A-Z]{3}", head) else set()  # a code that the table above has not
        codes = frozenset(CURRENCY_DECIMALS) if head == ANY_MONEY else currencies(head) or frozenset(unlisted)
        object.__setattr__(self, "codes", codes)
        object.__setattr__(self, "rest", _per(rest) if codes else "")

    @property
    def is_of_whole_things(self) -> bool:
        """Whether a broken number of them makes no sense."""
        return _meaning(self.unit) in WHOLE_THINGS

    @property
    def is_of_years(self) -> bool:
        """Whether answers are numbers of years."""
        return _meaning(self.unit) == "year"

    @property
    def is_percent(self) -> bool:
        """Whether answers are percentages."""
        return _meaning(self.unit) == "%"

    @property
    def is_kind_of_days(self) -> bool:
        """Whether answers are days of one kind, which must be written beside them."""
        return _meaning(self.unit) in KINDS_OF_DAYS

    def rates(self, word: str) -> tuple[tuple[int, int], ...]:
        """Return how many of the column's unit are how many of another, once for each meaning; none where it varies.

        Weeks in days mean days of the calendar first, then working days.

        Examples
        --------
        >>> ColumnUnit("days").rates("weeks"), ColumnUnit("years").rates("months"), ColumnUnit("days").rates("months")
        (((7, 1), (5, 1)), ((1, 12),), ())
        """
        if not self.unit or self.allows_after(word, currency_before=False):
            return ((1, 1),)
        own, other = _meaning(self.unit), _meaning(word)
        if other == "week":
            return OF_A_WEEK.get(own, ())
        if (other, own) in ONE_IS:
            return ((1, ONE_IS[other, own]),)
        return ((ONE_IS[own, other], 1),) if (own, other) in ONE_IS else ()

    def first_unit(self, words: str) -> tuple[str, str]:
        """Return the unit that words begin with, "" for none, and what follows it.

        Examples
        --------
        >>> ColumnUnit("days").first_unit(" working days after proof"), ColumnUnit("pieces").first_unit(" per design")
        (('working days', 'after proof'), ('', 'per design'))
        """
        for length in (2, 1):
            match = re.match(rf"\s*({NO_BREAK}(?:\s+{NO_BREAK}){{{length - 1}}})", words)
            if match and (is_known_unit(match[1]) or self.allows_after(match[1], currency_before=False)):
                return match[1], words[match.end() :].strip(" .")
        return "", words.strip(" .")

    def has_currency(self, word: str) -> bool:
        """Say whether a sign or code is the column's currency."""
        return bool(self.codes & (currencies(word) or {word.strip().upper()}))

    def allows_after(self, word: str, currency_before: bool) -> bool:
        """Say whether a word after a number says just the column's unit, or the rest of it after a currency."""
        if not word:
            return True
        if currency_before:
            return bool(self.rest) and _per(word) == self.rest
        if _meaning(word) in {_meaning(self.unit), _meaning(self.also)}:
            return True
        head, rest = _parted(word)
        return self.has_currency(head) and (not rest or _per(rest) == self.rest)
