"""The watch over the paint loop sees what blocks it, and does not see what is the machine's."""

import threading
import time

import pytest
from PySide6.QtCore import QTimer

from tests.rig.paint_watch import Gap, PaintWatch, blocking

BLOCK_S, LIMIT_S = 0.2, 0.1


def sleep():
    time.sleep(BLOCK_S)


def work():
    end_s = time.thread_time() + BLOCK_S
    while time.thread_time() < end_s:
        pass


def hold_the_interpreter():
    """One call of C in another thread that lets no other run: the window's thread waits."""
    count = 1 << 20
    while True:
        begun_s = time.thread_time()
        sum(range(count))
        if time.thread_time() - begun_s > BLOCK_S:
            time.sleep(BLOCK_S)  # still there when it is looked who held it
            return
        count *= 2


def named(watch, block):
    """Give the gaps over the limit in which a function ran."""
    return [gap for gap in watch.over(LIMIT_S) if block.__name__ in str(gap)]


@pytest.mark.parametrize("block", [sleep, work])
def test_a_block_of_200_ms_is_seen_and_named(qtbot, block):
    # A busy computer may block before, or be too late to see who it was: it blocks until it is.
    again = QTimer()
    again.timeout.connect(block)
    with PaintWatch() as watch:
        again.start(30)
        qtbot.waitUntil(lambda: bool(named(watch, block)), timeout=20000)
        again.stop()
    assert named(watch, block)[0].own_s > LIMIT_S


def test_a_thread_that_holds_the_interpreter_is_seen_and_named(qtbot):
    with PaintWatch() as watch:
        for _ in range(10):  # a busy computer may be too late to see who it was
            holder = threading.Thread(target=hold_the_interpreter, name="holder")
            holder.start()
            qtbot.waitUntil(lambda one=holder: not one.is_alive(), timeout=20000)
            holder.join()
            if named(watch, hold_the_interpreter):
                break
    assert named(watch, hold_the_interpreter)


def test_a_loop_that_turns_shows_no_gap(qtbot):
    with PaintWatch() as watch:
        qtbot.wait(300)
    assert watch.turns > 20
    assert not watch.over(LIMIT_S), watch.longest


def test_a_block_under_way_at_the_end_counts(qtbot):
    watch = PaintWatch()
    watch.begin()
    qtbot.wait(20)
    sleep()
    watch.end()
    assert watch.over(LIMIT_S)


@pytest.mark.parametrize(
    ("gap", "own_s"),
    [
        (Gap(0.3, 0.0, 0.0, 0.0, in_a_call=True), 0.3),  # it slept, or waited for a file
        (Gap(0.3, 0.0, 0.0, 0.29), 0.3),  # another thread held the interpreter
        (Gap(0.3, 0.28, 0.01, 0.01, in_a_call=True), 0.02),  # others had the processor
        (Gap(0.3, 0.2, 0.2, 0.2), 0.2),  # it worked: never taken off
        (Gap(0.3, 0.0, 0.0, 0.01), 0.0),  # it waited in its loop, and nothing else ran
    ],
)
def test_what_the_machine_took_is_not_the_programs(gap, own_s):
    assert gap.own_s == pytest.approx(own_s)


def test_what_blocks_each_time_is_told_and_what_did_once_is_not(qtbot):
    slept = []

    def once():
        if not slept:
            slept.append(sleep())
        qtbot.wait(20)

    assert not blocking(once, limit_s=LIMIT_S)
    assert blocking(sleep, limit_s=LIMIT_S)
