"""Whatever comes in: the same readings however it is cut, and by both paths."""

import itertools
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from meterlog.instruments import AsciiLineDecoder, Readings, ascii_lines
from meterlog.model import Channel, Quantity
from meterlog.profile import LineFormat

AB = (Channel("a", Quantity.VOLTAGE), Channel("b", Quantity.CURRENT))
PLAIN = LineFormat(columns=("a", "b"))
FORMATS = (
    PLAIN,
    LineFormat(columns=("b", "-", "a"), delimiter=";", decimal=","),
    LineFormat(columns=("time", "a", "b"), time_unit_s=0.001, delimiter="\t"),
    LineFormat(columns=("-", "a", "b"), delimiter=" ", comment=""),
    LineFormat(columns=("a", "b"), delimiter="|", overload_texts=("9999", "OL")),
    LineFormat(columns=("a", "b"), delimiter="-", comment="//"),
    LineFormat(columns=("a", "-", "b"), header_lines=2, comment=""),
    LineFormat(columns=("-", "a", "b")),
)
WORDS = [
    "OL",
    "-OL",
    "0L",
    "nan",
    "-inf",
    "9.9E37",
    "-9.9e37",
    "9.91E+37",
    "1e400",
    "1e-400",
    "0x10",
    "1_0",
    "NA",
    "NULL",
    "true",
    "+-1",
    "",
    "1e",
    ".",
    "\x00",
    "1.5",
    "9999",
    "٣",
]
FIELDS = st.one_of(
    st.floats(allow_nan=True, allow_infinity=True).map(repr),
    st.decimals(allow_nan=False, allow_infinity=False, places=3, min_value=-99, max_value=99).map(
        str
    ),
    st.text("0123456789+-.,eE \tnaifNIOLx_#\"'", max_size=8),
    st.sampled_from(WORDS),
)


def lines_of(delimiters: str) -> st.SearchStrategy[bytes]:
    """Give byte strings that look much like lines, with all that can go wrong in them."""
    return st.lists(
        st.tuples(
            st.sampled_from(["", "", "", "", " ", "#", "\ufeff"]),
            st.lists(FIELDS, min_size=1, max_size=4),
            st.sampled_from(delimiters),
            st.sampled_from(["\n", "\r\n", "\r", "\n\n", ""]),
        ).map(lambda parts: (parts[0] + parts[2].join(parts[1]) + parts[3]).encode()),
        max_size=8,
    ).map(b"".join)


BYTES = st.one_of(st.binary(max_size=200), lines_of(",;\t |-"))


def run(layout: LineFormat, pieces: list[bytes]) -> tuple[list[Readings], AsciiLineDecoder]:
    decoder = AsciiLineDecoder(layout, AB)
    return [decoder.feed(piece) for piece in pieces], decoder


def flat(readings: list[Readings]) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    times = [np.zeros(0) if part.own_time_s is None else part.own_time_s for part in readings]
    return (
        np.concatenate([part.values for part in readings]),
        np.concatenate([part.flags for part in readings]),
        np.concatenate(times),
    )


def cut(data: bytes, places: list[int]) -> list[bytes]:
    edges = [0, *sorted(place % (len(data) + 1) for place in places), len(data)]
    return [data[start:stop] for start, stop in itertools.pairwise(edges)]


def assert_same(left: list[Readings], right: list[Readings]) -> None:
    for one, other in zip(flat(left), flat(right), strict=True):
        np.testing.assert_array_equal(one, other)


@pytest.mark.parametrize("layout", FORMATS, ids=lambda layout: repr(layout.delimiter))
@given(data=BYTES, places=st.lists(st.integers(0, 10**6), max_size=6))
@settings(max_examples=25, deadline=None)
def test_the_readings_do_not_depend_on_how_the_bytes_are_cut(layout, data, places):
    whole, one = run(layout, [data])
    parts, other = run(layout, cut(data, places))
    assert_same(whole, parts)
    assert (one.refused, one.last_refused) == (other.refused, other.last_refused)
    assert one.comments == other.comments


