"""Two edges on the trace and the figures between them, by key and by mouse."""

import numpy as np
import pytest
from PySide6.QtCore import QPointF, Qt
from PySide6.QtTest import QTest

from meterlog.model import Block
from meterlog.recording import Recorder
from meterlog.window.pages import Page

_Key = Qt.Key


@pytest.fixture
def opened(window, qtbot, tmp_path, about):
    """A window on a real recording: 12 V and 4 A for 10 s, from then on 8 A."""
    recorder = Recorder.create(tmp_path / "run", about)
    t_ns = np.arange(200) * 100_000_000
    amps = np.where(t_ns < 10_000_000_000, 4.0, 8.0)
    values = np.column_stack([np.full(200, 12.0), np.zeros(200), amps])
    recorder.take(Block(about.instruments[0].key, t_ns, values, np.zeros((200, 3), np.uint8)))
    recorder.close()
    window.desk.open(tmp_path / "run")
    qtbot.waitUntil(lambda: window.desk.session.shown is not None and not window.desk.session.busy)
    window.desk.tick()
    return window


def figures(window, qtbot, *words):
    line = window.desk.run_page.stretch

    def told():
        window.desk.run_page.measure(window.desk.session)
        assert all(word in line.words.text() for word in words), line.words.text()

    qtbot.waitUntil(told)
    return line.words.text()


def press(qtbot, window, key, held=Qt.KeyboardModifier.NoModifier):
    qtbot.keyClick(window.pages.currentWidget(), key, held)


def test_a_key_measures_the_middle_of_what_is_on_screen_and_a_second_one_ends_it(opened, qtbot):
    line = opened.desk.run_page.stretch
    assert not line.isVisible()
    press(qtbot, opened, _Key.Key_X)
    told = figures(opened, qtbot, "motor current: mean ", "motor feed: mean ")
    assert "U without: the meter's accuracy" in told
    press(qtbot, opened, _Key.Key_X)
    assert line.edges is None
    assert not line.isVisible()


def test_shift_and_arrows_move_the_edges_and_the_figures_follow(opened, qtbot):
    press(qtbot, opened, _Key.Key_X)
    line = opened.desk.run_page.stretch
    start, end = line.edges
    shift = Qt.KeyboardModifier.ShiftModifier
    press(qtbot, opened, _Key.Key_Right, shift)
    assert line.edges[0] > start
    assert line.edges[1] == end
    for _ in range(40):
        press(qtbot, opened, _Key.Key_Right, shift)
    assert line.edges[0] < line.edges[1]
    press(qtbot, opened, _Key.Key_Up, shift)
    assert line.edges[1] > end
    for _ in range(60):
        press(qtbot, opened, _Key.Key_Left, shift)
    assert line.edges[0] == 0
    for _ in range(25):
        press(qtbot, opened, _Key.Key_Down, shift)
    assert line.edges[1] < 10_000_000_000
    figures(opened, qtbot, "motor current: mean 4.0", "4.000 to 4.000, median 4.000", "38 readings")


def test_an_edge_is_dragged_with_the_mouse_on_either_plot(opened, qtbot):
    press(qtbot, opened, _Key.Key_X)
    page = opened.desk.run_page
    qtbot.wait(50)
    view = page.trace._surface
    for plot in page.trace._plots:
        start, end = page.stretch.edges
        box = plot.item.getViewBox()
        middle = sum(plot.range) / 2
        at, to = (
            view.mapFromScene(box.mapViewToScene(QPointF(x, middle)))
            for x in (start / 1e9, start / 1e9 - 2.0)
        )
        QTest.mousePress(view.viewport(), Qt.MouseButton.LeftButton, pos=at)
        for part in (0.3, 0.6, 1.0):
            QTest.mouseMove(view.viewport(), at + (to - at) * part)
            qtbot.wait(20)
        QTest.mouseRelease(view.viewport(), Qt.MouseButton.LeftButton, pos=to)
        assert page.stretch.edges[0] == pytest.approx(start - 2_000_000_000, abs=200_000_000)
        assert page.stretch.edges[1] == pytest.approx(end, abs=1_000)
        for other in page.trace._plots:
            assert other.measured.getRegion()[0] * 1e9 == pytest.approx(page.stretch.edges[0])


def test_a_recording_that_is_gone_is_told_where_the_figures_would_stand(opened, qtbot, tmp_path):
    (tmp_path / "run" / "data" / "about.json").unlink()
    press(qtbot, opened, _Key.Key_X)
    figures(opened, qtbot, "about.json")
    assert opened.desk.page is Page.RUN
