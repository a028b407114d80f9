"""Answers to READ?, whole and broken."""

import itertools
import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.instruments import ScpiAnswerDecoder
from meterlog.instruments.scpi_answers import LONGEST_ANSWER
from meterlog.model import Channel, Flag, Quantity

AB = (Channel("volts", Quantity.VOLTAGE), Channel("amps", Quantity.CURRENT))
PIECES = st.sampled_from(
    b"+1.5E+0,2|,|#|#1|#13|#0|#9|7| |9.9E37|#3999|x|\n|\r\n|#15a\nb\nc|1,2\n".split(b"|")
)


def test_one_value_a_channel_is_one_row():
    machine = ScpiAnswerDecoder(AB)
    readings = machine.feed(b"+1.243100E+01,+4.95E+00\r\n1, 2\n")
    assert readings.values.tolist() == [[12.431, 4.95], [1.0, 2.0]]
    assert readings.values.flags.f_contiguous
    assert readings.own_time_s is None
    assert machine.refused == 0


@pytest.mark.parametrize("answer", [b"1", b"1,2,3", b"1,x", b"#0AB", b"1;2", b"1,", b"\xff\xfe"])
def test_a_wrong_answer_costs_itself_only(answer):
    machine = ScpiAnswerDecoder(AB)
    assert machine.feed(answer + b"\n5,6\n").values.tolist() == [[5.0, 6.0]]
    assert machine.refused == 1
    assert machine.last_refused == answer


def test_sentinels_are_flagged():
    readings = ScpiAnswerDecoder(AB).feed(b"9.9E37,9.91E37\n")
    assert readings.flags.tolist() == [[int(Flag.OVERLOAD), int(Flag.NO_DATA)]]
    assert all(math.isnan(value) for value in readings.values[0])


def test_line_ends_within_a_block_are_no_ends_of_an_answer():
    machine = ScpiAnswerDecoder(AB)
    readings = machine.feed(b"#211" + b"1,2\n3,4\n5,6" + b"\n7,8\n")
    assert readings.values.tolist() == [[7.0, 8.0]]
    assert machine.refused == 1
    assert machine.last_refused == b"#211"


def test_a_block_that_says_it_is_huge_swallows_its_own_line_only():
    machine = ScpiAnswerDecoder(AB)
    assert machine.feed(b"#9999999999\n1,2\n").values.tolist() == [[1.0, 2.0]]
    assert machine.refused == 1


def test_an_answer_without_end_does_not_fill_the_memory():
    machine = ScpiAnswerDecoder(AB)
    for _ in range(40):
        machine.feed(b"7" * 10_000)
        assert len(machine._text) <= LONGEST_ANSWER
    assert machine.feed(b"\n1,2\n").values.tolist() == [[1.0, 2.0]]
    assert machine.refused == 1
    assert len(machine.last_refused) <= 200


def test_a_restart_forgets_the_answer_that_had_begun():
    machine = ScpiAnswerDecoder(AB)
    machine.feed(b"1,")
    machine.restart()
    assert machine.feed(b"3,4\n").values.tolist() == [[3.0, 4.0]]


@given(
    data=st.one_of(st.binary(max_size=120), st.lists(PIECES, max_size=12).map(b"".join)),
    places=st.lists(st.integers(0, 10**6), max_size=6),
)
@settings(max_examples=150, deadline=None)
def test_the_readings_do_not_depend_on_how_the_bytes_are_cut(data, places):
    whole, parts = ScpiAnswerDecoder(AB), ScpiAnswerDecoder(AB)
    edges = [0, *sorted(place % (len(data) + 1) for place in places), len(data)]
    pieces = [parts.feed(data[start:stop]) for start, stop in itertools.pairwise(edges)]
    readings = whole.feed(data)
    np.testing.assert_array_equal(readings.values, np.concatenate([p.values for p in pieces]))
    np.testing.assert_array_equal(readings.flags, np.concatenate([p.flags for p in pieces]))
    assert (whole.refused, whole.last_refused) == (parts.refused, parts.last_refused)


@given(data=st.binary(max_size=200).filter(lambda data: b"#" not in data))
@settings(max_examples=60, deadline=None)
def test_after_any_bytes_without_a_block_the_second_answer_is_read(data):
    machine = ScpiAnswerDecoder(AB)
    machine.feed(data)
    machine.feed(b"1,2\n")
    assert machine.feed(b"3,4\n").values.tolist() == [[3.0, 4.0]]
