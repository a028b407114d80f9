"""What each pattern of voltages and current is called, and where its edges are."""

import pytest

from meterlog.model import FindingKind, Role, SpanKind, Verdict

FIND = {kind.value: kind for kind in SpanKind}


def script(trace, *middle, end=12.0):
    """Off until 1 s, speed 4 from 1 s, with a middle part, then speed 4 to the end."""
    leg = trace.Leg
    return [
        leg(1.0, *trace.NORMAL[0]),
        leg(4.0, *trace.NORMAL[4]),
        *middle,
        leg(end, *trace.NORMAL[4]),
    ]


def spans_of(result, kind):
    return [span for span in result.spans if span.kind is kind]


def assert_edges(span, start_s, end_s, interval_s):
    assert span.start_ns / 1e9 == pytest.approx(start_s, abs=interval_s)
    assert span.end_ns / 1e9 == pytest.approx(end_s, abs=interval_s)
    assert span.start_edge_ns <= 1.01e9 * interval_s


@pytest.mark.parametrize("interval_s", [0.001, 0.02, 0.1, 0.33])
def test_a_dead_segment_is_full_voltage_without_current(trace, interval_s):
    legs = script(trace, trace.Leg(6.5, *trace.DEAD))
    result = trace.review(legs, [trace.speed(1.0, 4)], interval_s)
    (dead,) = spans_of(result, SpanKind.DEAD)
    assert_edges(dead, 4.0, 6.5, interval_s)
    assert [s.kind for s in result.spans] == [
        SpanKind.OFF,
        SpanKind.RUNNING,
        SpanKind.DEAD,
        SpanKind.RUNNING,
    ]


@pytest.mark.parametrize("phase", [0.0, 0.07, 0.15, 0.22, 0.3])
def test_an_averaging_meter_still_gives_the_edges_within_one_interval(trace, phase):
    interval_s = 0.33
    legs = script(trace, trace.Leg(6.5, *trace.DEAD))
    result = trace.review(
        legs, [trace.speed(1.0, 4)], interval_s, phase_s=phase, window_s=interval_s
    )
    (dead,) = spans_of(result, SpanKind.DEAD)
    assert dead.start_ns / 1e9 == pytest.approx(4.0, abs=0.3 * interval_s)
    assert dead.end_ns / 1e9 == pytest.approx(6.5, abs=0.3 * interval_s)
    assert dead.start_edge_ns == round(interval_s * 1e9)
    # The reading that is half dropout is not too little current in its own right.
    assert not spans_of(result, SpanKind.UNDER)


def test_the_feed_lost_while_running_is_never_called_dead_although_the_motor_generates(trace):
    leg = trace.Leg
    coast = [leg(4.0 + 0.1 * k, 9.3 * 0.9**k, 0.0, 0.0) for k in range(1, 20)]
    result = trace.review(script(trace, *coast, leg(8.0, 0.0, 0.0, 0.0)), [trace.speed(1.0, 4)])
    (lost,) = spans_of(result, SpanKind.FEED_LOST)
    assert_edges(lost, 4.0, 8.0, 0.02)
    assert not spans_of(result, SpanKind.DEAD)


def test_a_coasting_voltage_above_the_present_limit_is_still_not_the_supply(trace):
    # The limit is set low (8 V), so that the generated 9.3 V would pass it.
    leg = trace.Leg
    legs = script(trace, leg(4.3, 9.3, 0.0, 0.0), leg(8.0, 3.0, 0.0, 0.0))
    lim = trace.limits(supply_present_v=8.0)
    result = trace.review(legs, [trace.speed(1.0, 4)], lim=lim)
    assert not spans_of(result, SpanKind.DEAD)
    assert spans_of(result, SpanKind.FEED_LOST)


def test_the_ground_side_lost_is_told_by_the_risen_return(trace):
    leg = trace.Leg
    legs = script(
        trace, leg(4.2, 12.4, 3.4, 0.0), leg(5.0, 12.4, 8.0, 0.0), leg(8.0, 12.4, 12.4, 0.0)
    )
    result = trace.review(legs, [trace.speed(1.0, 4)])
    (lost,) = spans_of(result, SpanKind.GROUND_LOST)
    assert_edges(lost, 4.0, 8.0, 0.02)


