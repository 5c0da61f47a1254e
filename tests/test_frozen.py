"""The quick ``dataclass`` beside the standard library's, which is the reference: the same classes made by both."""

import dataclasses
import inspect
import pickle
from dataclasses import FrozenInstanceError, field, fields, replace
from typing import Any

import pytest

from scorecard import frozen


def plain(make: Any) -> Any:
    @make(frozen=True, slots=True, kw_only=True)
    class Plain:
        """Two fields."""

        low: float
        unit: str = "pieces"

    return Plain


def by_place(make: Any) -> Any:
    @make(frozen=True, slots=True)
    class ByPlace:
        """Given in order."""

        one: int
        two: int = 2
        kept: list[int] = field(default_factory=list, repr=False, compare=False)

        @property
        def both(self) -> int:
            """Their sum."""
            return self.one + self.two

    return ByPlace


def worked_out(make: Any) -> Any:
    @make(frozen=True, slots=True, kw_only=True)
    class WorkedOut:
        """One field is given, the others follow."""

        text: str
        length: int = field(init=False)
        parts: tuple[str, ...] = field(init=False, default_factory=tuple)
        always: int = field(init=False, default=7)

        def __post_init__(self) -> None:
            if not self.text:
                raise ValueError("empty")
            object.__setattr__(self, "length", len(self.text))

    return WorkedOut


def single(make: Any) -> Any:
    @make(frozen=True, slots=True)
    class Single:
        """One field."""

        number: float

    return Single


def empty(make: Any) -> Any:
    @make(frozen=True, slots=True)
    class Empty:
        """No field."""

    return Empty


def unequal(make: Any) -> Any:
    @make(frozen=True, kw_only=True, eq=False)
    class Unequal:
        """Equal to itself alone, and with room for more."""

        number: int

    return Unequal


GIVEN = [
    (plain, {"low": 1.5}),
    (plain, {"low": float("inf"), "unit": "mugs"}),
    (by_place, {"one": 1}),
    (by_place, {"one": 1, "two": 3, "kept": [4]}),
    (worked_out, {"text": "four"}),
    (single, {"number": 2.5}),
    (empty, {}),
    (unequal, {"number": 3}),
]


@pytest.fixture(params=GIVEN, ids=lambda case: f"{case[0].__name__}-{len(case[1])}")
def pair(request: pytest.FixtureRequest) -> tuple[Any, Any, dict[str, Any]]:
    """The class made by the library, by the project, and what an object is given."""
    define, given = request.param
    return define(dataclasses.dataclass), define(frozen.dataclass), given


def values(each: Any) -> list[Any]:
    return [getattr(each, one.name) for one in fields(each)]


def test_objects_hold_and_show_the_same(pair: tuple[Any, Any, dict[str, Any]]) -> None:
    reference, ours, given = pair
    assert values(ours(**given)) == values(reference(**given))
    assert repr(ours(**given)) == repr(reference(**given)).replace(reference.__qualname__, ours.__qualname__)
    assert ours.__match_args__ == reference.__match_args__
    assert hasattr(ours(**given), "__dict__") is hasattr(reference(**given), "__dict__")
    assert list(inspect.signature(ours).parameters) == list(inspect.signature(reference).parameters)
    assert [each.kind for each in inspect.signature(ours).parameters.values()] == [
        each.kind for each in inspect.signature(reference).parameters.values()
    ]


def test_equality_and_hash_are_as_there(pair: tuple[Any, Any, dict[str, Any]]) -> None:
    reference, ours, given = pair
    assert (ours(**given) == ours(**given)) is (reference(**given) == reference(**given))
    assert ours(**given) != reference(**given)
    if reference.__eq__ is not object.__eq__:
        assert hash(ours(**given)) == hash(reference(**given))


def test_one_other_value_makes_another_object() -> None:
    ours = by_place(frozen.dataclass)
    assert ours(1) == ours(1, 2)
    assert ours(1, 3) != ours(1, 2)
    assert ours(1, 2, [5]) == ours(1, 2, [6])  # not compared
    assert ours(1).both == 3


