"""Where a recording would go on if its disk failed is looked at before it is needed."""

import sys
import tempfile

import pytest

from meterlog.recording.spill_places import PLACE
from meterlog.work.doctor import State, whole
from meterlog.work.doctor.elsewhere import look_at_elsewhere


@pytest.fixture(autouse=True)
def home(tmp_path, monkeypatch):
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "own"))
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path))
    monkeypatch.delenv(PLACE, raising=False)
    return tmp_path


def test_each_place_is_a_line_and_the_one_that_was_named_comes_first(home, monkeypatch):
    assert "elsewhere" in whole.LOOKS
    assert [one.state for one in look_at_elsewhere()] == [State.OK, State.OK]
    monkeypatch.setenv(PLACE, str(home / "WO-4711"))
    first, *_ = lines = list(look_at_elsewhere())
    assert [one.state for one in lines] == [State.OK] * 3
    assert first.words.startswith(f"{PLACE}, ")
    assert "4711" not in first.words


@pytest.mark.skipif(sys.platform == "win32", reason="no such devices and links")
@pytest.mark.parametrize("kind", ["device", "file", "link"])
def test_one_that_takes_nothing_is_to_be_looked_at(home, monkeypatch, kind):
    place = home / "place"
    if kind == "file":
        place.write_text("x")
    elif kind == "link":
        (home / "other").mkdir()
        place.symlink_to(home / "other")
    monkeypatch.setenv(PLACE, "/dev/zero" if kind == "device" else str(place))
    first, *others = look_at_elsewhere()
    assert (first.about, first.state) == ("elsewhere", State.LOOK)
    assert first.do == f"Name another folder in the variable {PLACE}."
    assert all(one.state is State.OK for one in others)


def test_where_no_place_takes_anything_it_is_bad(home, monkeypatch):
    (home / "file").write_text("x")
    for name in (PLACE, "XDG_DATA_HOME"):
        monkeypatch.setenv(name, str(home / "file"))
    monkeypatch.setattr(tempfile, "tempdir", str(home / "file"))
    assert [one.state for one in look_at_elsewhere()] == [State.BAD] * 3