def test_an_engine_switched_off_during_a_dead_segment_does_not_blame_the_feed(trace):
    # 13.9 V running falls to 12.4 V: about a tenth, far less than a lost feed.
    leg = trace.Leg
    legs = [
        leg(3.0, 13.5, 0.2, 16.4),
        leg(5.0, 13.9, 0.02, 0.0),
        leg(8.0, 12.4, 0.02, 0.0),
        leg(9.0, 12.0, 0.2, 13.6),
    ]
    result = trace.review(legs, [trace.speed(0.0, 4)])
    assert [s.kind for s in result.spans] == [SpanKind.RUNNING, SpanKind.DEAD, SpanKind.RUNNING]


def test_a_dead_segment_on_low_speed_is_dead_too(trace):
    leg = trace.Leg
    legs = [leg(3.0, *trace.NORMAL[1]), leg(5.0, *trace.DEAD), leg(8.0, *trace.NORMAL[1])]
    result = trace.review(legs, [trace.speed(0.0, 1)])
    (dead,) = spans_of(result, SpanKind.DEAD)
    assert dead.speed == 1


def test_a_motor_that_does_not_start_is_dead_from_the_command_on(trace):
    leg = trace.Leg
    legs = [leg(2.0, *trace.NORMAL[0]), leg(5.0, *trace.DEAD), leg(8.0, *trace.NORMAL[4])]
    result = trace.review(legs, [trace.speed(0.0, 0), trace.speed(2.0, 4)])
    kinds = [s.kind for s in result.spans]
    assert kinds == [SpanKind.OFF, SpanKind.DEAD, SpanKind.RUNNING]
    assert_edges(result.spans[1], 2.0, 5.0, 0.02)


def test_off_is_off_although_the_feed_stays_at_battery_voltage(trace):
    leg = trace.Leg
    legs = [leg(2.0, *trace.NORMAL[4]), leg(6.0, *trace.NORMAL[0])]
    result = trace.review(legs, [trace.speed(0.0, 4), trace.speed(2.0, 0)])
    assert [s.kind for s in result.spans] == [SpanKind.RUNNING, SpanKind.OFF]
    assert not [f for f in result.findings if f.kind is not FindingKind.STEP_CURRENT]


def test_a_late_thumb_on_the_off_key_is_no_fault(trace):
    leg = trace.Leg
    legs = [leg(2.0, *trace.NORMAL[4]), leg(6.0, *trace.NORMAL[0])]
    result = trace.review(legs, [trace.speed(0.0, 4), trace.speed(2.2, 0)])
    assert [s.kind for s in result.spans] == [SpanKind.RUNNING, SpanKind.OFF]
    assert_edges(result.spans[1], 2.0, 6.0, 0.03)


def test_without_commands_a_dead_motor_is_found_and_off_says_that_no_command_is_known(trace):
    leg = trace.Leg
    legs = [leg(2.0, *trace.NORMAL[0]), leg(4.0, *trace.NORMAL[4]), leg(6.0, *trace.DEAD)]
    result = trace.review(legs)
    assert [s.kind for s in result.spans] == [SpanKind.OFF, SpanKind.RUNNING, SpanKind.DEAD]
    assert "no command recorded" in result.spans[0].detail


def test_with_the_current_alone_the_side_is_left_open_and_the_missing_channels_are_named(trace):
    legs = script(trace, trace.Leg(6.0, *trace.DEAD))
    result = trace.review(legs, [trace.speed(0.0, 0), trace.speed(1.0, 4)], roles=("current",))
    (gone,) = spans_of(result, SpanKind.NO_CURRENT)
    assert set(gone.settled_by) == {Role.MOTOR_FEED, Role.MOTOR_RETURN}
    assert_edges(gone, 4.0, 6.0, 0.02)


def test_with_feed_and_current_a_lost_feed_is_told_and_a_held_feed_is_left_open(trace):
    leg = trace.Leg
    coast = [leg(7.0 + 0.1 * k, 9.3 * 0.9**k, 0.0, 0.0) for k in range(1, 20)]
    opened = [*coast, leg(9.0, 1.2, 0.0, 0.0)]
    legs = script(trace, leg(6.0, *trace.DEAD), leg(7.0, *trace.NORMAL[4]), *opened)
    result = trace.review(
        legs, [trace.speed(0.0, 0), trace.speed(1.0, 4)], roles=("feed", "current")
    )
    assert spans_of(result, SpanKind.NO_CURRENT)[0].settled_by == (Role.MOTOR_RETURN,)
    assert_edges(spans_of(result, SpanKind.FEED_LOST)[0], 7.0, 9.0, 0.02)


