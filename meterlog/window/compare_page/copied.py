"""Copied: what stands on the page Before / after, as text to be pasted elsewhere."""

from __future__ import annotations

from meterlog.window.compare_page.beside_good import Beside
from meterlog.window.compare_page.laid_runs import LaidRuns


def copied_words(laid: LaidRuns | None, beside: Beside | None) -> str:
    """Write a comparison, then that with good ones, marks included; empty where there is neither.

    Parameters
    ----------
    laid : LaidRuns or None
    beside : Beside or None
    """
    from meterlog.evidence.comparison_text import comparison_lines

    lines = []
    if laid is not None:
        lines += [laid.mark, ""] if laid.mark else []
        lines += comparison_lines(laid.comparison)
    if beside is not None and beside.held is not None:
        from meterlog.work.screening import with_few_named

        told = with_few_named(beside.held.comparison)
        lines += ["", *([beside.held.mark] if beside.held.mark else [])]
        lines += [f"good ones: {beside.table}", *comparison_lines(told)]
    return "\n".join(lines).lstrip("\n") + "\n" if lines else ""
