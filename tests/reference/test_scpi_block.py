"""Arbitrary blocks against the forms of the standard.

Source: IEEE 488.2-1992, 8.7.9 (definite length) and 8.7.10 (indefinite length), clauses from
memory. The vectors are those of the open-source project j123b567/scpi-parser,
libscpi/test/test_parser.c and test_lexer_parser.c; byte orders: SCPI-1999, FORMat:BORDer.
"""

import struct

import pytest

from meterlog.instruments.ieee_block import BlockState, block_header, read_block


@pytest.mark.parametrize(
    ("data", "payload"),
    [
        (b"#11a", b"a"),
        (b"#12AB", b"AB"),
        (b"#13a\r\n", b"a\r\n"),
        (b"#204ABCD", b"ABCD"),
        (b"#211X1234567890", b"X1234567890"),
    ],
)
def test_a_definite_block_gives_its_payload(data, payload):
    for tail in (b"", b",rest\n"):
        block = read_block(data + tail)
        assert (block.state, block.payload, block.used) == (BlockState.COMPLETE, payload, len(data))


@pytest.mark.parametrize("data", [b"", b"#", b"#1", b"#12", b"#13AB", b"#2", b"#21", b"#210ABCD"])
def test_what_may_still_become_a_block_is_incomplete_and_invalid_once_no_more_can_come(data):
    assert read_block(data).state is BlockState.INCOMPLETE
    assert read_block(data, ended=True).state is BlockState.INVALID


@pytest.mark.parametrize("data", [b"A", b"##", b"#A1", b"#1A", b"#2 4ABCD", b"#2-4AB", b"\x00#11a"])
def test_what_can_never_become_a_block_is_invalid(data):
    assert read_block(data).state is BlockState.INVALID


def test_the_indefinite_form_is_invalid_since_a_serial_line_has_no_end_signal():
    assert read_block(b"#0ABCD\n").state is BlockState.INVALID


@pytest.mark.parametrize(
    ("data", "form", "values"),
    [
        ("#16 FFFB 4849 3034", ">hhh", (-5, 0x4849, 0x3034)),
        ("#16 FBFF 4948 3430", "<hhh", (-5, 0x4849, 0x3034)),
        ("#18 3F800000 41480000", ">ff", (1.0, 12.5)),
        ("#18 0000803F 00004841", "<ff", (1.0, 12.5)),
    ],
)
def test_the_payload_unpacks_in_both_byte_orders(data, form, values):
    head, hexadecimal = data.split(" ", 1)
    block = read_block(head.encode() + bytes.fromhex(hexadecimal))
    assert struct.unpack(form, block.payload) == values


def test_the_header_tells_the_length_before_the_payload_is_there():
    header = block_header(b"#41024")
    assert (header.state, header.used, header.size) == (BlockState.COMPLETE, 6, 1024)
