"""``dates`` as a whole process."""

import json
import re
from datetime import date

import jsonschema
import pytest
from process import schema_of, scorecard
from sourcing import BRIEF, folder_of

DATED = BRIEF.replace('currency = "EUR"', 'currency = "EUR"\nneed_by = 2027-05-14')
QUOTES = [
    ["Maker", "Price", "Price is for", "Price covers", "Days"],
    ["Fernhill", 2, "each", "goods", 20],
    ["Brightholm", 1, "each", "goods", "25-30"],
]
FREIGHT = [
    ["Maker", "Way", "Cost", "Days"],
    ["Fernhill", "road", 60, 6],
    ["Brightholm", "sea", 40, "35-40"],
    ["Brightholm", "air", 200, 8],
]
ORDERS = [
    ["Maker", "Ordered on", "Shipped on", "Complain until"],
    ["Brightholm", date(2026, 11, 2), None, date(2027, 1, 20)],
]
SHEETS = {"Quotes": QUOTES, "Freight": FREIGHT}
AS_OF = ("--as-of", "2026-11-25")


@pytest.fixture
def folder(tmp_path):
    return folder_of(tmp_path, SHEETS, brief=DATED)


def result_of(ran):
    result = json.loads(ran.out)
    jsonschema.validate(result, schema_of("dates"))
    return result


def status_by_way(folder, as_of):
    result = result_of(scorecard("dates", "--json", "--as-of", as_of, cwd=folder))
    return {(one["maker"], one["way"]): one["status"] for one in result["plans"]}


def test_each_maker_and_way_has_its_latest_day(folder):
    result = result_of(scorecard("dates", "--json", *AS_OF, cwd=folder))

    assert ([("Fernhill", "road"), ("Brightholm", "sea"), ("Brightholm", "air")], "2027-05-14", True) == (
        [(one["maker"], one["way"]) for one in result["plans"]],
        result["need_by"],
        all(one["begin_by"] < one["order_by"] < "2027-05-14" for one in result["plans"]),
    )


def test_a_maker_may_be_too_late_by_sea_and_in_time_by_air(folder):
    found = status_by_way(folder, "2027-01-20")

    assert ("only if all goes quickly", "in time") == (found["Brightholm", "sea"], found["Brightholm", "air"])


def test_a_spring_holiday_moves_the_latest_day_to_order(folder):
    sea = result_of(scorecard("dates", "--json", *AS_OF, cwd=folder))["plans"][1]
    closed = [one for step in sea["steps"] for one in step["closed"] if one["names"][0].startswith("Chinese New Year")]

    assert (True, ("2027-01-30", "2027-02-17")) == (
        sea["order_by"] < sea["order_by_without_holidays"],
        (closed[0]["from"], closed[0]["to"]),
    )


def test_the_words_tell_the_chain_what_is_thin_and_that_nothing_is_promised(folder):
    ran = scorecard("dates", *AS_OF, cwd=folder)

    assert (0, [True] * 6) == (
        ran.status,
        [
            words in " ".join(ran.out.split())
            for words in (
                "Brightholm by sea: ask for a sample by ",
                " order and pay the deposit ",
                "Chinese New Year (Spring Festival), closed 30 January to 17 February 2027",
                "the holidays of China in 2027 may be thin",
                "you could still order from Fernhill by road, without a sample first",
                "No date here is a promise",
            )
        ],
    )
    assert ran.last.startswith("Next: ")


def test_one_maker_alone_can_be_asked_for(folder):
    ran = scorecard("dates", "--maker", "bright", *AS_OF, cwd=folder)

    assert (0, True, False) == (ran.status, "Brightholm by air" in ran.out, "Fernhill by road:" in ran.out)


@pytest.mark.parametrize("name", ["Nobody", ""])
def test_a_maker_that_cannot_be_told_is_a_wrong_use(folder, name):
    assert 2 == scorecard("dates", "--maker", name, *AS_OF, cwd=folder).status


def test_the_last_day_to_complain_stands_first(tmp_path):
    ran = scorecard("dates", *AS_OF, cwd=folder_of(tmp_path, SHEETS | {"Orders": ORDERS}, brief=DATED))

    assert (
        "Order from Brightholm, row 2: Last day to complain: 20 January 2027 (56 days from today)"
        in ran.out.split("\n")[1]
    )


def test_an_order_under_way_has_its_slack(tmp_path):
    folder = folder_of(tmp_path, SHEETS | {"Orders": ORDERS}, brief=DATED)
    (order,) = result_of(scorecard("dates", "--json", *AS_OF, cwd=folder))["orders"]
    gap = date.fromisoformat(order["door_by"]) - date.fromisoformat(order["expected_on"])

    assert ("ordered", gap.days, 56, {"sea", "air"}) == (
        order["stage"],
        order["slack_days"],
        order["complain_days"],
        set(order["ship_by"]),
    )


def test_without_a_need_by_date_the_key_to_add_is_named(tmp_path):
    ran = scorecard("dates", "--json", *AS_OF, cwd=folder_of(tmp_path, brief=BRIEF))

    assert (3, [("brief.need_by", "missing-key")]) == (
        ran.status,
        [(one["key"], one["code"]) for one in result_of(ran)["problems"]],
    )


