"""One number typed as text: its marks for thousands and decimals, its sign, its unit or currency.

Enters: a text and what its column takes. Leaves: the number, or the fault that says what to write. Where two readings
are possible the brief's decimal mark decides, and where it does not, nothing is guessed.
"""

import re
import unicodedata
from collections.abc import Sequence
from dataclasses import field
from decimal import Decimal as Exact

from scorecard.frozen import dataclass
from scorecard.reading.cells import Decimal, Fault, quoted
from scorecard.reading.headings import MINIMUM_PER
from scorecard.reading.patterns import pattern
from scorecard.reading.rough_ranges import Named, in_own_unit, or_working, range_of
from scorecard.reading.units import ColumnUnit, currencies, is_known_unit
from scorecard.words import shortest

THOUSANDS_MARKS = (" ", "'", "’", ",", ".")
FULL_WIDTH = str.maketrans("．，％＋－＜＞～＄￥￡", ".,%+-<>~$¥£")
NO_WIDTH = dict.fromkeys(map(ord, "\u200b\u200c\u200d\u200e\u200f\u2060\ufeff"))
AMOUNT = pattern(
    r"""
    (?P<sign> [+\-−]? ) \s*
    (?P<before> [^\d.,+\-−'’]*? ) \s*
    (?P<inner> [+\-−]? ) \s*
    (?P<number> [.,]?\d (?: [\d.,'’] | \s(?=\d) )* ) \s*
    (?P<after> [^\d]* )
    """,
    re.VERBOSE,
)
DATE_LIKE = pattern(r"\d{1,4}[-/.]\d{1,2}[-/.]\d{1,4}")
MONTH = pattern(
    r"(?=.*\d).*\b(?:jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?"
    r"|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)(?![^\W\d_])",
    re.IGNORECASE,
)
EXPONENT = pattern(r"[+\-−]?\d+(?:[.,]\d+)?[eE][+\-−]?\d+")
ROUGHLY = pattern(r"[~≈∼]|\b(?:about|around|approx|approximately|ca|circa|roughly|some|nearly|almost)\b", re.IGNORECASE)
SMALL_NUMBERS = ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
NUMBER_WORDS = {word: number for number, word in enumerate(SMALL_NUMBERS, 1)} | {
    "fifteen": 15,
    "twenty": 20,
    "thirty": 30,
    "fifty": 50,
    "hundred": 100,
    "thousand": 1000,
}
TIMES = {"k": 1000, "thousand": 1000, "hundred": 100, "dozen": 12, "dozens": 12, "doz": 12}
QUANTITY = pattern(  # 2.4k, 2 dozen: a number, and what it is multiplied by
    rf"((?:(?<![^\s$€£¥])[.,])?\d(?:[\d.,'’]|\s(?=\d))*|\b(?:{'|'.join(NUMBER_WORDS)})\b)"
    rf"(?:\s?({'|'.join(TIMES)})(?![^\W_]))?",
    re.IGNORECASE,
)
BETWEEN = pattern(r"(.*?)\s*(?:[-–—‐‑−]|\b(?:to|or|and)\b)\s*", re.IGNORECASE)  # 3 weeks to 4 weeks
WHOLE_NUMBER = pattern(r"[+-]?[0-9]+")
PLAIN = {mark: pattern(rf"[+-]?[0-9]+(?:{re.escape(mark)}[0-9]+)?") for mark in ".,"}
THOUSANDS = pattern(r"(?<![\d.,'’])(?<![\d.,'’] )[1-9]\d{0,2}[.,]\d{3}(?![\d.,])")  # or three decimals
OUT_OF = pattern(  # 4.6/5, 4.6 (120), and both
    r"(\d+(?:[.,]\d+)?)\s*(?:(?:/|out of)\s*\d+)?(?:\s*stars?)?\s*(?:\((.*)\))?(?:\s*stars?)?", re.IGNORECASE
)
COUNT = pattern(r"(\d[\d.,'’ ]*)(?:ratings?|reviews?)?", re.IGNORECASE)
ATTACHED = pattern(r"\d[^\W\d_]|[^\W\d_]\d|[+\-−]\s*$|\d[.,]{2}")  # 1k: a number that is not the whole of it
PER_UNIT = pattern(r".*\d ?(?:pieces|pcs|pc)?\.? ?(?:per|each|a|/) ?(order|design|colou?r|size)s?", re.IGNORECASE)
NO_MINIMUM = frozenset({"none", "no", "no minimum", "no moq"})
YEARS_OF_THE_CALENDAR = (1800, 2100)
COUNT_YEARS = "Write how many years it has been, or leave the cell empty"
LEAST_AND_GREATEST = "Write the least and the greatest that it can be, as in 3-5"
GREATEST_TOLD = 1e100  # so that it can be multiplied
AS_TEXT = 'where a spreadsheet made a date of 3-5, format the cell as text and type "3 to 5"'
WRITE_A_NUMBER = "Write a number, a range such as 3-5, or leave the cell empty"


