"""A recording that has not ended is told as such when it is opened, and nothing is edited on it."""

import pytest

from meterlog.recording import Recorder
from meterlog.window.session import Phase


@pytest.fixture
def recorder(tmp_path, about_of, block_of):
    recorder = Recorder.create(tmp_path / "run", about_of(), keep_raw=False)
    recorder.take(block_of(0, 8, (12.5, 8.0, 4.0)))
    recorder.sync()
    yield recorder
    recorder.close()


def _opened(window, qtbot, folder):
    window.desk.open(folder)
    qtbot.waitUntil(lambda: window.desk.session.phase is Phase.SHOWING)
    return window.desk.session


def test_one_that_is_still_being_recorded(window, qtbot, recorder, tmp_path):
    session = _opened(window, qtbot, tmp_path / "run")
    assert session.trouble == "It is still being recorded: open it again when that has ended."
    assert window.header.mark.text() == "SIMULATED · NOT WHOLE"
    made = []
    assert not session.amend(made.append)
    assert "sealed: stop it first" in session.trouble
    assert not made
    assert not list(tmp_path.glob("run.amendments*"))


def test_one_that_was_cut_off(window, qtbot, recorder, tmp_path):
    recorder.close()
    session = _opened(window, qtbot, tmp_path / "run")
    assert "It was never sealed" in session.trouble
    assert not session.amend(lambda _: None)
