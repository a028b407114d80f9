"""Summary: a comparison in one paragraph of plain words."""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.analysis.compare.ask import Ask
from meterlog.analysis.compare.condition_checks import DIFFERS, NOT_STATED
from meterlog.analysis.compare.side import Side
from meterlog.analysis.rounding import with_uncertainty
from meterlog.model import Budget, ConditionCheck, StepDifference, Verdict


def summary(
    old: Sequence[Side],
    new: Side,
    steps: Sequence[StepDifference],
    conditions: Sequence[ConditionCheck],
    ask: Ask,
) -> str:
    """Say what came of it, for somebody who reads nothing else."""
    parts = [_lead(old, new, ask)]
    parts.append(baseline_words(steps) if ask.baseline else _pair_words(steps, ask))
    differing = [one.name for one in conditions if one.weight == DIFFERS]
    unsaid = [one for one in conditions if one.weight == NOT_STATED]
    if differing:
        parts.append(
            f"Not the same on both sides: {_listed(differing)}; what that may do is taken out by"
            f" the voltage or in the uncertainty."
        )
    neither = [one.name for one in unsaid if not (one.old or one.new)]
    if neither:
        parts.append(
            f"Nobody stated {_listed(neither)}: the comparison holds only if it was the same."
        )
    one_side = [one.name for one in unsaid if one.old or one.new]
    if one_side:
        parts.append(
            f"Only one side states {_listed(one_side)}: the comparison holds only if it was the"
            f" same."
        )
    return " ".join(part for part in parts if part)


def _lead(old: Sequence[Side], new: Side, ask: Ask) -> str:
    simulated = " Both are simulated." if new.run.origin == "simulated" else ""
    if ask.baseline:
        many = "1 motor" if len(old) == 1 else f"{len(old)} motors"
        return f"{new.label} against {many} taken as good.{simulated}"
    return f"New ({new.label}) against old ({old[0].label}).{simulated}"


def _pair_words(steps: Sequence[StepDifference], ask: Ask) -> str:
    if ask.max_difference_percent is not None:
        return _verdicts(steps, f"within {ask.max_difference_percent:g} % of the old one")
    differ = [one for one in steps if one.verdict is Verdict.FAIL]
    rest = [one for one in steps if one.verdict is not Verdict.FAIL]
    same = [one for one in rest if is_covered(one)]
    untold = [one for one in rest if not is_covered(one)]
    parts = []
    for word, kept in (
        ("more", [one for one in differ if _apart(one) > 0.0]),
        ("less", [one for one in differ if _apart(one) < 0.0]),
    ):
        if kept:
            sizes = _listed([percent_words(one.ratio) for one in kept])
            parts.append(f"It draws {word} {_at(kept)} ({sizes}), beyond the uncertainty.")
    if same:
        widest = max((_u_percent(one) for one in same), default=0.0)
        seen = f"; a difference below about {widest:.2g} % could not have been seen" * (widest > 0)
        parts.append(f"No difference beyond the uncertainty is seen {_at(same)}{seen}.")
    if untold:
        parts.append(f"Whether it differs {_at(untold)} can't be told.")
    return " ".join(parts)


def is_covered(step: StepDifference) -> bool:
    """Tell whether a known uncertainty covers the difference: none is seen beyond it."""
    apart = step.difference_a
    known = apart is not None and step.probability is not None
    return known and apart is not None and abs(apart.value) <= apart.expanded


def baseline_words(steps: Sequence[StepDifference]) -> str:
    """Say at which speeds a motor lies within what good ones draw."""
    judged = [one for one in steps if one.verdict is not None]
    if not judged:
        return "There are too few good motors to say within what good ones lie."
    return _verdicts(judged, "within what good ones draw")


def _verdicts(steps: Sequence[StepDifference], what: str) -> str:
    parts = []
    for verdict, words in (
        (Verdict.FAIL, f"It is not {what}"),
        (Verdict.PASS, f"It is {what}"),
        (Verdict.CANT_TELL, f"Whether it is {what} can't be told"),
    ):
        kept = [one for one in steps if one.verdict is verdict]
        if kept:
            parts.append(f"{words} {_at(kept)}.")
    return " ".join(parts)


def _at(steps: Sequence[StepDifference]) -> str:
    return f"at speed{'s' * (len(steps) > 1)} {_listed([str(one.speed) for one in steps])}"


def percent_words(ratio: Budget | None) -> str:
    """Write how far a ratio lies from 1, in percent, to the place that its uncertainty reaches."""
    if ratio is None:
        return ""
    known = 100.0 * ratio.expanded if ratio.sources else None
    size = abs(100.0 * (ratio.value - 1.0))
    return f"{size:.1f} %" if known is None else with_uncertainty(size, known, "%")


def _apart(step: StepDifference) -> float:
    return 0.0 if step.difference_a is None else step.difference_a.value


def _u_percent(step: StepDifference) -> float:
    return 0.0 if step.ratio is None else 100.0 * step.ratio.expanded


def _listed(words: Sequence[str]) -> str:
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"