@dataclass(frozen=True, slots=True, kw_only=True)
class NumberRule:
    """What a column of numbers takes.

    Parameters
    ----------
    unit : of its numbers
    decimal : the decimal mark, where the brief or the file settles it
    all_is_text : whether every cell is text, as in a .csv; then only what needed settling is listed
    within : the least and greatest number; None where any will do
    counts : what is counted, where a number cannot be below 0: "pieces", "ratings"
    is_minimum : whether it is a minimum order, where "from 100" is 100
    counted_under : of a rating, the heading under which it is written how many there are; "" where nowhere
    """

    unit: ColumnUnit = field(default_factory=lambda: ColumnUnit(""))
    decimal: Decimal | None = None
    all_is_text: bool = False
    within: tuple[float, float] | None = None
    counts: str | None = None
    is_minimum: bool = False
    counted_under: str = ""

    @property
    def of_unit(self) -> str:
        """Words such as " of days", or none."""
        return f" of {self.unit.unit}" if self.unit.unit else ""

    def is_plain(self, text: str) -> bool:
        """Say whether a text is a number that its user need not be told of."""
        if WHOLE_NUMBER.fullmatch(text):
            return True
        return (
            self.all_is_text and PLAIN[self.decimal or "."].fullmatch(text) is not None and not THOUSANDS.search(text)
        )

    def thousands_as_decimals(self, text: str) -> str | None:
        """Return the first number of a text that was settled as decimals and could be thousands, or None."""
        return next((one[0] for one in THOUSANDS.finditer(text) if self.decimal and self.decimal in one[0]), None)


def tidy(text: str) -> str:
    """Return a text with plain spaces, single and none outside, and every decimal digit as 0 to 9.

    Superscripts, fractions and number letters are left as they are: folding them would turn 10² into 102.
    """
    plain = " ".join(text.translate(NO_WIDTH).split())
    if plain.isascii():
        return plain
    return "".join(str(unicodedata.decimal(sign, sign)) for sign in plain.translate(FULL_WIDTH))


def readings(number: str) -> set[float]:
    """Return every number that digits with marks can mean.

    Examples
    --------
    >>> sorted(readings("1.250")), sorted(readings("0.125")), sorted(readings("1,250.5")), sorted(readings("1,2,3"))
    ([1.25, 1250.0], [0.125], [1250.5], [])
    """
    found = set()
    for thousands in ("", *THOUSANDS_MARKS):
        for decimal in ".,":
            if thousands != decimal and _fits(number, thousands, decimal):
                digits = number.replace(thousands, "") if thousands else number
                found.add(float(digits.replace(decimal, ".")))
    return found


def _fits(number: str, thousands: str, decimal: str) -> bool:
    """Say whether digits are written with these two marks, the groups of thousands complete."""
    whole = rf"[1-9]\d{{0,2}}(?:{re.escape(thousands)}\d{{3}})+" if thousands else r"\d*"
    return re.fullmatch(rf"{whole}(?:{re.escape(decimal)}\d+)?", number) is not None and number != ""


def settle(number: str, decimal: Decimal | None) -> float | Fault:
    """Return what digits with marks mean, the decimal mark deciding where there are two readings."""
    found = sorted(readings(number))
    if len(found) == 1:
        return found[0]
    if not found:
        return Fault("not-a-number", f"{quoted(number)} is not a number", WRITE_A_NUMBER)
    if decimal:
        return found[0] if decimal in number else found[1]
    low, high = (shortest(value) for value in found)
    mark = "." if "." in number else ","
    other = "," if mark == "." else "."
    return Fault(
        "ambiguous-number",
        f"{quoted(number)} can be {low} or {high}",
        f"Write {high} without a mark, or add under [brief] in the criteria file the line "
        f'decimal = "{mark}" (then it is {low}) or decimal = "{other}" (then it is {high})',
    )


def read_amount(text: str, rule: NumberRule) -> float | Fault:
    """Return one number with at most its sign and its column's unit or currency beside it.

    Parameters
    ----------
    text : tidied
    rule : what the column takes
    """
    match = AMOUNT.fullmatch(text)
    if not match or (match["sign"] and match["inner"]):
        return not_a_number(text, rule)
    beside = _beside(text, match["before"].strip(), match["after"].strip(), rule)
    if beside:
        return beside
    value = settle(match["number"], rule.decimal)
    if isinstance(value, Fault):
        return value if value.code == "ambiguous-number" else not_a_number(text, rule)
    return -value if (match["sign"] or match["inner"]) in {"-", "−"} else value


