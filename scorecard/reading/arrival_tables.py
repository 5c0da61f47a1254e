"""The tables [inspection] and [care] of the criteria file.

Enters: the tables. Leaves: settings; a key with a problem keeps its usual value.
"""

from collections import Counter

from scorecard.care import FLAMES, GOODS, CareFacts
from scorecard.inspection.faults import KINDS, OTHER, Kind
from scorecard.inspection.sampling_tables import LEVELS, LIMITS
from scorecard.inspection.settings import USUAL_LIMITS, InspectionSettings
from scorecard.reading.toml_amounts import texts_at, truth_at
from scorecard.reading.toml_tables import Table, shown_value
from scorecard.words import listed, shortest

LIMIT_KEYS: dict[Kind, str] = {kind: f"{kind}_limit" for kind in KINDS}
INSPECTION_KEYS = (*KINDS, "level", *LIMIT_KEYS.values(), "seed")
CARE_KEYS = ("goods", "touches_food", "for_children", "flame", "from")
MOST_FAULTS = 12
LONGEST_FAULT = 60


def read_inspection(table: Table | None) -> InspectionSettings:
    """Return what the table says; problems go to its notes."""
    if table is None:
        return InspectionSettings()
    table.known_keys(INSPECTION_KEYS, "[inspection]")
    seed = table.whole("seed", least=0)
    return InspectionSettings(
        faults={kind: found for kind in KINDS if (found := _faults(table, kind))},
        level=table.one_of("level", LEVELS) or "II",
        limits={kind: _limit(table, kind) for kind in KINDS},
        seed=1 if seed is None else seed,
    )


def _faults(table: Table, kind: Kind) -> tuple[str, ...]:
    """Return the names of one kind's faults, once what is wrong with them is noted."""
    names = tuple(" ".join(name.split()) for name in texts_at(table, kind))
    wanted = "Write each fault once, in a few words"
    for name in names:
        if not name or len(name) > LONGEST_FAULT:
            found = "a fault has no name" if not name else f"{shown_value(name)} has more than {LONGEST_FAULT} letters"
            table.problem("fault-name", kind, found, wanted)
    doubled = [name for name, times in Counter(map(str.casefold, (*names, OTHER))).items() if times > 1]
    if doubled:
        note = f"; {shown_value(OTHER)} is added by itself" if OTHER in doubled else ""
        table.problem("doubled-fault", kind, f"{listed(map(shown_value, doubled))} stands twice{note}", wanted)
    if len(names) > MOST_FAULTS:
        table.problem("too-many-faults", kind, f"{len(names)} faults", f"Keep the {MOST_FAULTS} that matter")
    return names


def _limit(table: Table, kind: Kind) -> float:
    """Return the limit of one kind: a column of the tables, or 0."""
    key = LIMIT_KEYS[kind]
    limit = table.number(key)
    if limit is None:
        return USUAL_LIMITS[kind]
    if limit not in (0.0, *LIMITS):
        options = listed((shortest(one) for one in (0.0, *LIMITS)), "or")
        table.problem("not-an-option", key, f"{shortest(limit)} is no limit of the tables", f"Write {options}")
        return USUAL_LIMITS[kind]
    return limit


def read_care(table: Table | None) -> CareFacts:
    """Return what the table says; problems go to its notes."""
    if table is None:
        return CareFacts()
    table.known_keys(CARE_KEYS, "[care]")
    return CareFacts(
        goods=table.one_of("goods", GOODS),
        touches_food=truth_at(table, "touches_food"),
        for_children=truth_at(table, "for_children"),
        flame=table.one_of("flame", FLAMES),
        sender=table.text("from") or "",
    )
