"""InferredText: what no single reading shows, as lines for the terminal."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence

from meterlog.model import Inferred, PulsedFeed, Rhythm

WIDTH = 100
MOST_LINES = 12
"""Statements of one sort that are written out; the others are counted."""


def inferred_lines(
    inferred: Sequence[Inferred], pulsed: Sequence[PulsedFeed], rhythm: Rhythm | None
) -> list[str]:
    """Give the lines; none where there is nothing to tell.

    Parameters
    ----------
    inferred : sequence of Inferred
    pulsed : sequence of PulsedFeed
    rhythm : Rhythm or None

    Returns
    -------
    list of str
        At most 100 columns each.
    """
    lines: list[str] = []
    for heading, words in (
        ("Dropouts inferred, not seen", [one.statement for one in inferred]),
        ("Pulsed feed", [one.statement for one in pulsed]),
        ("Rhythm of the dropouts", [] if rhythm is None else [rhythm.statement]),
    ):
        if words:
            lines.append(f"{heading}:")
            lines += [line for text in words[:MOST_LINES] for line in _item(text)]
        if len(words) > MOST_LINES:
            lines.append(f"  and {len(words) - MOST_LINES} more")
    return lines


def _item(text: str) -> list[str]:
    return textwrap.wrap(text, WIDTH, initial_indent="  - ", subsequent_indent="    ")
