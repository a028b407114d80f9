"""Heads of arbitrary blocks against the forms of the standard.

Source: IEEE 488.2-1992, 8.7.9 (definite length) and 8.7.10 (indefinite length), clauses from
memory. The vectors are those of the open-source project j123b567/scpi-parser,
libscpi/test/test_parser.c and test_lexer_parser.c.
"""

import pytest

from meterlog.instruments.ieee_block import BlockState, block_header


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
def test_the_head_of_a_definite_block_says_where_its_payload_is(data, payload):
    for tail in (b"", b",rest\n"):
        head = block_header(data + tail)
        assert head.state is BlockState.COMPLETE
        assert data[head.used :] == payload
        assert head.size == len(payload)


@pytest.mark.parametrize("data", [b"", b"#", b"#2", b"#21"])
def test_what_may_still_become_a_head_is_incomplete(data):
    assert block_header(data).state is BlockState.INCOMPLETE


@pytest.mark.parametrize("data", [b"A", b"##", b"#A1", b"#1A", b"#2 4ABCD", b"#2-4AB", b"\x00#11a"])
def test_what_can_never_become_a_block_is_invalid(data):
    assert block_header(data).state is BlockState.INVALID


def test_the_indefinite_form_is_invalid_since_a_serial_line_has_no_end_signal():
    assert block_header(b"#0ABCD\n").state is BlockState.INVALID


@pytest.mark.parametrize(
    ("data", "used", "size"),
    [(b"#12", 3, 2), (b"#13AB", 3, 3), (b"#210ABCD", 4, 10), (b"#41024", 6, 1024)],
)
def test_the_head_tells_the_length_before_the_payload_is_there(data, used, size):
    head = block_header(data)
    assert (head.state, head.used, head.size) == (BlockState.COMPLETE, used, size)