@pytest.mark.parametrize("layout", FORMATS, ids=lambda layout: repr(layout.delimiter))
@given(data=st.one_of(BYTES, *(lines_of(sign) for sign in ",;\t|")))
@example(data=b"\xef\xbb\xbf1,2\n")
@example(data=b"1,2\n\n  \n3,nan\n")
@example(data=b"1e400,2\n")
@example(data=b"#1,2,3\n")
@settings(max_examples=40, deadline=None)
def test_the_fast_path_reads_what_the_slow_one_reads(layout, data):
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(ascii_lines, "_BATCH_FROM", 10**9)
        slow, one = run(layout, [data])
        patch.setattr(ascii_lines, "_BATCH_FROM", 1)
        fast, other = run(layout, [data])
    assert_same(slow, fast)
    assert (one.refused, one.last_refused) == (other.refused, other.last_refused)


@given(
    rows=st.lists(st.tuples(st.floats(-1e6, 1e6), st.floats(-1e6, 1e6)), min_size=1, max_size=30),
    form=st.sampled_from(["{!r}", "{:+.4E}", " {:.3f}", "{:.0f}."]),
)
@settings(max_examples=25, deadline=None)
def test_clean_numbers_do_take_the_fast_path_and_are_read_exactly(rows, form):
    texts = [[form.format(value) for value in row] for row in rows]
    data = "".join(",".join(row) + "\r\n" for row in texts).encode()
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(ascii_lines, "_BATCH_FROM", 1)
        # A line read one by one would fail: this proves which path it took.
        patch.setattr(AsciiLineDecoder, "_line", None)
        readings, decoder = run(PLAIN, [data])
    np.testing.assert_array_equal(
        readings[0].values, [[float(text) for text in row] for row in texts]
    )
    assert readings[0].values.flags.f_contiguous
    assert decoder.refused == 0


@given(data=st.binary(max_size=300))
@settings(max_examples=100, deadline=None)
def test_after_any_bytes_the_second_line_is_read(data):
    decoder = AsciiLineDecoder(PLAIN, AB)
    decoder.feed(data)
    readings = [decoder.feed(line) for line in (b"1,2\n", b"3,4\n")]
    assert readings[1].values.tolist() == [[3.0, 4.0]]


def test_a_line_without_end_does_not_fill_the_memory():
    decoder = AsciiLineDecoder(PLAIN, AB)
    for _ in range(40):
        decoder.feed(b"7" * 10_000)
        assert len(decoder._begun) <= 2 * ascii_lines.LONGEST_LINE
    assert decoder.refused == 1
    assert len(decoder.last_refused) == 200
    assert decoder.feed(b"7\n5,6\n").values.tolist() == [[5.0, 6.0]]
    assert decoder.refused == 1


@pytest.mark.parametrize("junk", [b"7", b" ", b"1,", b"#"])
@pytest.mark.parametrize("more", [0, 1])
def test_a_line_too_long_is_refused_the_same_however_it_is_cut(junk, more):
    long = (junk * (ascii_lines.LONGEST_LINE + 1))[: ascii_lines.LONGEST_LINE + more]
    data = b"1,2\n" * 300 + long + b"\n3,4\n"
    whole, one = run(PLAIN, [data])
    parts, other = run(PLAIN, [data[start : start + 999] for start in range(0, len(data), 999)])
    assert_same(whole, parts)
    assert (one.refused, one.last_refused) == (other.refused, other.last_refused)
    assert one.refused == (1 if more or junk in {b"7", b"1,"} else 0)


def test_a_long_row_of_digits_costs_time_in_proportion():
    # With a pattern that tries every split, this would take minutes: the test's time limit ends it.
    layout = replace(PLAIN, columns=("a", "-", "b"))
    decoder = AsciiLineDecoder(layout, AB)
    decoder.feed(b"1" * 65_000 + b"." + b"2" * 500 + b"x\n")
    assert decoder.refused == 1
