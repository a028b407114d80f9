import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.evidence.ticks import ceiling, nice_step, tick_text, ticks_at, time_step, time_text

SPANS = st.floats(1e-6, 1e6)


@given(span=SPANS, most=st.integers(1, 30))
def test_a_step_is_one_two_or_five_and_gives_no_more_ticks_than_allowed(span, most):
    step = nice_step(span, most)
    assert float(f"{step:.6e}"[:8]) in {1.0, 2.0, 5.0}
    assert span / step <= most * (1 + 1e-6)
    # A step of half the size would have been too fine.
    assert span / (step * 0.39) > most * 0.99


@given(low=st.floats(-1000, 1000), span=SPANS, most=st.integers(1, 30))
def test_ticks_lie_within_and_leave_no_room_for_one_more(low, span, most):
    step = nice_step(span, most)
    ticks = ticks_at(low, low + span, step)
    slack = step * 1e-6 + abs(low) * 1e-9
    assert all(low - slack <= tick <= low + span + slack for tick in ticks)
    if ticks:
        assert ticks[0] - step < low + slack
        assert ticks[-1] + step > low + span - slack


@pytest.mark.parametrize(
    ("value", "step", "text"),
    [(0.1 + 0.2, 0.1, "0.3"), (-1e-17, 0.5, "0.0"), (15.0, 5.0, "15"), (-2.5, 0.5, "-2.5")],
)
def test_ticks_read_as_round_numbers(value, step, text):
    assert tick_text(value, step) == text


@pytest.mark.parametrize(
    ("span", "most", "step"),
    [
        (30, 6, 5.0),
        (60, 6, 10.0),
        (100, 6, 20.0),
        (300, 6, 60.0),
        (3600, 6, 600.0),
        (7200, 2, 3600.0),
    ],
)
def test_times_are_cut_into_seconds_then_whole_minutes(span, most, step):
    assert time_step(span, most) == step


@pytest.mark.parametrize(
    ("seconds", "step", "text"),
    [
        (5, 1, "5"),
        (0.25, 0.05, "0.25"),
        (65, 60, "1:05"),
        (3725, 60, "1:02:05"),
        (-60, 60, "-1:00"),
    ],
)
def test_times_read_as_seconds_or_as_a_clock(seconds, step, text):
    assert time_text(seconds, step) == text


@given(st.floats(1e-3, 1e5))
def test_the_top_of_an_axis_has_room_but_not_much(value):
    assert value <= ceiling(value) <= 2.0 * value
