"""Voltages that can't be on the circuit are told, and prove nothing."""

import dataclasses

import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.analysis.volts_beyond import beyond_doubts
from meterlog.model import DoubtKind, Limits, Role, Step

ROLES = {
    "steady_battery_v": Role.BATTERY,
    "steady_feed_v": Role.MOTOR_FEED,
    "steady_back_v": Role.MOTOR_RETURN,
    "steady_command_v": Role.COMMAND,
}


def step(at_s=2.0, **volts):
    return Step(4, round(at_s * 1e9), round((at_s + 8.0) * 1e9), **volts)


@pytest.mark.parametrize("name", ROLES)
def test_a_decimal_point_left_out_is_told_with_its_channel_and_time(name):
    (doubt,) = beyond_doubts([step(**{name: 126.0}), step(10.0)], Limits())
    assert (doubt.kind, doubt.role) == (DoubtKind.BEYOND, ROLES[name])
    assert (doubt.start_ns, doubt.end_ns) == (2_000_000_000, 10_000_000_000)
    for words in ("126 V", "2.0 s to 10.0 s", "at most 18 V", "decimal point"):
        assert words in doubt.text


@given(st.floats(-300.0, 300.0), st.sampled_from([12.0, 24.0]), st.sampled_from(sorted(ROLES)))
def test_just_what_lies_beyond_half_as_much_again_is_told(volts, nominal_v, name):
    limits = dataclasses.replace(Limits(), nominal_v=nominal_v)
    told = beyond_doubts([step(**{name: volts})], limits)
    assert bool(told) is (abs(volts) > 1.5 * nominal_v)


def test_each_channel_is_told_once_with_its_largest():
    steps = [step(2.0, steady_feed_v=120.0), step(10.0, steady_feed_v=125.0, steady_battery_v=12.6)]
    (doubt,) = beyond_doubts(steps, Limits())
    assert "125 V" in doubt.text
    assert doubt.end_ns == 18_000_000_000
