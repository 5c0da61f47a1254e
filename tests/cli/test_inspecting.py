"""``inspect`` as a whole process."""

import json
from datetime import date

import jsonschema
import pytest
from process import STARTED, schema_of, scorecard
from sourcing import folder_of

ORDERS = ["Maker", "Ordered on", "Pieces", "Arrived on", "Complain until", "Faulty pieces", "Paid in all"]
ORDER = ["Fernhill", date(2026, 9, 1), 200, date(2026, 11, 20), date(2026, 12, 5), None, 1184.6]
AS_OF = ("--as-of", "2026-11-25")


@pytest.fixture
def folder(tmp_path):
    return folder_of(tmp_path, {"Orders": [ORDERS, ORDER]}, "[inspection]\nmajor = ['chip', 'smudge']\n")


def run(folder, *words):
    return scorecard("inspect", *words, *AS_OF, cwd=folder)


def result_of(folder, *words):
    result = json.loads(run(folder, *words, "--json").out)
    jsonschema.validate(result, schema_of("inspect"))
    return result


def test_the_sheet_is_written_and_the_next_step_is_to_count(folder):
    ran = run(folder)
    assert (0, "") == (ran.status, ran.err)
    assert "Open all 200 pieces.\nThe last day to complain is 5 December 2026, in 10 days.\n" in ran.out
    assert f"Next: print it, open and count, then {STARTED} inspect --opened 200 B1=2 C1=5 with your own numbers" == (
        ran.last
    )
    assert (folder / "reports" / "tally-sheet-02-fernhill.html").exists()


def test_the_sheet_has_the_faults_of_the_criteria_file(folder):
    run(folder)
    html = (folder / "reports" / "tally-sheet-02-fernhill.html").read_text("utf-8")
    assert "<bdi>chip</bdi>" in html
    assert "<bdi>smudge</bdi>" in html


def test_a_sum_that_is_open_is_made_exact_before_it_is_claimed(tmp_path):
    said = run(folder_of(tmp_path, {"Orders": [ORDERS, [*ORDER[:-1], "1000-1200"]]}), "--opened", "200", "B1=4")
    first = "write exactly what you paid into G2 of the sheet Orders (Paid in all), and run this again"

    # 4 of 200 pieces at 5 to 6
    assert "4 pieces that cannot be sold cost 20.00 EUR to 24.00 EUR;" in said.out
    assert f"The sum to claim is not exact yet, and of two sums a maker pays the lower: {first}. " in said.out
    assert said.last.startswith(f"Next: {first}; take the photographs, send the message from the page, then type 4")


def test_counts_become_a_claim(folder):
    ran = run(folder, "--arrived", "197", "--opened", "197", "B1=4", "B2=3", "minor=12")
    assert (0, "") == (ran.status, ran.err)
    assert (
        "All 197 pieces opened: 19 are faulty, 9.6 of 100; 12 of these can be sold, with a minor fault.\n"
        "3 pieces did not come.\n"
    ) in ran.out
    assert "  B2 smudge: 3 pieces, photographs 5 to 7\n" in ran.out
    assert "10 pieces that cannot be sold or did not come cost 59.23 EUR" in ran.out
    assert ran.last.endswith(
        "then type 19 (minor faults too) into F2 of the sheet Orders (Faulty pieces), and 197 into the sheet Orders, "
        "under a new heading Pieces opened"
    )
    assert "Hello Fernhill," in (folder / "reports" / "arrival-02-fernhill.html").read_text("utf-8")


def test_the_result_tells_the_same(folder):
    outcome = result_of(folder, "--opened", "200", "B1=4", "C1=12")["outcome"]
    assert (16, 0.08, 4, {"low": 23.69, "high": 23.69}) == (
        outcome["faulty"],
        outcome["share"],
        outcome["lost"],
        outcome["lost_cost"],
    )


def test_a_sample_lists_what_to_open(folder):
    sample = result_of(folder, "--sample", "--per-carton", "24")["sample"]
    assert (32, 32) == (sample["to_open"], len(sample["pieces"]))
    assert all(1 <= one["carton"] <= 9 and 1 <= one["piece"] <= 24 for one in sample["pieces"])


def test_another_seed_draws_other_pieces(folder):
    drawn = [result_of(folder, "--sample", "--seed", seed)["sample"]["pieces"] for seed in ("1", "1", "2")]
    assert (True, False) == (drawn[0] == drawn[1], drawn[0] == drawn[2])


def test_more_pieces_than_a_limit_asks_for_are_explained_on_screen_and_sheet(folder):
    told = "Alone, the limits would ask for 8 pieces (critical), 5 (major) and 13 (minor); one sample of 20 serves"
    assert told in run(folder, "--sample", "--arrived", "40").out
    assert told in (folder / "reports" / "tally-sheet-02-fernhill.html").read_text("utf-8")
    sample = result_of(folder, "--sample", "--arrived", "40")["sample"]
    assert [8, 5, 13] == [one["alone"] for one in sample["kinds"]]


def test_a_sample_is_judged_and_never_said_to_pass(folder):
    ran = run(folder, "--sample", "--opened", "32", "B1=3")
    assert "3 pieces with a major fault: over its limit, 3 or more are too many." in ran.out
    assert " pass" not in ran.out.casefold()


