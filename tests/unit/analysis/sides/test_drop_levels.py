"""A voltage drop that stood at two levels within one step: the worse one counts, if it is its."""

from dataclasses import replace

import pytest

from meterlog.model import FindingKind, Verdict

CHANNELS = ("feed", "return", "battery", "current")


@pytest.fixture
def ground_of(panel, trace):
    def of(first, then, at=10.0):
        lim = replace(trace.limits(), max_feed_drop_v=0.5, max_ground_drop_v=0.3)
        legs = [(2.0, panel.OFF), (at, panel.HIGH | first), (20.0, panel.HIGH | then)]
        events = [panel.trace.speed(0.0, 0), panel.trace.speed(2.0, 4)]
        _, _, found, _ = panel.told(CHANNELS, legs, events, lim)
        (told,) = (one for one in found if one.kind is FindingKind.RESISTIVE_GROUND and one.limit)
        return told

    return of


@pytest.mark.parametrize("at", [6.0, 10.0, 17.5])
def test_a_ground_that_is_bad_for_a_while_fails_by_its_worse_level(ground_of, at):
    told = ground_of({}, {"return": 1.5, "current": 12.7}, at)
    assert told.verdict is Verdict.FAIL, told.statement
    assert told.value == pytest.approx(1.5, abs=0.02)
    assert told.expanded_uncertainty < 0.05
    assert "of its steady running, down to 0.16 V else" in told.statement


@pytest.mark.parametrize("at", [5.2, 8.0, 12.0])
def test_another_speed_within_the_step_proves_no_bad_ground(ground_of, at):
    """The mark came early: at first the controller in the return held 3.5 V back."""
    told = ground_of({"return": 3.5, "current": 8.9}, {}, at)
    assert told.verdict is Verdict.CANT_TELL, told.statement
    assert "several speeds are in it, or a contact" in told.statement


def test_levels_that_all_fail_or_all_pass_are_sure(ground_of):
    both = ground_of({"return": 3.5, "current": 8.9}, {"return": 1.0})
    assert (both.verdict, round(both.value, 1)) == (Verdict.FAIL, 3.5)
    sound = ground_of({"return": 0.05}, {"return": 0.2})
    assert (sound.verdict, round(sound.value, 2)) == (Verdict.PASS, 0.2)


@pytest.mark.parametrize("noise", [0.0, 0.02, 0.1])
def test_noise_makes_no_levels(panel, ground_of, noise):
    panel.noise = noise
    told = ground_of({"return": 0.1}, {"return": 0.1})
    assert told.verdict is Verdict.PASS
    assert "steady running" not in told.statement
