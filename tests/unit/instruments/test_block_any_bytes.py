"""Blocks among any bytes, cut anywhere: the same readings, times and refusals."""

import itertools
import struct

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.instruments import BlockDecoder
from meterlog.model import Channel, Quantity
from meterlog.profile import BlockLayout

AB = (Channel("volts", Quantity.VOLTAGE), Channel("amps", Quantity.CURRENT))
LAYOUTS = (
    BlockLayout("int16", "normal", 0.001, 0, (32767.0,)),
    BlockLayout("int16", "swapped", 0.0, 2),
    BlockLayout("real32", "swapped", 0.5, 3),
    BlockLayout("real64", "normal"),
)
FRONTS = b"#18~#216~#0~#~#9~#999999999~#299~#10~;~,~ ~\r\n~\n~-113,x~#A".split(b"~")
SENTINELS = [b"\x7f\xc0\0\0", b"\x7e\x94\xf5j", b"\x7f\xff"]
PIECES = st.one_of(
    st.sampled_from(FRONTS + SENTINELS),
    st.binary(max_size=24),
    st.lists(st.integers(-9, 9), max_size=6).map(
        lambda row: b"#2%02d" % (2 * len(row)) + struct.pack(f">{len(row)}h", *row)
    ),
)
BYTES = st.lists(PIECES, max_size=12).map(b"".join)


def run(layout: BlockLayout, pieces: list[bytes]):
    decoder = BlockDecoder(layout, AB)
    readings = [decoder.feed(piece) for piece in pieces]
    readings.append(decoder.message_end())
    times = [np.zeros(0) if part.own_time_s is None else part.own_time_s for part in readings]
    assert all(len(part) == len(time) for part, time in zip(readings, times, strict=True)) or (
        not layout.sample_s
    )
    return (
        np.concatenate([part.values for part in readings]),
        np.concatenate([part.flags for part in readings]),
        np.concatenate(times),
        (decoder.refused, decoder.last_refused),
    )


@pytest.mark.parametrize("layout", LAYOUTS, ids=lambda layout: f"{layout.number}-{layout.rows}")
@given(data=BYTES, places=st.lists(st.integers(0, 10**6), max_size=6))
@settings(max_examples=100)
def test_nothing_depends_on_how_the_bytes_are_cut(layout, data, places):
    edges = [0, *sorted(place % (len(data) + 1) for place in places), len(data)]
    whole = run(layout, [data])
    for pieces in (
        [data[start:stop] for start, stop in itertools.pairwise(edges)],
        [data[place : place + 1] for place in range(len(data))],
    ):
        parts = run(layout, pieces)
        for one, other in zip(whole[:3], parts[:3], strict=True):
            np.testing.assert_array_equal(one, other)
        assert whole[3] == parts[3]


GOOD = b"#18" + struct.pack(">4h", 1, 2, 3, 4) + b"\n"


@given(data=BYTES)
def test_after_any_bytes_and_a_restart_the_first_block_is_read(data):
    decoder = BlockDecoder(LAYOUTS[0], AB)
    decoder.feed(data)
    decoder.restart()
    assert decoder.feed(GOOD).values.tolist() == [[1.0, 2.0], [3.0, 4.0]]


@given(data=st.binary(max_size=200).filter(lambda data: b"#" not in data))
def test_after_any_bytes_that_are_no_front_of_a_block_the_second_block_is_read(data):
    decoder = BlockDecoder(LAYOUTS[0], AB)
    decoder.feed(data + GOOD)
    assert decoder.feed(GOOD).values.tolist()[-2:] == [[1.0, 2.0], [3.0, 4.0]]


@given(
    rows=st.lists(st.tuples(st.floats(-1e6, 1e6), st.floats(-1e6, 1e6)), max_size=30),
    swapped=st.booleans(),
)
def test_what_was_packed_is_read_exactly(rows, swapped):
    form = "<2d" if swapped else ">2d"
    data = b"".join(struct.pack(form, *row) for row in rows)
    layout = BlockLayout("real64", "swapped" if swapped else "normal")
    decoder = BlockDecoder(layout, AB)
    readings = decoder.feed(b"#5%05d" % len(data) + data + b"\n")
    assert readings.values.tolist() == [list(row) for row in rows]
    assert decoder.refused == 0
