from house.table import Measure, lines_of, measures


def test_a_measure_is_a_line_with_what_misses_it_below():
    measure = Measure(name="cycles", limit="none", reached="1", kept=False, misses=("a ↔ b",))
    first, second = lines_of(measure)

    assert ["cycles", "none", "1", "MISSED"] == first.split()
    assert "a ↔ b" == second.strip()


def test_the_house_is_kept():
    missed = [line for measure in measures() if not measure.kept for line in lines_of(measure)]

    assert [] == missed
