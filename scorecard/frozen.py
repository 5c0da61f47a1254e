"""``dataclass``, as the standard library's, made in a quarter of the time: a run begins by making some 130 of them.

The library compiles seven functions for each class; here one is compiled, the first, and all classes share the rest.
Python 3.13 has come to do nearly as well: with it as the oldest Python allowed, this module can go.
"""

import dataclasses
from collections.abc import Callable
from dataclasses import MISSING, Field, FrozenInstanceError
from operator import attrgetter
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from dataclasses import dataclass
else:

    def dataclass(
        *, frozen: bool = False, slots: bool = False, kw_only: bool = False, eq: bool = True
    ) -> Callable[[type], type]:
        """Return a decorator of a class whose attributes stand for its fields, as the standard library's does.

        Parameters
        ----------
        frozen, slots, kw_only, eq : as there; a class that is not frozen, has a function of these of its own or a
            base with fields is left to the library; ``InitVar`` and ``field(hash=…)`` are not known here
        """
        plain = dataclasses.dataclass(init=False, repr=False, eq=False, slots=slots, kw_only=kw_only)
        whole = dataclasses.dataclass(frozen=frozen, eq=eq, slots=slots, kw_only=kw_only)
        return lambda cls: _frozen(plain(cls), eq=eq) if frozen and _is_ordinary(cls) else whole(cls)


__all__ = ["dataclass"]


def _is_ordinary(cls: type) -> bool:
    """Return whether nothing of a class stands in the way of the shared functions."""
    own = {"__init__", "__repr__", "__eq__", "__hash__"} & vars(cls).keys()
    return not own and not any(map(dataclasses.is_dataclass, cls.__mro__[1:]))


def _frozen(cls: Any, *, eq: bool) -> Any:
    """Give a class with fields its functions, nearly all of them shared."""
    cls.__init__ = _Init(cls)
    cls.__setattr__, cls.__delattr__ = _refuse_to_set, _refuse_to_delete
    cls.__getstate__, cls.__setstate__ = _state, _set_state
    cls.__repr__ = _repr
    params = cls.__dataclass_params__  # by which the library judges a class that inherits from this one
    params.init, params.repr, params.eq, params.frozen = True, True, eq, True
    if eq:
        cls.__eq__, cls.__hash__ = _equal, _hash
        cls.__values__ = staticmethod(_values([one.name for one in dataclasses.fields(cls) if one.compare]))
    return cls


class _Init:
    """What sets the fields of a new object, compiled at the first: a run makes none of half the classes."""

    def __init__(self, cls: Any) -> None:
        self._cls = cls

    def __get__(self, each: Any, cls: type) -> Any:
        self._cls.__init__ = compiled = _init(self._cls)
        return compiled.__get__(each, cls)


def _init(cls: Any) -> Callable[..., None]:
    """Compile what sets the fields of a new object."""
    fields: tuple[Field[Any], ...] = dataclasses.fields(cls)
    taken = [one for one in fields if one.init]
    by_place, by_name = ([_taken(one) for one in taken if one.kw_only is kind] for kind in (False, True))
    lines = [f"set_(self, {one.name!r}, {_given(one)})" for one in fields if one.init or _has_default(one)]
    if hasattr(cls, "__post_init__"):
        lines.append("self.__post_init__()")
    words = ", ".join(["self", *by_place, *(["*", *by_name] if by_name else [])])
    named: dict[str, Any] = {"set_": object.__setattr__, "MISSING": MISSING, "__name__": cls.__module__}
    named |= {f"_{one.name}": one.default_factory if _is_made(one) else one.default for one in fields}
    exec(f"def __init__({words}):\n " + "\n ".join(lines or ["pass"]), named)  # noqa: S102 - names of fields alone
    init: Callable[..., None] = named["__init__"]
    init.__qualname__ = f"{cls.__qualname__}.__init__"
    init.__annotations__ = {one.name: one.type for one in taken} | {"return": None}
    return init


def _taken(field: Field[Any]) -> str:
    """Return a field as a parameter, with its default if it has one."""
    if _is_made(field):
        return f"{field.name}=MISSING"
    return f"{field.name}=_{field.name}" if _has_default(field) else field.name


def _given(field: Field[Any]) -> str:
    """Return what a field is set to."""
    if not field.init:
        return f"_{field.name}()" if _is_made(field) else f"_{field.name}"
    return f"_{field.name}() if {field.name} is MISSING else {field.name}" if _is_made(field) else field.name


def _has_default(field: Field[Any]) -> bool:
    """Return whether a field need not be given."""
    return field.default is not MISSING or _is_made(field)


def _is_made(field: Field[Any]) -> bool:
    """Return whether a field's default is made anew for each object."""
    return field.default_factory is not MISSING


def _values(names: list[str]) -> Callable[[Any], tuple[Any, ...]]:
    """Return what gives the values of an object's fields."""
    if len(names) > 1:
        return attrgetter(*names)
    return lambda each: tuple(getattr(each, name) for name in names)


def _equal(self: Any, other: Any) -> Any:
    if other.__class__ is not self.__class__:
        return NotImplemented
    return self.__values__(self) == self.__values__(other)


def _hash(self: Any) -> int:
    return hash(self.__values__(self))


def _repr(self: Any) -> str:
    shown = (f"{one.name}={getattr(self, one.name)!r}" for one in dataclasses.fields(self) if one.repr)
    return f"{type(self).__qualname__}({', '.join(shown)})"


def _refuse_to_set(self: object, name: str, value: object) -> None:  # noqa: ARG001 - as it is called
    raise FrozenInstanceError(f"cannot assign to field {name!r}")


def _refuse_to_delete(self: object, name: str) -> None:  # noqa: ARG001 - as it is called
    raise FrozenInstanceError(f"cannot delete field {name!r}")


def _state(self: Any) -> list[Any]:
    return [getattr(self, one.name) for one in dataclasses.fields(self)]


def _set_state(self: Any, state: list[Any]) -> None:
    for one, value in zip(dataclasses.fields(self), state, strict=True):
        object.__setattr__(self, one.name, value)
