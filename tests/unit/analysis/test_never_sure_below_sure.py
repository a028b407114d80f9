"""Below the length from which on nothing is missed no chance is said to be a certainty."""

from dataclasses import replace

import pytest

from meterlog.analysis.visibility import catch_chances, shortest_visible_s
from meterlog.evidence.visibility_text import visibility_words
from meterlog.model import Channel, Quantity, Role


def chances(interval_s, dwell_s):
    channel = Channel(
        "amps", Quantity.CURRENT, Role.MOTOR_CURRENT, interval_s=interval_s, integration_s=0.0
    )
    return shortest_visible_s(channel, dwell_s), catch_chances(channel, dwell_s)


@pytest.mark.parametrize("interval_s", [0.001, 0.005, 0.02035, 0.1, 0.33])
@pytest.mark.parametrize("dwell_s", [0.0, 0.04, 0.1])
def test_what_may_have_been_missed_is_never_sure_to_show(interval_s, dwell_s):
    sure, found = chances(interval_s, dwell_s)
    assert all(one.duration_s < sure for one in found)
    assert all(one.chance < 1.0 for one in found)


def test_the_words_agree(trace):
    legs = [trace.Leg(2.0, *trace.NORMAL[0]), trace.Leg(20.0, *trace.NORMAL[4])]
    events = [trace.speed(0.0, 0), trace.speed(2.0, 4)]
    review = trace.review(legs, events, 0.0203, lim=trace.limits(min_dwell_s=0.04))
    last = review.catch_chances[-1]
    assert last.duration_s == 0.05 < review.shortest_visible_dropout_s
    assert 0.99 < last.chance < 1.0
    told = " ".join(visibility_words(review))
    assert "0.05 s more than 99%" in told
    assert "100%" not in told
    assert any("may have been missed" in words for words in review.verdict.unseen)
    assert not any("100 %" in words for words in review.verdict.unseen)


@pytest.mark.parametrize(
    ("chance", "said"),
    [(0.0, "0%"), (0.004, "less than 1%"), (0.37, "37%"), (0.9988, "more than 99%"), (1.0, "100%")],
)
def test_only_what_is_certain_is_said_to_be(trace, chance, said):
    review = trace.review([trace.Leg(9.0, *trace.NORMAL[4])], [trace.speed(0.0, 4)], 0.1)
    one = replace(review.catch_chances[0], duration_s=0.002, chance=chance)
    told = visibility_words(replace(review, catch_chances=(one,)))[-1]
    assert told.endswith(f"0.002 s {said}.")