def _beside(text: str, before: str, after: str, rule: NumberRule) -> Fault | None:
    """Return what is wrong with the words before and after a number, if anything is."""
    unit = rule.unit
    if (not before or unit.has_currency(before)) and unit.allows_after(after, bool(before)):
        return None
    if _is_other_money(ROUGHLY.sub("", before).strip(" ."), after, unit):
        return _other_money(text, rule)
    if not before and is_known_unit(after):
        alone = f"Write the number{rule.of_unit}{_told(text, after, rule)}" if unit.unit else "Write the number alone"
        wanted = _elsewhere(text, rule) or alone
        return Fault("other-unit", f"{quoted(text)} is not a number{rule.of_unit}", wanted)
    return not_a_number(text, rule)


def _told(text: str, word: str, rule: NumberRule) -> str:
    """Return words that say a number of another unit in the column's own, or none."""
    named = _named(text, rule)
    told = in_own_unit(named[0], rule.unit.rates(word)) if named else []
    return f": {or_working(told)}" if told else ""


def _is_other_money(before: str, after: str, unit: ColumnUnit) -> bool:
    """Say whether a currency that is not the column's stands beside a number."""
    beside = (before, after.partition(" ")[0].partition("/")[0])
    return any(word and currencies(word) and not unit.has_currency(word) for word in beside)


def _other_money(text: str, rule: NumberRule) -> Fault:
    """Return the fault of an amount of money in a column of another currency, or of something else."""
    if rule.unit.codes:
        wanted = f"Write it in {rule.unit.unit}, as a number alone"
        return Fault("other-currency", f"{quoted(text)} is in another currency than its column", wanted)
    found = f"{quoted(text)} is an amount of money, where a number{rule.of_unit} is due"
    return Fault("money-for-number", found, _elsewhere(text, rule) or f"Write the number{rule.of_unit} alone")


def _elsewhere(text: str, rule: NumberRule) -> str | None:
    """Return advice where the first number of a text is one that its column would refuse, or None."""
    first = QUANTITY.search(text)
    number = settle(first[1].rstrip(" .,'’"), rule.decimal) if first and rule.within else None
    return _outside(number, rule) if isinstance(number, float) else None


def _outside(number: float, rule: NumberRule) -> str | None:
    """Return advice where a number is one that its column would refuse, or None."""
    if rule.unit.is_of_years and is_year(number):
        return COUNT_YEARS
    if rule.within is None or rule.within[0] <= number <= rule.within[1]:
        return None
    low, high = (shortest(end) for end in rule.within)
    return f"Write a number from {low} to {high}, which {shortest(number)} is not, or leave the cell empty"


def _named(text: str, rule: NumberRule) -> list[Named]:
    """Return the numbers that a text names, of 4.6/5 and 4.6 (120) the first; none where one of them cannot be told."""
    whole = OUT_OF.fullmatch(text)
    text = whole[1] if whole else text
    found = list(QUANTITY.finditer(text))
    named = []
    for match, end in zip(found, [*(after.start() for after in found[1:]), len(text)], strict=False):
        word = match[1].rstrip(" .,'’")
        number = NUMBER_WORDS.get(word.casefold()) or settle(word, rule.decimal)
        if isinstance(number, Fault) or number > GREATEST_TOLD:
            return []
        named.append(Named(Exact(shortest(number)), TIMES.get((match[2] or "").casefold(), 1), text[match.end() : end]))
    return named


def _holds_a_date(text: str) -> bool:
    """Say whether a text looks as if a date stood in it; 4.6/5 (120) is none."""
    return not OUT_OF.fullmatch(text) and bool(DATE_LIKE.search(text) or MONTH.match(text))


def _range_for(text: str, rule: NumberRule) -> str:
    """Return advice to write a range that fits a rough number: a tenth less to a tenth more, or the range it names.

    It is in the column's unit; where another stands beside the number whose rate is not sure, no range is named.
    """
    core = " ".join(ROUGHLY.sub(" ", text).split()).removeprefix(". ")
    named = [] if _holds_a_date(core) else _named(core, rule)
    if len(named) not in (1, 2):
        return LEAST_AND_GREATEST
    before = "".join(QUANTITY.split(core, 1)[0].split()[-1:])
    rest = named[-1].rest
    unit, tail = rule.unit.first_unit(rest)
    is_other = _is_other_money(before, rest.strip(), rule.unit) or (rest[:1].isalpha() and not unit)
    rates = () if is_other else rule.unit.rates(unit)
    if not rates:
        in_unit = f" in {rule.unit.unit}" if rule.unit.unit else ""
        return f"Write the least and the greatest that it can be{in_unit}, as in 3-5"
    if len(named) > 1 and not _is_one_range(named, rates, rule):
        return LEAST_AND_GREATEST
    ranges = [range_of(named, rate, rule.within) + _kind(unit, rule) for rate in rates]
    outside = _outside(named[0].in_unit(rates[0]), rule)
    return outside or f"Write a range such as {or_working(ranges)}{_doubt(core, unit, tail, rule)}"


