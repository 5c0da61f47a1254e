"""Landed costs built in code, for tests that read no file: quotes, offers and charges in a line each."""

from dataclasses import replace
from datetime import date, timedelta
from decimal import Decimal

from scorecard.brief import Brief
from scorecard.costing.amounts import Span
from scorecard.costing.charges import Charge
from scorecard.costing.currencies import Rate, Rates
from scorecard.costing.freight import FreightOffer
from scorecard.costing.import_presets import preset_for
from scorecard.costing.inputs import CostInputs, CostSettings, MakerFacts
from scorecard.costing.landed import landed_costs
from scorecard.costing.quotes import QuoteRow
from scorecard.costing.timing import Course, Timing
from scorecard.errors import Place

TODAY = date(2026, 11, 25)
MAKER = "Fernhill"
HEADINGS = {"Maker": "A", "Pieces": "C", "Price": "D", "Price covers": "G", "Delivery term": "J", "Place": "K"}
HEADINGS |= {"Valid until": "R", "From pieces": "C"}


def span(value):
    """Return a Span of a number, a text, or a pair; None stays None."""
    if value is None or isinstance(value, Span):
        return value
    return Span.of(*value) if isinstance(value, tuple) else Span.of(value)


def places(sheet, row):
    return {heading: Place(sheet=sheet, cell=f"{letter}{row}") for heading, letter in HEADINGS.items()}


def quote(price, *, maker=MAKER, row=2, **more):
    """Return a row of the sheet Quotes: by default a price each, for goods only, in GBP."""
    kept = {"price_is_for": "each", "currency": "GBP", "covers": "goods"} | more
    for field in ("setup", "sample_price", "sample_postage", "days", "deposit_percent"):
        kept[field] = span(kept.get(field))
    return QuoteRow(maker=maker, row=row, price=span(price), places=places("Quotes", row), **kept)


def offer(way, cost=None, *, maker=MAKER, row=2, **more):
    """Return a row of the sheet Freight, in GBP."""
    kept = {"currency": "GBP"} | more
    for field in ("rate_per_kg", "rate_per_revenue_ton", "days"):
        kept[field] = span(kept.get(field))
    return FreightOffer(maker=maker, row=row, way=way, cost=span(cost), places=places("Freight", row), **kept)


def charge(name, amount=None, *pays_for, **more):
    """Return a charge, in GBP."""
    percent = more.pop("percent", None)
    return Charge(
        name=name,
        amount=span(amount),
        pays_for=pays_for,
        percent=None if percent is None else Decimal(percent),
        **({"currency": "GBP"} | more),
    )


def uk(duty="4", tax="20", **more):
    """Return the rules of the UK with rates."""
    kept = {"tax_is": "cost"} | more
    return replace(preset_for("GB"), duty_percent=span(duty), tax_percent=span(tax), **kept)


def dollars(figure="1.25"):
    """Return rates with so many USD for one GBP."""
    return Rates(home="GBP", rates={"USD": Rate(currency="USD", figure=Decimal(figure), means="for one home")})


def inputs(*quotes, makers=None, brief=None, settings=None, **more):
    """Return what a landed cost is reckoned from: 200 mugs to the UK, in GBP, from makers in China."""
    facts = dict(makers or {})
    for row in quotes:
        facts.setdefault(row.maker, MakerFacts(maker=row.maker, country="CN"))
    home = more.get("rates", Rates(home="GBP")).home
    kept = {"rates": Rates(home="GBP"), "imports": uk(), "offers": ()} | more
    return CostInputs(
        brief=brief or Brief(item="mug", quantity=200, destination="GB", currency=home),
        as_of=TODAY,
        makers=facts,
        quotes=quotes,
        settings=settings or CostSettings(),
        **kept,
    )


def timing(status="in time", order_by=date(2026, 12, 20), rests_on="", **days):
    """Return what a schedule says: a sample asked for 20 days before the order; sent, there, ready as given."""
    course = {"with_sample": False, "ordered_on": TODAY, "sent_on": None, "door_on": order_by, "ready_on": order_by}
    return Timing(
        status=status,
        begin_by=order_by - timedelta(days=20),
        order_by=order_by,
        quickly_by=order_by + timedelta(days=10),
        rests_on=rests_on,
        course=Course(**course | days),
    )


def landed(*quotes, **more):
    """Return the landed costs of some quotes."""
    return landed_costs(inputs(*quotes, **more))


def lines(cost):
    """Return the lines of a landed cost with one reading: key to its low end."""
    (reading,) = cost.readings
    return {line.key: line.low for line in reading.lines}


ORIGIN = ("loading", "collection", "export clearance", "origin charges", "loading on board")


def published(tax_is="cost", **more):
    """Return the inputs of the composite example: 200 pieces at 1.20 USD by air to the UK."""
    return inputs(
        quote("1.20", currency="USD", setup=60, setup_per="order", sample_price=0, sample_postage=0),
        offers=(offer("air", "58.90", currency="USD", covers="from the port to my door"),),
        shipping_charges=(
            charge("Collection and export", 45, *ORIGIN, currency="USD", group="freight"),
            charge("Insurance", 5, "insurance", currency="USD", group="freight"),
        ),
        imports=uk(tax_is=tax_is, charges=(charge("Clearance", 18, "clearance", group="border"),)),
        settings=CostSettings(faulty_percent=Decimal(3), charges=(charge("Bank fee", 12, group="payment"),)),
        **({"rates": dollars()} | more),
    )
