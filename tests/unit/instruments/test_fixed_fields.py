"""Many numbers at once, exactly as Python's own float reads each."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.instruments.fixed_fields import read_fixed

COMMA, POINT = b",."


def read(lines, columns=2, wanted=None):
    return read_fixed(lines, COMMA, POINT, columns, wanted or range(columns))


@st.composite
def tables(draw):
    columns = draw(st.integers(1, 4))
    decimals = [draw(st.integers(0, 7)) for _ in range(columns)]
    whole = st.text("0123456789", min_size=1, max_size=8)
    rows = [
        [
            draw(st.sampled_from(["", "-", "+"]))
            + draw(whole)
            + (
                "." + "".join(draw(st.lists(st.sampled_from("0123456789"), min_size=d, max_size=d)))
                if d
                else ""
            )
            for d in decimals
        ]
        for _ in range(draw(st.integers(1, 6)))
    ]
    return rows, draw(st.sampled_from(["\n", "\r\n"]))


@given(tables())
def test_every_number_is_bit_for_bit_what_float_gives(table):
    rows, end = table
    lines = "".join(",".join(row) + end for row in rows).encode()
    got = read(lines, len(rows[0]))
    assert got is not None
    wanted = np.array([[float(field) for field in row] for row in rows])
    assert got.tobytes("C") == wanted.tobytes("C")  # tells -0.0 from 0.0


@given(st.lists(st.sampled_from([*b"0123456789+-.,\r\n eExOL"]), max_size=60).map(bytes))
def test_what_is_read_at_all_is_read_as_float_reads_it(lines):
    got = read(lines)
    if got is None:
        return
    fields = [line.split(b",") for line in lines.replace(b"\r\n", b"\n").split(b"\n")[:-1]]
    assert got.tolist() == [[float(field) for field in line] for line in fields]


@pytest.mark.parametrize(
    "lines",
    [
        b"",
        b"1.0,2.0",
        b"1.0,2.0\n1.0,2.0,3.0\n4.0\n",
        b"1.0\n2.0,3.0\n4.0\n",
        b"1.0,2.0\n1.00,2.0\n",
        b"1.0,2.0\r\n1.0,2.0\n",
        b"1.0,2.0\n\n1.0,2.0\n",
        b"1.0,\n",
        b"1.0,-\n",
        b".5,1.0\n",
        b"5.,1.0\n",
        b"1.0,1e3\n",
        b"1.0, 2.0\n",
        b"1.0,OL\n",
        b"--1.0,2.0\n",
        b"1.0,1..2\n",
        b"1.0,1234567890123.456\n",
        b"1.0,2.0\n1:0,2.0\n",
        b"1.0,2.0\n1/0,2.0\n",
    ],
)
def test_anything_else_is_left_to_others(lines):
    assert read(lines) is None


def test_columns_that_are_not_wanted_may_hold_anything():
    lines = b"x y,1.25,,-7\n" * 3
    got = read(lines, 4, [3, 1])
    assert got.tolist() == [[-7.0, 1.25]] * 3
    assert got.flags["F_CONTIGUOUS"]
