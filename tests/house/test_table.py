from house.table import Measure, lines_of


def test_a_measure_is_a_line_with_what_misses_it_below():
    measure = Measure(name="cycles", limit="none", reached="1", kept=False, misses=("a ↔ b",))
    first, second = lines_of(measure)

    assert ["cycles", "none", "1", "MISSED"] == first.split()
    assert "a ↔ b" == second.strip()