def test_with_the_current_alone_and_no_command_nobody_is_accused(trace):
    result = trace.review([trace.Leg(3.0, *trace.NORMAL[0])], roles=("current",))
    (finding,) = result.findings
    assert (finding.kind, finding.verdict) == (FindingKind.NO_CURRENT, Verdict.CANT_TELL)
    assert "commanded speed" in finding.statement


def test_a_reversed_clamp_is_noted_and_never_read_as_a_dead_motor(trace):
    leg = trace.Leg
    legs = [leg(1.0, *trace.NORMAL[0]), leg(6.0, 12.0, 0.16, -13.6)]
    result = trace.review(legs, [trace.speed(1.0, 4)])
    assert [s.kind for s in result.spans] == [SpanKind.OFF, SpanKind.RUNNING]
    assert any("wrong way round" in note for note in result.notes)


def test_over_and_under_are_told_by_the_limits_of_the_speed(trace):
    leg = trace.Leg
    legs = script(
        trace, leg(6.0, 11.9, 0.2, 20.0), leg(8.0, *trace.NORMAL[4]), leg(9.0, 12.1, 0.1, 8.0)
    )
    result = trace.review(legs, [trace.speed(1.0, 4)])
    assert_edges(spans_of(result, SpanKind.OVER)[0], 4.0, 6.0, 0.02)
    assert_edges(spans_of(result, SpanKind.UNDER)[0], 8.0, 9.0, 0.02)


def test_the_start_up_current_is_not_judged_within_its_window_and_is_afterwards(trace):
    leg = trace.Leg
    legs = [leg(1.0, *trace.NORMAL[0]), leg(1.4, 11.0, 0.5, 35.0), leg(4.0, *trace.NORMAL[4])]
    assert not spans_of(trace.review(legs, [trace.speed(1.0, 4)]), SpanKind.OVER)
    short = trace.limits(inrush_window_s=0.1)
    (over,) = spans_of(trace.review(legs, [trace.speed(1.0, 4)], lim=short), SpanKind.OVER)
    assert_edges(over, 1.1, 1.4, 0.02)


def test_the_start_after_a_dead_segment_has_its_inrush_window_too(trace):
    leg = trace.Leg
    legs = script(trace, leg(6.0, *trace.DEAD), leg(6.3, 11.0, 0.5, 30.0))
    result = trace.review(legs, [trace.speed(1.0, 4)])
    assert not spans_of(result, SpanKind.OVER)


def test_a_held_rotor_is_locked_not_merely_over(trace):
    leg = trace.Leg
    legs = [leg(1.0, *trace.NORMAL[0]), leg(5.0, 10.7, 0.67, 55.0)]
    result = trace.review(legs, [trace.speed(1.0, 4)])
    (locked,) = spans_of(result, SpanKind.LOCKED)
    assert_edges(locked, 1.5, 5.0, 0.02)


def test_a_step_down_lets_the_turning_motor_coast_without_blame(trace):
    # The motor generates 9 V and is given 5.6 V: no current until it has slowed.
    leg = trace.Leg
    legs = [leg(3.0, *trace.NORMAL[4]), leg(3.6, 12.4, 4.5, 0.0), leg(6.0, *trace.NORMAL[1])]
    result = trace.review(legs, [trace.speed(0.0, 4), trace.speed(3.0, 1)])
    assert [s.kind for s in result.spans] == [SpanKind.RUNNING]


def test_a_step_down_after_which_the_motor_never_draws_again_is_a_loss(trace):
    leg = trace.Leg
    legs = [leg(3.0, *trace.NORMAL[4]), leg(9.0, 12.4, 12.4, 0.0)]
    result = trace.review(legs, [trace.speed(0.0, 4), trace.speed(3.0, 1)])
    assert [s.kind for s in result.spans] == [SpanKind.RUNNING, SpanKind.GROUND_LOST]


