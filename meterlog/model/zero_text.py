"""ZeroText: a zero as the value of a ``zero`` event, and back."""

from __future__ import annotations

import math
import re

from meterlog.model.sensor import Zero

_NUMBER = r"[-+]?[0-9.]+(?:e[-+]?[0-9]+)?"
_FORM = re.compile(
    rf"(?P<channel>.+) (?P<offset>{_NUMBER}) (?P<unit>\S+) scatter (?P<scatter>{_NUMBER})"
    rf" n (?P<count>[0-9]+)(?: range (?P<top>{_NUMBER}))?",
    re.ASCII,
)


def zero_text(channel: str, unit: str, zero: Zero) -> str:
    """Give ``<channel> <offset> <unit> scatter <s> n <count>``, with ``range <top>`` if known.

    Numbers are written so that the very same ones are read back.
    """
    top = "" if zero.range_top is None else f" range {zero.range_top!r}"
    return f"{channel} {zero.offset!r} {unit} scatter {zero.scatter!r} n {zero.count}{top}"


def parse_zero(text: str) -> tuple[str, Zero] | None:
    """Read the value of a ``zero`` event.

    Returns
    -------
    tuple of str and Zero, or None
        The channel, and its zero without ``taken_utc``, which is the event's own time; None where
        the text is none.
    """
    match = _FORM.fullmatch(text)
    if match is None:
        return None
    try:
        top = None if match["top"] is None else float(match["top"])
        offset, scatter = float(match["offset"]), float(match["scatter"])
    except ValueError:
        return None
    if not (math.isfinite(offset) and math.isfinite(scatter)):
        return None
    return match["channel"], Zero(offset, scatter, int(match["count"]), range_top=top)
