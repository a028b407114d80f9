"""A run over a real pseudo terminal: what comes in is on the disk, judged, and sealed."""

import os
import stat
import threading
import time
import tty
from contextlib import contextmanager
from dataclasses import replace
from functools import partial

import pytest

from meterlog.acquire import TimeWatch
from meterlog.model import EventKind, Limits, Origin
from meterlog.model.errors import DiskFailed, LinkNotFound, RecordingExists, UsageError
from meterlog.recording import MARKS, Recording
from meterlog.work import Run, Wiring, choose_meters, review_folder

pytestmark = pytest.mark.pty

ROLES = (
    "motor-feed=line-logger.feed",
    "motor-return=line-logger.return",
    "motor-current=line-logger.current",
)


class Logger:
    """Sends the same line every 20 ms until told otherwise."""

    def __init__(self):
        self._master, slave = os.openpty()
        tty.setraw(slave)
        self.path = os.ttyname(slave)
        self._slave = slave
        self._stop = threading.Event()
        self.line = b"12.4,0.5,6.00\n"
        self._thread = threading.Thread(target=self._send)
        self._thread.start()

    def _send(self):
        while not self._stop.wait(0.02):
            os.write(self._master, self.line)

    def close(self):
        self._stop.set()
        self._thread.join()
        os.close(self._master)
        os.close(self._slave)


@pytest.fixture
def logger():
    device = Logger()
    yield device
    device.close()


def wait_until(condition, seconds=60.0):
    end = time.monotonic() + seconds
    while not condition():
        assert time.monotonic() < end, "waited in vain"
        time.sleep(0.01)


@contextmanager
def running(run):
    run.start()
    try:
        yield run
    finally:
        run.stop()


def new_run(logger, folder, **more):
    choices = choose_meters(Wiring([f"line-logger@{logger.path}"], ROLES))
    return Run(choices, Limits(), folder, **more)


def test_what_comes_in_is_recorded_marked_judged_and_sealed(logger, tmp_path):
    run = new_run(logger, tmp_path / "run")
    with running(run):
        wait_until(lambda: sum(run.status().rows.values()) > 5)
        event = run.mark(EventKind.SPEED, "2")
        wait_until(lambda: sum(run.status().rows.values()) > 30)
        assert run.status().recording
        wait_until(lambda: run.review().spans)
    assert run.is_running is False
    recording, review = review_folder(tmp_path / "run")
    assert recording.state == "sealed"
    assert recording.about.origin is Origin.MEASURED
    assert event in recording.events
    assert recording.events[-1].kind is EventKind.END
    assert recording.events[-1].value == "complete"
    step = next(step for step in review.steps if step.speed == 2)
    assert step.mean_a == pytest.approx(6.0)
    assert step.mean_v == pytest.approx(11.9)


def test_the_tail_holds_what_the_disk_holds(logger, tmp_path):
    run = new_run(logger, tmp_path / "run")
    with running(run):
        wait_until(lambda: sum(run.status().rows.values()) > 10)
    shown = [t for block in run.tail.drain() for t in block.t_ns]
    kept = [t for b in Recording.open(tmp_path / "run").blocks("line-logger") for t in b.t_ns]
    assert shown == kept
    assert run.status().dropped_rows == 0


def test_stopping_twice_is_stopping_once_and_time_stands_still(logger, tmp_path):
    run = new_run(logger, tmp_path / "run")
    run.start()
    wait_until(lambda: sum(run.status().rows.values()) > 2)
    assert run.stop("stopped") == tmp_path / "run"
    before = (tmp_path / "run" / "manifest-sha256.txt").read_bytes()
    elapsed = run.status().elapsed_ns
    assert run.stop() == tmp_path / "run"
    assert (tmp_path / "run" / "manifest-sha256.txt").read_bytes() == before
    assert run.status().elapsed_ns == elapsed > 0
    assert Recording.open(tmp_path / "run").events[-1].value == "stopped"


def test_an_event_keeps_the_time_it_was_given(logger, tmp_path):
    run = new_run(logger, tmp_path / "run")
    with running(run):
        wait_until(lambda: sum(run.status().rows.values()) > 5)
        run.mark(EventKind.NOTE, "grille off", at_ns=1234)
    events = Recording.open(tmp_path / "run").events
    assert [event.t_ns for event in events if event.kind is EventKind.NOTE] == [1234]


def test_a_stated_origin_is_kept(logger, tmp_path):
    run = new_run(logger, tmp_path / "run", origin=Origin.SIMULATED)
    with running(run):
        pass
    assert Recording.open(tmp_path / "run").about.origin is Origin.SIMULATED


def test_a_folder_with_something_in_it_is_refused_before_a_port_is_opened(logger, tmp_path):
    (tmp_path / "run").mkdir()
    (tmp_path / "run" / "letter.txt").write_text("mine")
    run = new_run(logger, tmp_path / "run")
    with pytest.raises(RecordingExists, match="is there already"):
        run.start()
    assert [path.name for path in (tmp_path / "run").iterdir()] == ["letter.txt"]


def test_a_port_that_is_not_there_leaves_no_folder_and_no_open_port(logger, tmp_path):
    absent = str(tmp_path / "no-such-port")
    choices = choose_meters(Wiring([f"line-logger@{logger.path}", f"line-logger@{absent}"]))
    run = Run(choices, Limits(), tmp_path / "run")
    with pytest.raises(LinkNotFound, match="no-such-port"):
        run.start()
    assert not (tmp_path / "run").exists()
    with running(new_run(logger, tmp_path / "run")):  # the first port was closed again
        pass