def test_of_more_than_500_pieces_a_sample_is_drawn_unless_all_is_asked_for(folder):
    sizes = [result_of(folder, "--arrived", "600", *more)["sample"] for more in ((), ("--all",))]
    assert (80, None) == (sizes[0]["to_open"], sizes[1])


def test_without_an_order_the_brief_stands_for_it(tmp_path):
    result = result_of(folder_of(tmp_path))
    assert (None, 200, "reports/tally-sheet.html") == (
        result["row"],
        result["arrival"]["ordered"],
        result["file"],
    )


def test_a_critical_fault_says_stop(folder):
    assert "\nSTOP. Do not sell" in run(folder, "--opened", "200", "A1=1").out


def refused(folder, *words):
    ran = run(folder, *words)
    assert not (folder / "reports").exists()
    return ran.status, ran.err


def test_a_lot_of_0_is_refused(folder):
    status, told = refused(folder, "--arrived", "0")
    assert (2, True) == (status, told.startswith("--arrived 0: a lot of 0 pieces has nothing to open."))


def test_counts_above_the_pieces_opened_are_refused(folder):
    status, told = refused(folder, "--opened", "5", "B1=4", "C1=2")
    assert (2, True) == (status, told.startswith("6 faulty pieces of 5 opened: more than there are."))


def test_a_sample_and_all_at_once_are_refused(folder):
    told = "--sample --all: either a sample is opened or all. Leave one of them out.\n"
    assert (2, told) == refused(folder, "--sample", "--all")


def test_one_piece_is_told_in_the_singular(folder):
    assert "Open the 1 piece.\n" in run(folder, "--arrived", "1").out
    told = "Open the 1 piece: the lot is so small that the sample is all of it.\n"
    assert told in run(folder, "--arrived", "1", "--sample").out


def test_every_mistake_of_the_command_is_told_at_once(folder):
    status, told = refused(folder, "--per-carton", "0", "--opened", "201", "B9=1", "C1=x")
    assert (2, 4) == (status, len(told.strip().splitlines()))


def test_a_maker_that_no_order_names_is_refused_at_the_sheet(folder):
    status, told = refused(folder, "--maker", "Brightholm")
    assert (3, True) == (status, "makers.xlsx, Orders: no order names 'Brightholm'." in told)


def test_the_command_to_type_keeps_what_was_said_of_the_arrival(folder):
    told = run(folder, "--sample", "--arrived", "197", "--per-carton", "24").last
    assert f"{STARTED} inspect --sample --arrived 197 --per-carton 24 --opened 32 B1=2 C1=5" in told


def test_a_maker_that_is_not_known_is_refused(folder):
    status, told = refused(folder, "--maker", "Nobody")
    assert (2, True) == (status, "no maker has this name" in told)


def test_an_arrival_before_its_order_is_refused_at_its_cell(tmp_path):
    early = [*ORDER[:3], date(2026, 8, 31), *ORDER[4:]]
    status, told = refused(folder_of(tmp_path, {"Orders": [ORDERS, early]}))
    assert (3, True) == (status, "makers.xlsx, Orders!D2: Arrived on 2026-08-31 comes before" in told)


def test_a_stopped_run_fits_the_schema(tmp_path):
    result = result_of(folder_of(tmp_path, {"Orders": [ORDERS, ["Nobody"]]}))
    assert ["unknown-maker"] == [one["code"] for one in result["problems"]]


def test_an_order_that_has_arrived_goes_before_one_placed_later(tmp_path):
    folder = folder_of(tmp_path, {"Orders": [ORDERS, ORDER, ["Fernhill", date(2026, 11, 23), 500]]})
    ran = run(folder)
    assert "Fernhill, ordered on 1 September 2026 (row 2 of the sheet Orders): 200 pieces of 200 ordered." in ran.out
    assert f"Of another order (row 3): {STARTED} inspect --row 3." in ran.out
    assert f"{STARTED} inspect --row 2 --opened 200 B1=2 C1=5" in ran.last


def test_an_order_that_is_not_noted_as_arrived_says_so(tmp_path):
    folder = folder_of(tmp_path, {"Orders": [ORDERS, ORDER, ["Fernhill", date(2026, 11, 23), 500]]})
    told = (
        "The sheet does not say that this order has arrived: once it has, type the day into D3 of the sheet Orders "
        "(Arrived on).\n"
    )
    assert [False, True] == [told in run(folder, "--row", row).out for row in ("2", "3")]
    assert {3} == {result_of(folder, "--row", "3")["row"]}


def test_a_row_without_an_order_is_refused(folder):
    status, told = refused(folder, "--row", "7")
    assert (2, "--row 7: no order stands in row 7 of the sheet Orders. Say --row 2.\n") == (status, told)


def test_another_order_is_named_in_the_command_to_type(tmp_path):
    folder = folder_of(tmp_path, {"Orders": [ORDERS, ORDER, ["Brightholm", date(2026, 10, 1), 100]]})
    assert f"Of another maker: {STARTED} inspect --maker NAME." in run(folder).out
    assert f"{STARTED} inspect --maker Fern --opened 200 B1=2 C1=5" in run(folder, "--maker", "Fern").last


def test_more_pieces_than_were_ordered_are_not_so_many_of_them(folder):
    assert "(row 2 of the sheet Orders): 210 pieces, with 200 ordered.\n" in run(folder, "--arrived", "210").out
