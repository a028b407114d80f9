"""A recording too long to be read first is drawn at once, and judged while it is on show."""

import multiprocessing
import os
import shutil
import threading

import numpy as np
import pytest
from PySide6.QtCore import Qt

from meterlog.evidence.kept_line import KeptLine
from meterlog.model import Block, Event, EventKind, SpanKind
from meterlog.recording import (
    Recorder,
    Recording,
    kept_pyramid,
    layout,
    pyramid_writer,
    seal,
)
from meterlog.window import judged_apart, long_recording
from meterlog.window import opened as opening
from meterlog.window.keys import Action
from meterlog.window.session import Phase
from meterlog.work import review_folder

ROWS = 60_000


@pytest.fixture(autouse=True)
def short(monkeypatch):
    monkeypatch.setattr(pyramid_writer, "SHORT", 10_000)
    monkeypatch.setattr(long_recording, "LONG_ROWS", 10_000)


@pytest.fixture
def folder(tmp_path, about_of):
    about = about_of()
    recorder = Recorder.create(tmp_path / "long", about, keep_raw=False)
    recorder.take(Event(0, EventKind.SPEED, "1"))
    (instrument,) = about.instruments
    t_ns = np.arange(ROWS, dtype=np.int64) * 100_000_000
    values = np.tile([12.25, 8.0, 3.81], (ROWS, 1))
    values[20_000:20_300] = (12.5, 0.25, 0.0)
    values[41_234, 2] = 9.87
    block = Block(instrument.key, t_ns, values, np.zeros(values.shape, np.uint8))
    for start in range(0, ROWS, 10_000):
        recorder.take(block.rows(start, start + 10_000))
    recorder.close()
    seal(tmp_path / "long")
    return tmp_path / "long"


@pytest.fixture
def held(monkeypatch):
    """Let no recording be judged before ``go`` is set; it tells its progress all the while."""
    go, review = threading.Event(), opening.review_folder

    def wait(folder, **options):
        while not go.wait(0.02):
            options["progress"](0.35)
        return review(folder, **options)

    monkeypatch.setattr(opening, "review_folder", wait)
    yield go
    go.set()


def _lines(window):
    return window.desk.session.shown.traces.lines


def _listed(page):
    return [page.findings.list.item(k).text() for k in range(page.findings.list.count())]


def test_the_trace_is_there_before_the_findings_are(window, qtbot, folder, held):
    session, page = window.desk.session, window.desk.run_page
    window.desk.open(folder)
    qtbot.waitUntil(lambda: session.phase is Phase.JUDGING)
    assert all(isinstance(line, KeptLine) for line in _lines(window))
    qtbot.waitUntil(lambda: page.judging.bar.value() == 350)
    assert page.judging.isVisible()
    assert any(text.startswith("Note: Not judged") for text in _listed(page))
    curve = page.trace._amperes.curves[0][1]
    assert np.nanmax(curve.getData()[1]) == 9.87
    held.set()
    qtbot.waitUntil(lambda: session.phase is Phase.SHOWING)
    qtbot.waitUntil(lambda: not page.judging.isVisible())
    assert page.ribbon.spans == review_folder(folder)[1].spans
    assert SpanKind.DEAD in [span.kind for span in page.ribbon.spans]
    assert not any(text.startswith("Note: Not judged") for text in _listed(page))
    assert all(isinstance(line, KeptLine) for line in _lines(window))


@pytest.mark.parametrize("by_key", [True, False])
def test_judging_can_be_stopped_and_the_trace_stays(window, qtbot, folder, held, by_key):
    session, page = window.desk.session, window.desk.run_page
    window.desk.open(folder)
    qtbot.waitUntil(page.judging.isVisible)
    if by_key:
        window.activateWindow()
        qtbot.waitUntil(lambda: page.judging.stop.shortcut().toString() == "C")
        qtbot.keyClick(page.trace, Qt.Key.Key_C)
    else:
        qtbot.mouseClick(page.judging.stop, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: session.phase is Phase.SHOWING)
    assert "Not judged" in session.trouble
    assert session.shown.judging
    assert page.state.words.startswith("not judged")
    assert any(text.startswith("Note: Not judged") for text in _listed(page))
    assert page.trace.isVisible()


def test_what_was_changed_since_is_found_and_the_cache_is_made_anew(window, qtbot, folder):
    session, page = window.desk.session, window.desk.run_page
    place = folder / layout.CACHE / session_key(folder)
    window.desk.open(folder)
    qtbot.waitUntil(lambda: session.phase is Phase.SHOWING)
    content = bytearray((place / "level-0").read_bytes())
    for at in range(0, len(content), 100):
        content[at] ^= 1
    (place / "level-0").write_bytes(bytes(content))
    page.outlook.show(0, 2_000_000_000_000)
    page.redraw()
    assert session.shown.traces.trouble
    qtbot.waitUntil(lambda: "made anew" in session.trouble or session.busy)
    qtbot.waitUntil(lambda: session.phase is Phase.SHOWING and not session.shown.traces.trouble)
    page.redraw()
    assert not session.shown.traces.trouble
    curve = page.trace._amperes.curves[0][1]
    assert np.nanmin(curve.getData()[1]) == 3.81 or np.nanmin(curve.getData()[1]) == 0.0


