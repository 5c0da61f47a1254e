"""On what the figures were reached: machine, Python, the versions of what is timed and of the peers.

Ratios hold across machines better than seconds do, and even ratios only with these beside them.
"""

import os
import platform
import re
from collections.abc import Iterator
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path

OWN = ("numpy", "openpyxl", "pandas", "XlsxWriter", "Jinja2", "typer")
PEERS = ("scipy", "pymcdm", "scikit-criteria")
CPU_FILE = Path("/proc/cpuinfo")


def processor() -> str:
    """Return the processor's own name where the system tells it."""
    said = CPU_FILE.read_text("utf-8", errors="replace") if CPU_FILE.exists() else ""
    named = re.search(r"^model name\s*:\s*(.+)$", said, re.MULTILINE)
    return named[1].strip() if named else platform.processor() or platform.machine()


def versions(names: tuple[str, ...]) -> str:
    """Return packages with their versions, those that are not there left out."""

    def each() -> Iterator[str]:
        for name in names:
            try:
                yield f"{name} {version(name)}"
            except PackageNotFoundError:
                continue

    return ", ".join(each())


def about() -> str:
    """Return lines that say on what the figures were reached."""
    load = ", ".join(f"{one:.1f}" for one in os.getloadavg()) if hasattr(os, "getloadavg") else "not told"
    return "\n".join(
        (
            f"{processor()}, {os.cpu_count()} processors, {platform.system()}; load before the start: {load}",
            f"{platform.python_implementation()} {platform.python_version()}; {versions(OWN)}; one thread each",
            f"Peers: {versions(PEERS)}",
        )
    )


if __name__ == "__main__":
    print(about())
