"""The paint loop goes on while an index is built, searched and judged."""

from contextlib import contextmanager

import pytest
from PySide6.QtWidgets import QApplication

from meterlog.work.library import Verdicts
from tests.rig.paint_watch import PaintWatch, allowed_s

MANY = 150


@pytest.fixture
def watched(window):
    """Give what watches the window's thread, and holds what the program itself took to a limit.

    Nothing may take longer than that, and few turns of the loop, one in so many, half as long.
    """

    @contextmanager
    def watch(one_in):
        QApplication.processEvents()
        limit_s, watching = allowed_s(), PaintWatch()
        with watching:
            yield
        # Others who share the machine come and go: what was slow meanwhile may be quick again.
        limit_s = max(limit_s, allowed_s())
        late, slow = watching.over(limit_s), watching.over(limit_s / 2.0)
        assert watching.turns > 100
        assert not late, "\n".join(map(str, late[:3]))
        assert len(slow) <= watching.turns / one_in, "\n".join(map(str, slow[:3]))

    return watch


def test_nothing_blocks_it_while_a_table_is_read_and_runs_are_held_against_it(
    motors, turned, qtbot, watched
):
    desk = turned(11)

    def held():
        desk.tick()
        assert all(one.usual is not None for one in desk.page.table.hits.hits)

    with watched(one_in=100):
        qtbot.waitUntil(held, timeout=60000)
    assert desk.good_ones.usuals is not None


def test_nothing_blocks_it_while_recordings_are_read_searched_and_judged(
    recording, turned, qtbot, watched
):
    for day in range(MANY):
        recording(f"r{day:03}", day)
    desk = turned(MANY)
    table, words = desk.page.table, desk.page.search.words
    judged = {Verdicts.IN_ORDER}
    with watched(one_in=200):
        for text in ("kes", "kestrel", "kestrel r1", ""):
            words.setText(text)
            qtbot.wait(40)
        table.selectAll()
        qtbot.waitUntil(lambda: {one.verdict for one in table.hits.hits} == judged, timeout=60000)
