"""What is said to do next about an order that was placed."""

import pytest
from order_folder import DAY, ORDERS, lay_out
from process import scorecard


def placed(tmp_path, arrived, faulty):
    return lay_out(tmp_path, Orders=[ORDERS[0], ["Brightholm", "2026-11-21", 200, "air", None, arrived, faulty, None]])


@pytest.mark.parametrize(
    ("arrived", "faulty", "command"),
    [(None, None, "dates; when the pieces"), ("2026-11-24", None, "inspect --maker"), ("2026-11-24", 3, "record ")],
)
def test_a_placed_order_is_followed_by_score_and_by_its_sheet(tmp_path, arrived, faulty, command):
    said = scorecard("order", "Bright", *DAY, cwd=placed(tmp_path, arrived, faulty)).last
    ran = scorecard("score", *DAY, cwd=tmp_path)

    assert said.startswith("Next: ")
    assert command in said
    assert said == ran.last


def test_an_order_that_is_recorded_leads_on_to_the_next(tmp_path):
    placed(tmp_path, "2026-11-24", 3)
    scorecard("record", "Bright", *DAY, cwd=tmp_path)

    assert "start NEW-FOLDER --from ." in scorecard("score", *DAY, cwd=tmp_path).last
