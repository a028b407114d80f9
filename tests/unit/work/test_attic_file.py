"""What a judgement lays aside is nowhere to be seen, and what can't be laid aside stays."""

import contextlib
import errno
import gc
import os
import subprocess
import sys
import tempfile
from pathlib import Path

import pytest

from meterlog.model.errors import RecordingError
from meterlog.work.attic_file import AtticFile

OPEN = Path("/proc/self/fd")
needs_proc = pytest.mark.skipif(not OPEN.exists(), reason="counts handles where Linux lists them")


@pytest.fixture(autouse=True)
def own_places(monkeypatch, tmp_path):
    """The user's cache folder, and that for temporary files."""
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path / "temp"))
    (tmp_path / "temp").mkdir()
    return tmp_path


def test_bytes_come_back_in_any_order():
    attic = AtticFile()
    pieces = [bytes([number]) * (1_000 + number) for number in range(20)]
    places = [attic.put(piece) for piece in pieces]
    for number in (19, 0, 7, 7, 3):
        assert attic.get(places[number], len(pieces[number])) == pieces[number]
    later = attic.put(b"later")
    assert attic.get(later, 5) == b"later"


def handles(place):
    """Count the open files of a folder, with a name or without; other tests' come and go."""
    told = []
    for one in OPEN.iterdir():
        with contextlib.suppress(FileNotFoundError):
            told.append(str(one.readlink()))
    return sum(text.startswith(str(place)) for text in told)


@needs_proc
def test_no_name_no_file_before_it_is_needed_and_no_handle_left(own_places):
    attic = AtticFile()
    assert handles(own_places) == 0
    assert attic.put(b"x" * 100) == 0
    assert handles(own_places) == 1
    assert [one for one in own_places.rglob("*") if one.is_file()] == []
    del attic
    gc.collect()
    assert handles(own_places) == 0


def test_without_the_cache_folder_it_is_the_one_for_temporary_files(own_places):
    (own_places / "cache").write_text("a file where a folder should be")
    attic = AtticFile()
    assert attic.get(attic.put(b"abc"), 3) == b"abc"


def test_with_no_folder_at_all_nothing_is_taken_and_nothing_raised(own_places):
    (own_places / "cache").write_text("a file where a folder should be")
    (own_places / "temp").rmdir()
    assert AtticFile().put(b"abc") is None
    (own_places / "temp").mkdir()  # once there is one again, it is used
    assert AtticFile().put(b"abc") == 0


def test_what_a_full_disk_took_a_part_of_is_not_kept_and_the_rest_still_is(monkeypatch):
    attic = AtticFile()
    first = attic.put(b"first")
    real = attic._file

    class Full:
        short = False

        def __getattr__(self, name):
            return getattr(real, name)

        def write(self, data):
            real.write(data[:2])
            if self.short:
                return 2
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    attic._file = Full()
    assert attic.put(b"second") is None
    attic._file.short = True
    assert attic.put(b"second") is None
    attic._file = real
    third = attic.put(b"third")
    assert attic.get(first, 5) + attic.get(third, 5) == b"firstthird"


def test_a_file_that_was_cut_is_told_in_words():
    attic = AtticFile()
    place = attic.put(b"x" * 100)
    attic._file.truncate(50)
    with pytest.raises(RecordingError, match=r"temporary file.*review them again"):
        attic.get(place, 100)
    with pytest.raises(RecordingError, match="temporary file"):
        AtticFile().get(0, 10)


_LIMITED = """
import resource, sys
import numpy as np
from meterlog.analysis import Reviewer
from meterlog.model import Block, Channel, Event, EventKind, Instrument, Limits, Quantity, Role
from meterlog.work.attic_file import AtticFile

roles = {"feed": Role.MOTOR_FEED, "current": Role.MOTOR_CURRENT, "battery": Role.BATTERY}
channels = tuple(
    Channel(name, Quantity.CURRENT if name == "current" else Quantity.VOLTAGE, role, interval_s=0.1)
    for name, role in roles.items()
)
n = 60_000
rng = np.random.default_rng(1)
t_ns = np.arange(n, dtype=np.int64) * 100_000_000
dead = (np.arange(n) % 9_000) > 8_950
values = np.column_stack((
    np.where(dead, 12.6, rng.normal(12.1, 0.02, n)),
    np.where(dead, 0.0, rng.normal(5.7, 0.05, n)),
    rng.normal(12.5, 0.01, n),
))

def review(attic):
    reviewer = Reviewer([Instrument("meter", "test", "-", channels)], Limits(), attic=attic)
    for at in range(0, n, 3_000):
        part = slice(at, at + 3_000)
        reviewer.feed(Event(int(t_ns[at]), EventKind.SPEED, str(1 + at // 15_000)))
        none = np.zeros(values[part].shape, np.uint8)
        reviewer.feed(Block("meter", t_ns[part], values[part], none))
        reviewer.live()
    return reviewer.finish()

plain = review(None)
attic = AtticFile()
free = review(attic)
size = attic._end
limit = size // 2 + 1_000
resource.setrlimit(resource.RLIMIT_FSIZE, (limit, limit))
full = AtticFile()
assert review(full) == plain == free, "another review"
assert 0 < full._end <= limit < size, (full._end, limit, size)
assert len(plain.findings) > 5, len(plain.findings)
"""


@pytest.mark.skipif(sys.platform == "win32", reason="limits the size of files as Unix does")
def test_a_review_on_a_disk_that_fills_up_is_the_same_to_the_last_bit(tmp_path):
    done = subprocess.run(
        [sys.executable, "-c", _LIMITED], check=False, capture_output=True, text=True, timeout=240
    )
    assert done.returncode == 0, done.stderr
