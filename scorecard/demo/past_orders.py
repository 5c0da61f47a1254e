"""Two orders of the year before, as the demo folder remembers them; invented, for the demo alone."""

from datetime import date, timedelta

from scorecard.costing.amounts import Span
from scorecard.memory import Record
from scorecard.memory_json import memory_bytes

ITEM = "350 ml enamel mug, one lighthouse"


def past_orders(day: date) -> bytes:
    """Return what the folder keeps of own orders, its days set from the day on which the demo is laid out."""

    def before(days: int) -> date:
        return day - timedelta(days=days)

    late = Record(
        maker="Quillmoor Works",
        item=ITEM,
        ordered=before(420),
        pieces=150,
        way="road",
        promised=before(375),
        arrived=before(369),
        faulty=7,
        paid=Span.of("1041.50"),
        quoted=Span.of("967.50"),
        quoted_in_full=True,
        currency="EUR",
        recorded_on=before(360),
    )
    on_time = Record(
        maker="Sedgewater Print",
        item=ITEM,
        ordered=before(400),
        pieces=100,
        way="road",
        promised=before(365),
        arrived=before(366),
        faulty=1,
        paid=Span.of("745.00"),
        quoted=Span.of("745.00"),
        quoted_in_full=True,
        currency="EUR",
        recorded_on=before(360),
    )
    return memory_bytes([late, on_time])
