"""The shortest dropout a meter can't miss, against brute force."""

import numpy as np
import pytest

from meterlog.analysis import catch_chance, shortest_visible_s
from meterlog.model import Channel, Quantity, Role, SpanKind


def meter(interval_s, integration_s):
    return Channel(
        "amps",
        Quantity.CURRENT,
        Role.MOTOR_CURRENT,
        interval_s=interval_s,
        integration_s=integration_s,
    )


@pytest.mark.parametrize(("interval", "window"), [(0.33, 0.05), (0.33, 0.33), (0.02, 0.001)])
@pytest.mark.parametrize("part", [0.2, 0.5, 0.9, 1.1])
def test_the_chance_equals_what_random_dropouts_give(interval, window, part):
    channel = meter(interval, window)
    length = part * shortest_visible_s(channel, 0.0)
    starts = np.random.default_rng(1).uniform(0, interval, 20_000)
    # Readings with their whole window [k interval, k interval + window] inside the dropout.
    first = np.ceil(starts / interval) * interval
    whole = np.floor((starts + length - window - first) / interval) + 1
    assert catch_chance(channel, 0.0, length) == pytest.approx(np.mean(whole >= 1), abs=0.02)


@pytest.mark.parametrize("phase", np.linspace(0, 0.32, 17))
def test_an_averaging_meter_of_unstated_averaging_time_is_not_promised_too_much(trace, phase):
    length = shortest_visible_s(meter(1 / 3, 0.0), 0.04) * 1.01
    leg = trace.Leg
    legs = [leg(3.0, *trace.NORMAL[4]), leg(3.0 + length, *trace.DEAD), leg(9.0, *trace.NORMAL[4])]
    events = [trace.speed(0.0, 4)]
    result = trace.review(legs, events, 1 / 3, phase_s=phase, window_s=1 / 3)
    assert SpanKind.DEAD in [s.kind for s in result.spans]


@pytest.mark.parametrize("phase", np.linspace(0, 0.099, 12))
def test_a_dropout_of_that_length_is_found_at_every_phase(trace, phase):
    lim = trace.limits(min_dwell_s=0.04)
    length = shortest_visible_s(trace.channels(0.1, ("current",))[0], lim.min_dwell_s) * 1.02
    leg = trace.Leg
    legs = [leg(3.0, *trace.NORMAL[4]), leg(3.0 + length, *trace.DEAD), leg(6.0, *trace.NORMAL[4])]
    result = trace.review(legs, [trace.speed(0.0, 4)], 0.1, phase_s=phase, lim=lim)
    assert SpanKind.DEAD in [s.kind for s in result.spans]
    assert result.shortest_visible_dropout_s == pytest.approx(length / 1.02)


def test_a_meter_slower_than_its_profile_is_not_promised_the_profiles_pace(trace):
    # The channels say ten readings a second; one comes every quarter.
    legs = [trace.Leg(9.0, *trace.NORMAL[4])]
    instrument = trace.Instrument("meter", "test", "-", trace.channels(0.1))
    reviewer = trace.Reviewer([instrument], trace.limits(min_dwell_s=0.04))
    reviewer.feed(trace.block_of(*trace.sample(legs, 0.25)))
    review = reviewer.finish()
    assert review.shortest_visible_dropout_s == pytest.approx(0.5)
    assert review.catch_chances[-1].duration_s == 0.2


def test_a_reading_left_out_now_and_then_counts_and_jitter_does_not(trace):
    legs = [trace.Leg(9.0, *trace.NORMAL[4])]

    def shortest(t_ns, values):
        instrument = trace.Instrument("meter", "test", "-", trace.channels(0.1))
        reviewer = trace.Reviewer([instrument], trace.limits(min_dwell_s=0.04))
        block = trace.block_of(t_ns, values)
        for first in range(0, len(block), 7):
            reviewer.feed(block.rows(first, min(first + 7, len(block))))
        return reviewer.finish().shortest_visible_dropout_s

    t_ns, values = trace.sample(legs, 0.1)
    jittered = t_ns + np.random.default_rng(1).integers(0, 4_000_000, len(t_ns))
    assert shortest(jittered, values) == pytest.approx(0.2)
    keep = np.arange(len(t_ns)) != 41
    assert shortest(t_ns[keep], values[keep]) == pytest.approx(0.4)
    missing = values.copy()
    missing[41] = np.nan  # said to be without data, and bridged
    assert shortest(t_ns, missing) == pytest.approx(0.4)


def test_where_nothing_was_read_nothing_is_promised(trace):
    legs = [trace.Leg(4.0, None, None, None)]
    review = trace.review(legs, [trace.speed(0.0, 4)])
    assert review.shortest_visible_dropout_s is None
    assert review.catch_chances == ()
    assert "may have been missed" not in review.verdict.paragraph
