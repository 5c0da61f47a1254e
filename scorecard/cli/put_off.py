"""Modules that libraries load at their start and a run seldom needs, put off until something asks for what is in them.

Only the command line does so: whoever imports the package has Python's imports as they are.
"""

import sys
from collections.abc import Callable, Iterator, Mapping, Sequence
from importlib.machinery import ModuleSpec, PathFinder
from threading import RLock
from types import GenericAlias, ModuleType
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from importlib.abc import Loader
else:
    Loader = object  # importlib.abc would load some of what is to be put off

SELDOM_NEEDED = {
    "PIL.Image",  # by openpyxl, for pictures in sheets
    "bz2",
    "csv",
    "ipaddress",  # by urllib
    "linecache",
    "lzma",
    "numpy._core._add_newdocs",  # the texts of numpy's help
    "numpy._core._add_newdocs_scalars",
    "numpy._core._dtype_ctypes",
    "numpy._typing",
    "numpy.lib.format",
    "numpy.lib.introspect",
    "numpy.lib.mixins",
    "numpy.lib.npyio",
    "numpy.lib.scimath",
    "numpy.lib.stride_tricks",
    "numpy.random._pickle",
    "numpy.typing",
    "openpyxl.styles.builtins",  # the named styles of new sheets
    "subprocess",  # by typer, to open web pages
    "tokenize",
}
ASKED_OF_ANY = {"__path__", "__warningregistry__"}
"""Names that Python looks for in whatever it comes by."""


def put_off_what_is_seldom_needed() -> None:
    """Put these modules off from now on; one that is loaded already stays as it is."""
    sys.meta_path.insert(0, _Finder())


class _Finder:
    """Finds the modules to put off."""

    def find_spec(self, name: str, path: Sequence[str] | None = None, target: Any = None) -> ModuleSpec | None:
        """Return how a module is put off, or None for all others and for one that is not there."""
        spec = PathFinder.find_spec(name, path, target) if name in SELDOM_NEEDED else None
        if spec and spec.loader:
            spec.loader = _Later(spec.loader)
        return spec


class _Later(Loader):
    """Loads a module at the first name that it is asked for and does not have yet."""

    def __init__(self, loader: Loader) -> None:
        self._loader, self._lock, self._is_begun = loader, RLock(), False

    def create_module(self, spec: ModuleSpec) -> ModuleType | None:
        """Return the module that the loader itself makes."""
        return self._loader.create_module(spec)

    def exec_module(self, module: ModuleType) -> None:
        """Leave the module empty, but for what loads it."""
        self._module, held = module, vars(module)
        held["__loader__"] = held["__spec__"].loader = self._loader
        held["__getattr__"] = self._found
        if given := GIVEN_AT_ONCE.get(module.__name__):
            name, stand_in = given
            held[name] = stand_in(lambda: self._loaded()[name])

    def _found(self, name: str) -> Any:
        """Return what the module has by a name, as Python asks for where the module does not have it."""
        if name in ASKED_OF_ANY or name not in (held := self._loaded()):
            raise AttributeError(f"module {self._module.__name__!r} has no attribute {name!r}")
        return held[name]

    def _loaded(self) -> dict[str, Any]:
        """Return what is in the module, which is loaded before unless it is being loaded."""
        with self._lock:
            if not self._is_begun:
                self._is_begun = True
                self._loader.exec_module(self._module)
        return vars(self._module)


class _Table(Mapping[str, Any]):
    """A table of a module that is put off."""

    def __init__(self, whole: Callable[[], Mapping[str, Any]]) -> None:
        self._whole = whole

    def __getitem__(self, name: str) -> Any:
        return self._whole()[name]

    def __iter__(self) -> Iterator[str]:
        return iter(self._whole())

    def __len__(self) -> int:
        return len(self._whole())


class _Array:
    """Stands for the type of an array where annotations name it, which nobody reads in a run."""

    def __class_getitem__(cls, item: Any) -> GenericAlias:
        return GenericAlias(cls, item)


GIVEN_AT_ONCE: dict[str, tuple[str, Callable[[Callable[[], Any]], Any]]] = {
    "numpy._typing": ("NDArray", lambda _: _Array),
    "numpy.typing": ("NDArray", lambda _: _Array),
    "openpyxl.styles.builtins": ("styles", _Table),
}
"""Modules out of which libraries take something as they load it: by its name, what makes a stand-in for it."""
