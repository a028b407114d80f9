"""A voltage typed by hand beside a current that a meter sends: how long it stands."""

import numpy as np
import pytest

from meterlog.analysis import Reviewer
from meterlog.analysis.align import LATE_NS, Aligner
from meterlog.model import (
    Accuracy,
    Block,
    Channel,
    Event,
    EventKind,
    FindingKind,
    Flag,
    Instrument,
    Limits,
    Quantity,
    Role,
)

SECOND = 1_000_000_000
CLAMP = Instrument(
    "clamp",
    "clamp",
    "invented",
    (Channel("amps", Quantity.CURRENT, Role.MOTOR_CURRENT, interval_s=0.5),),
)


def hand(role=Role.MOTOR_FEED, interval_s=2.0, key="hand"):
    accuracy = Accuracy(0.5, 2, 0.01)
    channel = Channel("shown", role.quantity, role, interval_s=interval_s, accuracy=accuracy)
    return Instrument(key, key, "typed:", (channel,), typed=True)


def block(key, times_s, values, flag=Flag.OK):
    t_ns = np.round(np.array(times_s, float) * SECOND).astype(np.int64)
    column = np.array(values, float).reshape(-1, 1)
    return Block(key, t_ns, column, np.full(column.shape, int(flag), np.uint8))


def typed(at_s, value, key="hand"):
    return block(key, [at_s], [value], Flag.TYPED)


def live(start_s, end_s, amps):
    times = np.arange(start_s, end_s, 0.5)
    return block("clamp", times, np.full(len(times), amps))


def rows_of(aligner, items):
    given = [aligner.feed(item) for item in items] + [aligner.finish()]
    rows = [row for row in given if row is not None]
    t_s = np.concatenate([row.t_ns for row in rows]) / SECOND
    feed = np.concatenate([row.feed for row in rows])
    return t_s, feed, rows


def test_it_stands_three_intervals_from_when_it_was_typed_and_never_before():
    items = [live(0, 3, 5.0), typed(3.1, 12.4), live(3.5, 20, 5.0)]
    t_s, feed, _ = rows_of(Aligner([CLAMP, hand()]), items)
    known = t_s[np.isfinite(feed)]
    assert (known.min(), known.max()) == (3.1, 9.0)
    assert set(feed[np.isfinite(feed)]) == {12.4}
    assert (np.diff(t_s) > 0).all()


def test_how_long_it_stands_does_not_depend_on_when_the_next_is_typed():
    alone = [live(0, 3, 5.0), typed(3.1, 12.4), live(3.5, 20, 5.0)]
    soon = [*alone[:2], live(3.5, 8.5, 5.0), typed(8.1, 12.0), live(8.5, 20, 5.0)]
    late = [*alone[:2], live(3.5, 15, 5.0), typed(15.1, 12.0), live(15.5, 20, 5.0)]
    early = [typed(3.1, 12.4), typed(15.1, 12.0), live(0, 20, 5.0)]
    for items, until in ((alone, 9.0), (late, 9.0), (early, 9.0), (soon, 8.0)):
        t_s, feed, _ = rows_of(Aligner([CLAMP, hand()]), items)
        assert t_s[feed == 12.4].max() == until


def test_nobody_waits_for_what_is_typed():
    aligner = Aligner([CLAMP, hand()])
    given = [aligner.feed(live(n, n + 1, 5.0)) for n in range(10)]
    newest = max(int(row.t_ns[-1]) for row in given if row is not None)
    assert newest >= 9 * SECOND - LATE_NS


def test_what_comes_a_little_late_finds_its_place_and_what_comes_later_is_not_lost():
    aligner = Aligner([CLAMP, hand()])
    t_s, feed, _ = rows_of(aligner, [live(0, 10, 5.0), typed(9.4, 12.4), live(10, 12, 5.0)])
    assert 9.4 in t_s
    assert (np.diff(t_s) > 0).all()
    aligner = Aligner([CLAMP, hand()])
    t_s, feed, _ = rows_of(aligner, [live(0, 10, 5.0), typed(2.0, 12.4), live(10, 12, 5.0)])
    assert (np.diff(t_s) > 0).all()
    assert (feed == 12.4).any()


