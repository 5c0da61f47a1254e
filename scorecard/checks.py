"""Checks: what a careful small buyer looks into before money moves, what is still open, and warning signs.

Enters: rows of the sheet Checks. Leaves: by maker what is done, open, or a warning sign. What makers say of themselves
is told as stated by them; nothing here is a verdict on anybody's honesty.

Sources, all public guidance for small buyers: the EU SME Centre's questions and answers (licence, advance payment), a
US Commercial Service note (references, unsolicited fees), banks' and county treasury pages (the name on the account),
an FBI notice on payment fraud (changed accounts, refusal to speak), the US Consumer Product Safety Commission's guide
to laboratories (test reports). What is marked "common practice" has no source.
"""

from collections.abc import Sequence
from dataclasses import field
from datetime import date
from typing import Literal, get_args

from scorecard.errors import Place
from scorecard.frozen import dataclass

State = Literal["yes", "no", "waiting", "does not apply"]
STATES: tuple[State, ...] = get_args(State)


@dataclass(frozen=True, slots=True, kw_only=True)
class KnownCheck:
    """A check of the usual list.

    Parameters
    ----------
    name : as it stands in the sheet
    how : what to do, in one sentence without the full stop
    sign : what a "no" means, in one sentence without the full stop
    source : whose guidance says so
    """

    name: str
    how: str
    sign: str
    source: str


USUAL_CHECKS: tuple[KnownCheck, ...] = (
    KnownCheck(
        name="registered name and number",
        how="Ask for the registration, and find name, number and trade in the public register",
        sign="the company was not found in its register, or its trade does not cover these goods",
        source="EU SME Centre",
    ),
    KnownCheck(
        name="who prints it",
        how="Ask whether it prints itself; if not, who does and where",
        sign="it does not say who prints the goods",
        source="common practice",
    ),
    KnownCheck(
        name="references",
        how="Ask for two buyers of such goods, and call them",
        sign="it names no buyer who can be asked",
        source="US Commercial Service",
    ),
    KnownCheck(
        name="reachable by phone or video",
        how="Speak with it once by phone or video, best at the press",
        sign="it does not want to speak by phone or video",
        source="FBI notice",
    ),
    KnownCheck(
        name="test report for these goods",
        how="See that the report names these goods and this maker, is recent, and comes from a laboratory accredited "
        "for that very test",
        sign="there is no recent test report that names these goods",
        source="US Consumer Product Safety Commission",
    ),
    KnownCheck(
        name="protected payment",
        how="Pay in a way that lets you complain and get the money back, and read how long",
        sign="it wants all the money in advance, or by a way without protection",
        source="EU SME Centre",
    ),
    KnownCheck(
        name="bank name equals company name",
        how="Compare the name on the account with the registered name; confirm any change on a phone number that you "
        "already had",
        sign="the account is in another name than the company's",
        source="banks' and county treasury pages",
    ),
    KnownCheck(
        name="rights to the artwork",
        how="Have it in writing that files, screens and artwork stay yours",
        sign="it does not agree in writing that the artwork stays yours",
        source="common practice",
    ),
    KnownCheck(
        name="no selling of overruns",
        how="Have it in writing that pieces beyond your order are not sold or shown",
        sign="it does not agree that pieces beyond the order are not sold",
        source="common practice",
    ),
)

MONEY_CAUTION = (
    "Stay in the channel whose protection you rely on. A bank transfer seldom comes back. Confirm changed bank details "
    "by a phone number that you already had. A warning sign is a reason to ask, not a proof of anything."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Check:
    """One row of the sheet Checks.

    Parameters
    ----------
    maker : spelt as on the sheet Makers
    row : in the sheet, from 1
    name : what was checked; as in the usual list where it is one of it
    """

    maker: str
    row: int
    name: str
    state: State
    checked_on: date | None = None
    place: Place = field(default_factory=Place)


@dataclass(frozen=True, slots=True, kw_only=True)
class Checked:
    """What is known of one maker's checks.

    Parameters
    ----------
    done : with yes, or not applying
    open : of the usual list and of the user's own: not looked at, or waiting
    signs : those that came out with no
    """

    done: tuple[Check, ...]
    open: tuple[str, ...]
    signs: tuple[Check, ...]


def usual(name: str) -> KnownCheck | None:
    """Return the check of the usual list that has this name, ignoring case, or None."""
    return next((one for one in USUAL_CHECKS if one.name == name.casefold().strip()), None)


def checked(checks: Sequence[Check], maker: str) -> Checked:
    """Return what is done, open and a warning sign of one maker; of a check that stands twice, the last row counts."""
    last = {one.name.casefold(): one for one in checks if one.maker == maker}
    own = [one for one in last.values() if usual(one.name) is None and one.state == "waiting"]
    usual_open = [one.name for one in USUAL_CHECKS if _is_open(last.get(one.name))]
    return Checked(
        done=tuple(one for one in last.values() if one.state in ("yes", "does not apply")),
        open=(*usual_open, *(one.name for one in own)),
        signs=tuple(one for one in last.values() if one.state == "no"),
    )


def _is_open(check: Check | None) -> bool:
    return check is None or check.state == "waiting"


def sign_of(check: Check) -> str:
    """Return what a "no" means, with whose guidance says so, in one sentence without the full stop."""
    known = usual(check.name)
    if known is None:
        return f"“{check.name}” came out with no"
    guidance = known.source if known.source == "common practice" else f"guidance: {known.source}"
    return f"{known.sign} ({guidance})"
