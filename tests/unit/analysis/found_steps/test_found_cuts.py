"""A second review with found changes as the bounds of its steps, and proposals accepted."""

import pytest

from meterlog.analysis.found_steps import accepted_events, accepted_limits, accepted_note
from meterlog.model import EventKind, SpanKind

WALK = [(4.0, 0), (14.0, 1), (24.0, 2), (34.0, 4), (44.0, 1), (50.0, 0)]


def steps_of(drive, cuts=()):
    found = drive.found()
    reviewer, review = drive.review(found, cuts)
    return reviewer.cuts.told(review.steps), review


def test_the_steps_have_the_figures_of_the_stretches_between_the_changes(drive):
    steps, _ = steps_of(drive(WALK))
    assert [one.proposed_speed for one in steps] == [0, 1, 2, 3, 1, 0]
    assert all(one.found and one.speed is None for one in steps)
    steady = [one.steady_mean_a for one in steps[1:-1]]
    assert steady == pytest.approx([3.6, 5.7, 13.6, 3.6], abs=0.05)
    assert all(one.steady_expanded_a is not None for one in steps[1:-1])


def test_start_up_peaks_and_the_uncertain_edge_are_not_steady(drive):
    steps, _ = steps_of(drive(WALK))
    assert steps[3].max_a > 18.0
    assert all(one.steady_sd_a < 0.3 for one in steps[1:-1])
    assert steps[3].steady_n < steps[3].n - 5


def test_each_found_step_says_how_well_its_start_is_known(drive):
    steps, _ = steps_of(drive(WALK, 0.5))
    assert steps[0].edge_ns == 0
    assert all(0.49e9 <= one.edge_ns <= 0.56e9 for one in steps[1:])


def test_spans_and_findings_stay_what_they_were(drive, trace):
    plan = [(5.0, 0), (12.0, 4), (14.0, trace.DEAD), (20.0, 4), (30.0, 1)]
    one = drive(plan, 0.02)
    before = one.review()[1]
    steps, after = steps_of(one)
    assert after.spans == before.spans
    assert any(span.kind is SpanKind.DEAD for span in after.spans)
    assert [one.proposed_speed for one in steps] == [0, 2, 1]
    assert steps[1].steady_mean_a == pytest.approx(13.6, abs=0.1)
    assert steps[1].min_a == pytest.approx(0.0, abs=0.2)


def test_however_the_second_pass_is_cut_the_steps_are_the_same(drive):
    one = drive(WALK)
    whole, _ = steps_of(one)
    for cuts in ([1, 2, 3, 140, 141], range(0, 500, 7)):
        assert steps_of(one, cuts)[0] == whole


def test_accepted_proposals_are_speed_events_and_a_sentence_says_so(drive):
    one = drive(WALK)
    found = one.found()
    events = accepted_events(found)
    assert [event.speed for event in events] == [0, 1, 2, 3, 1, 0]
    assert all(event.kind is EventKind.SPEED for event in events)
    assert [event.t_ns for event in events] == [0, *(step.t_ns for step in found)]
    assert "accepted" in accepted_note(found, one.limits)
    assert "nobody" in accepted_note(found, one.limits)
    one.events = events
    _, review = one.review()
    assert [step.speed for step in review.steps] == [0, 1, 2, 3, 1, 0]
    assert [span.speed for span in review.spans][:2] == [0, 1]


def test_nothing_found_is_nothing_accepted(trace):
    assert accepted_events(()) == ()
    assert accepted_note((), trace.limits()) == ""


def test_where_a_label_may_be_another_speeds_no_limits_of_single_speeds_hold(drive, trace):
    two, three = drive([(10.0, 1), (20.0, 4)]).found(), drive(WALK).found()
    limits = trace.limits()  # of three speeds
    assert [one.speed for one in two] == [2]
    assert accepted_limits(two, limits).speeds == {}
    assert accepted_limits(two, limits).open_current_a == limits.open_current_a
    assert "not applied" in accepted_note(two, limits)
    assert accepted_limits(three, limits) is limits
    assert "not applied" not in accepted_note(three, limits)
    assert "not applied" not in accepted_note(two, trace.limits(speeds={}))


def test_running_that_was_no_level_is_not_in_the_steady_figures(drive, trace):
    # After the dropout another speed for less than a start-up, before the current went again.
    gone = trace.DEAD
    plan = [(8.0, 1), (9.0, gone), (9.3, 4), (10.0, gone), (18.0, 1), (28.0, 2)]
    steps, _ = steps_of(drive(plan, 0.02))
    assert [one.proposed_speed for one in steps] == [1, 2]
    assert steps[0].max_a > 12.0
    assert steps[0].steady_mean_a == pytest.approx(3.6, abs=0.05)
    assert steps[0].steady_sd_a < 0.2
