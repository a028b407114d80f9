"""The paint loop goes on while an index is built, searched and judged."""

import time

import pytest
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication

from meterlog.work.library import Verdicts

MANY = 150
LONGEST_S = 0.05


class Watchdog:
    """Looks every few milliseconds how long ago it could look the last time."""

    def __init__(self):
        self.gaps_s = []
        self._timer = QTimer()
        self._timer.setInterval(3)
        self._timer.timeout.connect(self._look)
        self.begin()
        self._timer.start()

    def begin(self):
        self.gaps_s.clear()
        self._last_s = time.perf_counter()

    def _look(self):
        now_s = time.perf_counter()
        self.gaps_s.append(now_s - self._last_s)
        self._last_s = now_s


@pytest.fixture
def watchdog(window):
    return Watchdog()


def test_nothing_blocks_it_while_a_table_is_read_and_runs_are_held_against_it(
    window, motors, turned, qtbot, watchdog
):
    desk = turned(11)
    QApplication.processEvents()
    watchdog.begin()

    def held():
        desk.tick()
        assert all(one.usual is not None for one in desk.page.table.hits.hits)

    qtbot.waitUntil(held, timeout=60000)
    assert desk.good_ones.usuals is not None
    late = sum(gap > LONGEST_S for gap in watchdog.gaps_s)
    assert len(watchdog.gaps_s) > 100
    assert late <= len(watchdog.gaps_s) / 100, sorted(watchdog.gaps_s)[-5:]


def test_nothing_blocks_it_while_recordings_are_read_searched_and_judged(
    window, recording, turned, qtbot, watchdog
):
    for day in range(MANY):
        recording(f"r{day:03}", day)
    desk = turned(MANY)
    QApplication.processEvents()
    table, words = desk.page.table, desk.page.search.words
    watchdog.begin()
    for text in ("kes", "kestrel", "kestrel r1", ""):
        words.setText(text)
        qtbot.wait(40)
    table.selectAll()
    judged = {Verdicts.IN_ORDER}
    qtbot.waitUntil(lambda: {one.verdict for one in table.hits.hits} == judged, timeout=60000)
    # A machine that does other things too may take the processor away now and then.
    late = sum(gap > LONGEST_S for gap in watchdog.gaps_s)
    assert len(watchdog.gaps_s) > 100
    assert late <= len(watchdog.gaps_s) / 200, sorted(watchdog.gaps_s)[-5:]
