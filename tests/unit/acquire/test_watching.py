"""Silence, pace and refused lines: what is reported, and when."""

from meterlog.acquire.rate import RateCheck
from meterlog.acquire.refusals import RefusalReport
from meterlog.acquire.silence import SilenceWatch

MS = 1_000_000


def test_three_intervals_without_a_reading_are_silence():
    watch = SilenceWatch(0.2)
    watch.begin(1_000 * MS)
    assert watch.check(1_599 * MS) == ""
    assert not watch.row_due(1_599 * MS)
    assert watch.check(1_600 * MS) == "silent since 1.000 s"
    assert watch.check(1_700 * MS) == ""
    assert watch.silent


def test_a_fast_instrument_is_given_a_quarter_of_a_second():
    watch = SilenceWatch(0.001)
    watch.begin(0)
    assert watch.check(249 * MS) == ""
    assert watch.check(250 * MS)


def test_rows_come_at_once_and_then_one_an_interval_but_ten_a_second_at_most():
    for interval_s, every_ms in ((0.2, 200), (0.001, 100)):
        watch = SilenceWatch(interval_s)
        watch.begin(0)
        watch.check(1_000 * MS)
        due = [ms for ms in range(1_000, 1_500) if watch.row_due(ms * MS)]
        assert due == list(range(1_000, 1_500, every_ms))


def test_the_end_of_a_silence_is_told_once_with_its_length():
    watch = SilenceWatch(0.2)
    watch.begin(0)
    assert watch.heard(500 * MS) == ""
    watch.check(1_200 * MS)
    assert watch.heard(2_000 * MS) == "back after 1.500 s"
    assert watch.heard(2_100 * MS) == ""
    assert not watch.row_due(2_200 * MS)


def test_a_lost_port_is_silent_at_once_and_not_told_twice():
    watch = SilenceWatch(10.0)
    watch.begin(0)
    watch.give_up(100 * MS)
    assert watch.row_due(100 * MS)
    assert watch.check(60_000 * MS) == ""


def pace(check: RateCheck, gap_ms: int, lumps: int, each: int = 1, start_ms: int = 0) -> list[str]:
    return [check.arrived(each, (start_ms + gap_ms * lump) * MS) for lump in range(lumps)]


def test_a_pace_more_than_twice_too_slow_is_told_once():
    said = pace(RateCheck(0.1), 250, 40)
    assert [bool(text) for text in said].count(True) == 1
    told = next(text for text in said if text)
    assert "every 0.25 s" in told
    assert "interval_s = 0.1" in told


def test_lumps_are_no_slow_pace():
    assert not any(pace(RateCheck(0.1), 500, 40, each=5))


def test_the_usual_time_between_lumps_is_learnt_and_one_long_pause_is_not_it():
    check = RateCheck(0.02)
    assert check.gap_s is None
    pace(check, 500, 3, each=25)
    assert check.gap_s is None
    pace(check, 500, 10, each=25, start_ms=60_000)
    assert check.gap_s == 0.5


def test_a_pace_at_most_twice_too_slow_is_not_told():
    assert not any(pace(RateCheck(0.1), 190, 40))


def test_one_long_pause_is_no_slow_pace():
    check = RateCheck(0.1)
    said = pace(check, 100, 5) + pace(check, 100, 20, start_ms=60_000)
    assert not any(said)


def test_the_time_without_a_port_does_not_count():
    check = RateCheck(0.1)
    check.arrived(1, 0)
    for turn in range(1, 20):
        check.restart()
        check.arrived(1, turn * 10_000 * MS)
        assert check.arrived(1, turn * 10_000 * MS + 100 * MS) == ""


def test_refused_lines_are_told_at_once_and_then_put_together_once_a_second():
    report = RefusalReport()
    assert report.check(0, b"", 0) == ""
    assert report.check(2, b"12.\xff\n", 10 * MS) == r"2 '12.\xff\n'"
    assert report.check(5, b"x", 1_009 * MS) == ""
    assert report.check(6, b"y", 1_010 * MS) == "4 'y'"
    assert report.check(6, b"y", 9_000 * MS) == ""


def test_what_is_left_is_told_at_the_end():
    report = RefusalReport()
    report.check(1, b"x", 0)
    assert report.check(3, b"z", 1 * MS, last=True) == "2 'z'"
