"""Verdict check: stated currents, probabilities and verdicts of a run against the true currents."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from scene import INRUSH_S, Scene

from meterlog.model import FindingKind, Review, SpeedLimits, Step, Verdict

RESTART_S = INRUSH_S


@dataclass(frozen=True)
class Stated:
    """One step: what was said of it, and whether it truly conformed."""

    inside: bool | None
    """The truth lies within the stated uncertainty; None where none was stated."""
    probability: float | None
    verdict: Verdict
    conforms: bool
    run: int = 0
    """Steps of one run share their meter's error."""


def true_mean(scene: Scene, step: Step) -> float | None:
    """Give what an ideal meter at the same instants would have had for the steady mean."""
    _, read = scene.amps
    if read.true_a is None or step.steady_mean_a is None or step.steady_n < 2:
        return None
    t = read.block.t_ns / 1e9
    kept = np.isfinite(read.block.values[:, scene.meters[0].columns.index("current")])
    kept &= t >= step.start_ns / 1e9 + INRUSH_S
    last = step.end_ns >= read.block.t_ns[-1]
    kept &= t <= step.end_ns / 1e9 - (0.0 if last else scene.limits.command_lag_s)
    reach = scene.meters[0].window + scene.meters[0].interval
    for one in scene.dropouts:
        kept &= (t < one.start - reach) | (t > one.end + reach + min(RESTART_S, 10.0 * one.length))
    return float(read.true_a[kept].mean()) if kept.sum() >= 2 else None


def truly_over(scene: Scene, review: Review) -> set[int]:
    """Give the speeds whose true current was above what they may draw, in some step at least."""
    found = set()
    for step in review.steps:
        truth, highest = true_mean(scene, step), scene.limits.at(step.speed).max_a
        if step.speed and truth is not None and highest is not None and truth > highest:
            found.add(step.speed)
    return found


def stated(scene: Scene, review: Review) -> list[Stated]:
    """Give every step current that was judged by its mean and whose truth is known."""
    if not scene.commanded:
        return []
    verdicts = {
        one.start_ns: one for one in review.findings if one.kind is FindingKind.STEP_CURRENT
    }
    found = []
    for step in review.steps:
        told, truth = verdicts.get(step.start_ns), true_mean(scene, step)
        if told is None or truth is None or told.value != step.steady_mean_a:
            continue  # not judged, or by a stretch that left the limits
        allowed = scene.limits.at(step.speed)
        one = _stated(step, told.verdict, told.probability, truth, allowed)
        found.append(replace(one, run=scene.seed))
    return found


def _stated(
    step: Step, verdict: Verdict, probability: float | None, truth: float, allowed: SpeedLimits
) -> Stated:
    low = -np.inf if allowed.min_a is None else allowed.min_a
    high = np.inf if allowed.max_a is None else allowed.max_a
    wide, mean = step.steady_expanded_a, step.steady_mean_a
    if step.current is not None:
        wide, mean = step.current.expanded, step.current.value
    inside = None if wide is None or mean is None else abs(abs(mean) - truth) <= wide
    return Stated(inside, probability, verdict, bool(low <= truth <= high))
