"""Blocks of samples in a stream: whole, broken, of unknown length, with text between them."""

import struct

import numpy as np
import pytest

from meterlog.instruments import BlockDecoder, block_stream
from meterlog.model import Channel, Flag, Quantity
from meterlog.profile import BlockLayout

AB = (Channel("volts", Quantity.VOLTAGE), Channel("amps", Quantity.CURRENT))
ROWS = [[1.5, -2.0], [10.0, 0.25], [13.0, 10.0]]


def payload(rows=ROWS, form: str = ">f") -> bytes:
    return b"".join(struct.pack(form[0] + 2 * form[1], *row) for row in rows)


def definite(data: bytes) -> bytes:
    length = str(len(data)).encode()
    return b"#" + str(len(length)).encode() + length + data


def decoder(**layout) -> BlockDecoder:
    return BlockDecoder(BlockLayout(**layout), AB)


@pytest.mark.parametrize(
    ("number", "byte_order", "form"),
    [
        ("real32", "normal", ">f"),
        ("real32", "swapped", "<f"),
        ("real64", "normal", ">d"),
        ("real64", "swapped", "<d"),
    ],
)
def test_rows_follow_each_other_and_channels_within_a_row(number, byte_order, form):
    machine = decoder(number=number, byte_order=byte_order)
    readings = machine.feed(definite(payload(form=form)) + b"\n")
    assert readings.values.tolist() == ROWS
    assert readings.flags.tolist() == [[0, 0]] * 3
    assert readings.own_time_s is None
    assert machine.refused == 0


@pytest.mark.parametrize(
    ("byte_order", "form"), [("normal", ">h"), ("swapped", "<h")], ids=["normal", "swapped"]
)
def test_whole_numbers_have_a_sign(byte_order, form):
    rows = [[1, -1], [32767, -32768]]
    machine = decoder(number="int16", byte_order=byte_order)
    assert machine.feed(definite(payload(rows, form))).values.tolist() == rows


@pytest.mark.parametrize("between", [b"\n", b"\r\n", b";", b"", b" ", b",", b";\n\n"])
def test_several_blocks_come_one_after_the_other(between):
    machine = decoder()
    blocks = [definite(payload([row])) for row in ROWS]
    readings = machine.feed(between.join(blocks) + b"\n")
    assert readings.values.tolist() == ROWS
    assert readings.values.flags.f_contiguous
    assert readings.flags.flags.f_contiguous
    assert machine.refused == 0


def test_line_ends_and_hashes_within_a_block_are_samples():
    data = b"\n#15\r\n##"
    machine = decoder(number="int16")
    readings = machine.feed(definite(data) + b"\n")
    assert readings.values.ravel().tolist() == list(struct.unpack(">4h", data))
    assert machine.refused == 0


def test_an_empty_block_is_no_row_and_no_fault():
    machine = decoder()
    assert len(machine.feed(b"#10\n")) == 0
    assert machine.feed(definite(payload())).values.tolist() == ROWS
    assert machine.refused == 0


def test_a_block_that_is_no_whole_number_of_rows_is_refused_whole():
    machine = decoder()
    broken = definite(payload()[:-4])
    readings = machine.feed(broken + b"\n" + definite(payload([ROWS[0]])) + b"\n")
    assert readings.values.tolist() == [ROWS[0]]
    assert machine.refused == 1
    assert machine.last_refused == broken


@pytest.mark.parametrize("text", [b'-113,"Undefined header"', b"1.5", b"#A", b"12,#", b"\xff\x00"])
def test_text_between_blocks_costs_its_own_line_only(text):
    machine = decoder()
    block = definite(payload())
    readings = machine.feed(block + b"\n" + text + b"\r\n" + block + b"\n")
    assert readings.values.tolist() == ROWS * 2
    assert machine.refused == 1
    assert machine.last_refused == text


def test_a_block_may_follow_a_refused_field():
    machine = decoder()
    assert len(machine.feed(b'0,"No error";' + definite(payload()) + b"\n")) == 3
    assert (machine.refused, machine.last_refused) == (1, b'0,"No error"')


def test_a_hash_within_text_begins_no_block():
    machine = decoder()
    assert len(machine.feed(b"input #15 is open\n" + definite(payload()) + b"\n")) == 3
    assert machine.refused == 1


@pytest.mark.parametrize("size", [2**26 + 8, 99_999_999, 999_999_999])
def test_a_length_beyond_belief_swallows_its_own_line_only(size):
    digits = str(size).encode()
    machine = decoder()
    machine.feed(b"#" + str(len(digits)).encode() + digits + b"xyz\n")
    assert machine.feed(definite(payload()) + b"\n").values.tolist() == ROWS
    assert machine.refused == 1


