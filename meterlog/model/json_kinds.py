"""JSON kinds: a value read from a file is the kind of thing it should be, or a ``TypeError``."""

from __future__ import annotations

from collections.abc import Mapping


def as_table(found: object) -> Mapping[str, object]:
    """Give a JSON object; raises ``TypeError`` for anything else."""
    if not isinstance(found, dict):
        raise TypeError
    return found


def as_list(found: object) -> list[object]:
    """Give a JSON array; raises ``TypeError`` for anything else."""
    if not isinstance(found, list):
        raise TypeError
    return found


def as_text(found: object) -> str:
    """Give a JSON string; raises ``TypeError`` for anything else."""
    if not isinstance(found, str):
        raise TypeError
    return found
