"""Lines of a logger, byte vectors one by one."""

import math

import numpy as np
import pytest

from meterlog.instruments import AsciiLineDecoder
from meterlog.model import Channel, Flag, Quantity
from meterlog.profile import LineFormat

AB = (Channel("a", Quantity.VOLTAGE), Channel("b", Quantity.CURRENT))
PLAIN = LineFormat(columns=("a", "b"))


def decoder(**layout) -> AsciiLineDecoder:
    return AsciiLineDecoder(LineFormat(**{"columns": ("a", "b"), **layout}), AB)


@pytest.mark.parametrize("end", [b"\n", b"\r", b"\r\n", b"\n\n", b"\n \n"])
def test_lines_end_in_any_way_and_empty_ones_do_not_count(end):
    machine = decoder()
    readings = machine.feed(b"12.5,1" + end + b"-3,4e-1" + end)
    assert readings.values.tolist() == [[12.5, 1.0], [-3.0, 0.4]]
    assert readings.flags.tolist() == [[0, 0], [0, 0]]
    assert readings.own_time_s is None
    assert machine.refused == 0


def test_columns_are_put_into_the_order_of_the_channels():
    machine = decoder(columns=("-", "b", "a"))
    assert machine.feed(b"junk,2,1\n").values.tolist() == [[1.0, 2.0]]


def test_half_a_line_waits_for_its_rest():
    machine = decoder()
    assert len(machine.feed(b"12.5,1.")) == 0
    assert machine.feed(b"25\n").values.tolist() == [[12.5, 1.25]]


@pytest.mark.parametrize(
    "wrong",
    [
        *b"1~1,2,3~1,~,2~1,x~1,2 V~1 2,3~0x1,2~1_0,2~1,2,~1,--2~1e,2~.,2~1,NA~1.2.3,4".split(b"~"),
        *(b"'1',2", b"\xff,1", b"\xd9\xa3,1", b"1,5\x0b"),
    ],
)
def test_a_wrong_line_costs_that_line_only(wrong):
    machine = decoder()
    readings = machine.feed(b"1,2\n" + wrong + b"\n3,4\n")
    assert readings.values.tolist() == [[1.0, 2.0], [3.0, 4.0]]
    assert machine.refused == 1
    assert machine.last_refused == wrong


@pytest.mark.parametrize(
    ("field", "flag"),
    [
        (b"OL", Flag.OVERLOAD),
        (b" -OL ", Flag.OVERLOAD),
        (b"0L", Flag.OVERLOAD),
        (b"inf", Flag.OVERLOAD),
        (b"-INF", Flag.OVERLOAD),
        (b"9.9E37", Flag.OVERLOAD),
        (b"-9.900000E+37", Flag.OVERLOAD),
        (b"1e999", Flag.OVERLOAD),
        (b"nan", Flag.NO_DATA),
        (b"+NaN", Flag.NO_DATA),
        (b"9.91E37", Flag.NO_DATA),
    ],
)
def test_overload_and_nothing_are_flagged_and_never_a_number(field, flag):
    readings = decoder().feed(b"1," + field + b"\n")
    assert readings.flags.tolist() == [[0, int(flag)]]
    assert math.isnan(readings.values[0, 1])
    assert readings.values[0, 0] == 1.0


def test_an_overload_text_may_look_like_a_number():
    machine = decoder(overload_texts=("9999", "OL"))
    for data in (b"1,9999\n2,3\n", b"1,9999\n" + b"2,3\n" * 5_000):  # one by one, and in bulk
        readings = machine.feed(data)
        assert readings.flags[:2].tolist() == [[0, int(Flag.OVERLOAD)], [0, 0]]


def test_a_decimal_comma_is_read_and_a_point_is_then_wrong():
    machine = decoder(delimiter=";", decimal=",")
    assert machine.feed(b"12,5;-,5\n1.5;2\n").values.tolist() == [[12.5, -0.5]]
    assert machine.refused == 1


def test_a_blank_delimiter_stands_for_a_run_of_blanks_and_tabs():
    machine = decoder(delimiter=" ")
    assert machine.feed(b"  1 \t  2 \n3 4\n").values.tolist() == [[1.0, 2.0], [3.0, 4.0]]


def test_an_empty_skipped_column_at_the_edge_of_a_tabbed_line_counts():
    machine = decoder(delimiter="\t", columns=("-", "a", "b"))
    assert machine.feed(b"\t1\t2\n").values.tolist() == [[1.0, 2.0]]


def test_own_times_are_in_seconds():
    machine = decoder(columns=("time", "a", "b"), time_unit_s=0.001)
    readings = machine.feed(b"1500,1,2\n1520,3,4\n")
    np.testing.assert_allclose(readings.own_time_s, [1.5, 1.52], rtol=1e-15)


@pytest.mark.parametrize("time", [b"nan", b"OL", b"inf", b"9.9e37", b"", b"12:30"])
def test_a_line_with_an_unusable_own_time_is_refused(time):
    machine = decoder(columns=("time", "a", "b"))
    assert len(machine.feed(time + b",1,2\n")) == 0
    assert machine.refused == 1


def test_comments_are_skipped_and_kept_for_those_who_ask():
    machine = decoder()
    assert len(machine.feed(b"# VIRTUAL\n  # two\n1,2\n" + b"#x\n" * 50)) == 1
    assert machine.comments[:2] == [b"# VIRTUAL", b"# two"]
    assert len(machine.comments) == 16
    assert machine.refused == 0


def test_header_lines_are_counted_from_the_first_byte_only():
    machine = decoder(header_lines=2)
    readings = machine.feed(b"volts,amps\r\n\r\n1,2\r\n3,4\r\nvolts,amps\r\n5,6\r\n")
    assert readings.values.tolist() == [[3.0, 4.0], [5.0, 6.0]]
    assert machine.refused == 1


def test_the_rest_of_a_line_joined_in_the_middle_is_skipped_uncounted():
    machine = decoder()
    machine.feed(b"12.")
    machine.skip_to_end()
    assert len(machine.feed(b"31,0.8")) == 0
    assert machine.feed(b"72\n1,2\n").values.tolist() == [[1.0, 2.0]]
    assert machine.refused == 0


def test_values_are_kept_column_by_column():
    for lines in (2, 2_000):
        readings = decoder().feed(b"1,2\n" * lines)
        assert readings.values.shape == (lines, 2)
        assert readings.values.flags.f_contiguous
        assert readings.flags.flags.f_contiguous
        assert readings.flags.dtype == np.uint8
