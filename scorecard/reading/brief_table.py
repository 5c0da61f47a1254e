"""The tables [brief] and [firmness] of the criteria file.

Enters: the tables. Leaves: the brief, with the parts that are sound, and how firmness is worked out.
"""

from dataclasses import replace
from typing import Literal

from scorecard.brief import Brief
from scorecard.criteria import Firmness
from scorecard.reading.toml_codes import country_at, currency_at
from scorecard.reading.toml_tables import Notes, Table
from scorecard.reading.units import ANY_MONEY
from scorecard.words import shortest

BRIEF_KEYS = (
    "item",
    "quantity",
    "designs",
    "colours",
    "sizes",
    "destination",
    "currency",
    "need_by",
    "print_width_mm",
    "print_height_mm",
    "bleed_mm",
    "decimal",
)
DECIMAL_MARKS: tuple[Literal[".", ","], ...] = (".", ",")
FIRMNESS_KEYS = ("spread", "seed")


def read_brief(table: Table) -> Brief | None:
    """Return the brief, or None where the item or the quantity cannot be told; a part with a problem is left out."""
    table.known_keys(BRIEF_KEYS, "the brief")
    table.required(("item", "quantity"), "the brief")
    item = table.text("item")
    quantity = table.whole("quantity", least=1)
    designs = _designs(table, quantity)
    colours, sizes = table.whole("colours", least=1), table.whole("sizes", least=1)
    width, height = table.number_above_zero("print_width_mm"), table.number_above_zero("print_height_mm")
    bleed = _bleed(table)
    destination, currency = country_at(table, "destination"), currency_at(table, "currency")
    need_by = table.day("need_by")
    decimal = table.one_of("decimal", DECIMAL_MARKS)
    if item is None or quantity is None:
        return None
    return Brief(
        item=item,
        quantity=quantity,
        designs=designs,
        colours=colours,
        sizes=sizes,
        destination=destination,
        currency=currency,
        need_by=need_by,
        print_width_mm=width,
        print_height_mm=height,
        bleed_mm=bleed,
        decimal=decimal,
    )


def as_named(table: Table, brief: Brief | None) -> Brief | None:
    """Return what a brief names in spite of problems, with stand-ins that no other part can find fault with.

    Parameters
    ----------
    table : whose problems are noted already
    brief : as ``read_brief`` returns it
    """
    if brief is None:
        stand_ins = {"item": "…", "quantity": 1, "designs": 1}
        brief = read_brief(Table({**table.values, **stand_ins}, table.path, Notes(table.notes.file)))
    if brief is not None and brief.currency is None and table.notes.is_told_of(table.at("currency")):
        return replace(brief, currency=ANY_MONEY)
    return brief


def read_firmness(table: Table) -> Firmness:
    """Return how firmness is worked out; what is absent or has a problem is as usual."""
    table.known_keys(FIRMNESS_KEYS, "[firmness]")
    usual = Firmness()
    spread, seed = table.number("spread"), table.whole("seed", least=0)
    if spread is not None and not 0 < spread <= 1:
        wanted = "Write a part of 1, such as 0.25 for weights that may be a quarter more or less"
        table.problem("not-a-part-of-one", "spread", f"{shortest(spread)} is not above 0 and at most 1", wanted)
        spread = None
    return Firmness(spread=usual.spread if spread is None else spread, seed=usual.seed if seed is None else seed)


def _designs(table: Table, quantity: int | None) -> int:
    """Return the number of designs, 1 where it cannot be told."""
    designs = table.whole("designs", least=1)
    if designs is not None and quantity is not None and designs > quantity:
        found = f"{designs} designs are more than the {quantity} pieces wanted"
        table.problem("more-designs-than-pieces", "designs", found, "Write how many designs the pieces are split into")
        return 1
    return designs or 1


def _bleed(table: Table) -> float | None:
    """Return the bleed in mm, 0 or more."""
    bleed = table.number("bleed_mm")
    if bleed is not None and bleed < 0:
        wanted = "Write how many millimetres are printed beyond each edge, such as 3, or 0"
        table.problem("negative", "bleed_mm", f"{shortest(bleed)} is below 0", wanted)
        return None
    return bleed
