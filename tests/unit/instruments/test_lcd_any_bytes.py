"""Frames of a display among any bytes, cut anywhere: the same readings, refusals and remarks."""

import itertools

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.instruments import LcdFrameDecoder
from meterlog.model import Channel, Quantity

VOLTS = (Channel("volts", Quantity.VOLTAGE),)
GOOD = bytes.fromhex("17203545 5B697F82 97A0B0C0 D4E0")  # 12.34 V DC
FRAMES = [
    GOOD,
    bytes.fromhex("1722354B5E677E8195A0B0C0D4E0"),  # segments that are no digit
    bytes.fromhex("172F3D4B5E677E8195A0B0C0D8E0"),  # -0.567 A DC
    bytes.fromhex("17273D4B 5E677E81 95A0B0C0 D4E0"),  # 0.567 V: another range
    bytes.fromhex("17203545 5B697F82 97A0B0C1 D5E0"),  # held, battery low
    bytes.fromhex("17203047 5D6E7880 90A0B0C0 D4E0"),  # overload
]
PIECES = st.one_of(
    st.sampled_from(FRAMES),
    st.sampled_from(FRAMES).flatmap(lambda one: st.integers(0, 14).map(lambda n: one[:n])),
    st.sampled_from(FRAMES).flatmap(lambda one: st.integers(0, 14).map(lambda n: one[n:])),
    st.binary(max_size=20),
)
BYTES = st.lists(PIECES, max_size=12).map(b"".join)


def run(pieces: list[bytes]):
    decoder = LcdFrameDecoder(VOLTS)
    values, flags, remarks, rows = [], [], [], 0
    for piece in pieces:
        readings = decoder.feed(piece)
        assert all(0 <= remark.row < len(readings) for remark in readings.remarks)
        remarks += [(remark.row + rows, remark.kind, remark.text) for remark in readings.remarks]
        rows += len(readings)
        values.append(readings.values)
        flags.append(readings.flags)
    end = (decoder.refused, decoder.last_refused, decoder.range_step)
    return np.concatenate(values), np.concatenate(flags), remarks, end


@given(data=BYTES, places=st.lists(st.integers(0, 10**6), max_size=6))
@settings(max_examples=200)
def test_nothing_depends_on_how_the_bytes_are_cut(data, places):
    edges = [0, *sorted(place % (len(data) + 1) for place in places), len(data)]
    whole = run([data])
    for pieces in (
        [data[start:stop] for start, stop in itertools.pairwise(edges)],
        [data[place : place + 1] for place in range(len(data))] or [b""],
    ):
        parts = run(pieces)
        np.testing.assert_array_equal(whole[0], parts[0])
        np.testing.assert_array_equal(whole[1], parts[1])
        assert whole[2:] == parts[2:]


@given(data=BYTES)
def test_after_any_bytes_the_very_next_frame_is_read(data):
    decoder = LcdFrameDecoder(VOLTS)
    decoder.feed(data)
    readings = decoder.feed(GOOD)
    assert readings.values.tolist()[-1:] == [[12.34]]


def test_a_front_that_is_repeated_for_ever_fills_no_memory():
    decoder = LcdFrameDecoder(VOLTS)
    for _ in range(200):
        decoder.feed(GOOD[:13] * 100)
        assert len(decoder._begun) < 14
    assert decoder.refused > 0
    assert len(decoder.last_refused) <= 14
