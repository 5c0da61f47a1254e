"""The codes of countries (ISO 3166-1 alpha-2) and of currencies (ISO 4217), and what is offered for a near miss.

The country list holds all 249 codes with short English names; the currency list those that are legal tender somewhere.
Decimals are those of the standard: in daily life some of these currencies have lost their small coins.
"""

from collections.abc import Mapping
from decimal import ROUND_HALF_UP, Context, Decimal
from types import MappingProxyType

from scorecard.words import nearest

_COUNTRIES = """
AD Andorra; AE United Arab Emirates; AF Afghanistan; AG Antigua and Barbuda; AI Anguilla; AL Albania; AM Armenia; AO
Angola; AQ Antarctica; AR Argentina; AS American Samoa; AT Austria; AU Australia; AW Aruba; AX Åland Islands; AZ
Azerbaijan; BA Bosnia and Herzegovina; BB Barbados; BD Bangladesh; BE Belgium; BF Burkina Faso; BG Bulgaria; BH
Bahrain; BI Burundi; BJ Benin; BL Saint Barthélemy; BM Bermuda; BN Brunei; BO Bolivia; BQ Bonaire, Sint Eustatius
and Saba; BR Brazil; BS Bahamas; BT Bhutan; BV Bouvet Island; BW Botswana; BY Belarus; BZ Belize; CA Canada; CC
Cocos (Keeling) Islands; CD Congo (Kinshasa); CF Central African Republic; CG Congo (Brazzaville); CH Switzerland;
CI Côte d'Ivoire; CK Cook Islands; CL Chile; CM Cameroon; CN China; CO Colombia; CR Costa Rica; CU Cuba; CV Cabo
Verde; CW Curaçao; CX Christmas Island; CY Cyprus; CZ Czechia; DE Germany; DJ Djibouti; DK Denmark; DM Dominica; DO
Dominican Republic; DZ Algeria; EC Ecuador; EE Estonia; EG Egypt; EH Western Sahara; ER Eritrea; ES Spain; ET
Ethiopia; FI Finland; FJ Fiji; FK Falkland Islands; FM Micronesia; FO Faroe Islands; FR France; GA Gabon; GB United
Kingdom; GD Grenada; GE Georgia; GF French Guiana; GG Guernsey; GH Ghana; GI Gibraltar; GL Greenland; GM Gambia; GN
Guinea; GP Guadeloupe; GQ Equatorial Guinea; GR Greece; GS South Georgia and the South Sandwich Islands; GT
Guatemala; GU Guam; GW Guinea-Bissau; GY Guyana; HK Hong Kong; HM Heard Island and McDonald Islands; HN Honduras; HR
Croatia; HT Haiti; HU Hungary; ID Indonesia; IE Ireland; IL Israel; IM Isle of Man; IN India; IO British Indian
Ocean Territory; IQ Iraq; IR Iran; IS Iceland; IT Italy; JE Jersey; JM Jamaica; JO Jordan; JP Japan; KE Kenya; KG
Kyrgyzstan; KH Cambodia; KI Kiribati; KM Comoros; KN Saint Kitts and Nevis; KP North Korea; KR South Korea; KW
Kuwait; KY Cayman Islands; KZ Kazakhstan; LA Laos; LB Lebanon; LC Saint Lucia; LI Liechtenstein; LK Sri Lanka; LR
Liberia; LS Lesotho; LT Lithuania; LU Luxembourg; LV Latvia; LY Libya; MA Morocco; MC Monaco; MD Moldova; ME
Montenegro; MF Saint Martin; MG Madagascar; MH Marshall Islands; MK North Macedonia; ML Mali; MM Myanmar; MN
Mongolia; MO Macao; MP Northern Mariana Islands; MQ Martinique; MR Mauritania; MS Montserrat; MT Malta; MU
Mauritius; MV Maldives; MW Malawi; MX Mexico; MY Malaysia; MZ Mozambique; NA Namibia; NC New Caledonia; NE Niger; NF
Norfolk Island; NG Nigeria; NI Nicaragua; NL Netherlands; NO Norway; NP Nepal; NR Nauru; NU Niue; NZ New Zealand; OM
Oman; PA Panama; PE Peru; PF French Polynesia; PG Papua New Guinea; PH Philippines; PK Pakistan; PL Poland; PM Saint
Pierre and Miquelon; PN Pitcairn Islands; PR Puerto Rico; PS Palestine; PT Portugal; PW Palau; PY Paraguay; QA
Qatar; RE Réunion; RO Romania; RS Serbia; RU Russia; RW Rwanda; SA Saudi Arabia; SB Solomon Islands; SC Seychelles;
SD Sudan; SE Sweden; SG Singapore; SH Saint Helena; SI Slovenia; SJ Svalbard and Jan Mayen; SK Slovakia; SL Sierra
Leone; SM San Marino; SN Senegal; SO Somalia; SR Suriname; SS South Sudan; ST São Tomé and Príncipe; SV El Salvador;
SX Sint Maarten; SY Syria; SZ Eswatini; TC Turks and Caicos Islands; TD Chad; TF French Southern Territories; TG
Togo; TH Thailand; TJ Tajikistan; TK Tokelau; TL Timor-Leste; TM Turkmenistan; TN Tunisia; TO Tonga; TR Türkiye; TT
Trinidad and Tobago; TV Tuvalu; TW Taiwan; TZ Tanzania; UA Ukraine; UG Uganda; UM United States Outlying Islands; US
United States; UY Uruguay; UZ Uzbekistan; VA Vatican City; VC Saint Vincent and the Grenadines; VE Venezuela; VG
British Virgin Islands; VI United States Virgin Islands; VN Vietnam; VU Vanuatu; WF Wallis and Futuna; WS Samoa; YE
Yemen; YT Mayotte; ZA South Africa; ZM Zambia; ZW Zimbabwe
"""

