"""Pieces out of a file, with the calls of the system and without them."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.recording import read_at
from meterlog.recording.read_at import ReadAt

WORDS = 40_000


@pytest.fixture(scope="module")
def file(tmp_path_factory):
    path = tmp_path_factory.mktemp("read") / "words"
    np.arange(WORDS, dtype=np.uint64).tofile(path)
    return path


@settings(max_examples=60)
@given(
    places=st.lists(st.integers(0, WORDS - 97), max_size=40).map(sorted),
    words=st.integers(1, 97),
    calls=st.booleans(),
)
def test_pieces_are_what_lies_there(file, places, words, calls):
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(read_at, "_HAS_PREADV", calls and read_at._HAS_PREADV)
        found = ReadAt(file).pieces(8 * np.array(places, np.int64), words)
    expected = np.array(places, np.uint64)[:, None] + np.arange(words, dtype=np.uint64)
    np.testing.assert_array_equal(found, expected.reshape(-1, words))


@pytest.mark.parametrize("calls", [True, False])
def test_a_piece_beyond_the_end_is_an_error(file, monkeypatch, calls):
    monkeypatch.setattr(read_at, "_HAS_PREADV", calls and read_at._HAS_PREADV)
    offsets = 8 * np.array([3, WORDS // 2, WORDS - 4], np.int64)
    with pytest.raises(EOFError):
        ReadAt(file).pieces(offsets, 5)
