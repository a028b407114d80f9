"""Controls: what must not happen for a tap to prove anything: leads moved, zeros, other meters."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

import numpy as np

from meterlog.analysis.taps.attempts import REACH_NS
from meterlog.analysis.taps.gone_stretches import LATE_NS
from meterlog.analysis.taps.moved import MOVING_NS, what_was_moved
from meterlog.analysis.taps.seen import Seen, instrument_of
from meterlog.analysis.zero_watch import MOST_DRIFT_A
from meterlog.model import (
    LEADS,
    Channel,
    Doubt,
    DoubtKind,
    EventKind,
    Instrument,
    Role,
    SensorKind,
    SpanKind,
    TapCheck,
    Verdict,
)
from meterlog.model.zero_text import parse_zero

_MOVED_V = 0.5
_MOVED_PART = 0.1
_BEFORE_NS = 2_000_000_000
MOST_BLIND_S = 0.3
"""Missing readings while the leads are moved may add up to this (common practice, no source)."""
_GRAVE = (
    DoubtKind.STUCK,
    DoubtKind.DECADE,
    DoubtKind.CLAMP_QUIET,
    DoubtKind.PROBE,
    DoubtKind.BATTERY,
    DoubtKind.UNIT,
)


def leads_moved(seen: Seen) -> TapCheck:
    """Judge whether the leads were moved first, and the trace stayed still."""
    name = "leads moved first"
    leads = [event for event in seen.moved if what_was_moved(event) == LEADS]
    stirred = [event for event in leads if _stirs(seen, event.t_ns)]
    if stirred:
        words = (
            f"the trace moved when the leads were moved at {stirred[0].t_ns / 1e9:.1f} s: fix the"
            f" probes, and begin again."
        )
        return TapCheck(name, Verdict.FAIL, words)
    first = [event for event in leads if event.t_ns < seen.taps_ns[0]]
    if not leads:
        words = (
            "nobody marked it: before the first tap move the probe leads alone, and mark it (w)."
        )
        return TapCheck(name, Verdict.CANT_TELL, words)
    if not first:
        words = "they were moved after the first tap only, and nothing happened; move them first."
        return TapCheck(name, Verdict.CANT_TELL, words)
    blind_s = _blind_s(seen, first[0].t_ns)
    if blind_s > MOST_BLIND_S:
        words = (
            f"nothing was read for {blind_s:.1f} s when they were moved at"
            f" {first[0].t_ns / 1e9:.1f} s: move them again while the meters read."
        )
        return TapCheck(name, Verdict.CANT_TELL, words)
    words = f"moved at {first[0].t_ns / 1e9:.1f} s, before the first tap, and nothing happened."
    return TapCheck(name, Verdict.PASS, words)


def connectors_moved(seen: Seen) -> TapCheck | None:
    """Judge whether connectors, moved by themselves, did anything; None where none was moved."""
    others = [event for event in seen.moved if what_was_moved(event) != LEADS]
    if not others:
        return None
    stirred = [event for event in others if _stirs(seen, event.t_ns)]
    if stirred:
        at = ", ".join(
            f"{what_was_moved(event)} at {event.t_ns / 1e9:.1f} s" for event in stirred[:3]
        )
        words = f"the trace moved when this was moved: {at}; put that right before the motor."
        return TapCheck("connectors moved", Verdict.FAIL, words)
    named = ", ".join(dict.fromkeys(what_was_moved(event) for event in others))
    words = f"moved by hand, and nothing happened: {named}."
    return TapCheck("connectors moved", Verdict.PASS, words)


def _blind_s(seen: Seen, t_ns: int) -> float:
    """Give for how long nothing was read while something was moved."""
    start_ns, end_ns = t_ns - LATE_NS, t_ns + MOVING_NS
    return sum(
        max(min(span.end_ns, end_ns) - max(span.start_ns, start_ns), 0) / 1e9
        for span in seen.judged.spans
        if span.kind is SpanKind.NO_DATA
    )


def _stirs(seen: Seen, t_ns: int) -> bool:
    """Tell whether state, current or a voltage changed when something was moved.

    Changes beside a command, or upon a tap, are not the hand's.
    """
    start_ns, end_ns = t_ns - LATE_NS, t_ns + MOVING_NS
    ends = [change.t_ns - LATE_NS for change in seen.timeline.between(t_ns, end_ns + LATE_NS)]
    ends += [tap_ns - LATE_NS for tap_ns in seen.taps_ns if t_ns < tap_ns <= end_ns + LATE_NS]
    end_ns = min([end_ns, *ends])
    settled = seen.timeline.between(start_ns - _BEFORE_NS, t_ns)
    # A start-up dies away by itself, and a command acts a little late.
    lag_ns = round((seen.judged.limits.command_lag_s + seen.judged.limits.inrush_window_s) * 1e9)
    if settled and t_ns - settled[-1].t_ns < lag_ns:
        start_ns = t_ns
    if end_ns <= start_ns:
        return False
    # Where nothing was read nothing is known to have moved; before and after it may differ.
    known = [span for span in seen.judged.spans if span.kind is not SpanKind.NO_DATA]
    if any(start_ns < b.start_ns < end_ns and a.kind is not b.kind for a, b in pairwise(known)):
        return True
    before, after = (
        seen.levels.within(start_ns - _BEFORE_NS, start_ns),
        seen.levels.within(start_ns, end_ns),
    )
    return any(
        _apart(getattr(before, name), getattr(after, name), least)
        for name, least in (
            ("amps", seen.judged.limits.open_current_a),
            ("feed", _MOVED_V),
            ("back", _MOVED_V),
        )
    )


def _apart(before: object, after: object, least: float) -> bool:
    """Tell whether a level left the range it had before by more than ``least`` and a tenth."""
    known = np.asarray(before, np.float64)
    then = np.asarray(after, np.float64)
    known, then = known[np.isfinite(known)], then[np.isfinite(then)]
    if len(known) < 2 or not len(then):
        return False
    room = max(least, _MOVED_PART * abs(float(np.median(known))))
    return bool(then.max() > known.max() + room or then.min() < known.min() - room)


def clamp_zero(seen: Seen) -> TapCheck:
    """Judge whether the clamp's zero was taken before and after, and stayed."""
    name = "clamp zero"
    meter = instrument_of(seen.judged.instruments, Role.MOTOR_CURRENT)
    column = None if meter is None else meter.column(Role.MOTOR_CURRENT)
    if meter is None or column is None:
        return TapCheck(name, Verdict.CANT_TELL, "the motor current was not read.")
    channel = meter.channels[column]
    before, after = _zeros(seen, meter, channel)
    if channel.sensor.kind is SensorKind.SHUNT:
        words = "read by a shunt, which has no zero that drifts as a clamp's does."
        return TapCheck(name, Verdict.PASS, words)
    if not before or not after:
        lacking = " and ".join(
            side for side, there in (("before", before), ("after", after)) if not there
        )
        words = f"none was taken {lacking} the taps: clamp empty and shut, press z."
        return TapCheck(name, Verdict.CANT_TELL, words)
    apart_a = after[-1] - before[0]
    words = (
        f"before and after differ by {abs(apart_a):.2f} A; less than {MOST_DRIFT_A:g} A is asked"
        f" for."
    )
    kept = abs(apart_a) < MOST_DRIFT_A
    return TapCheck(name, Verdict.PASS if kept else Verdict.FAIL, words)


