"""A new part that draws what the old one did speaks against a claim that rests on that current."""

from types import SimpleNamespace

import pytest

from meterlog.analysis.budgets import budget
from meterlog.model import Finding, FindingKind, Review, Source, StepDifference, Verdict
from meterlog.work.claim_doubts import same_draw

K, V = FindingKind, Verdict


def review(*findings):
    made = [Finding(kind, verdict, 0, 1, 0, 9.0, "A", 0.1, 8.0, speed, "x")
            for kind, verdict, speed in findings]  # fmt: skip
    return Review(findings=tuple(made))


def compared(**apart_a):
    """Compare at speeds ``s1`` and so on: new less old, each known to ±0.2 A."""
    steps = []
    for name, value in apart_a.items():
        size = budget("x", value, "A", (Source("s", 0.1, "A"),))
        verdict = V.FAIL if abs(value) > size.expanded else V.CANT_TELL
        speed = int(name[1:])
        steps.append(
            StepDifference(
                speed,
                9.0,
                9.0,
                None,
                None,
                None,
                size,
                None,
                None,
                None,
                None,
                0,
                verdict,
                0.5,
                "x",
            )
        )
    return SimpleNamespace(steps=tuple(steps))


@pytest.mark.parametrize("kind", [K.OVER, K.UNDER, K.STEP_CURRENT])
def test_it_is_told_of_the_speeds_that_failed(kind):
    (told,) = same_draw(review((kind, V.FAIL, 2), (K.STEP_CURRENT, V.PASS, 1)),
                        compared(s1=0.05, s2=0.05, s3=0.0))  # fmt: skip
    assert "No difference from the new part is seen at speed 2, where" in told
    assert "the old part is not shown to be the cause" in told


def test_of_several_speeds_those_that_were_compared_are_named():
    found = review(*((K.OVER, V.FAIL, speed) for speed in (4, 2, 2, 3)))
    (told,) = same_draw(found, compared(s2=0.0, s4=0.1))
    assert "at speed 2, 4, where" in told


@pytest.mark.parametrize(
    ("found", "apart"),
    [
        ([(K.OVER, V.FAIL, 2)], {"s2": -3.0}),  # the new one draws less: the old one is shown
        ([(K.OVER, V.FAIL, 2), (K.OVER, V.FAIL, 3)], {"s2": 0.0, "s3": -3.0}),
        ([(K.OVER, V.FAIL, 2)], {"s1": 0.0}),
        ([(K.STEP_CURRENT, V.PASS, 2)], {"s2": 0.0}),
        ([(K.STEP_CURRENT, V.CANT_TELL, 2)], {"s2": 0.0}),
        ([(K.DEAD, V.FAIL, 2)], {"s2": 0.0}),
        ([(K.OVER, V.FAIL, 0)], {"s0": 0.0}),
        ([(K.UNDER, V.FAIL, 2), (K.RESISTIVE_FEED, V.FAIL, 2)], {"s2": 0.0}),
        ([(K.OVER, V.FAIL, 2), (K.LOCKED, V.FAIL, 2)], {"s2": 0.0}),
        ([(K.OVER, V.FAIL, 2)], {}),
    ],
)
def test_nothing_is_told_where_the_comparison_does_not_speak_against_it(found, apart):
    assert same_draw(review(*found), compared(**apart)) == ()
