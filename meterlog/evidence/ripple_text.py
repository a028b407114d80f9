"""RippleText: what the ripple shows, in lines for the terminal."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence

from meterlog.model import RippleView

WIDTH = 100


def ripple_lines(views: Sequence[RippleView]) -> list[str]:
    """Give the ripple of each step in lines of at most 100 columns.

    Steps for which nothing can be told for one and the same reason share a line.

    Parameters
    ----------
    views : sequence of RippleView
    """
    if not views:
        return []
    lines = ["Ripple of the commutator:"]
    by_words: dict[str, list[str]] = {}
    for view in views:
        by_words.setdefault(view.statement, []).append(_name(view))
    for words, names in by_words.items():
        unique = list(dict.fromkeys(names))
        told = "every step" if len(by_words) == 1 and len(names) > 1 else ", ".join(unique)
        lines += textwrap.wrap(
            f"{told}: {words}", WIDTH, initial_indent="  ", subsequent_indent="    "
        )
    return lines


def _name(view: RippleView) -> str:
    if view.speed is not None:
        return f"speed {view.speed}"
    return f"{view.start_ns / 1e9:.1f} to {view.end_ns / 1e9:.1f} s"
