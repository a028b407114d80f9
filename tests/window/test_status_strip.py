from dataclasses import replace
from pathlib import Path
from types import SimpleNamespace

import pytest

from meterlog.acquire import ReaderState
from meterlog.window.session import Phase, Session
from meterlog.window.status_strip import (
    StatusStrip,
    alarm_words,
    disk_words,
    meter_words,
    phase_words,
    rows_words,
)
from meterlog.work import RunStatus


def _state(key="clamp", *, alive=True, message=""):
    return ReaderState(key=key, alive=alive, last_ns=0, readings=3, refused=0, message=message)


@pytest.mark.parametrize(
    ("free", "words"),
    [
        (-1, "disk: not known"),
        (12_345_678_901, "disk 12.3 GB free"),
        (999_000_000, "disk 999 MB free"),
    ],
)
def test_room_on_the_disk_reads_as_a_person_says_it(free, words):
    assert disk_words(free) == words


def test_a_lost_meter_is_told_by_words_not_by_colour():
    status = RunStatus(meters=(_state(), _state("bench", alive=False, message="gone")))
    assert meter_words(status) == "clamp: connected · bench: NOT CONNECTED (gone)"


def test_refused_lines_are_counted_in_sight():
    assert rows_words(RunStatus(rows={"a": 1200, "b": 34})) == "1,234 readings"
    assert rows_words(RunStatus(rows={"a": 1}, refused=2)) == "1 readings, 2 refused"


def test_bytes_lost_on_the_lines_are_counted_in_sight():
    meters = (replace(_state(), lost=3), replace(_state("b"), lost=4))
    assert rows_words(RunStatus(rows={"a": 1}, meters=meters)) == "1 readings, 7 bytes lost"
    assert rows_words(RunStatus(rows={"a": 1}, lost_rows=5)) == "1 readings, 5 rows lost"


def test_meters_that_give_nothing_stand_on_the_caution_colour(qtbot):
    strip = StatusStrip()
    qtbot.addWidget(strip)
    session = SimpleNamespace(
        phase=Phase.RECORDING, folder=None, shown=True, recording=True, status=RunStatus()
    )
    for meter, rank in (
        (_state(), ""),
        (_state(alive=False, message="silent since 3.0 s"), "caution"),
        (_state(), ""),
    ):
        session.status = RunStatus(meters=(meter,))
        strip.show_session(session)
        assert (strip.meters.property("rank") or "") == rank
        assert meter.message in strip.meters.text()


def test_the_status_says_since_when_and_where_to():
    status = RunStatus(elapsed_ns=83_400_000_000)
    words = phase_words(Phase.RECORDING, status, Path("somewhere/20300102-WO"))
    assert words == "● recording 1:23 · 20300102-WO"
    assert phase_words(Phase.IDLE, status, None) == "not recording"


@pytest.mark.parametrize(
    ("status", "start"),
    [
        (RunStatus(failed="disk full"), "NOTHING IS BEING KEPT: disk full"),
        (RunStatus(meters=(_state(alive=False),)), "NO READINGS FROM clamp"),
        (
            RunStatus(meters=(_state(alive=False, message="silent since 3.0 s"), _state("b"))),
            "NO READINGS FROM clamp: silent since 3.0 s",
        ),
        (
            RunStatus(meters=(_state(alive=False, message="x"), _state("b", alive=False))),
            "NO READINGS FROM clamp, b: check plug",
        ),
        (RunStatus(waiting=1_000), "The disk does not keep up: 1,000 pieces wait"),
        (RunStatus(waiting=999), ""),
        (RunStatus(disk_free=1_000_000), "The disk is nearly full"),
        (RunStatus(faults=("judge: broken",)), "A part of the program failed: judge"),
        (RunStatus(moved="the stick is gone; goes on in spare"), "ANOTHER DISK: the stick is gone"),
        (RunStatus(meters=(_state(),), disk_free=10**12), ""),
    ],
)
def test_the_alarm_names_what_is_wrong(status, start):
    words = alarm_words(Phase.RECORDING, status)
    assert words.startswith(start)
    assert bool(words) is bool(start)


def test_there_is_no_alarm_about_a_run_that_is_over():
    assert alarm_words(Phase.SHOWING, RunStatus(failed="disk full")) == ""


def test_no_meter_is_missed_once_the_recording_has_ended(qtbot):
    gone = RunStatus(meters=(_state(alive=False),))
    assert alarm_words(Phase.RECORDING, gone).startswith("NO READINGS")
    assert alarm_words(Phase.SEALING, gone) == ""
    assert alarm_words(Phase.SEALING, RunStatus(failed="full")).startswith("NOTHING IS BEING KEPT")
    strip, session = StatusStrip(), Session()
    qtbot.addWidget(strip)
    session.status = gone
    for phase, words in ((Phase.RECORDING, "NOT CONNECTED"), (Phase.SEALING, "")):
        session.phase = phase
        strip.show_session(session)
        assert words in strip.meters.text()
        assert bool(strip.meters.text()) is bool(words)
        assert (strip.meters.property("rank") == "caution") is bool(words)


def test_whether_the_computer_may_fall_asleep_is_told_while_recording(qtbot):
    strip, session = StatusStrip(), Session()
    qtbot.addWidget(strip)
    session.status = RunStatus(sleep="sleep is not blocked: no such program; keep the lid open")
    strip.show_session(session)
    assert strip.awake.text() == ""
    session.phase = Phase.RECORDING
    strip.show_session(session)
    assert strip.awake.text() == "sleep is not blocked"
    assert "keep the lid open" in strip.awake.toolTip()


def test_rows_that_only_say_that_nothing_came_are_no_readings():
    silent = replace(_state("clamp"), readings=0)
    assert rows_words(RunStatus(rows={"clamp": 3_000}, meters=(silent,))) == "0 readings"
    some = replace(silent, readings=40)
    assert rows_words(RunStatus(rows={"clamp": 3_000}, meters=(some,))) == "40 readings"
    # What a failed disk did not take is not kept, however much came.
    more = replace(silent, readings=9_000)
    assert rows_words(RunStatus(rows={"clamp": 3_000}, meters=(more,))) == "3,000 readings"
    assert rows_words(RunStatus()) == "", "not counted yet"
