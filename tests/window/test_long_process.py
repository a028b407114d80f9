"""Work in a process of its own: progress, cancel, outcome and trouble as in a thread."""

import os
from functools import partial

import pytest

from meterlog.window.long_process import LongProcess
from tests.rig import apart_works
from tests.rig.paint_watch import blocking


@pytest.fixture
def long(qtbot):
    work = LongProcess("test")
    yield work
    work.cancel()
    work.wait()


def outcome(long, qtbot):
    found = []
    qtbot.waitUntil(
        lambda: (got := long.fetch()) is not None and not found.append(got), timeout=30000
    )
    return found[0]


def test_it_tells_its_part_and_gives_what_it_made_elsewhere(long, qtbot):
    assert long.begin(partial(apart_works.add, 2, 3))
    assert not long.begin(partial(apart_works.add, 2, 3))
    qtbot.waitUntil(lambda: long.part >= 0.5, timeout=30000)
    (made, process), trouble = outcome(long, qtbot)
    assert (made, trouble) == (5, "")
    assert process != os.getpid()
    assert not long.busy


def test_an_error_keeps_its_words_and_its_remedy_of_the_window(long, qtbot):
    long.begin(apart_works.refuse)
    made, trouble = outcome(long, qtbot)
    assert made is None
    assert trouble == "fingerprint: is no pack. Leave the fingerprint empty."


def test_a_fault_is_told_as_one(long, qtbot):
    long.begin(apart_works.fail)
    assert outcome(long, qtbot) == (
        None,
        "ZeroDivisionError: a fault This is a fault of the program; please report it.",
    )


def test_a_process_that_dies_is_told(long, qtbot):
    long.begin(apart_works.break_off)
    made, trouble = outcome(long, qtbot)
    assert made is None
    assert trouble == "This can't be done now: it broke off (code 7). Try again."


def test_what_can_not_go_to_another_process_is_told(long, qtbot):
    long.begin(lambda progress: progress(1.0))
    made, trouble = outcome(long, qtbot)
    assert made is None
    assert "fault of the program" in trouble


@pytest.mark.parametrize("asks", [True, False])
def test_cancelled_work_leaves_nothing_half_made(long, qtbot, tmp_path, asks):
    long.begin(partial(apart_works.fill_a_folder, tmp_path, asks))
    qtbot.waitUntil(lambda: bool(list(tmp_path.glob("*/half"))), timeout=30000)
    long.cancel()
    assert long.cancelling
    assert outcome(long, qtbot) == (None, "")
    assert not list(tmp_path.iterdir())


def test_the_paint_loop_goes_on_meanwhile(long, qtbot):
    def hold():
        long.begin(apart_works.hold_the_interpreter)
        assert outcome(long, qtbot)[1] == ""

    late = blocking(hold)
    assert not late, str(late[0])