_TWO_DECIMALS = """
AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF CNY COP CRC CUP CVE
CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS KHR
KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD PAB
PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SYP SZL THB TJS TMT TOP TRY TTD
TWD TZS UAH USD UYU UZS VES WST XCD XCG YER ZAR ZMW ZWG
"""
_NO_DECIMALS = "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF"
_THREE_DECIMALS = "BHD IQD JOD KWD LYD OMR TND"

_SIGNS = """
AUD A$ BRL R$ CAD C$ CHF Fr. CNY ¥ CZK Kč DKK kr EUR € GBP £ HKD HK$ HUF Ft ILS ₪ INR ₹ ISK kr JPY ¥ KRW ₩ MXN MX$
NGN ₦ NOK kr NZD NZ$ PHP ₱ PLN zł SEK kr SGD S$ THB ฿ TRY ₺ TWD NT$ UAH ₴ USD $ VND ₫ ZAR R
"""

_OTHER_NAMES = {
    "UK": "GB", "GREAT BRITAIN": "GB", "ENGLAND": "GB", "SCOTLAND": "GB", "WALES": "GB", "NORTHERN IRELAND": "GB",
    "EL": "GR", "USA": "US", "AMERICA": "US", "UAE": "AE", "HOLLAND": "NL", "CZECH REPUBLIC": "CZ", "TURKEY": "TR",
    "U.K.": "GB", "U.S.": "US", "U.S.A.": "US", "UNITED STATES OF AMERICA": "US", "REPUBLIC OF IRELAND": "IE",
    "PRC": "CN", "PR CHINA": "CN", "P.R. CHINA": "CN", "MAINLAND CHINA": "CN", "VIET NAM": "VN",
    "REPUBLIC OF KOREA": "KR", "RUSSIAN FEDERATION": "RU", "MACAU": "MO",
}  # fmt: skip


UNKNOWN_AMOUNT = "no known amount"
MINUS = "\N{MINUS SIGN}"
ANY_SIZE = Context(prec=400)  # digits: more than the largest number that a cell can hold


def _names() -> dict[str, str]:
    """Return the country names by code."""
    entries = " ".join(_COUNTRIES.split()).split("; ")
    return {entry[:2]: entry[3:] for entry in entries}


def _decimals() -> dict[str, int]:
    """Return the decimals by currency code, in the order of the codes."""
    groups = ((_NO_DECIMALS, 0), (_TWO_DECIMALS, 2), (_THREE_DECIMALS, 3))
    return dict(sorted((code, decimals) for codes, decimals in groups for code in codes.split()))


def _signs() -> dict[str, str]:
    """Return the usual sign by currency code."""
    words = _SIGNS.split()
    return dict(zip(words[::2], words[1::2], strict=True))


