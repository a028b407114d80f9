"""A meter of which nobody has said how good it is: no verdict rests on it, and each ± says so.

The figures of the usual error are computed by hand: 2 % of the reading and 0.3 A.
"""

from dataclasses import replace

import numpy as np
import pytest

from meterlog.model import FindingKind, SpeedLimits, Verdict

UNSAID = "(the meter's accuracy not in)"


def run(trace, *, accuracy=False, lowest_a=10.0):
    """Ten seconds on high at 13.6 A, a second of them dead."""
    legs = [
        trace.Leg(2.0, *trace.NORMAL[0]),
        trace.Leg(9.0, *trace.NORMAL[4]),
        trace.Leg(10.0, *trace.DEAD),
        trace.Leg(16.0, *trace.NORMAL[4]),
    ]
    lim = trace.limits(speeds={4: SpeedLimits(lowest_a, 18.0)})
    return trace.review(legs, [trace.speed(2.0, 4)], lim=lim, accuracy=accuracy)


def only(result, kind):
    (one,) = [one for one in result.findings if one.kind is kind]
    return one


@pytest.mark.parametrize("stated", [True, False])
@pytest.mark.parametrize("kind", [FindingKind.STEP_CURRENT, FindingKind.RESISTIVE_GROUND])
def test_a_figure_says_that_its_meter_is_not_in(trace, kind, stated):
    fan = trace.Fan()
    if not stated:
        fan.channels = tuple(replace(one, accuracy=None) for one in fan.channels)
    fan.values[:, 1] *= 0.02  # next to nothing on the ground side, far from its limit
    fan.limits = trace.limits(max_ground_drop_v=0.6, nominal_v=12.0)
    (one,) = [one for one in fan.review().findings if one.kind is kind and one.speed == 4]
    assert one.verdict is Verdict.PASS
    assert ("accuracy" in one.statement) is not stated


def test_a_dead_segment_says_so_and_stays_proven(trace):
    fan = trace.Fan()
    fan.channels = tuple(replace(one, accuracy=None) for one in fan.channels)
    rows = (fan.t_s >= 8.0) & (fan.t_s < 10.0)
    fan.values[rows] = (12.4, 0.02, 0.0)
    fan.values[rows, 2] += 0.01 * (np.arange(rows.sum()) % 2)
    dead = only(fan.review(), FindingKind.DEAD)
    assert UNSAID in dead.statement
    assert dead.verdict is Verdict.FAIL
    stated = only(run(trace, accuracy=True), FindingKind.DEAD)
    assert UNSAID not in stated.statement


@pytest.mark.parametrize(
    ("lowest_a", "verdict"),
    [
        (13.0, Verdict.PASS),  # 0.60 A below: more than 2 % of 13.6 A and 0.3 A, 0.572 A
        (13.1, Verdict.CANT_TELL),  # 0.50 A below
        (14.1, Verdict.CANT_TELL),  # 0.50 A above
        (14.5, Verdict.FAIL),  # 0.90 A above: 0.572 A, and its ± about 95 %
    ],
)
def test_what_a_usual_meter_could_turn_over_is_not_told(trace, lowest_a, verdict):
    step = only(run(trace, lowest_a=lowest_a), FindingKind.STEP_CURRENT)
    assert step.verdict is verdict
    turned = "the meter's accuracy is not known, and a usual one (0.57 A) could turn"
    assert (turned in step.statement) is (verdict is Verdict.CANT_TELL)


def test_with_a_stated_accuracy_the_same_current_passes(trace):
    step = only(run(trace, accuracy=True, lowest_a=13.1), FindingKind.STEP_CURRENT)
    assert step.verdict is Verdict.PASS


def test_the_paragraph_says_it_of_what_passed_and_a_start_has_no_uncertainty(trace):
    said = "no ± holds the meter's own error"
    fan = trace.Fan()
    assert said not in fan.review().verdict.paragraph
    fan.channels = tuple(replace(one, accuracy=None) for one in fan.channels)
    result = fan.review()
    assert "The motor drew what it should" in result.verdict.paragraph
    assert said in result.verdict.paragraph
    assert all(start.peak_u_a is None for start in result.startups)