def test_a_flicker_shorter_than_the_dwell_is_no_span(trace):
    leg = trace.Leg
    legs = script(trace, leg(4.03, *trace.DEAD))
    result = trace.review(legs, [trace.speed(1.0, 4)], 0.005)
    assert not spans_of(result, SpanKind.DEAD)
    longer = script(trace, leg(4.06, *trace.DEAD))
    assert spans_of(trace.review(longer, [trace.speed(1.0, 4)], 0.005), SpanKind.DEAD)


def test_missing_readings_are_no_data_from_the_last_good_to_the_next_good(trace):
    legs = script(trace, trace.Leg(6.0, None, None, None))
    result = trace.review(legs, [trace.speed(1.0, 4)])
    (gap,) = spans_of(result, SpanKind.NO_DATA)
    assert_edges(gap, 4.0, 6.0, 0.021)
    assert [s.kind for s in result.spans].count(SpanKind.RUNNING) == 2


def test_silence_longer_than_three_intervals_is_no_data_and_three_are_not(trace):
    legs = script(trace)
    instrument = trace.Instrument("meter", "test", "-", trace.channels(0.02))
    t_ns, values = trace.sample(legs, 0.02)
    for missing, expected in ((2, 0), (5, 1)):
        keep = (t_ns < 5_000_000_000) | (t_ns >= 5_000_000_000 + missing * 20_000_000)
        reviewer = trace.Reviewer([instrument], trace.limits())
        reviewer.feed(trace.speed(1.0, 4))
        reviewer.feed(trace.block_of(t_ns[keep], values[keep]))
        assert len(spans_of(reviewer.finish(), SpanKind.NO_DATA)) == expected


def test_spans_touch_and_cover_the_recording(trace):
    leg = trace.Leg
    legs = script(trace, leg(5.0, *trace.DEAD), leg(5.5, None, None, None), leg(7.0, 0.0, 0.0, 0.0))
    result = trace.review(legs, [trace.speed(1.0, 4)])
    for before, after in zip(result.spans, result.spans[1:], strict=False):
        assert before.end_ns == after.start_ns
    assert result.spans[0].start_ns == 0
    assert result.spans[-1].end_ns == 11_980_000_000


def test_a_dead_finding_names_value_limit_uncertainty_and_the_tap(trace):
    legs = script(trace, trace.Leg(6.5, *trace.DEAD))
    result = trace.review(legs, [trace.speed(1.0, 4), trace.tap(6.45)])
    (dead,) = [f for f in result.findings if f.kind is FindingKind.DEAD]
    assert dead.verdict is Verdict.FAIL
    assert dead.limit == 0.3
    assert dead.value == pytest.approx(0.0, abs=1e-9)
    # ±(0.5 % of 0 A + 2 x 0.01 A), a rectangle that dominates: 95 % of its half-width
    assert dead.expanded_uncertainty == pytest.approx(0.95 * 0.02)
    assert "after a tap" in dead.statement


def test_a_clamp_too_poor_to_tell_nothing_from_little_gives_no_verdict(trace):
    legs = script(trace, trace.Leg(6.5, 12.4, 0.02, 0.2))
    lim = trace.limits(open_current_a=0.21)
    result = trace.review(legs, [trace.speed(1.0, 4)], lim=lim)
    (dead,) = [f for f in result.findings if f.kind is FindingKind.DEAD]
    assert dead.verdict is Verdict.CANT_TELL


def test_a_feed_lost_soon_after_a_step_down_is_not_taken_for_coasting(trace):
    # Coasting down ends at the voltage of the new step; a lost feed leaves less.
    leg = trace.Leg
    legs = [
        leg(3.0, *trace.NORMAL[4]),
        leg(3.3, *trace.NORMAL[2]),
        leg(3.8, 5.5, 0.0, 0.0),
        leg(4.6, 2.5, 0.0, 0.0),
        leg(7.0, *trace.NORMAL[2]),
    ]
    result = trace.review(legs, [trace.speed(0.0, 4), trace.speed(3.0, 2)])
    (lost,) = spans_of(result, SpanKind.FEED_LOST)
    assert_edges(lost, 3.3, 4.6, 0.02)


