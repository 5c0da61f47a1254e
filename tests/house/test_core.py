from house.core import CORE, core_modules
from house.sources import ROOT


def test_the_core_is_there_and_begins_with_the_points():
    found = [path.as_posix() for path in core_modules()]

    assert "scorecard/points.py" == found[0]
    assert all((ROOT / name).is_file() for name in found)
    assert all(any(name.startswith(f"scorecard/{part}") for name in found) for part in CORE)
