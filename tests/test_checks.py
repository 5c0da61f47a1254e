"""What is done, open and a warning sign of a maker's checks."""

from scorecard.checks import USUAL_CHECKS, Check, checked, sign_of, usual

NAMES = [one.name for one in USUAL_CHECKS]


def check(name, state, row=2, maker="Fernhill"):
    return Check(maker=maker, row=row, name=name, state=state)


def test_all_usual_checks_are_open_at_first():
    assert tuple(NAMES) == checked([], "Fernhill").open


def test_what_is_done_or_does_not_apply_is_no_longer_open():
    found = checked([check("references", "yes"), check("test report for these goods", "does not apply")], "Fernhill")

    assert [name for name in NAMES if name not in ("references", "test report for these goods")] == list(found.open)


def test_what_waits_stays_open_and_an_own_check_too():
    found = checked([check("references", "waiting"), check("visited the press", "waiting")], "Fernhill")

    assert ("references" in found.open, found.open[-1]) == (True, "visited the press")


def test_a_no_is_a_warning_sign_with_its_source_and_no_verdict():
    (sign,) = checked([check("bank name equals company name", "no")], "Fernhill").signs

    assert "the account is in another name than the company's (guidance: banks' and county treasury pages)" == sign_of(
        sign
    )


def test_an_own_check_that_came_out_with_no_is_told_as_typed():
    assert "“visited the press” came out with no" == sign_of(check("visited the press", "no"))


def test_of_a_check_that_stands_twice_the_last_counts():
    found = checked([check("references", "no"), check("References", "yes", 3)], "Fernhill")

    assert ((), 1) == (found.signs, len(found.done))


def test_another_makers_checks_do_not_count():
    assert tuple(NAMES) == checked([check("references", "yes", maker="Brightholm")], "Fernhill").open


def test_a_usual_check_is_known_whatever_its_case():
    assert "who prints it" == usual(" Who prints it ").name
