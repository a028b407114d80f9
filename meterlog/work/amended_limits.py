"""Amended limits: every single limit by the key that it has in a limits file, and one of them set.

What comes out is written and read as a limits file: an edit is held to the same rules, and a
recording that is exported states the limits by which it was judged.
"""

from __future__ import annotations

import json
import math
from collections.abc import Collection, Iterator, Mapping
from dataclasses import fields
from typing import Any

from meterlog.model import Controller, Fuse, Limits, SpeedLimits
from meterlog.model.errors import UsageError
from meterlog.profile import limits_profile

_NO_LIMITS = ("name", "basis", "text", "fuse", "controller", "speeds")
"""Fields of :class:`Limits` that are words about it, or tables of their own."""
_MARK = ", amended"


def limit_values(limits: Limits, speeds: Collection[int] = ()) -> dict[str, str]:
    """Give every limit as text.

    Parameters
    ----------
    limits : Limits
    speeds : collection of int
        Further speeds, for which there are no limits yet.

    Returns
    -------
    dict of str to str
        By keys such as ``open_current_a``, ``fuse.rating_a`` and ``speed.2.max_a``; empty where a
        limit is not set. Numbers in full, with a decimal point.
    """
    return {key: _said(value) for key, _, value in _each(limits, speeds)}


def with_limit(limits: Limits, key: str, value: str, speeds: Collection[int] = ()) -> Limits:
    """Set one limit.

    Parameters
    ----------
    limits : Limits
    key : str
        One of those that :func:`limit_values` gives.
    value : str
        As in a limits file, text without its quotes; empty: take it away.
    speeds : collection of int
        See :func:`limit_values`.

    Returns
    -------
    Limits
        Their name and their text say that they were amended.

    Raises
    ------
    UsageError
        If there is no such limit, or the value is of another kind or can't be taken away.
    ProfileError
        If the value is out of range or contradicts another limit.
    """
    known = {one: (kind, old) for one, kind, old in _each(limits, speeds)}
    if key not in known:
        raise UsageError(
            "there is no such limit.",
            subject=key,
            remedy=f"Known are: {', '.join(known)}.",
        )
    kind, _ = known[key]
    values = {one: old for one, (_, old) in known.items()}
    values[key] = _value(key, kind, value.strip())
    name = limits.name if limits.name.endswith(_MARK) else limits.name + _MARK
    return limits_profile(name, _toml(name, values, limits.basis), f"limits {limits.name}")


def _each(limits: Limits, speeds: Collection[int]) -> Iterator[tuple[str, str, Any]]:
    """Give key, kind and value of every limit."""
    for field in fields(Limits):
        if field.name not in _NO_LIMITS:
            yield field.name, str(field.type), getattr(limits, field.name)
    for field in fields(Fuse):
        value = None if limits.fuse is None else getattr(limits.fuse, field.name)
        yield f"fuse.{field.name}", f"{field.type} | None", value
    for field in fields(Controller):
        yield f"controller.{field.name}", str(field.type), getattr(limits.controller, field.name)
    for speed in sorted({*limits.speeds, *speeds}):
        for field in fields(SpeedLimits):
            yield (
                f"speed.{speed}.{field.name}",
                str(field.type),
                getattr(limits.at(speed), field.name),
            )


def _said(value: object) -> str:
    if value is None:
        return ""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, (int, float)):
        return repr(float(value)).removesuffix(".0")
    return str(value)


def _value(key: str, kind: str, text: str) -> object:
    if not text:
        if "None" in kind or key == "controller.kind":
            return None
        raise UsageError("can't be without a value.", subject=key, remedy="Give one after the =.")
    if kind == "bool":
        if text not in {"true", "false"}:
            raise UsageError(f"is {text!r}.", subject=key, remedy="Give true or false.")
        return text == "true"
    if not kind.startswith("float"):
        return text
    try:
        number = float(text.replace(",", "."))
    except ValueError:
        number = math.nan
    if not math.isfinite(number):
        raise UsageError(
            f"is no number: {text!r}.", subject=key, remedy="Give it without a unit, such as 12.5."
        )
    return number


def _toml(name: str, values: Mapping[str, object], basis: str) -> str:
    """Write a limits file; a limit of None is left out."""
    tables: dict[str, list[str]] = {"": [f"basis = {_quoted(basis)}"]}
    for key, value in values.items():
        table, _, last = key.rpartition(".")
        lines = tables.setdefault(table, [])
        if value is not None:
            plain = isinstance(value, (bool, int, float))
            lines.append(f"{last} = {_said(value) if plain else _quoted(str(value))}")
    text = [f"# {' '.join(name.split())}: see the edits made on top of the recording."]
    for table, lines in tables.items():
        if lines:
            text += [*(["", f"[{table}]"] if table else []), *lines]
    return "\n".join(text) + "\n"


def _quoted(text: str) -> str:
    # A basic string of TOML is one of JSON, but for the one control character JSON lets through.
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")
