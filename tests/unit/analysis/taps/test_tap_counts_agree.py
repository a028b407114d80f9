"""The sentences that count taps and dropouts count the same ones."""

import pytest

from meterlog.model import RhythmKind

GONE = [(12.0, 20.0), (26.0, 34.0), (41.0, 49.0), (53.0, 61.0), (70.0, 78.0)]


@pytest.mark.parametrize(
    "late_s", [-0.1, 0.001, 0.017, 0.3], ids=["before", "1 ms", "17 ms", "a late hand"]
)
def test_taps_marked_at_the_very_end_of_a_dropout_count_everywhere(tapped, script, late_s):
    legs, events = script(GONE, end=95.0)
    taps = [*(end - 0.1 for _, end in GONE[:3]), *(end + late_s for _, end in GONE[3:])]
    review = tapped(legs, taps, events=events, interval_s=0.02).review
    assert (review.taps.tried, review.taps.answered) == (5, 5)
    assert review.rhythm.kind is RhythmKind.TAPS
    assert "of a tap in 5 of 5 dropouts" in review.rhythm.statement


def test_a_tap_that_stopped_the_motor_brought_nothing_back_in_either(tapped, script):
    gone = [(begin, begin + 1.2) for begin, _ in GONE]
    legs, events = script(gone, end=95.0)
    taps = [begin + 0.05 for begin, _ in gone]
    review = tapped(legs, taps, events=events, interval_s=0.02).review
    assert review.taps.answered == 0
    assert review.rhythm.kind is not RhythmKind.TAPS


def test_a_short_silence_does_not_make_two_dropouts_of_one(tapped, script, trace):
    legs, events = script(GONE, end=95.0)
    for place, leg in enumerate(legs):
        if leg.end == GONE[-1][1]:
            cut = [trace.Leg(72.0, *trace.DEAD), trace.Leg(72.2, None, None, None)]
            legs = [*legs[:place], *cut, *legs[place:]]
            break
    review = tapped(legs, [end - 0.1 for _, end in GONE], events=events, interval_s=0.02).review
    assert [one.kind.value for one in review.spans].count("no-data") == 1
    assert [one.kind.value for one in review.spans].count("dead") == 6
    assert (review.taps.tried, review.taps.answered) == (5, 5)
    assert "of a tap in 5 of 5 dropouts" in review.rhythm.statement
    assert any("5 times dead" in words for words in review.verdict.ranked[0].rests_on)


def test_a_silence_longer_than_what_was_seen_may_have_been_a_run(tapped, script, trace):
    legs, events = script(GONE, end=95.0)
    for place, leg in enumerate(legs):
        if leg.end == GONE[-1][1]:
            cut = [trace.Leg(70.5, *trace.DEAD), trace.Leg(76.0, None, None, None)]
            legs = [*legs[:place], *cut, *legs[place:]]
            break
    review = tapped(legs, [end - 0.1 for _, end in GONE], events=events, interval_s=0.02).review
    assert review.rhythm.count == 6
    assert any("6 times dead" in words for words in review.verdict.ranked[0].rests_on)
