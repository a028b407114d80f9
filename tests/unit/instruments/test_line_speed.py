"""Wrong line speeds, by a model of an asynchronous receiver (start bit, eight data bits, stop bit).

The model is the textbook one: the receiver waits for the line to fall, then looks at the middle of
each of its own bits. Bytes whose stop bit is missing are given too, and counted, as a system does
that is not told to drop them.
"""

import itertools
import math
import random
from bisect import bisect_right

import pytest

from meterlog.instruments.line_speed import Doubt, doubt, foreign_share

LOGGER = [f"{12.4 + k / 100:.3f},{0.87 + k / 500:.3f},{4.9 + k / 50:.3f}\r\n" for k in range(12)]
HAND = ["+12.43 V DC\r\n", "+12.44 V DC\r\n", "+12.41 V DC\r\n", "-00.02 V DC\r\n"] * 3
TIMED = [f"{k * 20};{3.1 + k / 7:.4f}\n" for k in range(24)]
TEXTS = {"logger": LOGGER, "hand meter": HAND, "timed": TIMED}
SPEEDS = [1200, 2400, 4800, 9600, 19200, 38400, 57600, 115200]


def received(data: bytes, sent_at: int, read_at: int, gap_s: float = 0.0) -> tuple[bytes, int]:
    """Give what a receiver at ``read_at`` Bd makes of ``data`` sent at ``sent_at`` Bd.

    ``gap_s`` is the pause after each line end.
    """
    edges, levels = [0.0], [1]  # from this time on, this level
    t = 0.01
    for byte in data:
        for bit in [0, *(byte >> place & 1 for place in range(8)), 1]:
            if bit != levels[-1]:
                edges.append(t)
                levels.append(bit)
            t += 1.0 / sent_at
        t += gap_s if byte == 10 else 0.0

    def at(when: float) -> int:
        return levels[bisect_right(edges, when) - 1]

    out, bad, now = bytearray(), 0, 0.0
    while True:
        index = bisect_right(edges, now) - 1
        if levels[index]:
            index += 1
            if index == len(edges):
                return bytes(out), bad
            now = edges[index]
        bits = [at(now + (k + 1.5) / read_at) for k in range(9)]
        out.append(sum(bit << k for k, bit in enumerate(bits[:8])))
        bad += 1 - bits[8]
        now += 9.5 / read_at
        if not bits[8]:  # no stop bit: wait for the line to rise
            now = edges[bisect_right(edges, now)]


@pytest.mark.parametrize("speed", [1200, 9600, 115200])
def test_the_model_reads_what_was_sent_at_its_own_speed(speed):
    data = "".join(LOGGER).encode()
    assert received(data, speed, speed, 0.02) == (data, 0)
    assert received(data, speed, math.floor(speed * 1.02), 0.02) == (data, 0)


@pytest.mark.parametrize("text", TEXTS)
@pytest.mark.parametrize(("sent_at", "read_at"), list(itertools.permutations(SPEEDS, 2)))
def test_a_wrong_speed_is_told_from_the_bytes_alone(sent_at, read_at, text):
    data = "".join(TEXTS[text]).encode()
    heard, _ = received(data, sent_at, read_at, 0.02)
    assert heard
    assert doubt(heard, "ascii-lines") is Doubt.SPEED, heard[:60]


@pytest.mark.parametrize("read_at", [4800, 19200])
def test_the_systems_count_of_missing_stop_bits_tells_it_for_any_dialect(read_at):
    data = "".join(LOGGER).encode()
    heard, bad = received(data, 9600, read_at)
    if bad:
        assert doubt(heard, "modbus-rtu", bad / len(heard)) is Doubt.SPEED
    assert doubt(b"\x01\x03\x84\x0a\xff\x00\x80", "modbus-rtu") is None
    assert doubt(b"\x01\x03\x84\x0a\xff\x00\x80", "modbus-rtu", 0.2) is Doubt.SPEED
    assert doubt(b"12.43\r\n" * 9, "ascii-lines", 0.2) is Doubt.SPEED


@pytest.mark.parametrize("text", TEXTS)
@pytest.mark.parametrize("seed", range(4))
def test_text_with_noise_on_a_line_at_the_right_speed_is_text(text, seed):
    dice = random.Random(seed)
    data = bytearray("".join(TEXTS[text]).encode())
    for place in dice.sample(range(len(data)), len(data) // 25):
        data[place] = dice.randrange(256)
    assert doubt(bytes(data[5:-3]), "ascii-lines") is Doubt.TEXT
    assert doubt(bytes(data), "lcd-frames") is Doubt.TEXT


def test_frames_of_a_display_are_no_wrong_speed():
    frame = bytes((place << 4) | (place * 7) % 16 for place in range(1, 15))
    assert foreign_share(frame * 5) > 0.3
    assert doubt((frame * 5)[3:], "ascii-lines") is Doubt.FRAMES
    assert doubt((frame * 5)[3:], "lcd-frames") is None


@pytest.mark.parametrize("read_at", [1200, 4800, 9600])
def test_frames_at_a_wrong_speed_are_told(read_at):
    frame = bytes((place << 4) | (place * 7) % 16 for place in range(1, 15))
    heard, _ = received(frame * 20, 2400, read_at)
    assert doubt(heard, "lcd-frames") is Doubt.SPEED


def test_nothing_is_no_doubt():
    assert doubt(b"", "ascii-lines") is None
