"""KnownMoments: when something is known to have moved the current, so that nothing is inferred."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Sequence

from meterlog.analysis.inferred.standing_out import SETTLING_S, SlowMeter
from meterlog.analysis.judged import Judged
from meterlog.analysis.range_crossings import BLANKING_NS
from meterlog.model import EventKind, PulsedFeed, SpanKind

_FLOWING = (SpanKind.RUNNING, SpanKind.OVER, SpanKind.UNDER)


class KnownMoments:
    """Commands, dropouts that were seen, changes of range and pulsed stretches.

    Parameters
    ----------
    judged : Judged
    pulsed : sequence of PulsedFeed
    key : str
        Of the instrument that reads the current.
    meter : SlowMeter
    """

    def __init__(
        self, judged: Judged, pulsed: Sequence[PulsedFeed], key: str, meter: SlowMeter
    ) -> None:
        limits = judged.limits
        self._window_ns = round((meter.window_s + 2.0 * meter.interval_s) * 1e9)
        self._lag_ns = round(limits.command_lag_s * 1e9)
        self._quiet_ns = round(max(limits.inrush_window_s, SETTLING_S) * 1e9)
        self._commands = [e.t_ns for e in judged.events if e.kind is EventKind.SPEED]
        self._changes = [
            e.t_ns
            for e in judged.events
            if e.source == key and (e.changes_range or e.kind is EventKind.UNIT)
        ]
        self._known = [
            (span.start_ns, span.end_ns) for span in judged.spans if span.kind not in _FLOWING
        ]
        self._starts = [start for start, _ in self._known]
        self._pulsed = [(one.start_ns, one.end_ns) for one in pulsed]

    def explains(self, t_ns: int) -> bool:
        """Tell whether something known explains that a reading at ``t_ns`` stands out."""
        window = self._window_ns
        if _any(self._commands, t_ns - self._quiet_ns - window, t_ns + self._lag_ns):
            return True
        if _any(self._changes, t_ns - BLANKING_NS, t_ns + BLANKING_NS):
            return True
        if any(start <= t_ns <= end for start, end in self._pulsed):
            return True
        index = bisect_right(self._starts, t_ns + window)
        return bool(index) and t_ns <= self._known[index - 1][1] + window + self._quiet_ns


def _any(times: Sequence[int], start_ns: int, end_ns: int) -> bool:
    index = bisect_left(times, start_ns)
    return index < len(times) and times[index] <= end_ns
