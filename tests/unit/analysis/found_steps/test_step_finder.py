"""Speed changes that nobody recorded."""

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from meterlog.analysis.found_steps import bins as bins_file

WALK = [(4.0, 0), (14.0, 1), (24.0, 2), (34.0, 4), (44.0, 1), (50.0, 0)]
TRUE = [(4.0, 1), (14.0, 2), (24.0, 3), (34.0, 1), (44.0, 0)]
"""When the speed changed, and the rank of the new one by current."""
ALL, CURRENT = ("feed", "return", "current"), ("current",)


@pytest.mark.parametrize("roles", [ALL, CURRENT])
@pytest.mark.parametrize("averages", [False, True])
@pytest.mark.parametrize("interval_s", [0.5, 0.1, 0.02, 0.002])
def test_each_change_is_found_within_an_interval_and_labelled_by_order_of_current(
    drive, interval_s, averages, roles
):
    found = drive(WALK, interval_s, averages=averages, roles=roles, noise_a=0.1).found()
    assert [one.speed for one in found] == [label for _, label in TRUE]
    assert [one.speed_before for one in found] == [0, 1, 2, 3, 1]
    for one, (at_s, _) in zip(found, TRUE, strict=True):
        assert abs(one.t_ns / 1e9 - at_s) <= interval_s
        assert abs(one.t_ns / 1e9 - at_s) <= one.edge_ns / 1e9
        assert one.edge_ns / 1e9 <= 1.1 * interval_s + 0.0011


def test_levels_leave_the_start_up_peak_out_and_count_their_readings(drive):
    found = drive(WALK, 0.02).found()
    assert [one.after_a for one in found] == pytest.approx([3.6, 5.7, 13.6, 3.6, 0.0], abs=0.08)
    assert [one.before_a for one in found[1:]] == [one.after_a for one in found[:-1]]
    assert found[-1].n == 0
    assert 400 <= found[0].n <= 500


def test_dropouts_are_no_steps(drive, trace):
    plan = [(5.0, 0), (12.0, 4), (14.0, trace.DEAD), (20.0, 4), (20.3, trace.DEAD), (30.0, 4)]
    assert [one.speed for one in drive(plan, 0.02).found()] == [1]


def test_lost_current_between_equal_levels_is_not_explained_away_as_off(drive, trace):
    plan = [(5.0, 0), (12.0, 4), (22.0, trace.DEAD), (30.0, 4), (35.0, 0)]
    found = drive(plan, 0.02, roles=CURRENT).found()
    assert [one.speed for one in found] == [1, 0]
    assert found[-1].t_ns / 1e9 == pytest.approx(30.0, abs=0.03)


def test_a_fan_that_came_back_on_a_tap_was_not_switched_off(drive, trace):
    gone = (12.4, 12.4, 0.0)
    plan = [(10.0, 4), (14.0, gone), (30.0, 4)]
    assert drive(plan, 0.02, events=(trace.tap(13.9),)).found() == ()
    assert [one.speed for one in drive(plan, 0.02).found()] == [0, 1]


@pytest.mark.parametrize("roles", [ALL, CURRENT])
def test_a_fan_that_was_off_for_a_moment_at_either_end_was_off(drive, roles):
    # Were the first speed taken for that of the beginning, a review would miss its current.
    found = drive([(0.2, 0), (10.0, 4), (10.2, 0)], 0.02, roles=roles).found()
    assert [(one.speed_before, one.speed) for one in found] == [(0, 1), (1, 0)]
    assert found[0].t_ns / 1e9 == pytest.approx(0.2, abs=0.02)
    assert found[1].t_ns / 1e9 == pytest.approx(10.0, abs=0.02)


def test_a_motor_that_is_dead_at_first_was_asked_to_run_when_its_voltage_came(drive, trace):
    plan = [(2.0, 0), (4.0, trace.DEAD), (14.0, 4)]
    (one,) = drive(plan, 0.02, events=(trace.tap(3.9),)).found()
    assert (one.speed_before, one.speed) == (0, 1)
    assert one.t_ns / 1e9 == pytest.approx(2.0, abs=0.03)


def test_a_motor_that_first_came_on_a_tap_was_not_known_to_be_off(drive, trace):
    plan = [(4.0, (12.4, 12.4, 0.0)), (14.0, 4), (20.0, 0)]
    (one,) = drive(plan, 0.02, events=(trace.tap(3.9),)).found()
    assert (one.speed_before, one.speed) == (1, 0)


