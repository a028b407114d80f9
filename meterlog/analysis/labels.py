"""Labeller: Rows to Pieces, each stretch of readings with one label.

Three questions in turn, each answered on whole arrays and only where it is open:

1. Does current flow? (threshold with hysteresis; a silence or a missing value answers nothing)
2. Where it flows: is it above, below or within the limits of the commanded speed? Not asked
   within the inrush window after a start or a change of speed.
3. Where it is gone: off, or which side is to blame? (``sides.py``)

State is carried from one call to the next, so the answer does not depend on how rows are cut.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.current_reads import CurrentReads, last_read_ns
from meterlog.analysis.edges import fall_edge, rise_edge, threshold_edge
from meterlog.analysis.excess import ExcessJudge
from meterlog.analysis.levels_before import LevelsBefore
from meterlog.analysis.onset import Onset
from meterlog.analysis.pieces import (
    BY_SPEED,
    FLOWING_KINDS,
    Figures,
    Group,
    Piece,
    figures_of,
)
from meterlog.analysis.rows import Rows
from meterlog.analysis.schmitt import runs, zones
from meterlog.analysis.sides import SIDE_KIND, Asked, Side, sides, would_settle
from meterlog.analysis.timeline import SpeedTimeline
from meterlog.model import Limits, Role, SpanKind

_NOTHING, _BELOW, _BETWEEN, _ABOVE = 0, 1, 2, 3
NOTCH_NS = 5_000_000
"""A motor without current for less than this has slowed by about a hundredth (memory of the
trade: it coasts down within some tenths of a second), and so restarts without a peak."""
RESTART_WINDOWS = 10
"""After a dropout the start-up current is not judged for this many times its length at most."""
_EVER = -(2**62)
"""Before any reading."""
_PLAIN = (SpanKind.OFF, SpanKind.NO_DATA)
"""Kinds of which no figures are needed."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """Rows ``start`` to ``stop`` at one commanded speed, for the statistics of steps.

    ``steady`` is True where current flows outside the inrush window.
    """

    start: int
    stop: int
    speed: int | None
    steady: bool


def _across(rows: Rows, index: int) -> float | None:
    """Give the voltage across the motor in one row (the feed where there is no return)."""
    if rows.feed is None:
        return None
    volts = float(rows.feed[index])
    return volts if rows.back is None else volts - float(rows.back[index])


class Labeller:
    """Gives Pieces for Rows.

    Parameters
    ----------
    limits : Limits
    timeline : SpeedTimeline
        May grow between calls, but only beyond the rows already labelled.
    volts_window_ns : int, nanoseconds
        How much longer a voltage reading averages than a current reading, halved: a voltage
        counts as read after the current went only when it is that much later.
    """

    def __init__(self, limits: Limits, timeline: SpeedTimeline, volts_window_ns: int = 0) -> None:
        self._limits = limits
        self._timeline = timeline
        self._volts_window_ns = volts_window_ns
        self._inrush_ns = round(limits.inrush_window_s * 1e9)
        self._state = _NOTHING
        self._last_flow = _NOTHING
        self._quiet_until_ns = self._restarted_ns = _EVER
        self._coast_ns = round(limits.coast_s * 1e9)
        self._onset = Onset(limits)
        self._flow = LevelsBefore(volts_window_ns, self._coast_ns)
        self._reads = CurrentReads()
        self._excess = ExcessJudge(limits)
        self._open: Piece | None = None
        self._done: list[Piece] = []
        self.stretches: list[Stretch] = []

    def label(self, rows: Rows, start: int, stop: int) -> list[Piece]:
        """Label rows ``start`` to ``stop`` (exclusive).

        Parameters
        ----------
        rows : Rows
            With up to two rows before ``start`` for looking back, and at least one after
            ``stop`` for looking ahead unless these are the last.
        start, stop : int

        Returns
        -------
        list of Piece
            Those that ended within these rows; the last one stays open. ``stretches`` then
            covers all rows from ``start`` to ``stop``.
        """
        self._done, self.stretches = [], []
        sizes = np.abs(rows.amps)
        self._reads.take(rows, sizes, start, stop)
        for first, last, state in self._flow_runs(rows, sizes, start, stop):
            if rows.gap[first]:
                self._push_gap(rows, first)
            self._enter(rows, first, state)
            for begin, end, speed in self._by_speed(rows, first, last):
                if state == _NOTHING:
                    self._push(rows, sizes, begin, end, SpanKind.NO_DATA, speed)
                    self.stretches.append(Stretch(begin, end, speed, steady=False))
                elif state == _ABOVE:
                    self._label_flowing(rows, sizes, begin, end, speed)
                else:
                    self._label_gone(rows, sizes, begin, end, speed)
            if state == _ABOVE:
                goes_on = self._state == _ABOVE and not rows.gap[first]
                self._flow.note(rows, first, last, goes_on=goes_on)
            elif state == _BELOW:
                self._flow.forget()
            self._state = state
            if state != _NOTHING:
                self._last_flow = state
        return self._done

    def open_piece(self, until_ns: int) -> Piece | None:
        """Give the piece that has not ended yet, as if it ended at ``until_ns``."""
        if self._open is None:
            return None
        return replace(self._open, end_ns=max(until_ns, self._open.start_ns))

    # -- does current flow? --------------------------------------------------------------------

    def _flow_runs(
        self, rows: Rows, sizes: NDArray[np.float64], start: int, stop: int
    ) -> Iterator[tuple[int, int, int]]:
        """Give (first row, row after the last, state) of each stretch, hysteresis resolved."""
        part = sizes[start:stop]
        limit = self._limits.open_current_a
        codes = zones(part, (limit, limit * (1.0 + self._limits.hysteresis)))
        codes += np.uint8(_BELOW)
        usable = rows.usable[start:stop]
        if not usable.all():
            codes[~usable] = _NOTHING
        begins = runs(codes)
        gaps = np.flatnonzero(rows.gap[start:stop])
        if len(gaps):
            begins = np.union1d(begins, gaps)
        ends = np.append(begins[1:], len(part))
        state, first = self._state, start
        current: int | None = None
        for begin, end, code in zip(
            begins.tolist(), ends.tolist(), codes[begins].tolist(), strict=True
        ):
            fresh = bool(rows.gap[start + begin])
            before = _NOTHING if fresh else (state if current is None else current)
            if code == _BETWEEN:  # keeps what was; a first reading counts as current
                code = _BELOW if before == _BELOW else _ABOVE  # noqa: PLW2901
            if current is not None and (code != current or fresh):
                yield first, start + begin, current
                first = start + begin
            current = code
            if end == len(part):
                yield first, stop, current

    def _enter(self, rows: Rows, first: int, state: int) -> None:
        """Note the start of a stretch: the inrush window, or the onset of missing current."""
        if state == _ABOVE and self._state != _ABOVE:
            self._excess.forget()
            if self._last_flow == _BELOW:
                # A short dropout leaves a motor that hardly slowed, and so a short peak.
                away_ns = int(rows.t_ns[first]) - self._onset.gone_ns
                window_ns = min(self._inrush_ns, RESTART_WINDOWS * away_ns)
                if away_ns >= NOTCH_NS:
                    self._quiet(int(rows.t_ns[first]) + window_ns, int(rows.t_ns[first]))
        # A reading or two that are missing in between do not make a new onset.
        fresh = self._last_flow != _BELOW or bool(rows.gap[first])
        if state == _BELOW and self._state != _BELOW and fresh:
            gone_ns, before = int(rows.t_ns[first]), None
            if self._state == _ABOVE:
                before = self._flow.before(gone_ns)
            elif self._flow.turns_at(gone_ns):
                # The current went while it was not read; the motor may still turn.
                before = self._flow.before(None)
            self._onset.begin(rows, first, before, flowed=before is not None)

    def _quiet(self, until_ns: int, restarted_ns: int = _EVER) -> None:
        if until_ns > self._quiet_until_ns:
            self._quiet_until_ns, self._restarted_ns = until_ns, restarted_ns

    def _by_speed(self, rows: Rows, first: int, last: int) -> Iterator[tuple[int, int, int | None]]:
        """Cut rows at the changes of the commanded speed; each starts an inrush window."""
        t = rows.t_ns
        since = int(t[first - 1]) if first else _EVER
        begin = first
        for change in self._timeline.between(since, int(t[last - 1])):
            index = first + int(np.searchsorted(t[first:last], change.t_ns, side="left"))
            if index > begin:
                yield begin, index, self._timeline.at(int(t[begin]))
                begin = index
            self._quiet(change.t_ns + self._inrush_ns)
            self._excess.forget()
        yield begin, last, self._timeline.at(int(t[begin]))

    # -- current flows: how much? --------------------------------------------------------------

    def _label_flowing(
        self, rows: Rows, sizes: NDArray[np.float64], first: int, last: int, speed: int | None
    ) -> None:
        self._excess.at(speed)
        quiet = int(np.searchsorted(rows.t_ns[first:last], self._quiet_until_ns, side="left"))
        judged = first + quiet
        if judged > first:
            self._excess.pass_over(rows.t_ns[first:judged], sizes[first:judged])
            self._push(rows, sizes, first, judged, SpanKind.RUNNING, speed)
            self.stretches.append(Stretch(first, judged, speed, steady=False))
        if judged < last:
            self.stretches.append(Stretch(judged, last, speed, steady=True))
            for begin, end, kind in self._excess.runs(sizes, judged, last):
                self._push(rows, sizes, begin, end, kind, speed)

    # -- current is gone: which side? ----------------------------------------------------------

    def _label_gone(
        self, rows: Rows, sizes: NDArray[np.float64], first: int, last: int, speed: int | None
    ) -> None:
        self.stretches.append(Stretch(first, last, speed, steady=False))
        if speed == 0:
            self._push(rows, sizes, first, last, SpanKind.OFF, speed)
            return
        asked_since = self._asked_since(rows, first)
        if asked_since > self._onset.since_ns:
            self._onset.asked(rows, first, asked_since)
        answer = sides(
            None if rows.feed is None else rows.feed[first:last],
            None if rows.back is None else rows.back[first:last],
            self._asked(rows, first, last, speed),
            self._limits,
        )
        if rows.volts_ns is not None:
            read = rows.volts_ns[first:last] >= self._onset.since_ns + self._volts_window_ns
            answer = np.where(read, answer, np.uint8(Side.UNDETERMINED))
        begins = runs(answer)
        ends = np.append(begins[1:], last - first)
        for begin, end in zip(begins.tolist(), ends.tolist(), strict=True):
            kind = SIDE_KIND[Side(int(answer[begin]))]
            self._push(rows, sizes, first + begin, first + end, kind, speed)

    def _asked(self, rows: Rows, first: int, last: int, speed: int | None) -> Asked:
        onset = self._onset
        if onset.flowed:
            turning = rows.t_ns[first:last] < onset.gone_ns + self._coast_ns
        else:
            turning = np.zeros(last - first, np.bool_)
        return Asked(speed, onset.feed_v, onset.back_v, onset.flowed, turning)

    def _asked_since(self, rows: Rows, first: int) -> int:
        since = int(rows.t_ns[first - 1]) if first else _EVER
        changes = self._timeline.between(since, int(rows.t_ns[first]))
        return changes[-1].t_ns if changes else _EVER

    # -- pieces --------------------------------------------------------------------------------

    def _push_gap(self, rows: Rows, index: int) -> None:
        """Put a silence between row ``index`` - 1 and ``index``."""
        if self._open is None or index == 0:
            return
        before, after = int(rows.t_ns[index - 1]), int(rows.t_ns[index])
        self._close(before, 0)
        self._open = Piece(SpanKind.NO_DATA, before, after, 0, 0, self._timeline.at(before))
        self._state = _NOTHING

    def _close(self, end_ns: int, edge_ns: int) -> None:
        if self._open is not None:
            end_ns = max(end_ns, self._open.start_ns)
            self._done.append(replace(self._open, end_ns=end_ns, end_edge_ns=edge_ns))
            self._open = None

    def _push(
        self,
        rows: Rows,
        sizes: NDArray[np.float64],
        first: int,
        last: int,
        kind: SpanKind | None,
        speed: int | None,
    ) -> None:
        """Continue the open piece, or end it and begin another."""
        figures = None if kind in _PLAIN else self._figures(rows, first, last, kind)
        known, last_v = self._open, _across(rows, last - 1)
        same_limits = known is None or known.speed == speed or kind not in BY_SPEED
        if known is not None and known.kind is kind and same_limits:
            if figures is not None:
                known = replace(known, figures=known.figures.then(figures))
            read_ns = max(known.read_ns, last_read_ns(rows, first, last))
            self._open = replace(known, last_v=last_v, read_ns=read_ns)
            return
        at, edge = self._edge(rows, sizes, first, kind)
        self._close(at, edge)
        quiet = at == self._quiet_until_ns
        self._open = Piece(
            kind=kind,
            start_ns=at,
            end_ns=at,
            start_edge_ns=edge,
            end_edge_ns=0,
            speed=speed,
            figures=figures or Figures(),
            settled_by=self._settled_by(rows, kind, speed),
            first_v=_across(rows, first),
            last_v=last_v,
            after_quiet=quiet,
            restarted_ns=self._restarted_ns if quiet else _EVER,
            within_ns=self._excess.within_ns if quiet else _EVER,
            read_ns=last_read_ns(rows, first, last),
        )

    def _settled_by(self, rows: Rows, kind: SpanKind | None, speed: int | None) -> tuple[Role, ...]:
        """Name the channels without which the side of a loss, or a held rotor, stays open."""
        feed, back = rows.feed is not None, rows.back is not None
        if kind is SpanKind.NO_CURRENT:
            return would_settle(feed=feed, back=back, speed=speed is not None)
        # On the highest speed a held rotor's current tells by itself.
        low = speed is not None and 0 < speed < max(self._limits.speeds, default=0)
        if kind is SpanKind.OVER and low:
            return would_settle(feed=feed, back=back, speed=True)
        return ()

    @staticmethod
    def _figures(rows: Rows, first: int, last: int, kind: SpanKind | None) -> Figures:
        amps = rows.amps[first:last]
        if rows.amps_new is not None:
            amps = amps[rows.amps_new[first:last]]
        if kind is SpanKind.RUNNING or rows.feed is None:
            return figures_of(amps, None)
        volts = rows.feed[first:last]
        if rows.back is not None:
            volts = volts - rows.back[first:last]
        if rows.volts_new is not None:
            volts = volts[rows.volts_new[first:last]]
        return figures_of(amps, volts[np.isfinite(volts)])

    def _edge(
        self, rows: Rows, sizes: NDArray[np.float64], index: int, kind: SpanKind | None
    ) -> tuple[int, int]:
        """Give the instant at which ``kind`` began before row ``index``, and ± nanoseconds."""
        t = rows.t_ns
        if self._open is None or index == 0:
            return int(t[index]), 0
        before, here = int(t[index - 1]), int(t[index])
        width = here - before
        if self._open.kind is SpanKind.NO_DATA:
            return here, width
        if kind is SpanKind.NO_DATA:
            return before, width
        return self._instant(rows, sizes, index, kind)

    def _instant(
        self, rows: Rows, sizes: NDArray[np.float64], index: int, kind: SpanKind | None
    ) -> tuple[int, int]:
        """Give the instant of a change between two labels that both rest on readings, and ±."""
        known, t = self._open, rows.t_ns
        assert known is not None  # noqa: S101 - asked for only where one label follows another
        before, here = int(t[index - 1]), int(t[index])
        width = here - before
        flowing = kind in FLOWING_KINDS
        changes = self._timeline.between(before, here)
        if flowing != (known.group is Group.FLOWING):
            t, sizes, index = self._reads.around(rows, sizes, index, rising=flowing)
            edge = rise_edge(t, sizes, index) if flowing else fall_edge(t, sizes, index)
            return max(edge, known.start_ns), int(t[index] - t[index - 1])
        if changes:
            return changes[-1].t_ns, width
        if not flowing or known.kind is None or kind is None:
            return (before + here) // 2, width
        if before < self._quiet_until_ns <= here:
            return self._quiet_until_ns, width
        t, sizes, index = self._reads.around(rows, sizes, index, rising=True)
        level = self._excess.edge_level(known.kind, kind)
        edge = threshold_edge(t, sizes, index, level) if np.isfinite(level) else here
        return max(edge, known.start_ns), int(t[index] - t[index - 1])
