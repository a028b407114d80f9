"""StartupText: starts and the fuse in lines for the terminal."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence

from meterlog.analysis.rounding import with_uncertainty
from meterlog.analysis.startup import peak_words, why_low
from meterlog.model import FuseCheck, OpeningMargin, StartUp

MOST_SHOWN = 8
"""Of more starts the first are shown, and how many there are."""
NO_PEAK = 1.1
"""Below this ratio of peak to steady there is no peak to speak of: as close as "settled" is."""
_WIDTH = 100
_FORM = "Opening times: form and kinds of fuse as in ISO 8820-3, the figures not from its text."
_MARKS = {
    "C": "[C] compared with published notes that quote makers' data sheets",
    "M": "[M] from memory: compare it with the maker's sheet before relying on it",
}
"""Of :mod:`meterlog.model.opening_times`."""


def startup_lines(startups: Sequence[StartUp], check: FuseCheck | None = None) -> list[str]:
    """Give lines of at most 100 columns: each start, then the fuse.

    Parameters
    ----------
    startups : sequence of StartUp
    check : FuseCheck or None

    Returns
    -------
    list of str
        Empty where nothing started and no fuse is named.
    """
    lines: list[str] = []
    for one in startups[:MOST_SHOWN]:
        lines += _wrapped(_start_words(one))
    if len(startups) > MOST_SHOWN:
        lines.append(f"and {len(startups) - MOST_SHOWN} more starts")
    if check is not None:
        lines += _wrapped(f"fuse {check.rating_a:g} A {check.kind}: {check.words}")
        shown = [row for row in check.margins if row.most_s > 0.0]
        lines += [_margin_words(row) for row in shown]
        lines += _marks(shown)
    return lines


def _marks(shown: Sequence[OpeningMargin]) -> list[str]:
    """Say what the marks in brackets mean, of those that are there."""
    there = {row.basis[0] for row in shown}
    said = [words for mark, words in _MARKS.items() if mark in there]
    return _wrapped(f"{_FORM} {'; '.join(said)}.") if said else []


def _wrapped(text: str) -> list[str]:
    return textwrap.wrap(text, _WIDTH, subsequent_indent="    ")


def _start_words(one: StartUp) -> str:
    at = "" if one.speed is None else f", speed {one.speed}"
    least = "at least " if one.peak_floor else ""
    peak = peak_words(one)
    words = [f"start at {one.t_ns / 1e9:.3f} s ({one.cause}{at}): peak {least}{peak}"]
    if one.ratio is not None and one.steady_a is not None:
        words.append(_ratio_words(one, one.ratio, one.steady_a))
    if one.settle_s is not None:
        words.append(f"within 10 % of it after {_settled(one.settle_s, one.settle_edge_s)}")
    elif one.steady_a is not None:
        words.append("it did not settle within what was kept of it")
    most = "at least " if one.at_end_of_range else ""
    words.append(f"I2t {most}{one.i2t_a2s:.3g} A2s over {one.i2t_s:.2f} s")
    if one.peak_floor:
        words.append(why_low(one))
    return "; ".join(words)


def _settled(settle_s: float, edge_s: float | None) -> str:
    if edge_s is None:
        return f"{settle_s:.2f} s"
    return with_uncertainty(settle_s, edge_s, "s")


def _ratio_words(one: StartUp, ratio: float, steady_a: float) -> str:
    if ratio < NO_PEAK and not one.peak_floor:
        return f"no peak above the {steady_a:.1f} A it runs at: a soft start"
    return f"{ratio:.1f} times the {steady_a:.1f} A it runs at"


def _margin_words(row: OpeningMargin) -> str:
    opens = "the table does not say when it opens"
    if row.opens_after_s is not None and row.opens_by_s is not None:
        opens = f"opens after {row.opens_after_s:g} to {row.opens_by_s:g} s"
    elif row.opens_after_s is not None:
        opens = f"carried for {row.opens_after_s / 3600.0:g} h"
    elif row.opens_by_s is not None:
        opens = f"opens by {row.opens_by_s:g} s"
    return (
        f"    {row.percent:4.0f} % ({row.amps:6.1f} A): {row.longest_s:8.3f} s"
        f" ({row.least_s:.3f} to {row.most_s:.3f}); {opens} [{row.basis[0]}]"
    )
