"""Presets of a destination's bases for duty and import tax, each with its legal source and the day it was seen.

Only bases and cutting are preset; the rates are the user's. Thresholds of relief are dated, and off.
"""

from dataclasses import replace
from decimal import Decimal
from types import MappingProxyType

from scorecard.costing.importing import Cutting, DutyBase, ImportRules, Relief, TaxBase
from scorecard.frozen import dataclass

_EU_CODES = "AT BE BG CY CZ DE DK EE ES FI FR GR HR HU IE IT LT LU LV MT NL PL PT RO SE SI SK"
_EU = frozenset(_EU_CODES.split())
_EU_CURRENCIES = MappingProxyType({"CZ": "CZK", "DK": "DKK", "HU": "HUF", "PL": "PLN", "RO": "RON", "SE": "SEK"})
_SEEN = "seen in November 2026 in stored copies, which may be older"
_MEMORY = "from memory"
_DOWN_CENT = Cutting(cut="down")
_DOWN_100 = Cutting(step=Decimal(100), cut="down")
_DOWN_1000 = Cutting(step=Decimal(1000), cut="down")


@dataclass(frozen=True, slots=True, kw_only=True)
class Preset:
    """The bases of one destination.

    Parameters
    ----------
    countries : ISO 3166-1 alpha-2; no customs border lies between them
    """

    name: str
    countries: frozenset[str]
    currency: str
    duty_base: DutyBase
    tax_base: TaxBase
    legal: str
    seen: str = _SEEN
    relief: Relief | None = None


PRESETS: tuple[Preset, ...] = (
    Preset(
        name="UK",
        countries=frozenset({"GB", "IM"}),
        currency="GBP",
        duty_base="price, freight and insurance",
        tax_base="and all costs to the door",
        legal="Duty: gov.uk guidance on delivery costs in customs value. VAT: gov.uk guidance on working out the VAT "
        "value of imports; HMRC manual IMPS04150",
        relief=Relief(
            up_to=Decimal(135),
            currency="GBP",
            dated="its end by March 2029 is announced (seen November 2026)",
            source="a news page; duty only, VAT is due",
        ),
    ),
    Preset(
        name="EU",
        countries=_EU,
        currency="EUR",
        duty_base="price, freight and insurance",
        tax_base="and all costs to the door",
        legal="Duty: Union Customs Code (EU) 952/2013, articles 70 and 71. VAT: Directive "
        "2006/112/EC, articles 85 and 86",
        seen=f"{_SEEN}; the articles of the Customs Code {_MEMORY}",
        relief=Relief(
            up_to=Decimal(150),
            currency="EUR",
            dated="since 1 July 2026 parcels to consumers pay 3 EUR for each tariff line instead (seen November 2026)",
            source="tax and trade pages; VAT is due from the first euro since 1 July 2021",
        ),
    ),
    Preset(
        name="Canada",
        countries=frozenset({"CA"}),
        currency="CAD",
        duty_base="price to the export border",
        tax_base="duty base and duty",
        legal="CBSA memoranda D13-3-3, D13-3-4 and D13-3-5",
        relief=Relief(
            up_to=Decimal(20),
            currency="CAD",
            of="duty and tax",
            dated="notice 20-18 (seen November 2026); other limits by courier from the USA and Mexico",
            source="CBSA page on low-value shipments",
        ),
    ),
    Preset(
        name="Australia",
        countries=frozenset({"AU"}),
        currency="AUD",
        duty_base="price to the export border",
        tax_base="and freight and insurance",
        legal="Australian Border Force, duty calculation routines",
        relief=Relief(
            up_to=Decimal(1000),
            currency="AUD",
            of="duty and tax",
            dated="sellers abroad charge GST below it since 1 July 2018 (seen November 2026)",
            source="a carrier's page",
        ),
    ),
    Preset(
        name="New Zealand",
        countries=frozenset({"NZ"}),
        currency="NZD",
        duty_base="price",
        tax_base="and freight and insurance",
        legal="New Zealand Customs, worked examples released on public request 657",
        relief=Relief(
            up_to=Decimal(1000),
            currency="NZD",
            of="duty and tax",
            dated="since 1 December 2019 (seen on a page of 2021)",
            source="New Zealand Customs, estimator page",
        ),
    ),
    Preset(
        name="USA",
        countries=frozenset({"US"}),
        currency="USD",
        duty_base="price",
        tax_base="none",
        legal="19 CFR 152.103",
    ),
    Preset(
        name="Japan",
        countries=frozenset({"JP"}),
        currency="JPY",
        duty_base="price, freight and insurance",
        tax_base="duty base and duty",
        legal="Japan Customs, frequently asked question 1111",
        relief=Relief(
            up_to=Decimal(10000),
            currency="JPY",
            of="duty and tax",
            dated="a reform of 2026 taxes low-value mail order; its first day was not confirmed (seen November 2026)",
            source="a tax page",
        ),
    ),
)


def preset_for(destination: str) -> ImportRules | None:
    """Return the import rules that a destination begins with, without rates; None where there is no preset.

    Parameters
    ----------
    destination : ISO 3166-1 alpha-2

    References
    ----------
    ``ImportRules.legal`` and ``ImportRules.seen`` of what is returned. Cutting: Japan Customs (base to 1,000 yen, duty
    and tax to 100 yen, all down); UK duty down to the penny, after a carrier's worked example; else halves up.

    Examples
    --------
    >>> preset_for("IE").preset, preset_for("SE").currency, preset_for("CN")
    ('EU', 'SEK', None)
    """
    preset = next((preset for preset in PRESETS if destination in preset.countries), None)
    return _with_cutting(_rules(preset, destination)) if preset else None


def _rules(preset: Preset, destination: str) -> ImportRules:
    return ImportRules(
        destination=destination,
        preset=preset.name,
        currency=_EU_CURRENCIES.get(destination, preset.currency),
        duty_base=preset.duty_base,
        tax_base=preset.tax_base,
        without_border=preset.countries,
        relief=preset.relief,
        legal=preset.legal,
        seen=preset.seen,
    )


def _with_cutting(rules: ImportRules) -> ImportRules:
    if rules.preset == "UK":
        return replace(rules, duty_cutting=_DOWN_CENT)
    if rules.preset != "Japan":
        return rules
    return replace(
        rules,
        duty_base_cutting=_DOWN_1000,
        duty_cutting=_DOWN_100,
        tax_base_cutting=_DOWN_1000,
        tax_cutting=_DOWN_100,
        local_part_of_tax=Decimal("0.22"),
    )
