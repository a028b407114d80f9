"""WarningsTold: says what speaks against the meters while a recording runs, each thing once."""

from __future__ import annotations

import time

from meterlog.commands.terminal import Progress, remark
from meterlog.model import Doubt, DoubtKind, Role
from meterlog.work import Run

_PERIOD_S = 1.0
_SETTLES_S = 5.0
"""A zero just taken takes a moment through the bus and the judgement, longer on a busy computer."""


class WarningsTold:
    """Says each doubt about the meters once, within about a second of its being known."""

    def __init__(self) -> None:
        self._told: set[tuple[DoubtKind, str, Role | None, int]] = set()
        self._looked_s = self._zeroing_s = float("-inf")

    def tell(self, run: Run, progress: Progress, *, zeroing: bool) -> None:
        """Look for new ones.

        Parameters
        ----------
        run : Run
        progress : Progress
            Taken away before a line is written.
        zeroing : bool
            A zero is being taken: that there is none yet is nothing to tell, nor for some seconds
            after.
        """
        now_s = time.monotonic()
        if zeroing:
            self._zeroing_s = now_s
        if now_s - self._looked_s < _PERIOD_S:
            return
        self._looked_s = now_s
        for doubt in run.review().doubts:
            missing = doubt.kind is DoubtKind.ZERO_MISSING
            if (missing and now_s - self._zeroing_s < _SETTLES_S) or _mark(doubt) in self._told:
                continue
            self._told.add(_mark(doubt))
            progress.done()
            remark(f"WARNING: {doubt.text}")


def _mark(doubt: Doubt) -> tuple[DoubtKind, str, Role | None, int]:
    """Give what stays the same of a doubt while the recording goes on."""
    return doubt.kind, doubt.source, doubt.role, round(doubt.start_ns / 1e9)