def _zeros(seen: Seen, meter: Instrument, channel: Channel) -> tuple[list[float], list[float]]:
    before = [] if channel.zero is None or channel.zero.taken_utc is None else [channel.zero.offset]
    after = []
    for event in seen.judged.events:
        parsed = parse_zero(event.value) if event.kind is EventKind.ZERO else None
        if parsed is None or event.source != meter.key or parsed[0] != channel.name:
            continue
        if event.t_ns < seen.taps_ns[0]:
            before.append(parsed[1].offset)
        elif event.t_ns > seen.taps_ns[-1]:
            after.append(parsed[1].offset)
    return before, after


def meters_doubted(seen: Seen) -> TapCheck | None:
    """Tell which doubt reaches the taps; None where none does."""
    first_ns, last_ns = seen.taps_ns[0] - REACH_NS, seen.taps_ns[-1] + REACH_NS
    grave = [one for one in seen.judged.doubts if _reaches(one, first_ns, last_ns)]
    if not grave:
        return None
    return TapCheck("meters", Verdict.CANT_TELL, grave[0].text)


def _reaches(doubt: Doubt, start_ns: int, end_ns: int) -> bool:
    if doubt.kind not in _GRAVE:
        return False
    always = doubt.start_ns == doubt.end_ns == 0
    return always or (doubt.start_ns <= end_ns and doubt.end_ns >= start_ns)


def lasting_controls(seen: Seen) -> Sequence[TapCheck]:
    """Give the checks that are told only where there is something to tell."""
    return [one for one in (connectors_moved(seen), meters_doubted(seen)) if one is not None]
