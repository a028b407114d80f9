"""A stretch read by itself: the same rows as reading everything, also over damage."""

import shutil

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.model import join
from meterlog.recording import Recording

BATCHES = (3, 1, 5, 2, 8)


@pytest.fixture(scope="module")
def folder(lasting_maker):
    lasting_maker.small(batches=BATCHES)
    return lasting_maker.folder / "run"


def rows_of(blocks):
    found = list(blocks)
    return join(found).t_ns.tolist() if found else []


@given(st.integers(-5, 25), st.integers(-5, 25), st.integers(-2, 2))
def test_a_stretch_has_the_rows_of_the_whole_with_both_ends(folder, first, last, beside):
    recording = Recording.open(folder)
    start, end = first * 1_000_003 + 7 + beside, last * 1_000_003 + 7
    whole = np.array(rows_of(recording.blocks("bench")))
    inside = whole[(whole >= start) & (whole <= end)].tolist()
    assert rows_of(recording.between("bench", start, end)) == inside


@given(st.integers(0, 10_000), st.integers(0, 7), st.integers(0, 18), st.integers(0, 18))
def test_a_flipped_bit_never_hides_rows_that_are_sound(folder, tmp_path_factory, at, bit, a, b):
    place = tmp_path_factory.mktemp("flipped") / "run"
    shutil.copytree(folder, place)
    (stream,) = (place / "data").glob("*.arrows")
    content = bytearray(stream.read_bytes())
    content[at % len(content)] ^= 1 << bit
    stream.write_bytes(content)
    start, end = sorted((a * 1_000_003 + 7, b * 1_000_003 + 7))
    recording = Recording.open(place)
    whole = np.array(rows_of(recording.blocks("bench")), dtype=np.int64)
    inside = whole[(whole >= start) & (whole <= end)].tolist()
    assert rows_of(Recording.open(place).between("bench", start, end)) == inside
