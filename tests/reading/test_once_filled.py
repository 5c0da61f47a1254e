"""When a schedule is worked out, and when nothing of it is loaded."""

import subprocess
import sys
from datetime import date

import pytest
from sourcing import BRIEF, folder_of

from scorecard.costed import costed_on
from scorecard.reading.folder import read_folder
from scorecard.scheduling.plans import plan_of

AS_OF = date(2026, 11, 25)
DATED = BRIEF.replace('currency = "EUR"', 'currency = "EUR"\nneed_by = 2027-05-14')
PAST = BRIEF.replace('currency = "EUR"', 'currency = "EUR"\nneed_by = 2026-11-24')
QUOTES = {"Quotes": [["Maker", "Price", "Price is for", "Price covers", "Days"], ["Fernhill", 2, "each", "goods", 20]]}
SILENT = {"Quotes": [["Maker", "Price", "Price is for", "Price covers"], ["Fernhill", 2, "each", "goods"]]}
ORDERS = {"Orders": [["Maker", "Ordered on"], ["Fernhill", date(2026, 11, 20)]]}


def schedule(path, sheets=None, toml="", brief=DATED, **options):
    return read_folder(folder_of(path, sheets, toml, brief), as_of=AS_OF, **options).schedule


@pytest.mark.parametrize(
    ("sheets", "toml"),
    [(QUOTES, ""), (ORDERS, ""), (None, "[schedule]\nproof_days = 3")],
    ids=["quote", "order", "table"],
)
def test_a_schedule_is_there_once_anybody_has_said_anything_of_days(tmp_path, sheets, toml):
    assert schedule(tmp_path, sheets, toml) is not None


@pytest.mark.parametrize("sheets", [None, SILENT], ids=["nothing", "a quote without days"])
def test_while_nobody_has_said_anything_there_is_none(tmp_path, sheets):
    assert schedule(tmp_path, sheets) is None


def test_without_a_need_by_date_there_is_none(tmp_path):
    assert schedule(tmp_path, QUOTES | ORDERS, brief=BRIEF) is None


def test_one_that_is_asked_for_is_there_all_the_same(tmp_path):
    assert schedule(tmp_path, brief=BRIEF, dates=True) is not None


def test_while_there_is_nothing_to_say_neither_the_schedule_nor_holidays_are_loaded(tmp_path):
    folder_of(tmp_path, None, "", DATED)
    code = (
        "import sys; from scorecard.reading.folder import read_folder; read_folder(sys.argv[1]); "
        "print([name for name in sys.modules if 'scheduling' in name or 'holidays' in name])"
    )
    done = subprocess.run([sys.executable, "-c", code, str(tmp_path)], capture_output=True, text=True, check=True)

    assert "[]" == done.stdout.strip()


def test_costs_carry_what_the_schedule_says_of_their_way(tmp_path):
    freight = {"Freight": [["Maker", "Way", "Cost", "Days"], ["Fernhill", "road", 90, 5]]}
    case = read_folder(folder_of(tmp_path, QUOTES | freight, "", DATED), as_of=AS_OF)
    plan = plan_of(case.schedule, *first_way(case), case.brief.need_by)
    (cost,) = costed_on(case, AS_OF).costs

    assert (plan.status, plan.begin_by, plan.order_by) == (
        cost.timing.status,
        cost.timing.begin_by,
        cost.timing.order_by,
    )


def test_on_another_day_the_schedule_is_that_of_the_day(tmp_path):
    freight = {"Freight": [["Maker", "Way", "Cost", "Days"], ["Fernhill", "road", 90, 5]]}
    case = read_folder(folder_of(tmp_path, QUOTES | freight, "", DATED), as_of=AS_OF)

    assert ["in time", "too late"] == [
        costed_on(case, day).costs[0].timing.status for day in (AS_OF, date(2027, 5, 13))
    ]


def first_way(case):
    maker = case.schedule.makers["Fernhill"]
    return maker, maker.ways[0]


def test_without_a_schedule_costs_are_as_they_were(tmp_path):
    case = read_folder(folder_of(tmp_path, SILENT, "", DATED), as_of=AS_OF)

    assert [None] == [cost.timing for cost in costed_on(case, AS_OF).costs]


def test_a_need_by_date_in_the_past_is_a_warning_at_its_key(tmp_path):
    case = read_folder(folder_of(tmp_path, None, "", PAST), as_of=AS_OF)

    assert [("brief.need_by", "need-by-past")] == [(one.place.key, one.code) for one in case.warnings]


def test_a_need_by_date_of_today_is_not_past(tmp_path):
    case = read_folder(folder_of(tmp_path, None, "", PAST), as_of=date(2026, 11, 24))

    assert () == case.warnings
