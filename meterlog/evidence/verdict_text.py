"""VerdictText: the verdict of a run as lines for the terminal."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence

from meterlog.model import Ranked, RunVerdict

_WIDE = 100


def verdict_lines(verdict: RunVerdict | None) -> list[str]:
    """Give the lines, none wider than 100 columns; none without a verdict."""
    if verdict is None:
        return []
    lines = [f"Verdict: {verdict.outcome.value}"]
    lines += textwrap.wrap(verdict.paragraph, _WIDE)
    for place, one in enumerate(verdict.ranked, 1):
        lines += ["", *_ranked(place, one)]
    if verdict.unseen:
        lines += ["", "Not seen:", *_list(verdict.unseen)]
    return lines


def _ranked(place: int, one: Ranked) -> list[str]:
    chance = ""
    if one.probability is not None:
        chance = f"; beyond its limit with probability {_probability(one.probability)}"
    head = f"{place}. {one.part} ({one.sureness.value}{chance}): {one.what}"
    lines = textwrap.wrap(head, _WIDE, subsequent_indent="   ")
    for title, texts in (("rests on", one.rests_on), ("against", one.against)):
        if texts:
            lines += [f"   {title}:", *_list(texts, "     ")]
    following = f"   next: {one.next_measurement}"
    return lines + textwrap.wrap(following, _WIDE, subsequent_indent="     ")


def _probability(value: float) -> str:
    return "above 0.999" if value > 0.999 else f"{value:.3f}"


def _list(texts: Sequence[str], indent: str = "  ") -> list[str]:
    lines: list[str] = []
    for text in texts:
        lines += textwrap.wrap(f"{indent}- {text}", _WIDE, subsequent_indent=f"{indent}  ")
    return lines
