"""CircuitChoice: which circuits there are to choose from, by their titles."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

from meterlog.profile import listed


def circuit_titles() -> tuple[tuple[str, str], ...]:
    """Give (name, title) of every circuit profile, the user's own first.

    The nominal voltage comes first: in a narrow box only the beginning of a title is seen, and many
    differ by nothing else. A profile that can't be read is offered by its name: what is wrong with
    it is told when it is chosen.
    """
    return tuple((one.name, _title(one.name, one.file)) for one in listed("circuits"))


def _title(name: str, file: Path) -> str:
    try:
        stated = tomllib.loads(file.read_text("utf-8"))
    except (OSError, ValueError):
        return name
    found = stated.get("title")
    return _volts_first(found, stated) if isinstance(found, str) and found else name


def _volts_first(title: str, stated: dict[str, Any]) -> str:
    nominal_v = stated.get("nominal_v")
    if isinstance(nominal_v, bool) or not isinstance(nominal_v, int | float):
        return title
    volts = f"{nominal_v:g} V"
    return f"{volts}: {title.removesuffix(f', {volts}')}"
