"""Of two screenings into one folder the second is refused, and touches nothing of the first."""

import pytest

from meterlog.model.errors import DiskFailed
from meterlog.work.screening.store import Store


def test_the_second_leaves_what_the_first_is_writing(tmp_path):
    first, second = Store(tmp_path / "out"), Store(tmp_path / "out")
    with first.alone():
        writing = tmp_path / "out" / "parts" / ".writing-0123abcd"
        writing.write_bytes(b"half")
        with pytest.raises(DiskFailed, match="by another program"), second.alone():
            pass
        assert writing.read_bytes() == b"half"
        writing.unlink()
        writing.parent.rmdir()  # as the first does at its end
        with pytest.raises(DiskFailed, match="by another program"), second.alone():
            pass
        assert not writing.parent.exists()


def test_what_a_killed_one_left_goes_and_nothing_else(tmp_path):
    out = tmp_path / "out"
    (out / "parts").mkdir(parents=True)
    left = [out / ".writing-0123abcd", out / "parts" / ".writing-ffffffff"]
    others = [out / ".writing-notes", out / "mine.txt"]
    for path in left + others:
        path.write_bytes(b"x")
    with Store(out).alone():
        assert [path.exists() for path in left] == [False, False]
        assert [path.exists() for path in others] == [True, True]
