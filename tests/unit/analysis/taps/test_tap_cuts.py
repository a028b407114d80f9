"""However the readings are cut, the taps prove the same."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

THREE = [(6.0, 9.1), (12.0, 15.1), (18.0, 21.2)]


def rounded(evidence):
    """Leave out the last digits, which depend on the order in which numbers are added."""

    def short(thing):
        names = [n for n in thing.__slots__ if isinstance(getattr(thing, n), float)]
        return replace(thing, **{name: round(getattr(thing, name), 9) for name in names})

    return replace(short(evidence), taps=tuple(short(tap) for tap in evidence.taps))


@settings(max_examples=25, deadline=None)
@given(data=st.data())
def test_cut_anywhere_the_evidence_is_the_same(tapped, script, data):
    legs, events = script(THREE, end=26.0)
    taps = data.draw(st.lists(st.floats(2.0, 25.0), min_size=1, max_size=6))
    whole = tapped(legs, taps, events=events)
    chunks = data.draw(st.lists(st.integers(1, 600), max_size=40))
    cut = tapped(legs, taps, events=events, chunks=chunks)
    assert rounded(cut.evidence) == rounded(whole.evidence)


@settings(max_examples=15, deadline=None)
@given(st.lists(st.floats(0.0, 30.0), min_size=1, max_size=8), st.sampled_from([0.05, 0.3]))
def test_taps_anywhere_never_count_more_answers_than_returns(tapped, script, taps, interval_s):
    legs, events = script(THREE, end=26.0)
    evidence = tapped(legs, taps, events=events, interval_s=interval_s).evidence
    assert evidence.answered <= min(evidence.tried, 3)
    assert evidence.tried <= evidence.attempts <= len(taps)
    assert sum(tap.answered for tap in evidence.taps) == evidence.answered
    assert evidence.chance is None or evidence.chance == pytest.approx(evidence.chance)