COUNTRIES: Mapping[str, str] = MappingProxyType(_names())
CURRENCY_DECIMALS: Mapping[str, int] = MappingProxyType(_decimals())
CURRENCY_SIGNS: Mapping[str, str] = MappingProxyType(_signs())
_BY_NAME: Mapping[str, str] = _OTHER_NAMES | {name.upper(): code for code, name in COUNTRIES.items()}  # in capitals


def country_named(text: str) -> str | None:
    """Return the country code that a text says, as a code or as a name in English; None where it says none.

    Examples
    --------
    >>> country_named("ie"), country_named("Turkey"), country_named("China "), country_named("Chnia")
    ('IE', 'TR', 'CN', None)
    """
    upper = text.strip().upper()
    return upper if upper in COUNTRIES else _BY_NAME.get(upper)


def country_offered(text: str) -> str | None:
    """Return the country code that somebody who wrote this may have meant, or None.

    Examples
    --------
    >>> country_offered("ie"), country_offered("UK"), country_offered("Irland"), country_offered("??")
    ('IE', 'GB', 'IE', None)
    """
    said = country_named(text)
    if said:
        return said
    close = _near_name(text.strip().upper())
    return _BY_NAME[close] if close else None


def _near_name(upper: str) -> str | None:
    """Return the name nearest to this one; two or three letters are a code, and near to nothing."""
    return nearest(upper, list(_BY_NAME)) if 3 < len(upper) < 60 else None


def currency_offered(text: str) -> str | None:
    """Return the currency code that somebody who wrote this may have meant, or None.

    A sign that several currencies share offers none.

    Examples
    --------
    >>> currency_offered("eur"), currency_offered("€"), currency_offered("¥"), currency_offered("euros")
    ('EUR', 'EUR', None, 'EUR')
    """
    stripped = text.strip()
    upper = stripped.upper()
    for code in (upper, upper[:3]):
        if code in CURRENCY_DECIMALS:
            return code
    meant = [code for code, sign in CURRENCY_SIGNS.items() if sign == stripped]
    return meant[0] if len(meant) == 1 else None


def money(amount: float | Decimal, currency: str) -> str:
    """Return an amount as it is shown: to the last minor unit of its currency, halves up, without its code.

    It is for the eye: below zero it has a minus sign, not a hyphen, and no sign before zero.

    Examples
    --------
    >>> money(6.425, "EUR"), money(Decimal("1284.5"), "JPY"), money(-12, "EUR"), money(float("inf"), "EUR")
    ('6.43', '1285', '−12.00', 'no known amount')
    """
    exact = Decimal(str(amount))
    if not exact.is_finite():
        return UNKNOWN_AMOUNT
    step = Decimal(1).scaleb(-CURRENCY_DECIMALS.get(currency, 2))
    rounded = exact.quantize(step, ROUND_HALF_UP, ANY_SIZE)
    return f"{MINUS if rounded < 0 else ''}{abs(rounded):f}"


def money_range(low: float | Decimal, high: float | Decimal, currency: str) -> str:
    """Return an amount from least to most as it is shown; infinite is an open end.

    Examples
    --------
    >>> money_range(6.4, 6.4, "EUR"), money_range(6.4, 7.104, "EUR"), money_range(3, float("inf"), "EUR")
    ('6.40', '6.40 to 7.10', '3.00 or more')
    """
    return _from_to(low, high, currency, "")


def amount_range(low: float | Decimal, high: float | Decimal, currency: str) -> str:
    """Return the same with its currency, which may be "" where nothing names one.

    Examples
    --------
    >>> amount_range(6.4, 7.104, "EUR"), amount_range(3, float("inf"), "EUR"), amount_range(3, 3, "")
    ('6.40 to 7.10 EUR', '3.00 EUR or more', '3.00')
    """
    return _from_to(low, high, currency, f" {currency}".rstrip())


def _from_to(low: float | Decimal, high: float | Decimal, currency: str, unit: str) -> str:
    """Return an amount from least to most, the unit behind its last figure."""
    if not Decimal(str(low)).is_finite():
        return UNKNOWN_AMOUNT
    if not Decimal(str(high)).is_finite():
        return f"{money(low, currency)}{unit} or more"
    ends = money(low, currency), money(high, currency)
    return f"{ends[0] if ends[0] == ends[1] else ' to '.join(ends)}{unit}"
