"""The judge of a run judges readings together, and tells the same as if it judged each alone."""

from dataclasses import replace
from datetime import UTC, datetime

import numpy as np
import pytest

from meterlog.analysis import Reviewer
from meterlog.model import (
    About,
    Block,
    Channel,
    Event,
    EventKind,
    Instrument,
    Limits,
    Origin,
    Quantity,
    Role,
    SpanKind,
)
from meterlog.work import judge as judging
from meterlog.work.judge import Judge

S = 1_000_000_000


def about(*instruments):
    return About(
        "00000000-0000-4000-8000-000000000000",
        datetime(2030, 1, 2, 3, 4, 5, tzinfo=UTC),
        0,
        0,
        "meterlog test",
        Origin.SIMULATED,
        instruments,
        Limits(name="invented"),
    )


def meter(key, *roles, typed=False):
    quantity = {Role.MOTOR_CURRENT: Quantity.CURRENT}
    channels = tuple(
        Channel(role.value, quantity.get(role, Quantity.VOLTAGE), role, interval_s=0.1)
        for role in roles
    )
    return Instrument(key, key, "invented", channels, simulated=True, typed=typed)


BOTH = meter("both", Role.MOTOR_FEED, Role.MOTOR_CURRENT)


def row(key, t_ns, *values):
    return Block(
        key,
        np.array([t_ns], np.int64),
        np.array([values], dtype=np.float64),
        np.zeros((1, len(values)), np.uint8),
    )


def run_that_stops(key="both"):
    """Ten seconds, of which the current is away for two."""
    yield Event(0, EventKind.SPEED, "3")
    for n in range(100):
        yield row(key, n * S // 10, 12.4, 0.0 if 40 <= n < 60 else 9.1)
        if n == 70:
            yield Event(n * S // 10 + 1, EventKind.TAP)


def alone(which, items):
    reviewer = Reviewer(which.instruments, which.limits, which.started_utc)
    for item in items:
        reviewer.feed(item)
    return reviewer.live()


@pytest.fixture
def clock(monkeypatch):
    """The time that the judge goes by, to be moved by hand."""

    class Clock:
        now_s = 100.0

        def monotonic(self):
            return self.now_s

    clock = Clock()
    monkeypatch.setattr(judging, "time", clock)
    return clock


def ended(review):
    """All spans, but for where the open one ends: that is where judging has come to."""
    last = review.spans[-1]
    return [*review.spans[:-1], replace(last, end_ns=0, end_edge_ns=0)]


def test_judged_together_is_told_as_if_each_were_judged_alone(tmp_path):
    which = about(BOTH)
    judge = Judge(which, tmp_path)
    for item in run_that_stops():
        judge.take(item)
    told, expected = judge.review(), alone(which, run_that_stops())
    assert ended(told) == ended(expected)
    assert [span.kind is SpanKind.RUNNING for span in told.spans] == [True, False, True]


def test_two_meters_and_typed_readings_are_judged_in_the_order_in_which_they_came(tmp_path):
    which = about(
        meter("volts", Role.MOTOR_FEED), meter("clamp", Role.MOTOR_CURRENT),
        meter("hand", Role.BATTERY, typed=True),
    )  # fmt: skip
    items = [Event(0, EventKind.SPEED, "3")]
    for n in range(60):
        t_ns = n * S // 10
        items += [row("volts", t_ns, 12.4), row("volts", t_ns + S // 20, 12.4)]
        items += [row("clamp", t_ns, 0.0 if n > 40 else 9.1)]
        items += [row("hand", t_ns, 12.6)] if n % 9 == 0 else []
    judge = Judge(which, tmp_path)
    for item in items:
        judge.take(item)
    assert ended(judge.review()) == ended(alone(which, items))


def test_a_reviewer_is_fed_seldom_while_a_slow_meter_sends(tmp_path, clock, monkeypatch):
    fed = []
    monkeypatch.setattr(Reviewer, "feed", lambda _, item: fed.append(len(item)))
    judge = Judge(about(BOTH), tmp_path)
    for n in range(10):
        judge.take(row("both", n * S // 10, 12.4, 9.1))
        clock.now_s += 0.125
    assert fed == [3, 3, 3]
    judge.take(Block("both", *many_rows(5_000)))
    assert fed == [3, 3, 3, 5_001]


def many_rows(count):
    t_ns = np.arange(S, S + count, dtype=np.int64)
    return t_ns, np.full((count, 2), 9.1), np.zeros((count, 2), np.uint8)


def test_a_calm_run_is_reviewed_once_a_second_and_news_at_once(tmp_path, clock, monkeypatch):
    made = []
    live = Reviewer.live
    monkeypatch.setattr(Reviewer, "live", lambda one: made.append(clock.now_s) or live(one))
    judge = Judge(about(BOTH), tmp_path)
    judge.take(Event(0, EventKind.SPEED, "3"))
    for n in range(40):
        judge.take(row("both", n * S // 10, 12.4, 9.1))
        clock.now_s += 0.1
        judge.review()
    calm = len(made)
    assert 3 <= calm <= 7  # some first labels, then one a second
    judge.take(Event(4 * S, EventKind.TAP))
    judge.review()
    clock.now_s += 0.26
    judge.review()
    assert len(made) == calm + 1
    gone_s = clock.now_s
    while judge.review().spans[-1].kind is SpanKind.RUNNING:
        n += 1
        judge.take(row("both", n * S // 10, 12.4, 0.0))
        clock.now_s += 0.1
    assert clock.now_s - gone_s < 0.9  # a quarter of a second for events that come late, too


def test_a_reviewer_that_fails_while_somebody_looks_is_told_by_the_bus(tmp_path, monkeypatch):
    judge = Judge(about(BOTH), tmp_path)
    judge.take(row("both", 0, 12.4, 9.1))
    before = judge.review()
    judge.take(row("both", S, 12.4, 9.1))

    def fail(_):
        raise ArithmeticError("broken on purpose")

    monkeypatch.setattr(Reviewer, "live", fail)
    monkeypatch.setattr(judging, "_SNAPSHOT_PERIOD_S", 0.0)
    monkeypatch.setattr(judging, "_CALM_PERIOD_S", 0.0)
    assert judge.review() is before
    with pytest.raises(ArithmeticError, match="on purpose"):
        judge.tick(0)
    judge.tick(0)  # once
    judge.take(row("both", 2 * S, 12.4, 9.1))
    assert judge.review() is before
