"""Cases with quotes, built in code: makers with answers, and what each asks for 200 mugs brought to the door."""

from dataclasses import replace
from datetime import date

from cases import make_case, numbers
from quoted import inputs, quote

from scorecard.brief import Brief

BRIEF = Brief(item="enamel mug", quantity=200, destination="GB", currency="GBP", need_by=date(2027, 5, 14))
PAID = "to my door, duty and tax paid"


def case_of(answers, quotes, *, weight=None, brief=BRIEF, limit=None, **more):
    """Return a case of makers worth what is typed, some of them quoted.

    Parameters
    ----------
    answers : points by maker
    quotes : price of each piece, at the door and all paid, by maker; or a row made by ``quoted.quote``
    limit : on the answers; None for no limit
    weight : of the criterion that draws on landed cost; None for no such criterion
    """
    criteria = [numbers("a", 1, limit=limit)]
    rows = {maker: [points] for maker, points in answers.items()}
    if weight is not None:
        criteria.append(
            replace(numbers("landed", weight, (1, 100), (11, 0)), measure="landed_cost_per_piece", column=None)
        )
        rows = {maker: [*row, None] for maker, row in rows.items()}
    case = make_case(criteria, rows, brief=brief)
    asked = [
        price if hasattr(price, "maker") else quote(price, maker=maker, row=at, covers=PAID, way="road", days=30)
        for at, (maker, price) in enumerate(quotes.items(), start=2)
    ]
    return replace(case, costs=inputs(*asked, brief=brief, **more) if asked else None)