def test_a_slow_answer_of_the_controller_does_not_shorten_a_motor_dead_from_the_start(trace):
    leg = trace.Leg
    legs = [
        leg(2.0, *trace.NORMAL[0]),
        leg(2.03, 12.4, 7.0, 0.0),
        leg(5.0, *trace.DEAD),
        leg(8.0, *trace.NORMAL[4]),
    ]
    result = trace.review(legs, [trace.speed(0.0, 0), trace.speed(2.0, 4)], 0.005)
    assert [s.kind for s in result.spans] == [SpanKind.OFF, SpanKind.DEAD, SpanKind.RUNNING]
    assert_edges(result.spans[1], 2.0, 5.0, 0.005)


def test_a_thumb_late_on_the_next_speed_is_no_excess_of_the_last(trace):
    leg = trace.Leg
    legs = [leg(3.0, *trace.NORMAL[1]), leg(8.0, *trace.NORMAL[4])]
    result = trace.review(legs, [trace.speed(0.0, 1), trace.speed(3.25, 4)])
    assert [s.kind for s in result.spans] == [SpanKind.RUNNING]


def test_an_excess_that_lasts_since_the_inrush_window_is_one_however_short_the_step(trace):
    leg = trace.Leg
    legs = [leg(0.7, 12.3, 10.0, 6.0), leg(3.0, *trace.NORMAL[4])]
    result = trace.review(legs, [trace.speed(0.0, 1), trace.speed(0.7, 4)])
    (over,) = spans_of(result, SpanKind.OVER)
    assert_edges(over, 0.5, 0.7, 0.02)


@pytest.mark.parametrize("phase", [0.0, 0.05, 0.11, 0.2, 0.28])
def test_an_averaging_meter_sees_no_excess_where_the_speed_goes_up(trace, phase):
    leg = trace.Leg
    legs = [leg(3.0, *trace.NORMAL[1]), leg(8.0, *trace.NORMAL[4])]
    events = [trace.speed(0.0, 1), trace.speed(3.0, 4)]
    result = trace.review(legs, events, 0.33, phase_s=phase, window_s=0.33)
    assert [s.kind for s in result.spans] == [SpanKind.RUNNING]


def test_a_finding_names_every_speed_that_was_commanded_within_it_live_and_afterwards(trace):
    legs = script(trace, trace.Leg(9.0, *trace.DEAD))
    commands = [trace.speed(1.0, 4), trace.speed(5.0, 2), trace.speed(7.0, 4)]
    result = trace.review(legs, commands)
    (dead,) = [one for one in result.findings if one.kind is FindingKind.DEAD]
    assert dead.statement.startswith("Dead segment at speeds 4 and 2 from 3.990 s to 8.990 s")
    assert dead.speed == 4
    reviewer = trace.Reviewer(
        [trace.Instrument("meter", "test", "-", trace.channels(0.02))], trace.limits()
    )
    t_ns, values = trace.sample(legs, 0.02)
    for first in range(0, len(t_ns), 50):
        part = slice(first, first + 50)
        while commands and commands[0].t_ns <= t_ns[part][-1]:
            reviewer.feed(commands.pop(0))
        reviewer.feed(trace.block_of(t_ns[part], values[part]))
        live = reviewer.live()
    (told,) = [one for one in live.findings if one.kind is FindingKind.DEAD]
    # Afterwards it says besides after which commands it went on.
    assert dead.statement.startswith(told.statement.removesuffix("."))
    assert told.speed == 4


@pytest.mark.parametrize(
    ("commands", "words"),
    [
        ([], "Dead segment at speed 4 from"),
        ([(5.0, 4)], "Dead segment at speed 4 from"),
        # Commanded for next to nothing before the current came back: it may be what brought it.
        ([(8.98, 2)], "Dead segment at speed 4 from"),
        ([(5.0, 2), (6.0, 1), (7.0, 4)], "Dead segment at speeds 4/2/1 from"),
    ],
)
def test_a_finding_names_no_speed_that_was_not_commanded_within_it(trace, commands, words):
    legs = script(trace, trace.Leg(9.0, *trace.DEAD))
    result = trace.review(legs, [trace.speed(1.0, 4), *(trace.speed(*one) for one in commands)])
    (dead,) = [one for one in result.findings if one.kind is FindingKind.DEAD]
    assert dead.statement.startswith(words)
