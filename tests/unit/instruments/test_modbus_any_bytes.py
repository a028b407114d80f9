"""Answers of a Modbus device among any bytes, cut anywhere: the same in every way."""

import itertools

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st
from pymodbus.framer import FramerRTU

from meterlog.instruments import ModbusDecoder, ModbusRequests
from meterlog.instruments.modbus_frames import LONGEST_FRAME
from meterlog.model import Channel, Quantity
from meterlog.profile import ModbusTalk, Register

TALK = ModbusTalk(1, 3, registers=(Register(0), Register(1, "float32"), Register(9)))
ONE = ModbusTalk(1, 4, registers=(Register(0x0200),))


def channels(talk: ModbusTalk) -> tuple[Channel, ...]:
    return tuple(Channel(f"c{at}", Quantity.VOLTAGE) for at in range(len(talk.registers)))


def sealed(body: bytes) -> bytes:
    return body + FramerRTU.compute_CRC(body).to_bytes(2, "big")


FIRST = sealed(bytes.fromhex("010306000C41480000"))
SECOND = sealed(bytes.fromhex("0103020005"))
FRAMES = [
    FIRST,
    SECOND,
    sealed(bytes.fromhex("018302")),
    sealed(bytes.fromhex("018306")),
    sealed(bytes.fromhex("0104020007")),
    sealed(bytes.fromhex("018401")),
    *ModbusRequests(TALK).frames,
    *ModbusRequests(ONE).frames,
]
PIECES = st.one_of(
    st.sampled_from(FRAMES),
    st.sampled_from(FRAMES).flatmap(lambda one: st.integers(0, 12).map(lambda n: one[:n])),
    st.sampled_from(FRAMES).flatmap(lambda one: st.integers(0, 12).map(lambda n: one[n:])),
    st.binary(max_size=12),
    st.binary(min_size=200, max_size=600),
)
BYTES = st.lists(PIECES, max_size=12).map(b"".join)


def run(talk: ModbusTalk, pieces: list[bytes]):
    decoder = ModbusDecoder(talk, channels(talk))
    values, flags, remarks, rows = [], [], [], 0
    for piece in pieces:
        readings = decoder.feed(piece)
        assert all(0 <= remark.row < len(readings) for remark in readings.remarks)
        assert len(decoder._begun) < LONGEST_FRAME
        remarks += [(remark.row + rows, remark.kind, remark.text) for remark in readings.remarks]
        rows += len(readings)
        values.append(readings.values)
        flags.append(readings.flags)
    end = (decoder.refused, decoder.last_refused, decoder.complete_answers)
    return np.concatenate(values), np.concatenate(flags), remarks, end


@given(
    data=BYTES,
    places=st.lists(st.integers(0, 10**6), max_size=6),
    talk=st.sampled_from([TALK, ONE]),
)
@settings(max_examples=200)
def test_nothing_depends_on_how_the_bytes_are_cut(data, places, talk):
    edges = [0, *sorted(place % (len(data) + 1) for place in places), len(data)]
    whole = run(talk, [data])
    for pieces in (
        [data[start:stop] for start, stop in itertools.pairwise(edges)],
        [data[place : place + 1] for place in range(len(data))] or [b""],
    ):
        parts = run(talk, pieces)
        np.testing.assert_array_equal(whole[0], parts[0])
        np.testing.assert_array_equal(whole[1], parts[1])
        assert whole[2:] == parts[2:]


@given(data=BYTES)
def test_after_any_bytes_the_next_questions_are_answered(data):
    decoder = ModbusDecoder(TALK, channels(TALK))
    decoder.feed(data)
    readings = []
    for index, frame in enumerate((FIRST, SECOND)):
        decoder.expect(index)
        readings.append(decoder.feed(frame))
    assert readings[1].values.tolist() == [[12.0, 12.5, 5.0]]


@given(data=BYTES)
def test_after_any_bytes_the_second_answer_is_read_even_without_a_question(data):
    decoder = ModbusDecoder(ONE, channels(ONE))
    decoder.feed(data)
    answers = decoder.complete_answers
    decoder.feed(FRAMES[4])
    decoder.feed(FRAMES[4])
    assert decoder.complete_answers > answers


def test_junk_for_ever_fills_no_memory():
    decoder = ModbusDecoder(TALK, channels(TALK))
    for _ in range(100):
        decoder.feed(FIRST[:-1] * 50)
        assert len(decoder._begun) < LONGEST_FRAME
        assert len(decoder._stray._begun) <= LONGEST_FRAME
    assert decoder.refused > 1
