"""Scheduled events go out once, in order, a little ahead of their time."""

from hypothesis import given
from hypothesis import strategies as st

from meterlog.model import Event, EventKind
from meterlog.work import Schedule
from meterlog.work.schedule import AHEAD_NS


def at(t_ns):
    return Event(t_ns, EventKind.SPEED, "1")


def test_an_event_goes_out_20_ms_ahead_and_not_before():
    schedule = Schedule([at(1_000_000_000)])
    assert schedule.due(980_000_000 - 1) == ()
    assert schedule.due(980_000_000) == (at(1_000_000_000),)
    assert schedule.due(2_000_000_000) == ()
    assert len(schedule) == 0


@given(
    st.lists(st.integers(0, 10**10), max_size=30),
    st.lists(st.integers(0, 10**10), min_size=1, max_size=30),
)
def test_each_event_goes_out_once_in_order_with_its_own_time(times, looks):
    schedule = Schedule([at(t) for t in times])
    given_out = []
    for now in sorted(looks):
        given_out += schedule.due(now)
        assert len(given_out) == sum(t <= now + AHEAD_NS for t in times)
    given_out += schedule.due(10**11)
    assert [event.t_ns for event in given_out] == sorted(times)
