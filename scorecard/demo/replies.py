"""What six of the invented makers quoted, as it came, and what freight was offered; the data serve the demo alone.

One reply is a single line that holds everything; one leaves freight open; one maker asks least for a piece, for twice
as many as are wanted, and by sea its mugs would come too late. Two makers name a price break: one is worth taking, one
is not.
"""

from collections.abc import Mapping
from datetime import date, timedelta
from typing import Any

ALL_PAID = "to my door, duty and tax paid"

# Quoted and Valid are so many days before and after the day on which the demo is laid out
QUOTES: tuple[Mapping[str, Any], ...] = (
    {
        "Maker": "Brightholm Enamel",
        "Quoted": 12,
        "Pieces": 250,
        "Price": 6.2,
        "Price is for": "each",
        "Currency": "EUR",
        "Price covers": "goods and freight",
        "Way": "road",
        "Days": "35-40",
        "Set-up": 30,
        "Set-up is per": "design",
        "Set-up again on reorder": "no",
        "Sample price": 18,
        "Sample postage": 9,
        "Credited from": 200,
        "Deposit %": 30,
        "Valid": 45,
    },
    {
        "Maker": "Brightholm Enamel",
        "Quoted": 12,
        "Pieces": 500,
        "Price": 5.1,
        "Price is for": "each",
        "Currency": "EUR",
    },
    {
        "Maker": "Quillmoor Works",
        "Quoted": 9,
        "Pieces": 200,
        "Price": 1290,
        "Price is for": "all",
        "Currency": "EUR",
        "Price covers": ALL_PAID,
        "Way": "road",
        "Days": 45,
    },
    {
        "Maker": "Oxlip Kilns",
        "Quoted": 10,
        "Pieces": 100,
        "Price": 9.8,
        "Price is for": "each",
        "Currency": "EUR",
        "Price covers": ALL_PAID,
        "Way": "post",
        "Days": "30-35",
        "Set-up": 0,
        "Set-up is per": "order",
        "Sample price": 0,
        "Sample postage": 6,
        "Deposit %": 25,
        "Valid": 60,
    },
    {
        "Maker": "Oxlip Kilns",
        "Quoted": 10,
        "Pieces": 250,
        "Price": 8.4,
        "Price is for": "each",
        "Currency": "EUR",
    },
    {
        "Maker": "Sedgewater Print",
        "Quoted": 15,
        "Pieces": 200,
        "Price": 5.9,
        "Price is for": "each",
        "Currency": "EUR",
        "Price covers": "goods",
        "Days": 25,
        "Set-up": 45,
        "Set-up is per": "order",
        "Sample price": 12,
        "Sample postage": 6,
        "Deposit %": 50,
        "Valid": 30,
    },
    {
        "Maker": "Tansy & Vane",
        "Quoted": 7,
        "Pieces": 300,
        "Price": 5.7,
        "Price is for": "each",
        "Currency": "EUR",
        "Price covers": "goods",
        "Way": "road",
        "Days": "40-45",
        "Set-up": 28,
        "Set-up is per": "design",
        "Sample price": 25,
        "Sample postage": 14,
        "Deposit %": 50,
        "Valid": 40,
    },
    {
        "Maker": "Thistlewharf Enamel",
        "Quoted": 6,
        "Pieces": 400,
        "Price": 1.95,
        "Price is for": "each",
        "Currency": "USD",
        "Price covers": "goods",
        "Days": "55-62",
        "Set-up": 35,
        "Set-up is per": "design",
        "Sample price": 20,
        "Sample postage": 38,
        "Credited from": 400,
        "Deposit %": 50,
        "Valid": 35,
    },
)

FREIGHT: tuple[Mapping[str, Any], ...] = (
    {
        "Maker": "Tansy & Vane",
        "Way": "road",
        "From pieces": 300,
        "To pieces": 400,
        "Cost": 165,
        "Currency": "EUR",
        "Days": "6-9",
        "Freight covers": "door to door",
    },
    {
        "Maker": "Thistlewharf Enamel",
        "Way": "sea",
        "From pieces": 400,
        "To pieces": 600,
        "Cost": 460,
        "Currency": "USD",
        "Days": "90-115",
        "Freight covers": "door to door",
    },
    {
        "Maker": "Thistlewharf Enamel",
        "Way": "air",
        "Rate per kg": 5.8,
        "Currency": "USD",
        "Days": "8-12",
        "Pieces per carton": 36,
        "Carton length cm": 54,
        "Carton width cm": 42,
        "Carton height cm": 33,
        "Carton kg": 11.5,
        "Freight covers": "door to door",
    },
)


def reply_rows(day: date) -> dict[str, list[dict[str, Any]]]:
    """Return the rows of the sheets Quotes and Freight by heading, their days counted from a day."""
    return {"Quotes": [_dated(row, day) for row in QUOTES], "Freight": [dict(row) for row in FREIGHT]}


def _dated(row: Mapping[str, Any], day: date) -> dict[str, Any]:
    dates = {"Quoted on": day - timedelta(days=row["Quoted"])}
    if "Valid" in row:
        dates["Valid until"] = day + timedelta(days=row["Valid"])
    return {heading: value for heading, value in row.items() if heading not in ("Quoted", "Valid")} | dates
