"""A held rotor on low is told by volts and amperes; one that starts is never called held."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.analysis.held_rotor import held_scale_ohm, standing_ohm
from meterlog.model import FindingKind, Role, SpanKind, Verdict

# Seized on low behind a resistor pack, from a table of faults (computed): 2.0 V across, 5.5 A.
SEIZED = (12.2, 10.2, 5.5)


def kinds(result):
    return [span.kind for span in result.spans]


def run(trace, legs, events, roles=("feed", "return", "current"), lim=None, interval_s=0.05):
    rng = np.random.default_rng(5)
    t_ns, values = trace.sample(legs, interval_s)
    values = values + rng.normal(0.0, 0.01, values.shape)
    meter = trace.Instrument("meter", "test", "-", trace.channels(interval_s, roles))
    order = {"feed": 0, "return": 1, "current": 2}
    reviewer = trace.Reviewer([meter], lim or trace.limits())
    for event in events:
        reviewer.feed(event)
    reviewer.feed(trace.block_of(t_ns, values, columns=[order[name] for name in roles]))
    return reviewer.finish()


@pytest.mark.parametrize("interval_s", [0.01, 0.1, 0.33])
def test_a_rotor_held_on_low_is_locked_by_its_volts_and_amperes(trace, interval_s):
    legs = [trace.Leg(4.0, *trace.NORMAL[1]), trace.Leg(9.0, *SEIZED)]
    legs.append(trace.Leg(14.0, *trace.NORMAL[1]))
    result = run(trace, legs, [trace.speed(0.0, 1)], interval_s=interval_s)
    assert kinds(result) == [SpanKind.RUNNING, SpanKind.LOCKED, SpanKind.RUNNING]
    (finding,) = [f for f in result.findings if f.kind is FindingKind.LOCKED]
    assert finding.verdict is Verdict.FAIL
    assert "2.0 V across the motor" in finding.statement
    # (2.0 - 1.2) V / 0.27 ohm: from there on a motor stands at this voltage
    assert finding.limit == pytest.approx(0.8 / 0.27, rel=0.05)


def test_a_motor_that_drags_but_turns_on_low_is_over_and_not_held(trace):
    # Four times the friction: 4.5 A would be within the limit, so a limit is set below it.
    legs = [trace.Leg(9.0, 12.3, 12.3 - 3.9, 5.3)]
    result = run(trace, legs, [trace.speed(0.0, 1)])
    assert kinds(result) == [SpanKind.RUNNING, SpanKind.OVER]
    (over,) = [f for f in result.findings if f.kind is FindingKind.OVER]
    assert "held rotor" not in over.statement


@pytest.mark.parametrize(
    ("roles", "missing"),
    [
        (("current",), {Role.MOTOR_FEED, Role.MOTOR_RETURN}),
        (("feed", "current"), {Role.MOTOR_RETURN}),
        (("return", "current"), {Role.MOTOR_FEED}),
    ],
)
def test_without_both_voltages_a_held_rotor_on_low_is_left_open_and_said_to_be(
    trace, roles, missing
):
    legs = [trace.Leg(4.0, *trace.NORMAL[1]), trace.Leg(9.0, *SEIZED)]
    result = run(trace, legs, [trace.speed(0.0, 1)], roles)
    assert result.spans[-1].kind is SpanKind.OVER
    assert set(result.spans[-1].settled_by) == missing
    (over,) = [f for f in result.findings if f.kind is FindingKind.OVER]
    assert "a held rotor would look the same on this speed" in over.statement


def test_on_high_nothing_is_left_open_as_a_held_rotor_draws_far_more(trace):
    legs = [trace.Leg(4.0, *trace.NORMAL[4]), trace.Leg(9.0, 11.9, 0.2, 20.0)]
    result = run(trace, legs, [trace.speed(0.0, 4)], ("current",))
    (over,) = [f for f in result.findings if f.kind is FindingKind.OVER]
    assert "held rotor" not in over.statement
    assert result.spans[-1].settled_by == ()


def test_a_feed_so_low_that_the_motor_must_stand_needs_no_return(trace):
    # Resistors in the feed: the feed is the motor's own voltage, its return on ground.
    legs = [trace.Leg(4.0, 5.7, 0.1, 3.6), trace.Leg(9.0, 2.0, 0.1, 5.5)]
    result = run(trace, legs, [trace.speed(0.0, 1)], ("feed", "current"))
    assert result.spans[-1].kind is SpanKind.LOCKED


def starting(trace, from_a, to_a, tau_s, end_s=12.0):
    """A start whose current falls so slowly that it outlasts the inrush window."""
    t = np.arange(0.0, end_s, 0.05)
    legs = [trace.Leg(2.0, *trace.NORMAL[0])]
    for at in t[1:]:
        amps = to_a + (from_a - to_a) * np.exp(-(at - 0.05) / tau_s)
        across = 1.2 + 0.16 * amps + (1.0 - np.exp(-at / tau_s)) * 3.8
        legs.append(trace.Leg(2.0 + at, 12.3, 12.3 - across, amps))
    return legs


def test_a_motor_that_starts_slowly_on_low_is_over_but_never_held(trace):
    legs = starting(trace, 7.0, 3.6, 3.0)
    result = run(trace, legs, [trace.speed(0.0, 0), trace.speed(2.0, 1)])
    assert SpanKind.LOCKED not in kinds(result)
    assert SpanKind.OVER in kinds(result)


def test_a_motor_that_starts_slowly_on_high_is_never_held(trace):
    legs = starting(trace, 62.0, 13.6, 1.0)
    result = run(trace, legs, [trace.speed(0.0, 0), trace.speed(2.0, 4)])
    assert SpanKind.LOCKED not in kinds(result)
    assert SpanKind.OVER in kinds(result)


def test_a_rotor_held_from_the_start_whose_winding_warms_is_held_all_the_same(trace):
    legs = [trace.Leg(2.0, *trace.NORMAL[0])]
    legs += [trace.Leg(2.0 + 0.1 * k, 10.7, 0.67, 55.0 - 0.03 * k) for k in range(1, 60)]
    result = run(trace, legs, [trace.speed(0.0, 0), trace.speed(2.0, 4)])
    assert kinds(result) == [SpanKind.OFF, SpanKind.RUNNING, SpanKind.LOCKED]


def test_a_probe_that_reads_nothing_proves_no_held_rotor(trace):
    legs = [trace.Leg(4.0, *trace.NORMAL[1]), trace.Leg(9.0, 0.1, 0.0, 5.5)]
    result = run(trace, legs, [trace.speed(0.0, 1)])
    assert SpanKind.LOCKED not in kinds(result)


@given(
    ohm=st.floats(0.05, 1.0),
    back_emf=st.floats(0.0, 12.0),
    amps=st.floats(0.5, 60.0),
    brush_v=st.floats(0.0, 2.0),
)
def test_a_turning_motor_always_seems_to_have_more_resistance_than_it_has(
    trace, ohm, back_emf, amps, brush_v
):
    lim = replace(trace.limits(), brush_v=brush_v)
    seen = standing_ohm(amps * ohm + back_emf + brush_v, amps, lim)
    assert seen == pytest.approx(ohm + back_emf / amps, rel=1e-6, abs=1e-9)


def test_the_scale_is_the_nominal_voltage_by_the_current_of_a_held_rotor(trace):
    assert held_scale_ohm(trace.limits()) == pytest.approx((12.0 - 1.2) / 40.0)