def test_only_the_instant_of_typing_counts_as_read():
    items = [live(0, 3, 5.0), typed(3.1, 12.4), live(3.5, 6, 5.0)]
    _, _, rows = rows_of(Aligner([CLAMP, hand()]), items)
    new = np.concatenate([row.volts_new for row in rows])
    amps_new = np.concatenate([row.amps_new for row in rows])
    t_s = np.concatenate([row.t_ns for row in rows]) / SECOND
    assert t_s[new].tolist() == [3.1]
    assert t_s[~amps_new].tolist() == [3.1]


def test_two_meters_typed_in_turn_are_judged_as_they_come():
    amps = hand(Role.MOTOR_CURRENT, 10.0, "amps")
    volts = hand(Role.MOTOR_FEED, 10.0, "volts")
    aligner = Aligner([amps, volts])
    items = [
        typed(1, 5.0, "amps"), typed(4, 5.1, "amps"), typed(5, 12.0, "volts"),
        typed(9, 4.9, "amps"), typed(12, 5.0, "amps"),
    ]  # fmt: skip
    live_rows = [aligner.feed(item) for item in items]
    seen = [int(t) // SECOND for row in live_rows if row is not None for t in row.t_ns]
    assert seen == [1, 4, 5, 9]
    rest = aligner.finish()
    assert rest.t_ns.tolist() == [12 * SECOND]
    assert rest.feed.tolist() == [12.0]


def _reviewed(instruments, items):
    reviewer = Reviewer(instruments, Limits())
    for item in items:
        reviewer.feed(item)
    return reviewer.finish()


def _dead_items():
    """The current is gone from 10 s to 20 s; 12.5 V are typed at 14 s."""
    return [
        Event(0, EventKind.SPEED, "4"),
        live(0, 9, 6.0), typed(9.1, 12.3), live(9.5, 10, 6.0),
        live(10, 14, 0.0), typed(14.1, 12.5), live(14.5, 20, 0.0), live(20, 25, 6.0),
    ]  # fmt: skip


def test_a_finding_that_rests_on_a_typed_voltage_says_so():
    review = _reviewed([CLAMP, hand()], _dead_items())
    gone = [one for one in review.findings if one.kind is not FindingKind.STEP_CURRENT]
    assert gone
    assert all("typed by hand" not in one.statement for one in gone if one.kind == "no-current")
    back = hand(Role.MOTOR_RETURN, 2.0, "back")
    items = _dead_items()
    items[3:3] = [typed(9.2, 0.1, "back")]
    items[7:7] = [typed(14.2, 0.1, "back")]
    review = _reviewed([CLAMP, hand(), back], sorted(items, key=_first_ns))
    dead = [one for one in review.findings if one.kind is FindingKind.DEAD]
    assert dead
    assert "(typed by hand: motor-feed, motor-return).".replace("-", " ") in dead[0].statement
    assert any("motor feed (hand), motor return (back)" in note for note in review.notes)
    assert review.shortest_visible_dropout_s is not None


def _first_ns(item):
    return item.t_ns if isinstance(item, Event) else int(item.t_ns[0])


def test_of_a_typed_current_nobody_claims_that_a_dropout_would_have_been_seen():
    amps = hand(Role.MOTOR_CURRENT, 10.0, "amps")
    items = [Event(0, EventKind.SPEED, "1"), *(typed(n, 5.0, "amps") for n in range(2, 30, 4))]
    review = _reviewed([amps], items)
    assert review.shortest_visible_dropout_s is None
    assert review.catch_chances == ()
    assert any("what it did from one reading to the next" in note for note in review.notes)
    (step,) = review.steps
    assert (step.n, step.mean_a) == (7, pytest.approx(5.0))


@pytest.mark.parametrize("size", [1, 3, 1000])
def test_the_review_does_not_depend_on_how_the_live_rows_were_cut(size):
    whole = _reviewed([CLAMP, hand()], _dead_items())
    cut = []
    for item in _dead_items():
        if isinstance(item, Event) or item.source != "clamp":
            cut.append(item)
            continue
        cut += [item.rows(k, min(k + size, len(item))) for k in range(0, len(item), size)]
    assert _reviewed([CLAMP, hand()], cut) == whole