def test_an_order_needs_no_need_by_date(tmp_path):
    ran = scorecard("dates", *AS_OF, cwd=folder_of(tmp_path, {"Orders": ORDERS}, brief=BRIEF))

    assert (0, True) == (ran.status, "Last day to complain" in ran.out)


def test_a_need_by_date_in_the_past_is_a_warning_and_all_is_too_late(tmp_path):
    past = DATED.replace("2027-05-14", "2026-10-01")
    ran = scorecard("dates", *AS_OF, cwd=folder_of(tmp_path, SHEETS, brief=past))

    assert (0, True, True) == (
        ran.status,
        "brief.need_by: 2026-10-01 is before 2026-11-25" in ran.err,
        "it is too late to plan on any maker and way" in ran.out,
    )


def test_a_maker_that_fails_a_limit_has_no_dates(tmp_path):
    limited = DATED + "limit = { at_most = 1 }\n"
    result = result_of(scorecard("dates", "--json", *AS_OF, cwd=folder_of(tmp_path, SHEETS, brief=limited)))

    assert (["Fernhill"], {"Brightholm"}) == (result["ruled_out"], {one["maker"] for one in result["plans"]})


def test_every_problem_is_told_at_once_each_at_its_place(tmp_path):
    sheets = {"Orders": [["Maker", "Ordered on", "Shipped on"], ["Brightholm", date(2026, 11, 9), date(2026, 11, 3)]]}
    toml = '[schedule]\nproduction_days = 2027-01-15\n[schedule.regions]\nGB = "KENT"'
    ran = scorecard("dates", "--json", *AS_OF, cwd=folder_of(tmp_path, sheets, toml, DATED))
    places = [one["cell"] or one["key"] for one in result_of(ran)["problems"]]

    assert (3, {"C2", "schedule.production_days", "schedule.regions.GB"}) == (ran.status, set(places))


@pytest.mark.parametrize(
    ("as_of", "step"),
    [
        ("2026-11-25", "decide on Brightholm by sea: ask it for a sample by "),
        ("2027-12-01", "move the need-by date, drop steps under [schedule], or look for a maker nearby"),
    ],
)
def test_the_next_step_follows_the_day(folder, as_of, step):
    assert scorecard("dates", "--as-of", as_of, cwd=folder).last.startswith(f"Next: {step}")


def test_while_nobody_has_said_any_days_the_next_step_is_to_ask(tmp_path):
    ran = scorecard("dates", *AS_OF, cwd=folder_of(tmp_path, brief=DATED))

    assert "ask how long production and transit take" in ran.last


def test_the_demo_shows_one_too_late_by_sea_and_not_by_air_and_a_spring_holiday_that_moves_an_order(tmp_path):
    scorecard("demo", "demo", *AS_OF, cwd=tmp_path)
    plans = result_of(scorecard("dates", "--json", *AS_OF, cwd=tmp_path / "demo"))["plans"]
    status = {(one["maker"], one["way"]): one["status"] for one in plans}
    moved = [
        one["maker"]
        for one in plans
        for step in one["steps"]
        for closed in step["closed"]
        if "Chinese New Year (Spring Festival)" in closed["names"]
        and one["order_by"] < one["order_by_without_holidays"]
    ]

    assert ("too late", "in time") == (
        status["Thistlewharf Enamel", "sea"],
        status["Thistlewharf Enamel", "air"],
    )
    assert "Copperwren" in moved


def test_every_step_stands_on_a_line_of_its_own_within_a_hundred_columns(folder):
    lines = scorecard("dates", "--maker", "Brightholm", *AS_OF, cwd=folder).out.splitlines()
    steps = [line for line in lines if line.endswith(" working days (China)")]

    assert (True, []) == (len(steps) > 1, [line for line in lines if len(line) > 100 and "scorecard " not in line])


SAMPLES = [
    ["Maker", "Round", "Asked on", "Received on"],
    ["Fernhill", "sample", date(2026, 11, 2), date(2026, 11, 22)],
    ["Brightholm", "sample", date(2026, 11, 20), None],
]


@pytest.mark.parametrize(
    ("maker", "sample"),
    [
        ("Fernhill", r"a sample came on 22 November 2026"),
        ("Brightholm", r"a sample was asked for on 20 November 2026 and should come by \d+ \w+ 202\d"),
    ],
)
def test_the_next_step_names_the_sample_under_way_before_the_order(tmp_path, maker, sample):
    folder = folder_of(tmp_path, SHEETS | {"Samples": SAMPLES}, brief=DATED)
    last = scorecard("dates", "--maker", maker, *AS_OF, cwd=folder).last

    assert re.fullmatch(rf"Next: decide on {maker} by \w+: {sample}; look at it, and order by \d+ \w+ 2027", last), last


def test_a_sample_on_the_sheet_shortens_the_chain_to_what_is_to_come(tmp_path):
    folder = folder_of(tmp_path, SHEETS | {"Samples": SAMPLES}, brief=DATED)
    plans = result_of(scorecard("dates", "--json", *AS_OF, cwd=folder))["plans"]
    found = {plan["maker"]: (plan["begin_by"] == plan["order_by"], plan["steps"][0]["step"]) for plan in plans}

    assert {"Fernhill": (True, "sample looked at"), "Brightholm": (True, "sample made")} == found
