"""Whatever was found: the verdict stands, in order, and leaves no failure out."""

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.model import (
    DoubtKind,
    FindingKind,
    Outcome,
    Rhythm,
    RhythmKind,
    Role,
    Sureness,
    Verdict,
)

numbers = st.none() | st.floats(-60.0, 60.0)
kinds = st.sampled_from(list(FindingKind))
verdicts = st.sampled_from(list(Verdict))
plain = st.tuples(
    kinds,
    verdicts,
    st.floats(0.0, 100.0),
    st.floats(0.0, 10.0),
    numbers,
    numbers,
    st.none() | st.integers(0, 4),
    st.none() | st.floats(0.0, 1.0),
)
doubts = st.tuples(
    st.sampled_from(list(DoubtKind)),
    st.floats(0.0, 50.0),
    st.floats(0.0, 60.0),
    st.none() | st.sampled_from(list(Role)),
)
roles = st.sets(st.sampled_from(list(Role)))


@st.composite
def runs(draw):
    return {
        "plain": draw(st.lists(plain, max_size=12)),
        "doubts": draw(st.lists(doubts, max_size=3)),
        "roles": tuple(draw(roles)),
        "rhythm": draw(st.none() | st.sampled_from(list(RhythmKind))),
        "taps": draw(st.none() | st.tuples(st.integers(0, 5), st.floats(0.0001, 1.0))),
    }


@pytest.fixture
def build(kit):
    def of(run):
        findings = [
            kit.finding(
                kind, verdict, start, length, value=value, limit=limit, speed=speed,
                probability=probability, statement=f"Finding {index}.",
            )
            for index, (kind, verdict, start, length, value, limit, speed, probability)
            in enumerate(run["plain"])
        ]  # fmt: skip
        made = tuple(kit.doubt(kind, a, a + b, role=role) for kind, a, b, role in run["doubts"])
        rhythm = run["rhythm"] and Rhythm(run["rhythm"], 5, 8.0, 0.1, 5.0, 3.0, 0.01, "R.")
        taps = run["taps"] and kit.taps(run["taps"][0], run["taps"][0], run["taps"][1])
        review = kit.review(*findings, doubts=made, rhythm=rhythm, taps=taps)
        return kit.judged(run["roles"]), review

    return of


@settings(max_examples=150, deadline=None)
@given(runs())
def test_every_failure_is_told_and_never_in_order(build, kit, run):
    judged, review = build(run)
    told = kit.run_verdict(judged, review)
    causes = kit.causes_of(kit.Case(judged, review))
    failed = [one for one in review.findings if one.verdict is Verdict.FAIL]
    accounted = [one for cause in causes for one in cause.findings]
    assert all(any(one is other for other in accounted) for one in failed)
    assert len(told.ranked) == len(causes)
    if failed:
        assert told.outcome in (Outcome.FAULT, Outcome.SUSPICION)
        assert told.ranked
    if told.outcome is Outcome.IN_ORDER:
        assert all(one.part == "measuring" for one in told.ranked)
    if told.outcome is Outcome.FAULT:
        assert any(one.sureness is not Sureness.POSSIBLE for one in told.ranked)
    assert told.paragraph
    against = [one.against[0] for one in told.ranked[:1] if one.against]
    for longer, text in pairwise((told.paragraph, *told.shorter)):
        assert len(text) < len(longer)
        assert "Next: " not in text
        assert ("Against it: " in text) is bool(against and "Against it: " in told.paragraph)
    for one in told.ranked:
        assert one.what and one.part and one.next_measurement  # noqa: PT018


@settings(max_examples=60, deadline=None)
@given(runs(), st.randoms(use_true_random=False))
def test_the_order_does_not_depend_on_the_order_of_findings(build, kit, run, dice):
    judged, review = build(run)
    shuffled = list(review.findings)
    dice.shuffle(shuffled)
    again = kit.replace(review, findings=tuple(shuffled))
    first = kit.run_verdict(judged, review)
    second = kit.run_verdict(judged, again)
    assert [(r.part, r.what, r.sureness) for r in first.ranked] == [
        (r.part, r.what, r.sureness) for r in second.ranked
    ]
    assert first.outcome == second.outcome


@settings(max_examples=60, deadline=None)
@given(st.lists(st.tuples(kinds, st.sampled_from([Verdict.PASS])), max_size=8))
def test_where_everything_passes_nothing_is_blamed(kit, given_kinds):
    findings = [kit.finding(kind, verdict) for kind, verdict in given_kinds]
    told = kit.run_verdict(kit.judged(), kit.review(*findings))
    assert told.ranked == ()
    assert told.outcome in (Outcome.IN_ORDER, Outcome.CANT_TELL)
