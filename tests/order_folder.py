"""A sourcing folder from which everything is ordered: quotes, freight, and the table of the order sheet."""

from builders import workbook_bytes
from PIL import Image

CRITERIA = """title = "Lighthouse mugs"

[brief]
item = "350 ml enamel mug"
quantity = 200
designs = 2
destination = "IE"
currency = "EUR"
need_by = 2027-05-14
print_width_mm = 180
print_height_mm = 80

[criteria.rating]
weight = 1
column = "Rating"
points = [[1, 0], [5, 100]]

[criteria.minimum]
weight = 0
column = "Minimum order"
per = "quantity"
points = [[1, 100], [2, 0]]

[currencies]
on = 2026-11-20
source = "my bank"
USD = 0.5

[import]
duty_percent = 4
tax_percent = 20
tax = "cost"
price_has_tax = true
"""
ORDER = """
[cost]
balance = "before shipment"

[order]
number = "2026-3"
method = "kiln-fired transfer"
buyer = "A. Keeper, Light Lane 1, Dingle"
address = "Light Lane 1, Dingle"
position = "centred opposite the handle, 20 mm below the rim"
position_tolerance_mm = 2
size_tolerance_mm = 1
colours = "as on the approved piece"
over_percent = 5
under_percent = 2.5
overs = "free"
packing = "each in tissue, 24 to a carton with dividers"
labels = "number of the carton, design and pieces"
pay_by = "card, through the marketplace"
complain_days = 30
remedy = "made again, or paid back, as the buyer chooses"
artwork = "mine"
tooling = "the maker's"

[[order.designs]]
name = "Harbour light"
file = "harbour-light.pdf"

[[order.designs]]
name = "Night light"
file = "night-light.pdf"
"""
MAKERS = [
    ["Maker", "Rating", "Minimum order", "Minimum is per", "Country"],
    ["Fernhill", 4.5, 60, "design", "Portugal"],
    ["Brightholm", 4.1, 200, "order", "China"],
    ["Cold Quay", 4.9, 150, "order", "Ireland"],
]
HEADINGS = ["Maker", "Quoted on", "Pieces", "Price", "Price is for", "Currency", "Price covers", "Way", "Days"]
HEADINGS += ["Delivery term", "Place", "Set-up", "Set-up is per", "Deposit %", "Valid until"]
DAY_BEFORE, LAST_DAY = "2026-11-20", "2027-01-31"
QUOTES = [
    HEADINGS,
    ["Fernhill", DAY_BEFORE, 200, 5, "each", "EUR", None, "road", 30, "DAP", "my door", 60, "design", 30, LAST_DAY],
    [
        "Brightholm",
        DAY_BEFORE,
        200,
        2,
        "each",
        "USD",
        None,
        None,
        35,
        "FOB",
        "port of Ningbo",
        40,
        "order",
        50,
        LAST_DAY,
    ],
    ["Cold Quay", DAY_BEFORE, 200, 1480, "all", "EUR", "don't know"],
]
FREIGHT = [
    ["Maker", "Way", "Cost", "Currency", "Days", "Freight covers"],
    ["Brightholm", "sea", 380, "USD", "45-60", "door to door"],
    ["Brightholm", "air", 900, "USD", "8-12", "door to door"],
]
DAY = ("--as-of", "2026-11-25")


def lay_out(path, *, order=ORDER, criteria=CRITERIA, **sheets):
    """Write the two files of a folder; sheets in place of, or beside, those above."""
    path.mkdir(exist_ok=True)
    for name in ("harbour-light.pdf", "night-light.pdf"):  # pictures of the print's size; what is in a file counts
        Image.new("1", (2126, 945)).save(path / name, "PNG")
    (path / "criteria.toml").write_text(criteria + order, "utf-8")
    kept = {"Makers": MAKERS, "Quotes": QUOTES, "Freight": FREIGHT} | sheets
    (path / "makers.xlsx").write_bytes(workbook_bytes(kept))
    return path


ORDER_HEADINGS = ["Maker", "Ordered on", "Pieces", "Way", "Promised on", "Arrived on", "Faulty pieces", "Paid in all"]
ORDERS = [
    ORDER_HEADINGS,
    ["Fernhill", "2026-11-21", 200, "road", "2026-11-24", "2026-11-25", 6, 1176],
]
