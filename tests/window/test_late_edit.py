"""What came of an edit is told beside the recording that it was made on, and as it was."""

import shutil

import pytest

from meterlog.model import Event, EventKind
from meterlog.model.errors import DiskFailed
from meterlog.recording import Recorder, seal
from meterlog.window.edits import EditsPanel
from meterlog.window.session import Session
from meterlog.work.edits_on_top import EditsOnTop
from tests.rig.held_work import HeldWork

S = 1_000_000_000


@pytest.fixture
def folder(tmp_path, about_of, block_of):
    folder = tmp_path / "run"
    recorder = Recorder.create(folder, about_of(), keep_raw=False)
    recorder.take(Event(2 * S, EventKind.SPEED, "1"))
    recorder.take(Event(4 * S, EventKind.TAP))
    recorder.take(block_of(0, 8, (12.25, 8.0, 3.81)))
    recorder.close()
    seal(folder)
    return folder


@pytest.fixture
def held(monkeypatch):
    """Writing, held until the test lets it go; ``fails`` makes it refuse."""
    held = HeldWork()
    held.fails = False
    write = EditsOnTop.write

    def written(self, one):
        held("write")
        if held.fails:
            raise DiskFailed("can't be written: no space left.", subject="amendments")
        return write(self, one)

    monkeypatch.setattr(EditsOnTop, "write", written)
    yield held
    held.let_go("write")


@pytest.fixture
def panel(qtbot, folder, held):
    """A panel with an edit on its way to the disk."""
    session = Session()
    panel = EditsPanel(session)
    qtbot.addWidget(panel)
    panel.show()
    session.open(folder)
    assert session.wait(60.0)
    panel.show_session(session)
    panel.form.who.setText("N. N. (invented)")
    assert panel.pick(4 * S)
    panel.form.why.setText("hand was late")
    panel.form.withdraw.click()
    panel.form.write.click()
    qtbot.waitUntil(lambda: held.asked == ["write"])
    return panel


def test_it_is_not_told_beside_a_recording_that_was_opened_before_anyone_looked(
    panel, held, folder, tmp_path, about_of
):
    session = panel._session
    held.let_go("write")
    assert session.wait(60.0)
    other = tmp_path / "other"
    shutil.copytree(folder, other)
    about = (other / "data" / "about.json").read_text()
    known = about_of().recording_id
    (other / "data" / "about.json").write_text(about.replace(known, known[::-1]))
    session.open(other)
    assert session.wait(60.0)
    panel.show_session(session)
    assert panel.form.said.text() == ""


def test_one_that_was_refused_is_not_told_as_written_once_it_is_judged_anew(panel, held, folder):
    session = panel._session
    held.fails = True
    held.let_go("write")
    assert session.wait(60.0)
    trouble = session.trouble
    session.open(folder)
    assert session.wait(60.0)
    session.trouble = trouble
    panel.show_session(session)
    assert "no space left" in panel.form.said.text()


def test_one_that_was_written_is_told_as_written(panel, held):
    held.let_go("write")
    assert panel._session.wait(60.0)
    panel.show_session(panel._session)
    assert panel.form.said.text().startswith("Written on top")