class TestIndefinite:
    def test_it_ends_after_the_rows_that_the_layout_says(self):
        machine = decoder(rows=3)
        readings = machine.feed(b"#0" + payload() + b"\n#0" + payload() + b"\n")
        assert readings.values.tolist() == ROWS * 2
        assert machine.refused == 0

    @pytest.mark.parametrize("end", [b"\n", b"\r\n", b""])
    def test_of_unknown_length_it_ends_with_the_message(self, end):
        machine = decoder()
        assert len(machine.feed(b"#0" + payload() + end)) == 0
        assert machine.message_end().values.tolist() == ROWS
        assert machine.feed(definite(payload())).values.tolist() == ROWS
        assert machine.refused == 0

    def test_a_sample_that_looks_like_a_line_end_is_kept(self):
        data = payload(ROWS[:2]) + struct.pack(">f", 1.0) + b"\x41\x0a\x0a\x0a"
        machine = decoder()
        machine.feed(b"#0" + data + b"\n")
        assert machine.message_end().values.tolist()[-1] == [
            1.0,
            struct.unpack(">f", b"\x41\x0a\x0a\x0a")[0],
        ]

    def test_one_that_ends_too_early_is_refused(self):
        machine = decoder(rows=4)
        machine.feed(b"#0" + payload())
        assert len(machine.message_end()) == 0
        assert machine.refused == 1
        assert machine.feed(definite(payload())).values.tolist() == ROWS

    def test_one_of_unknown_length_that_is_no_whole_number_of_rows_is_refused(self):
        machine = decoder()
        machine.feed(b"#0" + payload()[:-3])
        assert len(machine.message_end()) == 0
        assert machine.refused == 1

    def test_one_without_end_does_not_fill_the_memory(self, monkeypatch):
        monkeypatch.setattr(block_stream, "LONGEST_BLOCK", 10_000)
        machine = decoder()
        machine.feed(b"#0")
        for _ in range(40):
            machine.feed(b"7" * 1_000)
            assert len(machine._payload) <= 10_000
        assert machine.refused == 1
        assert machine.feed(b"\n" + definite(payload())).values.tolist() == ROWS
        assert machine.refused == 1


def test_a_pause_ends_a_line_of_text_but_no_block_of_definite_length():
    machine = decoder()
    machine.feed(b"nonsense")
    machine.message_end()
    assert machine.refused == 1
    block = definite(payload())
    machine.feed(block[:9])
    assert len(machine.message_end()) == 0
    assert machine.feed(block[9:]).values.tolist() == ROWS
    assert machine.refused == 1


def test_a_front_of_a_block_that_pauses_is_text():
    machine = decoder()
    machine.feed(b"#3")
    machine.message_end()
    assert (machine.refused, machine.last_refused) == (1, b"#3")


def test_a_line_without_end_does_not_fill_the_memory():
    machine = decoder()
    for _ in range(40):
        machine.feed(b"7" * 10_000)
        assert len(machine._text) <= block_stream.LONGEST_TEXT
    assert machine.refused == 1
    assert machine.feed(b"\n" + definite(payload())).values.tolist() == ROWS
    assert machine.refused == 1


class TestSampleClock:
    def test_the_own_time_is_the_running_number_of_the_row(self):
        machine = decoder(sample_s=0.5)
        first = machine.feed(definite(payload()))
        second = machine.feed(definite(payload()) + b"\n" + definite(payload()))
        assert first.own_time_s.tolist() == [0.0, 0.5, 1.0]
        assert second.own_time_s.tolist() == [1.5, 2.0, 2.5, 3.0, 3.5, 4.0]

    def test_it_does_not_drift(self):
        machine = decoder(number="int16", sample_s=0.0001)
        rows = np.zeros((100_000, 2), ">i2").tobytes()
        for _ in range(3):
            readings = machine.feed(definite(rows))
        assert readings.own_time_s[-1] == 299_999 * 0.0001

    def test_a_restart_begins_anew_and_forgets_the_block_that_had_begun(self):
        machine = decoder(sample_s=0.5)
        machine.feed(definite(payload()) + b"#3999ab")
        machine.restart()
        readings = machine.feed(definite(payload()))
        assert readings.own_time_s.tolist() == [0.0, 0.5, 1.0]
        assert readings.values.tolist() == ROWS

    def test_there_are_times_even_where_there_are_no_rows(self):
        assert decoder(sample_s=0.5).feed(b"").own_time_s.tolist() == []


@pytest.mark.parametrize(
    ("number", "form", "overload"),
    [("int16", ">h", (32767.0,)), ("real32", ">f", (0.1,)), ("real64", ">d", (0.1,))],
)
def test_the_layouts_own_overload_is_flagged(number, form, overload):
    machine = decoder(number=number, overload=overload)
    value = 32767 if form == ">h" else 0.1
    readings = machine.feed(definite(payload([[1, value], [value, 2]], form)))
    flags = [[0, int(Flag.OVERLOAD)], [int(Flag.OVERLOAD), 0]]
    assert readings.flags.tolist() == flags
    assert np.isnan(readings.values).tolist() == [[False, True], [True, False]]


def test_an_overload_that_16_bits_can_not_hold_is_no_fault():
    machine = decoder(number="int16", overload=(1e38, 0.5, -40_000.0))
    assert machine.feed(definite(payload([[0, 1]], ">h"))).flags.tolist() == [[0, 0]]
