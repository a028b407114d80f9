from hypothesis import given
from hypothesis import strategies as st

from meterlog.window.outlook import WIDTHS_S, Outlook

SECOND = 1_000_000_000


@given(end=st.integers(0, 10**6).map(lambda ms: ms * 1_000_000), width=st.sampled_from(WIDTHS_S))
def test_while_following_the_newest_reading_is_in_sight(end, width):
    start_ns, end_ns = Outlook(width).stretch(end)
    assert 0 <= start_ns <= max(end, 0)
    assert end <= end_ns
    # No more than a jump's width stays empty once the stretch is full.
    if start_ns > 0:
        assert end_ns - end <= width * SECOND / 40 + 1


def test_while_following_the_stretch_stands_still_between_jumps():
    outlook = Outlook(40.0)
    starts = {outlook.stretch(100 * SECOND + step * 1_000_000)[0] for step in range(1, 1000)}
    assert len(starts) == 1


def test_looking_back_holds_still_while_readings_come_in():
    outlook = Outlook()
    outlook.show(5 * SECOND, 8 * SECOND)
    assert outlook.stretch(10 * SECOND) == outlook.stretch(500 * SECOND) == (5 * SECOND, 8 * SECOND)


def test_zooming_keeps_the_middle():
    outlook = Outlook()
    outlook.show(100 * SECOND, 130 * SECOND)
    outlook.zoom(1)
    start_ns, end_ns = outlook.stretch(0)
    assert (start_ns + end_ns) / 2 == 115 * SECOND
    assert end_ns - start_ns == 20 * SECOND
    outlook.zoom(-1)
    assert outlook.stretch(0) == (100 * SECOND, 130 * SECOND)


def test_zooming_ends_at_the_smallest_and_at_the_largest_width():
    outlook = Outlook()
    outlook.zoom(100)
    for _ in range(30):
        outlook.zoom(1)
    assert outlook.width_s == WIDTHS_S[0]
    for _ in range(30):
        outlook.zoom(-1)
    assert outlook.width_s == WIDTHS_S[-1]


def test_moving_stops_at_the_start():
    outlook = Outlook(10.0)
    outlook.show(4 * SECOND, 14 * SECOND)
    outlook.move(-0.25)
    assert outlook.stretch(0)[0] == 1_500_000_000
    outlook.move(-0.25)
    assert outlook.stretch(0)[0] == 0
