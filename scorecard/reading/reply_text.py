"""A whole reply typed into one cell, such as "480 all in, 100 pieces, by air": where each part of it goes.

Enters: the text of a price that is no number. Leaves: words that say what to write under which heading, as far as the
parts can be recognised; nothing is read from it.
"""

import re

from scorecard.codes import CURRENCY_DECIMALS
from scorecard.costing.quotes import TERMS
from scorecard.reading.units import CURRENCY_SIGNS

_NUMBER = r"\d[\d.,' ]*\d|\d"
_PIECES = re.compile(rf"({_NUMBER})\s*-?\s*(?:pieces?|pcs?|units?|items?|off)\b", re.IGNORECASE)
_DAYS = re.compile(r"(\d+(?:\s*(?:-|–|to)\s*\d+)?)\s*days?\b", re.IGNORECASE)
_WORKING_DAYS = re.compile(r"(\d+(?:\s*(?:-|–|to)\s*\d+)?\s*(?:working|business)\s*days?)\b", re.IGNORECASE)
_DEPOSIT = re.compile(r"(\d+(?:[.,]\d+)?)\s*%\s*(?:deposit|down|up front|upfront|in advance)", re.IGNORECASE)
_ALL = re.compile(r"\b(?:all[ -]?in|in all|altogether|(?:in )?total|for all|lump sum)\b", re.IGNORECASE)
_ALL_IN = re.compile(r"\ball[ -]?in(?:clusive)?\b", re.IGNORECASE)
_EACH = re.compile(r"\b(?:each|ea|per (?:piece|pc|unit|item))\b|/\s*(?:piece|pc|unit)\b", re.IGNORECASE)
_TERM = re.compile(rf"\b({'|'.join(TERMS)})\b(?:\s+([A-Z][\w'-]*(?: [A-Z][\w'-]*)*))?")
_WAYS = {
    "sea": "sea", "ship": "sea", "boat": "sea", "ocean": "sea", "lcl": "sea", "air": "air", "plane": "air",
    "express": "express", "courier": "express", "rail": "rail", "train": "rail", "road": "road", "truck": "road",
    "lorry": "road", "post": "post", "mail": "post", "parcel": "post",
}  # fmt: skip
_WAY = re.compile(rf"\b({'|'.join(_WAYS)})\b", re.IGNORECASE)
_SIGN = r"[A-Za-z]{0,3}[$€£¥₹]|[A-Z]{3}\b|(?:eur|usd|gbp|cny|rmb|jpy)\b"
_AMOUNT = re.compile(rf"(?P<before>{_SIGN})?\s*(?P<number>{_NUMBER})\s*(?P<after>{_SIGN})?")
_NO_CURRENCY = "ALL"  # a currency's code elsewhere
_COUNTED = (("Deposit %", _DEPOSIT), ("Pieces", _PIECES), ("Days", _WORKING_DAYS), ("Days", _DAYS))
_ORDER = ["Pieces", "Price", "Price is for", "Currency", "Price covers", "Way", "Days"]
_ORDER += ["Delivery term", "Place", "Deposit %"]
ALL_COVERED = "to my door, duty and tax paid (if that is what all in means, else don't know)"


def where_parts_go(text: str) -> str | None:
    """Return what to write where instead of a whole reply in one cell; None where at most a price is recognised.

    Examples
    --------
    >>> where_parts_go("2.10 each, 100 pieces, by air")
    'Give each part the cell of its heading in this row – Pieces: 100; Price: 2.10; Price is for: each; Way: air'
    """
    parts = parts_of_reply(text)
    if "Price" not in parts or not parts.keys() - {"Price", "Currency"}:
        return None
    told = "; ".join(f"{heading}: {part}" for heading, part in parts.items())
    return f"Give each part the cell of its heading in this row – {told}"


def parts_of_reply(text: str) -> dict[str, str]:
    """Return what each part of a reply would be under its heading, in the order of the sheet.

    Examples
    --------
    >>> parts_of_reply("2.10 each, 100 pieces, by air")
    {'Pieces': '100', 'Price': '2.10', 'Price is for': 'each', 'Way': 'air'}
    """
    found: dict[str, str] = {}
    rest = text
    for heading, pattern in _COUNTED:
        if match := pattern.search(rest):
            found[heading] = match[1].strip()
            rest = f"{rest[: match.start()]} , {rest[match.end() :]}"
    found |= _price(rest) | _way_and_term(rest)
    if _ALL.search(rest):
        found["Price is for"] = "all"
    elif _EACH.search(rest):
        found["Price is for"] = "each"
    if _ALL_IN.search(rest):
        found["Price covers"] = ALL_COVERED
    return {heading: found[heading] for heading in _ORDER if heading in found}


def _price(rest: str) -> dict[str, str]:
    match = _AMOUNT.search(rest)
    if match is None:
        return {}
    code = _currency(match["before"]) or _currency(match["after"])
    return {"Price": match["number"].strip(" .,'")} | ({"Currency": code} if code else {})


def _currency(sign: str | None) -> str | None:
    """Return the one currency that a sign or a code means; None where it may be several."""
    if not sign or sign == _NO_CURRENCY:
        return None
    meant = CURRENCY_SIGNS.get(sign.lower(), ())
    if meant:
        return meant[0] if len(meant) == 1 else None
    return sign.upper() if sign.upper() in CURRENCY_DECIMALS else None


def _way_and_term(rest: str) -> dict[str, str]:
    found: dict[str, str] = {}
    if way := _WAY.search(rest):
        found["Way"] = _WAYS[way[1].lower()]
    if term := _TERM.search(rest):
        found["Delivery term"] = term[1]
        found |= {"Place": term[2]} if term[2] else {}
    return found
