"""Form: the points that make a tap test believed, each found, asked for, and what lacks.

Source: common practice of workshops and claims departments, no published source; figures as
proposed by the trade, from memory: current below 5 % of the base line and 0.3 A for two readings
or more, at least 90 % of the battery across the motor meanwhile, back to 90 % of the base line
within 2 s of the tap, three repeats or more and all of them answered, ten seconds of base line
on both sides, zeros of the clamp before and after that differ by less than 0.2 A.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from meterlog.analysis.taps.attempts import REACH_NS, back_at
from meterlog.analysis.taps.brief_return import broken, broken_words
from meterlog.analysis.taps.gone_stretches import LATE_NS
from meterlog.analysis.taps.seen import Seen
from meterlog.model import TapCheck, Verdict

MOST_OF_BASE = 0.05
LEAST_READINGS = 2
LEAST_ACROSS = 0.9
LEAST_RETURN = 0.9
LEAST_REPEATS = 3
BASE_LINE_NS = 10_000_000_000


def worst_of(verdicts: Iterable[Verdict]) -> Verdict:
    """Give fail where one fails, else can't tell where one can't be told, else pass."""
    told = set(verdicts)
    if Verdict.FAIL in told:
        return Verdict.FAIL
    return Verdict.CANT_TELL if Verdict.CANT_TELL in told or not told else Verdict.PASS


def repeats(seen: Seen) -> TapCheck:
    """Judge how many attempts were made while the current was gone, and how many answered."""
    tried = len(seen.tried)
    answered = sum(one.answered for one in seen.tried)
    if not tried:
        words = "no tap was made while the current was gone: tap when the fan stands."
        return TapCheck("repeats", Verdict.CANT_TELL, words)
    words = f"{answered} of {tried} attempts brought the current back"
    if answered < tried:
        return TapCheck("repeats", Verdict.FAIL, f"{words}; all of them are asked for.")
    if tried < LEAST_REPEATS:
        words += f"; at least {LEAST_REPEATS} are asked for: wait until it stops, and tap again."
        return TapCheck("repeats", Verdict.CANT_TELL, words)
    return TapCheck("repeats", Verdict.PASS, f"{words}; {LEAST_REPEATS} or more are asked for.")


def gone(seen: Seen) -> TapCheck:
    """Judge whether the current was truly gone before the attempts."""
    verdicts, worst_a, fewest, bare = [], 0.0, None, ""
    in_between = broken(seen)
    for attempt, figures, flowed in zip(seen.tried, seen.figures, in_between, strict=True):
        base_a = seen.base_a(attempt.times_ns[0], attempt.taps[0].speed)
        most_a = seen.judged.limits.open_current_a
        if base_a is not None:
            most_a = min(most_a, MOST_OF_BASE * base_a)
        worst_a = max(worst_a, abs(figures.mean_a))
        fewest = figures.n if fewest is None else min(fewest, figures.n)
        bare = "; no steady current at its speed to compare with" if base_a is None else bare
        if figures.n < LEAST_READINGS or base_a is None or flowed:
            verdicts.append(Verdict.CANT_TELL)
        else:
            verdicts.append(Verdict.PASS if abs(figures.mean_a) < most_a else Verdict.FAIL)
    if fewest is None:
        return TapCheck("current gone", Verdict.CANT_TELL, "no tap was made while it was gone.")
    words = (
        f"{worst_a:.2f} A at most, over {fewest} readings or more; asked for: less than"
        f" {100 * MOST_OF_BASE:.0f} % of the base line and {seen.judged.limits.open_current_a:g} A,"
        f" over {LEAST_READINGS} readings or more{bare}{broken_words(seen)}."
    )
    return TapCheck("current gone", worst_of(verdicts), words)


def across(seen: Seen) -> TapCheck:
    """Judge whether the supply stood across the motor while the current was gone."""
    name = "voltage across the motor"
    verdicts, least, source = [], None, "battery"
    for index, figures in enumerate(seen.figures):
        supply_v, source = seen.supply_v(index)
        if figures.across_v is None or not supply_v:
            verdicts.append(Verdict.CANT_TELL)
            continue
        part = figures.across_v / supply_v
        least = part if least is None else min(least, part)
        verdicts.append(Verdict.PASS if part >= LEAST_ACROSS else Verdict.FAIL)
    if not seen.tried:
        return TapCheck(name, Verdict.CANT_TELL, "no tap was made while the current was gone.")
    if least is None:
        words = "not read; record the motor's feed and its return, so that a plug shaken by the tap"
        return TapCheck(name, Verdict.CANT_TELL, f"{words} can be told from the motor.")
    words = f"{100 * least:.0f} % of the {source} or more; {100 * LEAST_ACROSS:.0f} % is asked for."
    return TapCheck(name, worst_of(verdicts), words)


def back(seen: Seen) -> TapCheck:
    """Judge whether the current came back to its base line in time."""
    verdicts = []
    for attempt in seen.tried:
        answer = attempt.answer
        if answer is None or attempt.gone is None:
            continue
        base_a = seen.base_a(attempt.gone.end_ns, answer.speed)
        if base_a is None:
            verdicts.append(Verdict.CANT_TELL)
            continue
        until_ns = answer.t_ns + REACH_NS
        full_ns = back_at(seen.levels, attempt.gone.end_ns, until_ns, LEAST_RETURN * base_a)
        verdicts.append(Verdict.FAIL if full_ns is None else Verdict.PASS)
    if not verdicts:
        words = "no tap brought the current back." if seen.tried else "nothing was there to return."
        return TapCheck("return", Verdict.CANT_TELL, words)
    full = sum(one is Verdict.PASS for one in verdicts)
    if Verdict.CANT_TELL in verdicts:
        words = "no steady current at the speed of a tap to compare with: run longer at each speed."
        return TapCheck("return", worst_of(verdicts), words)
    words = (
        f"{full} of {len(verdicts)} came back to {100 * LEAST_RETURN:.0f} % of the base line"
        f" within {REACH_NS / 1e9:g} s of the tap; all are asked for."
    )
    return TapCheck("return", worst_of(verdicts), words)


def base_line(seen: Seen) -> TapCheck:
    """Judge whether the trace was left alone long enough before and after the taps."""
    first_ns, last_ns = seen.read_ns()
    touched = [*seen.taps_ns, *(event.t_ns for event in seen.moved)]
    begin_ns, end_ns = min(touched), max(touched)
    before = [change.t_ns for change in seen.timeline.changes if change.t_ns <= begin_ns]
    after = [change.t_ns for change in seen.timeline.changes if change.t_ns > end_ns]
    before_ns = begin_ns - max([first_ns, *before])
    after_ns = min([last_ns, *after]) - end_ns
    words = f"{_length(before_ns)} before and {_length(after_ns)} after the taps left alone"
    if min(before_ns, after_ns) < BASE_LINE_NS - LATE_NS:  # the marks are no truer than a hand
        words += f"; {BASE_LINE_NS / 1e9:g} s on both sides are asked for: hold still for longer."
        return TapCheck("base line", Verdict.CANT_TELL, words)
    return TapCheck("base line", Verdict.PASS, f"{words}; {BASE_LINE_NS / 1e9:g} s are asked for.")


def _length(length_ns: int) -> str:
    return f"{max(length_ns, 0) / 1e9:.1f} s"


def of_form(checks: Sequence[TapCheck]) -> Verdict:
    """Give the verdict on the whole form."""
    return worst_of(check.verdict for check in checks)
