"""CircuitChoice: which circuits there are to choose from, by their titles."""

from __future__ import annotations

import re
import tomllib
from functools import lru_cache
from pathlib import Path
from typing import Any

from meterlog.profile import listed
from meterlog.profile.plain_file import read_plain
from meterlog.window.sentences import sentence

_FIRST_TABLE = re.compile(r"^\s*\[", re.MULTILINE)


def circuit_titles() -> tuple[tuple[str, str], ...]:
    """Give (name, title) of every circuit profile, the user's own first.

    The nominal voltage comes first: in a narrow box only the beginning of a title is seen, and many
    differ by nothing else. A profile whose head can't be read is offered by its name: what is wrong
    with it is told when it is chosen.
    """
    return tuple((one.name, _title(one.name, one.file)) for one in listed("circuits"))


def _title(name: str, file: Path) -> str:
    try:
        seen = file.stat()
        stated = _stated(file, seen.st_mtime_ns, seen.st_size)
    except (OSError, ValueError):
        return name
    found = stated.get("title")
    return _volts_first(sentence(found), stated) if isinstance(found, str) and found else name


@lru_cache(maxsize=256)
def _stated(file: Path, mtime_ns: int, size: int) -> dict[str, Any]:
    """Read the head of a file that has not changed since once: the window waits for it."""
    del mtime_ns, size
    return _head(read_plain(file).decode())


def _head(text: str) -> dict[str, Any]:
    """Read what stands before the first table: the rest is long."""
    try:
        head = tomllib.loads(_FIRST_TABLE.split(text, maxsplit=1)[0])
    except ValueError:
        head = {}  # what looked like a table stood within a text
    return head if "title" in head else tomllib.loads(text)


def _volts_first(title: str, stated: dict[str, Any]) -> str:
    nominal_v = stated.get("nominal_v")
    if isinstance(nominal_v, bool) or not isinstance(nominal_v, int | float):
        return title
    volts = f"{nominal_v:g} V"
    return f"{volts}: {title.removesuffix(f', {volts}')}"
