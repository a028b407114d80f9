"""Captures: the readings of each start, kept whole for a few seconds.

A start is where current comes that was gone for a dwell or longer. Whether it was one is decided
by the spans; here readings are kept, every one of them, in bounded memory.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.rows import Rows
from meterlog.analysis.schmitt import hold
from meterlog.model import Limits

SHORTEST_KEPT_S = 6.0
"""A soft start takes some five seconds."""
LONGEST_KEPT_S = 10.0
MOST_ROWS = 200_000
"""Of one start: ten seconds at 20,000 readings a second."""
_EVER = -(2**62)

Times = NDArray[np.int64]
Amps = NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False)
class Capture:
    """Readings from the last one without current to the end of what is kept.

    Attributes
    ----------
    t_ns : ndarray, int64, shape (n,)
    amps : ndarray, float64, shape (n,), amperes
        Size of the current. The first reading is the last without current, the second the first
        with it.
    blind_ns : int or None
        Since when readings were missing at the start or after it, as of a meter that shows an
        overload; None where none were.
    """

    t_ns: Times
    amps: Amps
    blind_ns: int | None = None

    @property
    def onset_ns(self) -> int:
        """Time of the first reading with current."""
        return int(self.t_ns[1])

    def until(self, end_ns: int) -> Capture:
        """Give what lies before a time, the first reading with current at least."""
        stop = max(int(np.searchsorted(self.t_ns, end_ns)), 2)
        blind = self.blind_ns is not None and self.blind_ns < end_ns
        return Capture(self.t_ns[:stop], self.amps[:stop], self.blind_ns if blind else None)


def flowing_part(capture: Capture, limits: Limits) -> Capture:
    """Leave out what comes after the current went again, for a dwell or to the end."""
    flows = _flows(capture.amps[1:], limits, initial=True)
    t = capture.t_ns[1:]
    went = np.flatnonzero(flows[:-1] & ~flows[1:]) + 1
    came = np.flatnonzero(~flows[:-1] & flows[1:]) + 1
    back_ns = np.full(len(went), 2**62)
    back_ns[: len(came)] = t[came]
    gone = went[back_ns - t[went] >= round(limits.min_dwell_s * 1e9)]
    return capture.until(int(t[gone[0]])) if len(gone) else capture


def _read(rows: Rows) -> tuple[Times, Amps, NDArray[np.bool_]]:
    """Give when current was read or known to be missing, how much, and which follow a pause."""
    t, gap, amps = rows.t_ns, rows.gap, np.abs(rows.amps)
    if not rows.usable.all():
        amps = np.where(rows.usable, amps, np.nan)
    if rows.amps_new is not None:
        kept = ~rows.usable | gap | rows.amps_new
        t, amps, gap = t[kept], amps[kept], gap[kept]
    return t, amps, gap


def _flows(amps: Amps, limits: Limits, *, initial: bool) -> NDArray[np.bool_]:
    """Tell where current flows, by the same hysteresis as the spans; no value changes nothing."""
    low = limits.open_current_a
    codes = (amps >= low * (1.0 + limits.hysteresis)).astype(np.int8)
    codes -= amps < low
    return hold(codes, initial=initial)


class _Open:
    """A capture while its readings come in."""

    def __init__(self, before: tuple[int, float], blind_ns: int | None) -> None:
        self._t: list[Times] = [np.array([before[0]], np.int64)]
        self._amps: list[Amps] = [np.array([before[1]])]
        self.blind_ns = blind_ns
        self.count = 1

    def add(self, t: Times, amps: Amps, gap: NDArray[np.bool_]) -> None:
        """Take readings; those without a value or after a pause tell that some are missing."""
        read = np.isfinite(amps)
        missing = ~read | gap
        if self.blind_ns is None and missing.any():
            self.blind_ns = int(t[missing][0])
        self._t.append(t[read])
        self._amps.append(amps[read])
        self.count += int(read.sum())

    def capture(self) -> Capture:
        """Give what came so far."""
        return Capture(np.concatenate(self._t), np.concatenate(self._amps), self.blind_ns)


class Captures:
    """Takes rows and gives the captures that have come to their end.

    Parameters
    ----------
    limits : Limits
    """

    def __init__(self, limits: Limits) -> None:
        self._limits = limits
        kept_s = min(max(SHORTEST_KEPT_S, limits.inrush_window_s + 1.0), LONGEST_KEPT_S)
        self._kept_ns = round(kept_s * 1e9)
        self._dwell_ns = round(limits.min_dwell_s * 1e9)
        self._flows = False
        self._gone_since_ns = _EVER
        self._last: tuple[int, float] | None = None
        self._blind_ns: int | None = None
        """Since when readings are missing after the last one."""
        self._open: _Open | None = None
        self._until_ns = 0

    def take(self, rows: Rows) -> list[Capture]:
        """Take rows, each once; give the captures that ended within them."""
        t, amps, gap = _read(rows)
        if not len(t):
            return []
        flows = _flows(amps, self._limits, initial=self._flows)
        done: list[Capture] = []
        at = 0
        for onset in self._onsets(t, flows):
            done += self._extend(t[at:onset], amps[at:onset], gap[at:onset])
            self._see(t[at:onset], amps[at:onset])
            done += self._close()
            self._begin(int(t[onset]), gap=bool(gap[onset]))
            at = onset
        done += self._extend(t[at:], amps[at:], gap[at:])
        self._see(t[at:], amps[at:])
        return done

    def rest(self) -> list[Capture]:
        """Give the capture that is still open, without ending it."""
        return [] if self._open is None else [self._open.capture()]

    def _onsets(self, t: Times, flows: NDArray[np.bool_]) -> list[int]:
        """Give the rows at which current came that was gone for a dwell."""
        states = np.concatenate(([self._flows], flows))
        came = np.flatnonzero(~states[:-1] & states[1:])
        went = np.flatnonzero(states[:-1] & ~states[1:])
        since = np.concatenate(([self._gone_since_ns], t[went]))
        gone_ns = since[np.searchsorted(went, came)]
        self._flows, self._gone_since_ns = bool(flows[-1]), int(since[-1])
        lasting = came[t[came] - gone_ns >= self._dwell_ns]
        return [int(one) for one in lasting]

    def _see(self, t: Times, amps: Amps) -> None:
        """Remember the last reading, and since when there has been none."""
        if not len(t):
            return
        after = len(amps)
        if not np.isfinite(amps[-1]):
            read = np.flatnonzero(np.isfinite(amps))
            after = int(read[-1]) + 1 if len(read) else 0
        if after:
            self._last, self._blind_ns = (int(t[after - 1]), float(amps[after - 1])), None
        if self._blind_ns is None and after < len(t):
            self._blind_ns = int(t[after])

    def _begin(self, onset_ns: int, *, gap: bool) -> None:
        if self._last is None:  # it flowed already when the recording began
            return
        blind_ns = onset_ns if gap and self._blind_ns is None else self._blind_ns
        self._open = _Open(self._last, blind_ns)
        self._until_ns = onset_ns + self._kept_ns

    def _extend(self, t: Times, amps: Amps, gap: NDArray[np.bool_]) -> list[Capture]:
        """Add to the open capture what still belongs to it; give it when it is at its end."""
        if self._open is None or not len(t):
            return []
        inside = int(np.searchsorted(t, self._until_ns, side="right"))
        room = np.flatnonzero(np.cumsum(np.isfinite(amps)) > MOST_ROWS - self._open.count)
        stop = min(inside, int(room[0])) if len(room) else inside
        self._open.add(t[:stop], amps[:stop], gap[:stop])
        return self._close() if stop < len(t) else []

    def _close(self) -> list[Capture]:
        ended = self.rest()
        self._open = None
        return ended
