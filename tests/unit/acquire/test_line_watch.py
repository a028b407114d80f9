"""A wrong line speed and lost bytes are said once, and not on a line that is well."""

from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest

from meterlog.acquire.condition import Topic
from meterlog.acquire.line_watch import LineWatch
from meterlog.acquire.link_words import silent_words
from meterlog.acquire.losses import LossWatch
from meterlog.acquire.talk.conversation import Heard
from meterlog.acquire.wrong_speed import SpeedWatch
from meterlog.instruments import LineCounts, Readings
from meterlog.profile import load_meter

PROFILE = load_meter("line-logger")
WRONG = bytes([0x00, 0x80, 0xF8, 0xFF, 0xE0, 0x66, 0x00, 0xFE])
MS = 1_000_000


def listen(watch: SpeedWatch, pieces, start_ms=0, every_ms=100):
    """Give what is said of ``pieces`` = (bytes, readings), one each ``every_ms``, with its time."""
    said = []
    for number, (data, readings) in enumerate(pieces):
        at_ms = start_ms + number * every_ms
        words = watch.heard(data, readings, b"", at_ms * MS)
        if words:
            said.append((at_ms, words))
    return said


def test_bytes_that_nobody_understands_for_a_second_are_a_wrong_speed_said_once():
    ((at_ms, words),) = listen(SpeedWatch(PROFILE), [(WRONG, 0)] * 60)
    assert 1_000 <= at_ms <= 1_200
    assert PROFILE.link.short in words
    assert "line speed is probably not" in words
    assert "meterlog ports --ask" in words


def test_few_bytes_are_waited_for_however_long_it_takes():
    watch = SpeedWatch(PROFILE)
    assert not listen(watch, [(b"\xff", 0)] * 63)
    ((at_ms, _),) = listen(watch, [(b"\xff", 0)] * 5, 6_300)
    assert at_ms == 6_300


def test_it_is_said_again_only_after_readings_have_come_in_between():
    watch = SpeedWatch(PROFILE)
    assert len(listen(watch, [(WRONG, 0)] * 40)) == 1
    assert not listen(watch, [(b"1,1,1\n", 1)], 4_000)
    assert len(listen(watch, [(WRONG, 0)] * 40, 5_000)) == 1


def test_garbage_after_a_plug_was_put_in_and_half_lines_are_no_wrong_speed():
    watch = SpeedWatch(PROFILE)
    burst = [(WRONG * 200, 0), (WRONG * 200, 0), (b"2.4,1", 0), (b"1,1,1\n", 1)]
    assert not listen(watch, burst * 30)
    assert not listen(watch, [(WRONG * 200, 0)] * 2 + [(b"", 0)] * 300)
    assert not listen(watch, [(WRONG, 0)] * 9 + [(b"1,1,1\n", 1)] + [(WRONG, 0)] * 9, 40_000)


def test_a_few_bursts_are_no_wrong_speed_however_long_they_are():
    assert not listen(SpeedWatch(PROFILE), [(WRONG * 200, 0)] * 3, every_ms=900)
    assert len(listen(SpeedWatch(PROFILE), [(WRONG * 200, 0)] * 4, every_ms=900)) == 1


def test_what_came_before_a_loss_does_not_count_after_it():
    talk = SimpleNamespace(watched=True, last_refused=b"", port=None)
    watch = LineWatch(PROFILE, talk)
    nothing = Readings(np.empty((0, 3)), np.empty((0, 3), np.uint8))

    def told(numbers) -> int:
        return sum(len(watch.check(Heard(WRONG, k * 100 * MS, nothing))) for k in numbers)

    assert told(range(9)) == 0
    watch.lost_port()
    assert told(range(9, 18)) == 0
    assert told(range(18, 40)) == 1
    watch.lost_port()
    assert told(range(40, 60)) == 1


def test_text_of_another_kind_is_not_called_a_wrong_speed():
    watch = SpeedWatch(PROFILE)
    said = [
        watch.heard(b"volts 12.43 amps 3\r\n", 0, b"volts 12.43 amps 3", k * 100 * MS)
        for k in range(30)
    ]
    (words,) = [words for words in said if words]
    assert words.startswith("text comes, but not as the profile says: 'volts 12.43 amps 3'")


def test_a_long_head_of_comments_is_no_reason_to_say_anything():
    assert not listen(SpeedWatch(PROFILE), [(b"# remarks of the maker\n", 0)] * 40)


def test_missing_stop_bits_alone_tell_it_where_any_byte_may_come():
    watch = SpeedWatch(replace(PROFILE, dialect="modbus-rtu"))
    assert not listen(watch, [(WRONG, 0)] * 40)
    watch.restart()
    watch.counted(LineCounts(framing=100))
    ((_, words),) = listen(watch, [(WRONG, 0)] * 40)
    assert "line speed is probably not" in words


def test_old_framing_errors_do_not_count_against_what_comes_now():
    watch = SpeedWatch(replace(PROFILE, dialect="modbus-rtu"))
    watch.counted(LineCounts(framing=100))
    watch.restart()
    assert not listen(watch, [(WRONG, 0)] * 40)
    watch.counted(LineCounts(framing=0))  # opened anew
    watch.restart()
    watch.counted(LineCounts(framing=50))
    assert len(listen(watch, [(WRONG, 0)] * 40)) == 1


def test_each_loss_is_told_once_with_its_count_and_added_up():
    watch = LossWatch()
    assert watch.check(LineCounts()) == ""
    said = watch.check(LineCounts(lost=12))
    assert said.startswith("12 byte(s) lost")
    assert watch.check(LineCounts(lost=12)) == ""
    said = watch.check(LineCounts(framing=2, parity=1, lost=13))
    assert said.startswith("1 byte(s) lost")
    assert "3 byte(s) damaged" in said
    assert watch.lost == 16
    watch.reopened()
    assert watch.check(LineCounts(lost=2)).startswith("2 byte(s) lost")
    assert watch.lost == 18


def test_the_counts_are_looked_at_about_once_a_second_and_only_where_there_are_some():
    asked = []

    def counts() -> LineCounts:
        asked.append(1)
        return LineCounts(lost=3)

    talk = SimpleNamespace(watched=True, last_refused=b"", port=SimpleNamespace(line_counts=counts))
    watch = LineWatch(PROFILE, talk)
    nothing = Readings(np.empty((0, 3)), np.empty((0, 3), np.uint8))
    said = [watch.check(Heard(b"", k * 50 * MS, nothing)) for k in range(41)]
    assert len(asked) == 3
    assert [one for one in said if one] == [
        [(Topic.LINE, "3 byte(s) lost: they came faster than they were fetched")]
    ]
    assert watch.lost == 3
    talk.port = None
    assert watch.check(Heard(b"", 9_000 * MS, nothing)) == []


@pytest.mark.parametrize(
    ("off_s", "cure", "words"),
    [
        (0.0, "", ""),
        (900.0, "", " (switched itself off? it does after 15 min)"),
        (
            900.0,
            "Hold SEL while switching on.",
            " (switched itself off? it does after 15 min: Hold SEL while switching on)",
        ),
        (45.0, "", " (switched itself off? it does after 45 s)"),
    ],
)
def test_silence_is_said_with_what_is_known_of_the_meter(off_s, cure, words):
    profile = replace(PROFILE, power_off_s=off_s, power_off_cure=cure)
    said = silent_words("silent since 12.300 s", 1.24, profile)
    assert said == f"silent since 12.300 s: no reading for 1.2 s{words}"