def test_marks_need_a_run_and_a_speed_needs_a_number(logger, tmp_path):
    run = new_run(logger, tmp_path / "run")
    with pytest.raises(UsageError, match="nothing is being recorded"):
        run.mark(EventKind.TAP)
    with running(run):
        with pytest.raises(UsageError, match="is no speed step"):
            run.mark(EventKind.SPEED, "high")
        with pytest.raises(UsageError, match="is no speed step"):
            run.mark(EventKind.SPEED, "-1")
    assert run.status().marks == 0
    with pytest.raises(UsageError, match="nothing is being recorded"):
        run.mark(EventKind.TAP)


def test_without_meters_there_is_nothing_to_run(tmp_path):
    with pytest.raises(UsageError, match="no meter"):
        Run((), Limits(), tmp_path / "run")


def test_the_live_review_and_the_review_of_the_folder_agree(logger, tmp_path):
    limits = replace(Limits(), open_current_a=0.5)
    choices = choose_meters(Wiring([f"line-logger@{logger.path}"], ROLES))
    run = Run(choices, limits, tmp_path / "run")
    with running(run):
        run.mark(EventKind.SPEED, "1")
        wait_until(lambda: sum(run.status().rows.values()) > 20)
        logger.line = b"12.4,0.5,0.00\n"
        wait_until(lambda: any(span.kind == "dead" for span in run.review().spans))
    _, review = review_folder(tmp_path / "run")
    live = [span.kind for span in run.review().spans]
    kept = [span.kind for span in review.spans]
    assert [kind for kind in live if kind == "dead"] == ["dead"]
    assert kept == live


def test_where_no_disk_takes_it_that_is_said_and_the_readings_go_on(logger, tmp_path, monkeypatch):
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "own"))
    monkeypatch.setattr("tempfile.tempdir", str(tmp_path))
    run = new_run(logger, tmp_path / "run")
    refused = _refuse_files(monkeypatch)
    run.start()
    try:
        wait_until(lambda: sum(run.status().rows.values()) > 2)
        refused.set()
        wait_until(lambda: run.status().failed and run.status().faults)
        assert "could not go on elsewhere either" in run.status().faults[0]
        assert run.status().moved == ""
        assert not run.status().recording
        run.tail.drain()
        wait_until(run.tail.drain)
    finally:
        with pytest.raises(DiskFailed, match="not everything could be kept"):
            run.stop()
    assert run.is_running is False
    refused.clear()
    assert Recording.open(tmp_path / "run").rows("line-logger") > 2


def _refuse_files(monkeypatch):
    """While set, a write to a file fails as on a full disk; pseudo terminals go on."""
    refused = threading.Event()

    def guarded(write):
        def refuse(descriptor, data):
            if refused.is_set() and stat.S_ISREG(os.fstat(descriptor).st_mode):
                raise OSError(28, "No space left on device")
            return write(descriptor, data)

        return refuse

    monkeypatch.setattr(os, "write", guarded(os.write))
    monkeypatch.setattr(os, "writev", guarded(os.writev))
    return refused


def test_whether_sleep_is_blocked_is_said_while_it_records(logger, tmp_path, monkeypatch):
    monkeypatch.setenv("PATH", str(tmp_path))  # no program there that could block it
    run = new_run(logger, tmp_path / "run")
    assert run.status().sleep == ""
    run.start()
    try:
        assert run.status().sleep.startswith("sleep is not blocked: there is no ")
        assert run.status().moved == ""
    finally:
        run.stop()
    assert run.status().sleep == ""


def test_that_the_computer_slept_is_in_the_recording(logger, tmp_path, monkeypatch):
    asleep = [0]
    monkeypatch.setattr("meterlog.work.run.TimeWatch", partial(TimeWatch, slept=lambda: asleep[0]))
    run = new_run(logger, tmp_path / "run")
    run.start()
    try:
        wait_until(lambda: run.now_ns() > 1_200_000_000)  # it has looked once
        asleep[0] = 3_600_000_000_000
        wait_until(lambda: any("slept" in event.value for event in run.tail.events))
    finally:
        run.stop()
    told = [one.value for one in Recording.open(run.folder).events if "slept" in one.value]
    assert len(told) == 1
    assert told[0].startswith("the computer slept for 60.0 min")


def test_the_last_mark_is_taken_back_and_kept(logger, tmp_path):
    run = new_run(logger, tmp_path / "run")
    with pytest.raises(UsageError, match="nothing is being recorded"):
        run.undo_mark()
    with running(run):
        with pytest.raises(UsageError, match="no mark to take back"):
            run.undo_mark()
        first, second = run.mark(EventKind.SPEED, "2"), run.mark(EventKind.SPEED, "3")
        run.mark(EventKind.CIRCUIT, "not a mark of this kind")
        assert run.undo_mark()[0] == second
        assert (run.marks.speed, run.status().marks) == (2, 2)
        tap = run.mark(EventKind.TAP)
        mark, entry = run.undo_mark()
        assert (mark, entry.kind) == (tap, EventKind.WITHDRAWN)
        run.mark(EventKind.NOTE, "stays", at_ns=first.t_ns)
    recording, review = review_folder(run.folder)
    assert {second, tap, entry} < set(recording.events)
    marks = [one for one in recording.standing if one.kind in MARKS]
    assert [one.value for one in marks] == ["2", "stays"]
    assert sum("was withdrawn by hand" in note for note in review.notes) == 2