def _is_one_range(named: Sequence[Named], rates: Sequence[tuple[int, int]], rule: NumberRule) -> bool:
    """Say whether two numbers are the ends of one range: multiplied alike, in one unit, the greater last."""
    low, high = named
    between = BETWEEN.fullmatch(low.rest)
    if between is None or low.times != high.times or low.number > high.number:
        return False
    unit = between[1].strip()
    return not unit or (rule.unit.first_unit(unit) == (unit, "") and rule.unit.rates(unit) == rates)


def _kind(unit: str, rule: NumberRule) -> str:
    """Return the kind of days that must stand beside a number of them, or none."""
    return f" {rule.unit.unit}" if unit and rule.unit.is_kind_of_days else ""


def _doubt(core: str, unit: str, tail: str, rule: NumberRule) -> str:
    """Return where the rest of a rough number belongs, or that it is to be looked at where that cannot be told."""
    aside = _aside(core, rule)
    is_sure = not tail or not rule.unit.unit or (unit and not rule.unit.codes)
    return aside or ("" if is_sure else f", if a number{rule.of_unit} is meant")


def _likely(text: str, rule: NumberRule) -> str | None:
    """Return advice that names the number which is likely meant, or None where there is no telling."""
    if rule.is_minimum and text.casefold() in NO_MINIMUM:
        return "If there is no minimum, write 1"
    named = _named(text, rule)
    bare = QUANTITY.sub(r"\1", text)
    if len(named) != 1 or _holds_a_date(text) or ATTACHED.search(bare) or text.startswith("("):
        return None
    unit, _ = rule.unit.first_unit(named[0].rest)
    rates = rule.unit.rates(unit)
    told = in_own_unit(named[0], rates)
    if not told:
        return f"Write the number{rule.of_unit}"
    first, *others = (one + _kind(unit, rule) for one in told)
    also = "".join(f", or {one} if working days are meant" for one in others) + _aside(text, rule)
    alone = f"If {first} is meant, write that alone{also}"
    return _outside(named[0].in_unit(rates[0]), rule) or alone


def _aside(text: str, rule: NumberRule) -> str:
    """Return where the rest of a text belongs: how many ratings, or what a minimum is per; "" where nowhere."""
    per = PER_UNIT.fullmatch(QUANTITY.sub(r"\1", text)) if rule.is_minimum else None
    if per:
        return f", and {per[1].casefold().replace('color', 'colour')} under {MINIMUM_PER}"
    whole = OUT_OF.fullmatch(text)
    count = COUNT.fullmatch(whole[2]) if whole and whole[2] and rule.counted_under else None
    return f", and {count[1].strip()} under {rule.counted_under}" if count else ""


def is_year(number: float) -> bool:
    """Say whether a number looks like a year of the calendar."""
    return YEARS_OF_THE_CALENDAR[0] <= number <= YEARS_OF_THE_CALENDAR[1]


def not_a_number(text: str, rule: NumberRule) -> Fault:
    """Return the fault of a text that holds no number, with the advice that fits it best."""
    if ROUGHLY.search(text):
        return Fault("rough-number", f"{quoted(text)} is only roughly a number", _range_for(text, rule))
    likely = _likely(text, rule)
    if not likely and (DATE_LIKE.fullmatch(text) or MONTH.match(text)):
        found = f"{quoted(text)} looks like a date, where a number is due"
        return Fault("date-for-number", found, f"{WRITE_A_NUMBER}; {AS_TEXT}")
    odd = next((sign for sign in text if unicodedata.category(sign) in {"No", "Nl"}), None)
    found = f"{quoted(text)} holds the sign {odd}" if odd else f"{quoted(text)} is not a number{rule.of_unit}"
    return Fault("not-a-number", found, likely or _advice(text, rule, odd))


def _advice(text: str, rule: NumberRule, odd: str | None) -> str:
    """Return what to write instead of a text whose number cannot be told."""
    if EXPONENT.fullmatch(text):
        return "Write the number out in full, such as 1000"
    if text.startswith("(") and text.endswith(")"):
        return "Write it without brackets" + ("" if rule.counts else ", with a minus sign if it is below 0")
    return "Write the number in digits, such as 0.5" if odd else WRITE_A_NUMBER
