"""Installed: which program, system and libraries these are."""

from __future__ import annotations

import platform
import sys
from collections.abc import Iterator
from importlib import metadata

from meterlog import __version__
from meterlog.work.doctor.look import Line, State

NEEDED = (
    *("PySide6-Essentials", "pyqtgraph", "pyserial", "numpy", "pandas", "pyarrow", "jsonschema"),
    *("platformdirs", "pymodbus", "cryptography", "pikepdf", "pillow"),
)
OPTIONAL = {
    "hidapi": "meters and adapters of the HID class: pip install 'meterlog[hid]'",
    "pyvisa": "meters of the USBTMC class: pip install 'meterlog[usbtmc]'",
    "pyvisa-py": "meters of the USBTMC class: pip install 'meterlog[usbtmc]'",
    "pyusb": "meters of the USBTMC class: pip install 'meterlog[usbtmc]'",
    "PySide6-Addons": "hearing the current: pip install 'meterlog[sound]'",
}


def look_at_installed() -> Iterator[Line]:
    """Look at versions; a library that is needed and not there is bad, an optional one is not."""
    system = f"{platform.system()} {platform.release()}, {platform.machine()}"
    python = f"Python {platform.python_version()}"
    kind = "frozen" if getattr(sys, "frozen", False) else "as a package"
    yield Line("program", State.OK, f"meterlog {__version__} {kind}, {python}, {system}")
    found = {name: _version(name) for name in (*NEEDED, *OPTIONAL)}
    there = [f"{name} {found[name]}" for name in NEEDED if found[name]]
    yield Line("libraries", State.OK, ", ".join(there))
    for name in NEEDED:
        if not found[name]:
            yield Line(
                "libraries",
                State.BAD,
                f"{name} is not installed",
                "Install meterlog again, as its README says.",
            )
    for name, wanted in OPTIONAL.items():
        words = f"{name} {found[name]}" if found[name] else f"{name} is not installed"
        yield Line("optional", State.OK, f"{words} ({wanted.partition(':')[0]})")


def _version(name: str) -> str:
    try:
        return metadata.version(name)
    except metadata.PackageNotFoundError:
        return ""
