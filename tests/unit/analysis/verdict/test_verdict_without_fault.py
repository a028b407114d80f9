"""The verdict of a run in which nothing failed: in order, or not known, and what was not seen."""

from dataclasses import replace

import pytest

from meterlog.model import (
    BarFlaw,
    Inferred,
    InferredKind,
    RippleView,
    Role,
    StartUp,
)

ONLY_FEED = (Role.MOTOR_FEED, Role.MOTOR_CURRENT)


def inferred(after_tap_s=None):
    words = "Dip consistent with an open of about 30 ms."
    return Inferred(InferredKind.DIP, 0, 1, (0.02, 0.04), 13.0, 9.0, 12.0, 4, after_tap_s, words)


def test_a_healthy_motor_is_in_order_with_its_figures_and_what_was_not_tried(verdict_of, kit):
    told = verdict_of(
        kit.passed(1),
        kit.passed(4),
        steps=(kit.step(1, 3.6), kit.step(4, 13.6)),
        taps=kit.taps(0, 0, None, summary="2 taps changed nothing."),
    )
    assert told.outcome == "in order"
    assert told.ranked == ()
    assert "3.60 ± 0.10 A at speed 1, 13.60 ± 0.10 A at speed 4" in told.paragraph
    assert "2 taps changed nothing." in told.paragraph
    assert "Not tried: speed 2, 3." in told.paragraph


def test_gaps_are_told_beside_a_motor_that_is_in_order(verdict_of, kit):
    """A tenth of the run was not read: nobody may take that for proof that nothing happened."""
    gaps = [kit.finding("no-data", "can't tell", 10.0 + i, 0.2, value=None) for i in range(3)]
    told = verdict_of(kit.passed(4), *gaps)
    assert told.outcome == "in order"
    assert "Nothing was read for 0.6 s together (3 gaps, the longest 0.2 s)" in told.paragraph


def test_one_speed_that_can_not_be_told_keeps_the_run_from_being_in_order(verdict_of, kit):
    untold = kit.finding("step-current", "can't tell", value=17.9, limit=18.0, speed=3)
    told = verdict_of(kit.passed(4), untold)
    assert told.outcome == "can't tell"
    assert "Can't tell: step-current at 10 s" in told.paragraph


def test_without_limits_a_running_motor_is_not_called_sound(verdict_of, kit):
    told = verdict_of(limits={"speeds": {}})
    assert told.outcome == "can't tell"
    assert "No limits stated for speed 4" in told.paragraph
    assert "ran for 60 s and no dropout was seen" in told.paragraph


def test_without_a_current_nothing_is_said_of_the_motor(verdict_of):
    told = verdict_of(roles=(Role.MOTOR_FEED,), steps=())
    assert told.outcome == "can't tell"
    assert told.unseen == ("Motor current not recorded: nothing can be said about the motor.",)
    assert "Motor current not recorded" in told.paragraph


def test_an_idle_stretch_that_nobody_commanded_is_no_suspicion(verdict_of, kit):
    idle = kit.finding("no-current", "can't tell", speed=None)
    told = verdict_of(idle, kit.passed(4))
    assert told.ranked == ()
    assert any("no command recorded" in one for one in told.unseen)


def test_inferred_dropouts_alone_are_a_suspicion(verdict_of, kit):
    told = verdict_of(kit.passed(4), inferred=(inferred(),))
    assert told.outcome == "suspicion"
    assert told.ranked[0].sureness == "possible"
    assert "No reading showed a dropout itself" in told.ranked[0].against


def test_a_dead_bar_in_the_ripple_alone_proves_nothing(verdict_of, kit):
    view = RippleView(
        4, 0, 10, 20_000.0, "", flaws=(BarFlaw(1, 0.6, True, 0.99),),
        statement="Pattern consistent with one dead bar.",
    )  # fmt: skip
    told = verdict_of(kit.passed(4), ripple=(view,))
    assert told.outcome == "suspicion"
    assert "A pattern alone proves nothing" in told.ranked[0].against[0]


def test_what_could_not_be_seen_is_listed(verdict_of, kit):
    slow = RippleView(4, 0, 10, 50.0, "Too slow.", needed_rate_hz=7000.0)
    gap = kit.finding("no-data", "can't tell", length=3.0, value=None)
    told = verdict_of(kit.passed(4), gap, roles=ONLY_FEED, ripple=(slow,))
    said = " ".join(told.unseen)
    for words in (
        "shorter than 0.04 s",
        "Motor return not recorded",
        "Battery voltage not recorded",
        "Not tried: speed 1, 2, 3",
        "No start from rest",
        "7,000 readings/s",
        "Nothing was read for 3 s together (1 gap)",
    ):
        assert words in said
    start = StartUp(0, 10, 4, "command", 40.0, None, 0.01, True, 13.0, 3.0, 0.5, 0.1, 100.0, 2.0)
    again = verdict_of(kit.passed(4), startups=(start,))
    assert any("too slow for the start-up peak" in one for one in again.unseen)
    cut = verdict_of(kit.passed(4), startups=(start, replace(start, peak_cut=True)))
    assert any("the readings stand at its peak" in one for one in cut.unseen)
    over = verdict_of(kit.passed(4), startups=(start, replace(start, peak_over=True)))
    assert any("beyond the range of the meter or the clamp" in one for one in over.unseen)
    past = verdict_of(kit.passed(4), startups=(start, replace(start, peak_past=True)))
    assert any("more than the meter or the clamp is stated for" in one for one in past.unseen)


def test_a_simulated_run_says_that_it_proves_nothing(verdict_of, kit):
    assert verdict_of(kit.finding("dead"), simulated=True).paragraph.endswith(
        "These are simulated readings: they prove nothing of a vehicle."
    )


@pytest.mark.parametrize(
    ("amps", "sd", "n", "told"),
    [
        (15.0, 0.0, 1000, True),
        (15.0, 0.004, 1000, False),
        (15.0, 0.0, 60, False),
        (3.8, 0.0, 1000, False),
    ],
)
def test_a_current_that_stands_at_one_value_may_be_at_the_end_of_its_range(
    verdict_of, kit, amps, sd, n, told
):
    step = kit.replace(kit.step(4, amps), steady_sd_a=sd, steady_n=n)
    verdict = verdict_of(kit.passed(4, amps), steps=(step,))
    assert any("1,000 readings stand at exactly 15 A" in one for one in verdict.unseen) is told
    assert verdict.outcome == ("can't tell" if told else "in order")
