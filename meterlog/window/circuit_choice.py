"""CircuitChoice: which circuits there are to choose from, by their titles."""

from __future__ import annotations

import tomllib
from pathlib import Path

from meterlog.profile import listed


def circuit_titles() -> tuple[tuple[str, str], ...]:
    """Give (name, title) of every circuit profile, the user's own first.

    One that can't be read is offered by its name: what is wrong with it is told when it is chosen.
    """
    return tuple((one.name, _title(one.name, one.file)) for one in listed("circuits"))


def _title(name: str, file: Path) -> str:
    try:
        found = tomllib.loads(file.read_text("utf-8")).get("title")
    except (OSError, ValueError):
        return name
    return found if isinstance(found, str) and found else name
