"""Currents that other speeds should draw prove no fault: the speeds may be marked wrong."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.analysis.verdict import Case
from meterlog.analysis.verdict.marks_off import as_other_speeds
from meterlog.model import Role, Span, SpanKind, SpeedLimits

THREE = (Role.MOTOR_FEED, Role.MOTOR_RETURN, Role.MOTOR_CURRENT)
SPEEDS = {
    1: SpeedLimits(3.0, 5.0),
    2: SpeedLimits(6.0, 8.5),
    3: SpeedLimits(9.0, 12.0),
    4: SpeedLimits(13.0, 16.0),
}
SHOULD = {1: 4.0, 2: 7.2, 3: 10.5, 4: 14.2}


def step(kit, marked, amps):
    one = SPEEDS[marked]
    if one.min_a <= amps <= one.max_a:
        return kit.passed(marked, amps)
    limit = one.max_a if amps > one.max_a else one.min_a
    words = f"Speed {marked} draws {amps:g} A."
    return kit.finding(
        "step-current", "fail", marked * 10.0, 10.0, value=amps, limit=limit, speed=marked,
        statement=words,
    )  # fmt: skip


@pytest.fixture
def told(kit, verdict_of):
    """Judge (marked speed, speed it ran at, factor of the current) each."""

    def of(*steps, roles=THREE, more=()):
        found = [step(kit, marked, SHOULD[ran] * times) for marked, ran, times in steps]
        return verdict_of(*found, *more, roles=roles, limits={"speeds": SPEEDS})

    return of


@pytest.mark.parametrize(
    ("ran", "words"),
    [
        ({2: 1, 3: 2, 4: 3}, "marked 2, 3, 4 is what the speeds 1, 2, 3 should"),
        ({1: 2, 2: 3, 3: 4}, "marked 1, 2, 3 is what the speeds 2, 3, 4 should"),
        ({1: 1, 2: 3, 3: 2, 4: 4}, "marked 2, 3 is what the speeds 3, 2 should"),
        ({1: 4, 2: 3, 3: 2, 4: 1}, "marked 1, 2, 3, 4 is what the speeds 4, 3, 2, 1 should"),
    ],
)
def test_marks_that_are_off_prove_nothing(told, ran, words):
    verdict = told(*((marked, at, 1.0) for marked, at in ran.items()))
    assert verdict.outcome == "suspicion"
    assert {one.sureness for one in verdict.ranked} == {"possible"}
    assert all(any(words in doubt for doubt in one.against) for one in verdict.ranked)
    assert words in verdict.paragraph


def test_where_the_controllers_request_was_read_the_speeds_are_known(told):
    verdict = told((2, 1, 1.0), (3, 2, 1.0), (4, 3, 1.0), roles=(*THREE, Role.COMMAND))
    assert (verdict.outcome, verdict.ranked[0].sureness) == ("fault found", "proven")


@pytest.mark.parametrize(
    "steps",
    [
        [(1, 1, 1.5), (2, 2, 1.4), (3, 3, 1.35), (4, 4, 1.3)],  # the highest fits no speed
        [(1, 1, 1.4), (2, 2, 1.3)],  # between the ranges
        [(1, 1, 1.0), (4, 4, 1.5)],  # more than the highest
    ],
)
def test_a_motor_that_is_bad_stays_proven(told, steps):
    verdict = told(*steps)
    assert (verdict.outcome, verdict.ranked[0].sureness) == ("fault found", "proven")
    assert not any("wrong marks" in doubt for doubt in verdict.ranked[0].against)


def test_one_marked_speed_that_draws_what_another_should_is_no_proof(told):
    verdict = told((1, 1, 1.0), (2, 3, 1.0), (4, 4, 1.0))
    (cause,) = verdict.ranked
    assert (verdict.outcome, cause.sureness) == ("fault found", "likely")
    assert "at speed 2 is what speed 3 should draw: a wrong mark" in verdict.paragraph


def test_a_current_that_changes_within_a_step_is_no_proof(told, kit, verdict_of):
    two_levels = kit.replace(
        kit.step(2, 7.0), steady_n=40, steady_sd_a=2.5, steady_lag1_a=0.95, steady_expanded_a=18.0
    )
    over = kit.finding("over", start=22.0, value=9.4, limit=8.0, speed=2)
    mean = kit.finding("step-current", start=20.0, value=9.4, limit=8.0, speed=2)
    told_of = {"roles": THREE, "limits": {"speeds": SPEEDS}}
    verdict = verdict_of(over, mean, steps=(two_levels,), **told_of)
    assert verdict.ranked[0].sureness == "likely"
    assert "late or was forgotten" in verdict.paragraph
    asked = verdict_of(over, mean, steps=(two_levels,), limits={"speeds": SPEEDS})
    assert asked.ranked[0].sureness == "proven"


@pytest.mark.parametrize(("before", "sureness"), [("off", "possible"), ("running", "proven")])
def test_a_fan_that_came_on_while_off_was_marked_may_lack_a_mark(kit, verdict_of, before, sureness):
    over = kit.finding("over", start=20.0, length=10.0, value=13.5, limit=0.3, speed=0)
    off_step = kit.replace(kit.step(0, 0.0), start_ns=10_000_000_000, end_ns=30_000_000_000)
    spans = (
        Span(SpanKind(before), 5_000_000_000, 20_000_000_000, speed=0),
        Span(SpanKind.OVER, 20_000_000_000, 30_000_000_000, speed=0),
    )
    verdict = verdict_of(over, steps=(off_step,), spans=spans, roles=THREE)
    assert verdict.ranked[0].sureness == sureness
    assert any("without a mark" in one for one in verdict.ranked[0].against) is (before == "off")


def test_what_loads_the_fuse_too_much_does_so_whatever_was_marked(told, kit):
    fuse = kit.finding("fuse-load", value=110.0, limit=80.0, unit="%", speed=None)
    verdict = told((1, 2, 1.0), (2, 3, 1.0), (3, 4, 1.0), more=(fuse,))
    assert verdict.ranked[0].sureness == "proven"


@given(st.permutations([1, 2, 3, 4]))
def test_every_exchange_of_marks_is_told(kit, order):
    ran = dict(zip(SPEEDS, order, strict=True))
    found = [step(kit, marked, SHOULD[at]) for marked, at in ran.items()]
    case = Case(kit.judged(THREE, speeds=SPEEDS), kit.review(*found))
    off = [marked for marked, at in ran.items() if marked != at]
    said = as_other_speeds(case)
    assert bool(said) is bool(off)
    if off:
        assert f"marked {', '.join(map(str, off))} is what" in said
        assert f"speeds {', '.join(str(ran[one]) for one in off)} should" in said


@given(st.dictionaries(st.sampled_from([1, 2, 3, 4]), st.floats(0.4, 20.0), min_size=2, max_size=4))
def test_what_is_told_fits_the_limits(kit, drawn):
    found = [step(kit, marked, amps) for marked, amps in drawn.items()]
    said = as_other_speeds(Case(kit.judged(THREE, speeds=SPEEDS), kit.review(*found)))
    if not said:
        return
    marked, meant = (
        [int(one) for one in part.split(", ")]
        for part in (
            said.split("marked ")[1].split(" is")[0],
            said.split("the speeds ")[2].split(" sh")[0],
        )
    )
    assert len(marked) >= 2
    for one, other in zip(marked, meant, strict=True):
        assert not SPEEDS[one].min_a <= drawn[one] <= SPEEDS[one].max_a
        assert SPEEDS[other].min_a <= drawn[one] <= SPEEDS[other].max_a
