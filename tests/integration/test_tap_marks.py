"""Taps and moved leads, typed on a terminal while a real process records over a real port."""

import os
import pty
import subprocess
import sys
import threading
import time
import tty

import pytest

from meterlog.analysis import Reviewer, SpanDetector
from meterlog.analysis.judged import Judged
from meterlog.analysis.taps import TapWatch
from meterlog.model import Event, EventKind, Limits
from meterlog.recording import Recording

ROLES = ("motor-feed=feed", "motor-return=return", "motor-current=current")
RUNNING, DEAD, OFF = "12.00,0.16,13.60", "12.40,0.02,0.00", "12.40,12.40,0.00"


class Fan:
    """A logger that sends, every 20 ms, the line that the fan is in."""

    def __init__(self):
        self.far, self._near = pty.openpty()
        tty.setraw(self._near)
        self.url = os.ttyname(self._near)
        self.line = OFF
        self._end = threading.Event()
        self._thread = threading.Thread(target=self._run)
        self._thread.start()

    def _run(self):
        while not self._end.wait(0.02):
            os.write(self.far, f"{self.line}\r\n".encode())

    def close(self):
        self._end.set()
        self._thread.join()
        for handle in (self.far, self._near):
            os.close(handle)


@pytest.fixture
def fan():
    fan = Fan()
    yield fan
    fan.close()


@pytest.fixture
def terminal(fan, tmp_path):
    """``meterlog record`` with a terminal of its own."""
    far, near = pty.openpty()
    own_terminal = (
        "import fcntl, os, sys, termios; fcntl.ioctl(0, termios.TIOCSCTTY, 0);"
        " os.execv(sys.argv[1], sys.argv[1:])"
    )
    words = [sys.executable, "-m", "meterlog", "record", "--meter", f"line-logger@{fan.url}"]
    for role in ROLES:
        place, channel = role.split("=")
        words += ["--assign", f"{place}=line-logger.{channel}"]
    words += ["--out", str(tmp_path / "taps")]
    process = subprocess.Popen(
        [sys.executable, "-c", own_terminal, *words],
        stdin=near,
        stdout=near,
        stderr=near,
        start_new_session=True,
    )
    os.close(near)
    heard = []

    def listen():
        while True:
            try:
                data = os.read(far, 4096)
            except OSError:
                return
            if not data:
                return
            heard.append(data.decode(errors="replace"))

    thread = threading.Thread(target=listen)
    thread.start()

    class Terminal:
        @staticmethod
        def type(line):
            os.write(far, f"{line}\n".encode())

        @staticmethod
        def text():
            return "".join(heard)

        @staticmethod
        def until(words):
            end = time.monotonic() + 60.0
            while words not in "".join(heard):
                assert time.monotonic() < end, "".join(heard)
                time.sleep(0.02)

        @staticmethod
        def wait():
            return process.wait(30)

    yield Terminal
    if process.poll() is None:
        process.terminate()
    process.wait(20)
    thread.join(60)
    os.close(far)


def evidence_of(folder, limits):
    recording = Recording.open(folder)
    instruments = recording.about.instruments
    reviewer, watch = Reviewer(instruments, limits), TapWatch(limits)
    detector = SpanDetector(instruments, limits, None, watch.take_rows)
    for item in recording.items():
        reviewer.feed(item)
        detector.feed(item)
        if isinstance(item, Event):
            watch.take(item)
    detector.finish()
    review = reviewer.finish()
    judged = Judged(
        instruments, limits, spans=review.spans, steps=review.steps, findings=review.findings,
        doubts=review.doubts, events=recording.events,
    )  # fmt: skip
    return watch.evidence(judged), recording.events


def test_marks_typed_while_the_fan_is_tapped_become_evidence(fan, terminal, tmp_path):
    terminal.until("w leads moved")
    terminal.until(" rows")
    terminal.type("4")
    fan.line = RUNNING
    time.sleep(1.2)
    terminal.type("w")
    time.sleep(0.6)
    terminal.type("w motor plug")
    time.sleep(1.6)
    for _ in range(3):
        fan.line = DEAD
        time.sleep(1.2)
        terminal.type("t")
        fan.line = RUNNING
        time.sleep(0.8)
    terminal.type("q")
    assert terminal.wait() == 0, terminal.text()
    evidence, events = evidence_of(tmp_path / "taps", Limits(inrush_window_s=0.5))
    moved = [event.value for event in events if event.kind is EventKind.WIGGLE]
    assert moved == ["leads", "motor plug"]
    assert (evidence.tried, evidence.answered) == (3, 3)
    assert evidence.across_v == pytest.approx(12.38, abs=0.05)
    assert evidence.gone_a == pytest.approx(0.0, abs=0.01)
    assert evidence.returned_a == pytest.approx(13.6, abs=0.1)
    checks = {check.name: check.verdict.value for check in evidence.checks}
    assert checks["repeats"] == checks["leads moved first"] == "pass"
    assert checks["connectors moved"] == "pass"
    assert checks["clamp zero"] == "can't tell"
