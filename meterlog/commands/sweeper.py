"""Sweeper: gives back, each minute, what Python keeps in case it is needed again."""

from __future__ import annotations

import gc
import time

_EVERY_S = 60.0


class Sweeper:
    """Looks from time to time for what can be let go, past all that there is when it is made.

    Python keeps up to 2,000 tuples of each length for the next time, and other things likewise. A
    live judgement adds one or two each second. A sweep of all gives them back, and costs little as
    what was loaded before is left out.

    Source
    ------
    Documentation of Python's ``gc.collect``: the free lists of built-in types are cleared whenever
    the highest generation is collected.
    """

    def __init__(self) -> None:
        gc.collect()
        gc.freeze()
        self._next_s = time.monotonic() + _EVERY_S

    def sweep_when_due(self) -> None:
        """Sweep, if the last time is long enough ago."""
        now_s = time.monotonic()
        if now_s >= self._next_s:
            self._next_s = now_s + _EVERY_S
            gc.collect()
