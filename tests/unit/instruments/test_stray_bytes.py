"""Bytes between frames are counted by the frames they could have been."""

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.instruments.stray_bytes import StrayBytes


@pytest.mark.parametrize(("length", "count"), [(0, 0), (1, 1), (14, 1), (15, 2), (28, 2), (29, 3)])
def test_a_stretch_counts_once_for_each_frame_that_had_room(length, count):
    stray = StrayBytes(14)
    stray.add(bytes(length))
    assert stray.count == count


def test_two_stretches_count_apart():
    stray = StrayBytes(14)
    stray.add(b"ab")
    stray.end()
    stray.add(b"cd")
    assert (stray.count, stray.last) == (2, b"cd")


def test_a_refused_frame_ends_a_stretch_and_counts():
    stray = StrayBytes(14)
    stray.add(b"ab")
    stray.refuse(b"frame")
    stray.add(b"c")
    assert (stray.count, stray.last) == (3, b"c")


@given(data=st.binary(max_size=700), places=st.lists(st.integers(0, 700), max_size=5))
def test_it_does_not_matter_how_a_stretch_is_cut(data, places):
    whole, parts = StrayBytes(256), StrayBytes(256)
    whole.add(data)
    edges = [0, *sorted(place % (len(data) + 1) for place in places), len(data)]
    for start, stop in itertools.pairwise(edges):
        parts.add(data[start:stop])
    assert (whole.count, whole.last) == (parts.count, parts.last)
    assert len(whole.last) <= 200
