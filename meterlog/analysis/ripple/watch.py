"""RippleWatch: follows the motor current and says at the end what its ripple shows."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.judged import Judged
from meterlog.analysis.labels import Stretch
from meterlog.analysis.ripple.bars_finding import bars_findings
from meterlog.analysis.ripple.counts import count_bars
from meterlog.analysis.ripple.look import Look, look_at
from meterlog.analysis.ripple.plausible import LOWEST_RATE_HZ
from meterlog.analysis.ripple.views import view_of
from meterlog.analysis.ripple.windows import ALTOGETHER, PER_SEGMENT, Window, WindowKeeper
from meterlog.analysis.rows import Rows
from meterlog.model import (
    Block,
    Channel,
    Event,
    Finding,
    Instrument,
    Limits,
    RippleView,
    Role,
    Step,
)


@dataclass(slots=True)
class _Segment:
    """Running without a break at one commanded speed."""

    start_ns: int
    end_ns: int
    keeper: WindowKeeper


@dataclass(slots=True)
class _Pending:
    """Readings of a current that is gone: a notch, or the end of the segment."""

    since_ns: int
    parts: list[Rows]


class RippleWatch:
    """Keeps windows of the steady motor current, and looks at their ripple at the end.

    A current that is gone for less than ``min_dwell_s`` is a notch of the ripple, not the end of
    running; after anything longer the inrush window passes before readings are kept.

    Parameters
    ----------
    instruments : sequence of Instrument
    limits : Limits
    """

    def __init__(self, instruments: Sequence[Instrument], limits: Limits) -> None:
        self._limits = limits
        self._channel = _current(instruments)
        self._worth = _worth(self._channel)
        self._inrush_ns = round(limits.inrush_window_s * 1e9)
        self._dwell_ns = round(limits.min_dwell_s * 1e9)
        self._segments: list[_Segment] = []
        self._open: _Segment | None = None
        self._pending: _Pending | None = None
        self._speed: int | None = None
        self._since_ns: int | None = None
        self._flows = True
        self._kept = 0

    def take(self, item: Block | Event) -> None:
        """Take the next Block or Event; the rows made of them are what is looked at."""

    def take_rows(self, rows: Rows, stretches: Sequence[Stretch]) -> None:
        """Take rows with the stretches that cover them, each once, in order."""
        if not self._worth:
            return
        for stretch in stretches:
            self._take_stretch(rows.part(stretch.start, stretch.stop), stretch)

    def _take_stretch(self, part: Rows, stretch: Stretch) -> None:
        if stretch.speed != self._speed or part.gap[0]:
            self._break()
            self._speed = stretch.speed
        if stretch.speed == 0 or not part.usable[0]:
            self._break()
            return
        size = abs(float(part.amps[0]))
        limit = self._limits.open_current_a
        if size < limit:
            self._flows = False
        elif size >= limit * (1.0 + self._limits.hysteresis):
            self._flows = True
        if self._flows:
            self._take_flowing(part, steady=stretch.steady)
        else:
            self._take_gone(part)

    def _take_gone(self, part: Rows) -> None:
        if self._since_ns is None:
            return
        if self._pending is None:
            self._pending = _Pending(int(part.t_ns[0]), [])
        if int(part.t_ns[-1]) - self._pending.since_ns > self._dwell_ns:
            self._break()
        else:
            self._pending.parts.append(part)

    def _take_flowing(self, part: Rows, *, steady: bool) -> None:
        first_ns = int(part.t_ns[0])
        if self._pending is not None and first_ns - self._pending.since_ns > self._dwell_ns:
            self._break()
        if self._since_ns is None:
            self._since_ns = first_ns
        if self._open is not None and self._pending is not None:
            for waiting in self._pending.parts:
                self._keep(waiting)
        self._pending = None
        if self._open is None and not steady:
            settled = np.searchsorted(part.t_ns, self._since_ns + self._inrush_ns, side="left")
            part = part.part(int(settled), len(part))
        if len(part):
            self._keep(part)

    def _keep(self, part: Rows) -> None:
        t_ns, amps, volts = _read(part)
        if not len(t_ns):
            return
        if self._open is None:
            room = min(PER_SEGMENT, max(0, ALTOGETHER - self._kept))
            self._open = _Segment(int(t_ns[0]), int(t_ns[0]), WindowKeeper(room))
        self._open.keeper.take(t_ns, amps, volts)
        self._open.end_ns = int(t_ns[-1])

    def _break(self) -> None:
        """End the segment that is open."""
        if self._open is not None:
            self._open.keeper.end()
            self._kept += len(self._open.keeper.windows)
            self._segments.append(self._open)
        self._open, self._pending, self._since_ns = None, None, None

    def views(self, judged: Judged) -> tuple[tuple[RippleView, ...], tuple[Finding, ...]]:
        """Say what the ripple shows, once the recording has ended.

        Parameters
        ----------
        judged : Judged
            With its steps; dead segments among its findings make a notch more than a pattern.

        Returns
        -------
        views : tuple of RippleView
            One for each step with steady current.
        findings : tuple of Finding
            At most one, of kind ``bars``: about the bars that stand out.
        """
        self._break()
        if self._channel is None:
            return (), ()
        looks = [
            self._look(step, self._channel)
            for step in judged.steps
            if step.speed != 0 and step.steady_mean_a is not None
        ]
        counted = count_bars([look.signs for look in looks if look.signs is not None])
        views = tuple(view_of(look, counted) for look in looks)
        return views, bars_findings(views, judged.findings)

    def _look(self, step: Step, channel: Channel) -> Look:
        windows = [
            window
            for segment in self._segments
            for window in segment.keeper.windows
            if window.start_ns >= step.start_ns and window.end_ns <= step.end_ns
        ]
        hand_ns = step.end_ns - round(self._limits.command_lag_s * 1e9)
        settled: list[Window] = [window for window in windows if window.end_ns <= hand_ns]
        rates = [
            segment.keeper.rate_hz
            for segment in self._segments
            if segment.start_ns < step.end_ns and segment.end_ns > step.start_ns
        ]
        rate = max(rates, default=0.0)
        if rate <= 0.0:
            rate = 1.0 / channel.interval_s if channel.interval_s > 0.0 else 0.0
        return look_at(step, settled or windows, rate, channel, self._limits)


def _current(instruments: Sequence[Instrument]) -> Channel | None:
    for instrument in instruments:
        index = instrument.column(Role.MOTOR_CURRENT)
        if index is not None:
            return None if instrument.typed else instrument.channels[index]
    return None


def _worth(channel: Channel | None) -> bool:
    """Tell whether the channel may be fast enough; a few readings a second are not gathered."""
    return channel is not None and channel.interval_s * LOWEST_RATE_HZ < 4.0


def _read(
    part: Rows,
) -> tuple[NDArray[np.int64], NDArray[np.float64], NDArray[np.float64] | None]:
    """Give what was really read, and the motor voltage where it was read with it."""
    if part.amps_new is not None:
        return part.t_ns[part.amps_new], part.amps[part.amps_new], None
    if part.feed is None:
        return part.t_ns, part.amps, None
    return part.t_ns, part.amps, part.feed if part.back is None else part.feed - part.back