def test_a_value_that_equals_nothing_is_still_itself() -> None:
    reference, ours = single(dataclasses.dataclass), single(frozen.dataclass)
    nan = float("nan")
    assert (ours(nan) == ours(nan)) is (reference(nan) == reference(nan))


def test_nothing_can_be_set_or_deleted(pair: tuple[Any, Any, dict[str, Any]]) -> None:
    _, ours, given = pair
    each = ours(**given)
    for name in [one.name for one in fields(each)] or ["anything"]:
        with pytest.raises(FrozenInstanceError, match=name):
            setattr(each, name, 1)
        with pytest.raises(FrozenInstanceError, match=name):
            delattr(each, name)


@pytest.mark.parametrize(
    ("define", "places", "names"),
    [(plain, (1.0,), {}), (plain, (), {}), (plain, (), {"low": 1, "other": 2}), (by_place, (), {}), (empty, (1,), {})],
)
def test_what_the_library_does_not_take_is_not_taken(define: Any, places: Any, names: Any) -> None:
    for make in (dataclasses.dataclass, frozen.dataclass):
        with pytest.raises(TypeError):
            define(make)(*places, **names)


def test_a_default_made_anew_is_no_one_elses() -> None:
    ours = by_place(frozen.dataclass)
    one, other = ours(1), ours(1)
    one.kept.append(9)
    assert (one.kept, other.kept) == ([9], [])


def test_what_is_worked_out_follows_and_is_judged() -> None:
    ours = worked_out(frozen.dataclass)
    changed = replace(ours(text="four"), text="seventeen")
    assert (changed.length, changed.parts, changed.always) == (9, (), 7)
    with pytest.raises(ValueError, match="empty"):
        ours(text="")


@frozen.dataclass(frozen=True, slots=True, kw_only=True)
class Packed:
    """Stands where a copy can be unpacked."""

    low: float
    names: tuple[str, ...] = ()


def test_an_object_survives_packing() -> None:
    assert pickle.loads(pickle.dumps(Packed(low=1.5, names=("a",)))) == Packed(low=1.5, names=("a",))


def test_a_class_that_is_not_frozen_is_the_librarys() -> None:
    @frozen.dataclass(slots=True)
    class Open:
        """May change."""

        number: int

    each = Open(1)
    each.number = 2
    assert each == Open(2)
    assert repr(each).endswith("Open(number=2)")


@pytest.mark.parametrize("make", [dataclasses.dataclass, frozen.dataclass])
def test_a_class_can_inherit_as_it_can_there(make: Any) -> None:
    @make(frozen=True, slots=True, kw_only=True)
    class Further(plain(frozen.dataclass)):  # type: ignore[misc]  # made by a function
        """With a field more."""

        extra: int = 0

    each = Further(low=1.0, extra=2)
    assert values(each) == [1.0, "pieces", 2]
    assert each == Further(low=1.0, extra=2) != Further(low=1.0)
    assert repr(each).endswith("Further(low=1.0, unit='pieces', extra=2)")
    with pytest.raises(FrozenInstanceError):
        each.low = 2.0


def test_a_class_that_may_change_cannot_inherit() -> None:
    with pytest.raises(TypeError, match="frozen"):

        @dataclasses.dataclass
        class Loose(plain(frozen.dataclass)):  # type: ignore[misc]  # made by a function
            """Refused."""

            extra: int = 0


def test_a_function_of_the_classs_own_is_kept() -> None:
    @frozen.dataclass(frozen=True, slots=True)
    class Named:
        """Shown by its name."""

        name: str

        def __repr__(self) -> str:
            return self.name

        def __eq__(self, other: object) -> bool:
            return str(other) == self.name

        __hash__ = None  # type: ignore[assignment]  # as Python has it

    assert repr(Named("mug")) == "mug"
    assert Named("mug") == "mug"
    with pytest.raises(FrozenInstanceError):
        Named("mug").name = "cup"  # type: ignore[misc]  # what is tried
