from pathlib import Path

import pytest

from meterlog.acquire import ReaderState
from meterlog.window.session import Phase
from meterlog.window.status_strip import (
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
        (RunStatus(disk_free=1_000_000), "The disk is nearly full"),
        (RunStatus(faults=("judge: broken",)), "A part of the program failed: judge"),
        (RunStatus(meters=(_state(),), disk_free=10**12), ""),
    ],
)
def test_the_alarm_names_what_is_wrong(status, start):
    words = alarm_words(Phase.RECORDING, status)
    assert words.startswith(start)
    assert bool(words) is bool(start)


def test_there_is_no_alarm_about_a_run_that_is_over():
    assert alarm_words(Phase.SHOWING, RunStatus(failed="disk full")) == ""
