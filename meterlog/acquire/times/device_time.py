"""DeviceTime: from an instrument's own time, or the count of its readings, to this computer's."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field
from enum import Enum, auto

import numpy as np
from numpy.typing import NDArray

from meterlog.acquire.times.clock_fit import ClockFit, ClockLine
from meterlog.acquire.times.slewed import Slewed
from meterlog.acquire.times.usual_delay import UsualDelay
from meterlog.instruments import Readings

HOLD_NS = 200_000_000
"""A late reading waits at most so long for the next one, which tells whether it is late."""
LONGEST_NS = 1_000_000_000
"""And all that wait, no longer than this together."""
STILL_NS = 5_000_000_000
"""A clock that is behind for so long has stood still."""
_SET_S = 0.1
"""A clock that is ahead by more was set forward; by less, the way has become shorter."""
_DRIFT = 4
"""So many readings in a row that are late without a pause before them: another pace."""
_SURELY_S = 0.010
"""A computer's own hesitation: what is late by less is not looked into."""
_WELL = 0.6
_NEARLY = 0.4
_HALF = 0.5
_TWICE = 2.0
_QUARTER = 0.25
_MOST = 0.75
_LUMP = 1.5
_LUMP_WELL = 1.2


class Kind(Enum):
    """What an instrument's own time is made of."""

    COUNT = auto()
    """The count of its readings, times its pace: what is lost is missing in it."""
    SAMPLES = auto()
    """A sample clock: the count of samples, likewise."""
    TIMED = auto()
    """A clock that goes on whatever is lost."""


@dataclass(frozen=True, slots=True, eq=False)
class Timed:
    """Readings whose time is decided.

    Attributes
    ----------
    readings : Readings
    t_ns : ndarray, int64, shape (n,), nanoseconds since the recording's zero
        By the line; may lie after ``end_ns``.
    end_ns : int
        When the last of them arrived, less the lag.
    """

    readings: Readings
    t_ns: NDArray[np.int64]
    end_ns: int


@dataclass(slots=True)
class TimeCounts:
    """What has happened to an instrument's times.

    Attributes
    ----------
    mended : int
        Readings that came late and were given their own times.
    lost : int
        Readings or samples that never came.
    after_all : int
        Readings that came when they had been given up.
    jumps : int
        Times the instrument's clock was set, restarted or stood still.
    """

    mended: int = 0
    lost: int = 0
    after_all: int = 0
    jumps: int = 0


@dataclass(slots=True)
class _Waiting:
    """Late readings that wait for what comes next."""

    parts: list[tuple[Readings, NDArray[np.float64], int]] = field(default_factory=list)
    best_s: float = 0.0
    until_ns: int = 0
    latest_ns: int = 0
    now_ns: int = 0
    before_ns: int = 0
    """Until when they waited before what arrived at the instant ``now_ns``."""