def test_a_current_that_rises_at_the_same_motor_voltage_is_the_loads(drive):
    plan = [(10.0, 4), (20.0, (12.0, 0.16, 17.0)), (30.0, 4)]
    assert drive(plan, 0.02).found() == ()
    # Without the voltages nothing speaks against it.
    assert [one.speed for one in drive(plan, 0.02, roles=CURRENT).found()] == [2, 1]


def test_a_held_rotor_is_no_step(drive):
    assert drive([(10.0, 4), (12.0, (10.7, 0.6, 55.0)), (30.0, 4)], 0.02).found() == ()


def test_a_motor_that_coasts_to_a_lower_speed_was_switched_once_when_the_current_went(drive):
    (one,) = drive([(10.0, 4), (11.2, (12.4, 8.0, 0.0)), (30.0, 1)], 0.02).found()
    assert (one.speed_before, one.speed) == (2, 1)
    assert one.t_ns / 1e9 == pytest.approx(10.0, abs=0.03)


def test_a_change_for_less_than_a_start_up_is_no_step(drive):
    assert drive([(10.0, 4), (10.3, 2), (30.0, 4)], 0.02).found() == ()


@pytest.mark.parametrize("interval_s", [0.5, 0.1, 0.01])
@pytest.mark.parametrize("drift", [-0.1, 0.1])
def test_drift_is_no_step(drive, interval_s, drift):
    plan = [(120.0, 4)]
    assert drive(plan, interval_s, drift=drift, roles=CURRENT, averages=True).found() == ()


@pytest.mark.parametrize("seed", range(20))
def test_noise_is_no_step(drive, seed):
    assert drive([(60.0, 4)], 0.1, noise_a=1.0, roles=CURRENT, seed=seed).found() == ()


def test_noise_that_hangs_together_is_no_step(drive):
    for seed in range(20):
        one = drive([(60.0, 4)], 0.05, noise_a=0.0, roles=CURRENT, seed=seed)
        wander = np.random.default_rng(seed).normal(0.0, 0.15, len(one.values))
        for k in range(1, len(wander)):
            wander[k] += 0.9 * wander[k - 1]
        one.values[:, 2] = np.round((one.values[:, 2] + wander) * 100.0) / 100.0
        assert one.found() == ()


def test_a_soft_start_of_five_seconds_is_one_step_no_later_than_its_ramp(drive):
    one = drive([(5.0, 1), (30.0, 4)], 0.02, tau_s=1e-6, roles=CURRENT)
    t = one.t_ns / 1e9
    ramp = (t >= 5.0) & (t < 10.0)
    one.values[ramp, 2] = np.round((3.6 + 10.0 * (t[ramp] - 5.0) / 5.0) * 100.0) / 100.0
    (step,) = one.found()
    assert abs(step.t_ns - 5e9) <= step.edge_ns
    assert step.after_a == pytest.approx(13.6, abs=0.3)


def test_a_level_that_stands_alone_and_an_empty_recording_have_no_changes(drive):
    assert drive([(30.0, 4)]).found() == ()
    only = drive([(1.0, 4)])
    only.t_ns, only.values = only.t_ns[:1], only.values[:1]
    assert only.found() == ()


def test_recorded_commands_are_passed_over(drive, trace):
    commands = tuple(trace.speed(*one) for one in ((0.0, 0), (4.0, 1), (44.0, 0)))
    with_commands = drive(WALK, 0.02, events=commands)
    assert [one.speed for one in with_commands.found()] == [label for _, label in TRUE]


def test_a_recording_of_more_bins_than_are_kept_is_found_within_one_of_its_bins(drive, monkeypatch):
    monkeypatch.setattr(bins_file, "MOST_BINS", 500)
    found = drive(WALK, 0.02).found()
    assert [one.speed for one in found] == [label for _, label in TRUE]
    assert found[1].edge_ns >= 2**27  # 50 s in at most 500 bins
    for one, (at_s, _) in zip(found, TRUE, strict=True):
        assert abs(one.t_ns / 1e9 - at_s) <= one.edge_ns / 1e9


@settings(
    max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(cuts=st.lists(st.integers(1, 2500), max_size=12))
def test_however_the_readings_are_cut_the_changes_are_the_same(drive, trace, cuts):
    plan = [(5.0, 0), (12.0, 4), (14.0, trace.DEAD), (20.0, 4), (30.0, 1), (40.0, 2)]
    one = drive(plan, 0.02)
    whole = one.found()
    assert len(whole) == 3
    assert one.found(cut for cut in cuts if cut < len(one.t_ns)) == whole
