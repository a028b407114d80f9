"""How long the gaps are in a recording that went on elsewhere, between parts and within them."""

import sys
from pathlib import Path

import pytest

from meterlog.model.errors import DiskFailed
from meterlog.recording.continuation import kept_continuation
from meterlog.recording.moving_recorder import MovingRecorder
from meterlog.work.lost_stretches import lost_stretches, lost_words

RIG = str(Path(__file__).resolve().parents[2] / "rig")
MS = 1_000_000


@pytest.fixture
def parts(tmp_path):
    """Two parts of 100 rows, one each millisecond, in batches of 20; the second begins at 60."""
    sys.path.insert(0, RIG)
    try:
        from kill_models import ABOUT, numbered
    finally:
        sys.path.remove(RIG)
    recorder = MovingRecorder(tmp_path / "run", ABOUT, places=lambda: [tmp_path / "elsewhere"])
    for first in (0, 20, 40):
        recorder.take(numbered(first, 20))
        recorder._recorder.sync()
    recorder.take(numbered(60, 20))
    with pytest.raises(DiskFailed):
        recorder._move(DiskFailed("could not be written: invented.", subject="x"))
    recorder.take(numbered(80, 20))
    recorder.close()
    assert kept_continuation(recorder.parts[1]).rows == {"meter": 60}
    return recorder.parts


def spoil(part, row):
    """Spoil the batch that holds a row of a part, by the bytes of its value."""
    path = part / "data" / "meter.arrows"
    content = bytearray(path.read_bytes())
    place = content.index((row * MS).to_bytes(8, "little"))
    content[place] ^= 1
    path.write_bytes(content)


def test_parts_that_overlap_leave_no_gap(parts):
    assert lost_stretches(parts, "meter") == ()
    assert lost_words(()) == ""


@pytest.mark.parametrize(
    ("spoilt", "gaps"),
    [
        ([(0, 50)], [(39, 60)]),
        ([(0, 30)], [(19, 40)]),
        ([(0, 10)], [(0, 20)]),
        ([(0, 10), (0, 50)], [(0, 20), (39, 60)]),
    ],
    ids=["between the parts", "within a part", "at the beginning", "two"],
)
def test_each_gap_goes_from_the_last_row_before_to_the_first_behind(parts, spoilt, gaps):
    for part, row in spoilt:
        spoil(parts[part], row)
    found = lost_stretches(parts, "meter")
    assert found == tuple((start * MS, end * MS) for start, end in gaps)
    start, end = gaps[0]
    first = f"from {start / 1000:.3f} s to {end / 1000:.3f} s ({(end - start) / 1000:.3f} s)"
    assert lost_words(found).startswith(first)
