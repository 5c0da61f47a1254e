"""Codes in a TOML table: one function for each, wherever they stand."""

import pytest
from sourcing import BRIEF, problems_of

IMPORT = "[import]\nduty_percent = 4\n"


@pytest.mark.parametrize(
    ("toml", "brief", "key"),
    [
        ("", BRIEF.replace('"IE"', '"Irland"'), "brief.destination"),
        (f"{IMPORT}duty_by_country = {{ China = 12 }}", BRIEF, "import.duty_by_country.China"),
        ('[schedule]\nregions = { China = "x" }', BRIEF, "schedule.regions.China"),
    ],
)
def test_a_country_that_is_no_code_is_refused_at_its_key(tmp_path, toml, brief, key):
    assert (key, "not-a-country") in problems_of(tmp_path, {}, toml, brief=brief)


@pytest.mark.parametrize(
    ("toml", "brief", "key"),
    [
        ("", BRIEF.replace('"EUR"', '"euros"'), "brief.currency"),
        (f'{IMPORT}currency = "euros"', BRIEF, "import.currency"),
        ('[[cost.charges]]\nname = "Bank"\namount = 3\ncurrency = "euros"', BRIEF, "cost.charges[0].currency"),
    ],
)
def test_a_currency_that_is_no_code_is_refused_at_its_key(tmp_path, toml, brief, key):
    assert (key, "not-a-currency") in problems_of(tmp_path, {}, toml, brief=brief)
