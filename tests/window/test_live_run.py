"""A real run: a virtual meter in another process, a real port, the real disk, the real window."""

import subprocess
import sys

import pytest
from PySide6.QtCore import Qt

from meterlog.evidence import verify_folder
from meterlog.model import EventKind, SpanKind
from meterlog.profile import load_limits
from meterlog.recording import Recording
from meterlog.window.main_window import MainWindow
from meterlog.window.session import Phase
from meterlog.work import Run, Wiring, choose_meters

ARGUMENTS = ("virtual", "line-logger", "--scenario", "dead-spot", "--no-script", "--tcp")


@pytest.fixture
def bench():
    """A virtual meter on a fan with a dead spot; gives the process and its address."""
    process = subprocess.Popen(
        [sys.executable, "-m", "meterlog", *ARGUMENTS],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
    )
    yield process, process.stdout.readline().strip()
    process.stdin.close()
    process.terminate()
    process.wait(10)
    process.stdout.close()


def _start(window, qtbot, url):
    row = window.desk.meters_page.rows[0]
    row.profile.setCurrentText("line-logger")
    row.set_url(url)
    window.show_page(1)
    qtbot.keyClick(window, Qt.Key.Key_S)
    qtbot.waitUntil(lambda: window.desk.session.phase is Phase.RECORDING, timeout=15_000)


def _ran_dead(window):
    kinds = [span.kind for span in window.desk.session.review.spans]
    return SpanKind.DEAD in kinds


def test_keys_readings_judgement_and_seal_go_together(window, qtbot, bench):
    process, url = bench
    passed_on = []

    def obey(event):
        passed_on.append(event)
        process.stdin.write(f"speed {event.value}\n" if event.kind.value == "speed" else "tap\n")
        process.stdin.flush()

    window.desk.session._on_mark = obey
    _start(window, qtbot, url)
    page = window.desk.run_page
    qtbot.waitUntil(lambda: page.volts.text not in {"—", ""}, timeout=10_000)
    assert window.header.mark.text() == "SIMULATED"
    qtbot.keyClick(window, Qt.Key.Key_4)
    # The scenario's motor stands on its dead bar: driven, full voltage, no current.
    qtbot.waitUntil(lambda: _ran_dead(window), timeout=15_000)
    qtbot.waitUntil(lambda: "FAIL" in page.findings.list.item(0).text(), timeout=5_000)
    qtbot.waitUntil(lambda: page.state.kind is SpanKind.DEAD)
    assert float(page.volts.text) > 10.0
    assert abs(float(page.amperes.text)) < 0.3
    qtbot.keyClick(window, Qt.Key.Key_Plus)
    qtbot.waitUntil(lambda: float(page.amperes.text) > 1.0, timeout=10_000)
    rows = window.desk.session.status.rows
    qtbot.keyClick(window, Qt.Key.Key_Enter)
    qtbot.keyClick(window, Qt.Key.Key_Enter)
    qtbot.waitUntil(lambda: window.desk.session.phase is Phase.SHOWING, timeout=15_000)
    folder = window.desk.session.folder
    assert [e.kind for e in passed_on] == [EventKind.SPEED, EventKind.TAP]
    recording = Recording.open(folder)
    assert recording.state == "sealed"
    assert verify_folder(folder).intact
    assert recording.rows("line-logger") >= rows["line-logger"] > 5
    kept = [e for e in recording.events if e.kind in {EventKind.SPEED, EventKind.TAP}]
    assert kept == passed_on
    # Opening what has just been recorded shows the same findings, spans and steps.
    before = window.desk.session.review
    shown = [page.findings.list.item(i).text() for i in range(page.findings.list.count())]
    window.desk.open(folder)
    qtbot.waitUntil(lambda: not window.desk.session.busy, timeout=15_000)
    window.desk.tick()
    assert window.desk.session.review == before
    assert shown == [page.findings.list.item(i).text() for i in range(page.findings.list.count())]
    assert any(finding.kind.value == "dead" for finding in before.findings)


def test_closing_the_window_seals_what_is_being_recorded(window, qtbot, bench):
    _, url = bench
    _start(window, qtbot, url)
    session = window.desk.session
    qtbot.waitUntil(lambda: sum(session.status.rows.values()) > 3, timeout=10_000)
    folder = session.folder
    window.close()
    assert window.isVisible()
    assert "Close once more" in window.said.text()
    assert session.phase is Phase.RECORDING
    window.close()
    assert window.isVisible()
    assert "Sealing" in window.said.text()
    qtbot.waitUntil(lambda: not window.isVisible(), timeout=15_000)
    assert Recording.open(folder).state == "sealed"
    assert verify_folder(folder).intact


def test_a_meter_that_goes_away_raises_the_alarm(window, qtbot, bench):
    process, url = bench
    _start(window, qtbot, url)
    qtbot.waitUntil(lambda: sum(window.desk.session.status.rows.values()) > 3, timeout=10_000)
    process.kill()
    process.wait(10)
    qtbot.waitUntil(window.alarm.isVisible, timeout=10_000)
    assert "line-logger" in window.alarm.text()
    qtbot.waitUntil(lambda: window.desk.run_page.volts.text == "—", timeout=10_000)
    window.desk.session.stop()
    qtbot.waitUntil(lambda: window.desk.session.phase is Phase.SHOWING, timeout=15_000)


def test_the_start_key_begins_the_run_that_waits_once(qtbot, bench, tmp_path):
    """The walk-through: when the old motor is sealed, the start key records the new one."""
    _, url = bench
    choices = choose_meters(Wiring((f"line-logger@{url}",), ("motor-current=line-logger.current",)))
    folder = tmp_path / "after"
    window = MainWindow(next_run=lambda: Run(choices, load_limits("linear-12v"), folder))
    qtbot.addWidget(window)
    window.show()
    window.fill()
    window.show_page(1)
    session = window.desk.session
    qtbot.keyClick(window, Qt.Key.Key_S)
    qtbot.waitUntil(lambda: session.phase is Phase.RECORDING, timeout=15_000)
    assert session.folder == folder
    qtbot.keyClick(window, Qt.Key.Key_S)
    qtbot.keyClick(window, Qt.Key.Key_S)
    qtbot.waitUntil(lambda: session.phase is Phase.SHOWING, timeout=15_000)
    assert verify_folder(folder).intact
    qtbot.keyClick(window, Qt.Key.Key_S)
    qtbot.waitUntil(lambda: not session.busy and bool(session.trouble), timeout=15_000)
    assert session.folder == folder, "only the Meters page could say what to record next"