class DeviceTime:
    """Gives readings their times by a line between the instrument's time and the arrivals.

    What comes late keeps the time that the line gives it. Where the instrument's time is a count,
    a reading that comes late may also be one that follows a lost one: it waits a moment. If what
    comes next catches up with the line, all were only late; if not, so many are missing as fit
    into the delay, before the first that waited, and the count goes on after them.

    Parameters
    ----------
    kind : Kind
    step_s : float, seconds of instrument time
        From one reading to the next.
    fit : ClockFit
    counts : TimeCounts
        Added to.
    """

    def __init__(self, kind: Kind, step_s: float, fit: ClockFit, counts: TimeCounts) -> None:
        self.kind = kind
        self.counts = counts
        self._step_s = step_s
        self._fit = fit
        self._usual = UsualDelay()
        self._waiting = _Waiting()
        self._shift_s = 0.0
        self._given_up: tuple[int, int] | None = None
        self._unfed: tuple[float, int] | None = None
        self._last_x: float | None = None
        self._last_end_ns = 0
        self._slewed = Slewed()
        self._behind_ns: int | None = None
        self._drifting = 0
        self.off = False
        """True when the count no longer fits the arrivals: the pace is another now."""

    @property
    def line(self) -> ClockLine:
        """What is known of the clock."""
        return self._fit.line

    @property
    def usual(self) -> UsualDelay:
        """How late readings usually are."""
        return self._usual

    @property
    def waits(self) -> bool:
        """Tell whether readings are waiting."""
        return bool(self._waiting.parts)

    @property
    def until_ns(self) -> int:
        """Until when they wait at most."""
        return self._waiting.until_ns

    @property
    def last_x(self) -> float | None:
        """Instrument time of the last reading taken; None before the first."""
        return self._last_x

    def take(
        self, readings: Readings, x_s: NDArray[np.float64], end_ns: int, now_ns: int
    ) -> list[Timed]:
        """Take readings that arrived together.

        Parameters
        ----------
        readings : Readings
            n rows, at least one.
        x_s : ndarray, float64, shape (n,), seconds of instrument time
            Not decreasing, and not before that of the last call.
        end_ns : int, nanoseconds since the recording's zero
            When the last arrived, less the lag.
        now_ns : int
            When it really arrived.

        Returns
        -------
        list of Timed
            Those whose time is decided, in order; what waits comes later.
        """
        self._feed(end_ns)
        x = float(x_s[-1])
        if not self._fit.tied:
            self._fit.add(x, end_ns)
        late_s = self._late_s(x, end_ns)
        if late_s < 0.0 and not self._fit.line.points:
            # There is no line yet, only the least late arrival so far, and this one is less late.
            self._add(x + self._shift_s, end_ns)
            late_s = 0.0
        elif late_s < -self._early_s(end_ns):
            late_s = self._too_early(len(readings), late_s, x, end_ns)
        paused = self._paused(x, end_ns)
        self._last_x, self._last_end_ns = x, end_ns
        self._waiting.parts.append((readings, x_s, end_ns))
        drifting = self._drifts(late_s) and not paused
        self._drifting = self._drifting + 1 if drifting else 0
        if drifting and (self._drifting >= _DRIFT or late_s > self._step_s):
            return self._let_go(end_ns)
        if late_s <= self._bearable_s() or drifting:
            return self._caught_up(late_s, x, end_ns)
        if self.kind is Kind.TIMED:
            return self._behind(late_s, x, end_ns)
        self._wait(late_s, now_ns)
        return []

    def _drifts(self, late_s: float) -> bool:
        """Tell whether a reading is late, though nothing can be missing before it.

        One or two are a busy computer's; when it goes on, the pace is another than the line says.
        """
        alone = len(self._waiting.parts) == 1 and self._usual.readings_together <= _LUMP
        far_s = max(_HALF * self._step_s, _SURELY_S)
        return self.kind is Kind.COUNT and alone and late_s > far_s

    def _let_go(self, end_ns: int) -> list[Timed]:
        """Give the reading the time of its arrival, and no other one any time."""
        self.off = True
        readings, x_s, _ = self._waiting.parts[0]
        self._waiting = _Waiting()
        back_ns = np.rint((x_s - x_s[-1]) * 1e9).astype(np.int64)
        return [Timed(readings, end_ns + back_ns, end_ns)]

    def _late_s(self, x: float, end_ns: int) -> float:
        return (end_ns - self._fit.at(x + self._shift_s)) / 1e9

    def ahead_s(self, x: float, end_ns: int) -> float:
        """Give by how much instrument time ``x`` is ahead of its arrival, seconds."""
        return max(-self._late_s(x, end_ns), 0.0) if self._fit.tied else 0.0

    def _early_s(self, end_ns: int) -> float:
        """How early a reading may be before the line is not only to be brought in."""
        if self.kind is Kind.COUNT:
            least_s = max(_HALF * self._step_s, _HALF * _SURELY_S)
        else:
            least_s = 2.0 * _SURELY_S if self._may_come_after_all(end_ns) else _SET_S
        return max(least_s, _LUMP * self._usual.most_s)

    def _may_come_after_all(self, end_ns: int) -> bool:
        return (
            self._given_up is not None
            and self._given_up[1] > 0
            and end_ns - self._given_up[0] < 2 * LONGEST_NS
        )

    def _bearable_s(self) -> float:
        """How late the last of a lump may be without a question."""
        usual = _LUMP * self._usual.most_s
        if self.kind is not Kind.COUNT:
            return max(_SURELY_S, min(usual, STILL_NS / 1e10))
        if self._usual.readings_together > _LUMP:
            return max(_LUMP_WELL * self._step_s, _SURELY_S)
        # A computer that hesitates often is not asked each time; but one step more must show.
        usual = min(usual, max(_MOST * self._step_s, 2.0 * _SURELY_S))
        return max(_WELL * self._step_s, _SURELY_S, usual)

    def _paused(self, x: float, end_ns: int) -> bool:
        if self._last_x is None:
            return False
        more_s = (end_ns - self._last_end_ns) / 1e9 - (x - self._last_x) * self._fit.slope
        return more_s >= _HALF * self._step_s

    def _caught_up(self, late_s: float, x: float, end_ns: int) -> list[Timed]:
        """Give all that waits its own time: nothing is missing."""
        self._behind_ns = None
        mended = self._mend()
        readings = len(self._waiting.parts[-1][0]) if not mended or not self._usual.count else None
        self._usual.add(max(late_s, 0.0), readings)
        self._unfed = (x + self._shift_s, end_ns)
        return self._release()

    def _mend(self) -> int:
        """Count those that came later than usual by more than the time between two arrivals."""
        if not self._usual.count:
            return 0
        together_s = self._usual.readings_together * self._step_s
        limit_s = max(_SURELY_S, _LUMP * self._usual.most_s) + together_s
        mended = 0
        for _, x_s, end_ns in self._waiting.parts:
            if self._late_s(float(x_s[0]), end_ns) > limit_s:
                late_s = (end_ns - self._fit.many(x_s + self._shift_s)) / 1e9
                mended += int(np.count_nonzero(late_s > limit_s))
        self.counts.mended += mended
        return mended

    def _wait(self, late_s: float, now_ns: int) -> None:
        waiting = self._waiting
        gap_s = self._usual.readings_together * self._step_s
        # What was held up once is often held up again, before the rest of it comes.
        hold_s = max(_MOST * gap_s, _SURELY_S, _TWICE * late_s)
        hold_ns = round(min(hold_s * 1e9, HOLD_NS))
        if now_ns != waiting.now_ns:
            waiting.now_ns, waiting.before_ns = now_ns, waiting.until_ns
        if len(waiting.parts) == 1:
            waiting.latest_ns = now_ns + LONGEST_NS
        elif late_s > waiting.best_s - _QUARTER * self._step_s:
            return
        waiting.best_s = late_s
        # Who catches up is not given up earlier than before.
        waiting.until_ns = max(waiting.before_ns, min(now_ns + hold_ns, waiting.latest_ns))

    def _behind(self, late_s: float, x: float, end_ns: int) -> list[Timed]:
        """Deal with a clock that is behind: late lines, or it stood still."""
        if self._behind_ns is None:
            self._behind_ns = end_ns
        if end_ns - self._behind_ns > STILL_NS:
            self._behind_ns = None
            self.counts.jumps += 1
            self._shift_s += late_s
            self._unfed = (x + self._shift_s, end_ns)
            return self._release()
        self._mend()
        return self._release()

    def _too_early(self, count: int, late_s: float, x: float, end_ns: int) -> float:
        """Deal with what comes before it can have been sent; give how late it is after that."""
        if self._given_up is not None and self._may_come_after_all(end_ns):
            lost = min(self._given_up[1], max(1, round(-late_s / self._step_s)))
            self._given_up = (self._given_up[0], self._given_up[1] - lost)
            self._shift_s -= lost * self._step_s
            self.counts.lost -= lost
            self.counts.after_all += min(lost, count)
            late_s = self._late_s(x, end_ns)
            if late_s >= -self._early_s(end_ns):
                return late_s
        if self.kind is Kind.COUNT:
            self.off = True
            return 0.0
        self.counts.jumps += 1
        self._shift_s += late_s / self._fit.slope
        return 0.0

    def check(self, now_ns: int) -> list[Timed]:
        """Give what has waited long enough."""
        return self.give_up() if self.waits and now_ns >= self._waiting.until_ns else []

    def give_up(self) -> list[Timed]:
        """Take it that nothing more comes for what waits: some readings are missing."""
        if not self.waits:
            return []
        lost = self._lost_before_each()
        _, x_s, end_ns = self._waiting.parts[-1]
        shifts_s = [self._shift_s + one * self._step_s for one in lost]
        done = self._release(shifts_s)
        self._shift_s = shifts_s[-1]
        self._given_up = (end_ns, lost[-1])
        self.counts.lost += lost[-1]
        self._unfed = (float(x_s[-1]) + self._shift_s, end_ns)
        return done

    def _lost_before_each(self) -> list[int]:
        """Give how many readings are missing before each that waits: never less than before.

        So many as fit into the delay that is left of all that came from there on; where it grows
        once more, more of them are missing.
        """
        lost: list[int] = []
        least_s = math.inf
        for _, x_s, end_ns in reversed(self._waiting.parts):
            least_s = min(least_s, self._late_s(float(x_s[-1]), end_ns))
            lost.append(max(1, math.floor(least_s / self._step_s + _NEARLY)))
        return lost[::-1]

    def _feed(self, end_ns: int) -> None:
        """Let the last point count, once its instant is over: however it was cut, it is one."""
        if self._unfed is None or self._unfed[1] == end_ns:
            return
        point, self._unfed = self._unfed, None
        self._add(*point)

    def _add(self, x: float, end_ns: int) -> None:
        """Give the line a point; what that moves it by is brought in little by little."""
        known_x = self._slewed.last_x
        before = self._fit.at(known_x)
        self._fit.add(x, end_ns)
        if self._last_x is not None:
            self._slewed.correct((before - self._fit.at(known_x)) / 1e9)

    def _release(self, shifts_s: Sequence[float] | None = None) -> list[Timed]:
        """Give all that waits by the line, each shifted by as much as is said, or as now."""
        parts, self._waiting = self._waiting.parts, _Waiting()
        shifts_s = shifts_s or [self._shift_s] * len(parts)
        return [
            Timed(readings, self._stamps(x_s + shift_s), end_ns)
            for (readings, x_s, end_ns), shift_s in zip(parts, shifts_s, strict=True)
        ]

    def _stamps(self, x_s: NDArray[np.float64]) -> NDArray[np.int64]:
        """Give the line, with what is left of its last correction."""
        if len(x_s) == 1:  # by far the most frequent case
            x = float(x_s[0])
            return np.array([self._fit.at(x) + self._slewed.at(x)], np.int64)
        return self._fit.many(x_s) + self._slewed.many(x_s)