def session_key(folder):
    return next(path.stem for path in (folder / "data").glob("*.arrows"))


def test_damaged_readings_are_left_out_of_the_picture_once_they_are_known(window, qtbot, folder):
    session = window.desk.session
    window.desk.open(folder)
    qtbot.waitUntil(lambda: session.phase is Phase.SHOWING, timeout=30_000)
    assert "NOT WHOLE" not in window.header.mark.text()
    stream = folder / layout.arrows(session_key(folder))
    stamp, content = stream.stat(), bytearray(stream.read_bytes())
    content[len(content) // 2] ^= 1
    stream.write_bytes(bytes(content))
    os.utime(stream, ns=(stamp.st_atime_ns, stamp.st_mtime_ns))
    window.desk.open(folder)
    qtbot.waitUntil(lambda: session.phase is Phase.SHOWING)
    assert "does not match its checksum" in session.trouble
    line = _lines(window)[0]
    assert 0 < line.count < ROWS


@pytest.fixture
def very_long(monkeypatch):
    monkeypatch.setattr(long_recording, "APART_ROWS", 10_000)


@pytest.fixture
def no_judging_here(monkeypatch):
    def refuse(*_, **__):
        raise AssertionError("judged in the window's own process")

    monkeypatch.setattr(opening, "review_folder", refuse)


def test_a_very_long_one_is_judged_in_a_process_of_its_own(
    window, qtbot, folder, very_long, no_judging_here
):
    session, page = window.desk.session, window.desk.run_page
    window.desk.open(folder)
    qtbot.waitUntil(lambda: session.phase is Phase.JUDGING)
    lines = _lines(window)
    qtbot.waitUntil(lambda: session.phase is Phase.SHOWING, timeout=30_000)
    recording, review = review_folder(folder)
    assert session.shown.review == review
    assert session.shown.about == recording.about
    assert session.shown.events == recording.standing
    assert session.shown.top.edits == ()
    assert session.status.rows == {session_key(folder): ROWS}
    assert session.trouble == ""
    qtbot.waitUntil(lambda: page.ribbon.spans == review.spans)
    assert _lines(window) is lines, "what was read to draw it is read again"


def test_its_judging_can_be_stopped(window, qtbot, folder, very_long, no_judging_here):
    session, page = window.desk.session, window.desk.run_page
    window.desk.open(folder)
    qtbot.waitUntil(page.judging.isVisible)
    qtbot.mouseClick(page.judging.stop, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: session.phase is Phase.SHOWING, timeout=10_000)
    assert "Not judged" in session.trouble
    assert session.shown.judging
    assert not multiprocessing.active_children()


def test_what_goes_wrong_there_is_told(window, qtbot, folder, very_long):
    session = window.desk.session
    folder.with_name("long.amendments.jsonl").mkdir()
    window.desk.open(folder)
    qtbot.waitUntil(lambda: session.phase is Phase.SHOWING, timeout=30_000)
    assert "long.amendments.jsonl" in session.trouble
    assert session.shown.judging


def test_damage_found_there_is_left_out_of_the_picture(
    window, qtbot, folder, very_long, no_judging_here
):
    session = window.desk.session
    window.desk.open(folder)
    qtbot.waitUntil(lambda: session.phase is Phase.SHOWING, timeout=30_000)
    assert "NOT WHOLE" not in window.header.mark.text()
    stream = folder / layout.arrows(session_key(folder))
    stamp, content = stream.stat(), bytearray(stream.read_bytes())
    content[len(content) // 2] ^= 1
    stream.write_bytes(bytes(content))
    os.utime(stream, ns=(stamp.st_atime_ns, stamp.st_mtime_ns))
    window.desk.open(folder)
    qtbot.waitUntil(lambda: session.phase is Phase.SHOWING, timeout=30_000)
    assert "does not match its checksum" in session.trouble
    assert 0 < _lines(window)[0].count < ROWS
    # What was said goes with the next key; that something is missing stays.
    window.desk.do(Action.CLOSER)
    assert "checksum" not in session.trouble
    assert "NOT WHOLE" in window.header.mark.text()


def test_a_pyramid_is_made_anew_for_a_process_of_its_own(folder):
    key = session_key(folder)
    shutil.rmtree(folder / layout.CACHE)
    parts = []
    assert judged_apart.make(folder, key, parts.append)
    assert parts[-1] == 1.0
    about = Recording.without_readings(folder).about
    assert kept_pyramid(folder, about, about.instruments[0]).rows == ROWS
