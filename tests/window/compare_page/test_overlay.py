"""The picture of the page Before / after: alignment, gaps, zoom by keys and mouse, speed."""

import time
from itertools import pairwise

import numpy as np
import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent

from meterlog.evidence.palette import DARK, DAY
from meterlog.model import Quantity
from meterlog.window.compare_page.overlay_curves import curves_of
from meterlog.window.compare_page.overlay_lines import line_pen

SECOND = 1_000_000_000


@pytest.fixture
def desk(page, worn, healthy):
    return page([worn], [healthy])


def _curves(desk, quantity=Quantity.CURRENT, columns=4000):
    picture = desk.view.picture
    return curves_of(desk.laid.runs, picture.axis, quantity, picture.stretch, columns)


def test_every_speed_begins_at_once_in_both_runs(desk):
    pieces = desk.view.picture.axis.pieces
    assert [one.speed for one in pieces] == [1, 2]
    lengths_s = [(one.end_ns - one.start_ns) / SECOND for one in pieces]
    assert lengths_s == pytest.approx([6.0, 9.0], abs=0.1)
    for curve in _curves(desk):
        for piece in pieces:
            inside = (curve.t_ns >= piece.start_ns) & (curve.t_ns < piece.end_ns)
            real = inside & np.isfinite(curve.values)
            peak = curve.t_ns[real][np.argmax(curve.values[real])]
            assert peak - piece.start_ns < 0.1 * SECOND


def test_nothing_of_the_next_command_stands_at_the_end_of_a_speed(desk):
    first = desk.view.picture.axis.pieces[0]
    for curve in _curves(desk):
        (ends,) = np.flatnonzero(np.isnan(curve.values) & (curve.t_ns == first.end_ns))
        late = curve.t_ns[:ends] > first.start_ns + SECOND
        assert late.sum() > 20
        assert np.nanmax(curve.values[:ends][late]) < 6.0


def test_a_gap_stays_a_gap(desk):
    old, new = _curves(desk)
    within = (old.t_ns > 2.1 * SECOND) & (old.t_ns < 2.9 * SECOND)
    assert not np.isfinite(old.values[within]).any()
    whole = np.isnan(old.values) & (old.t_ns > 2 * SECOND) & (old.t_ns < 3.2 * SECOND)
    assert whole.any()
    within = (new.t_ns > 2.1 * SECOND) & (new.t_ns < 2.9 * SECOND)
    assert np.isfinite(new.values[within]).all()


def test_by_time_both_begin_with_the_first_command(desk):
    desk.look(by_step=False)
    picture = desk.view.picture
    (piece,) = picture.axis.pieces
    assert [own[0] for own in piece.own_ns] == [2 * SECOND, 1 * SECOND]
    assert picture.axis.end_ns == pytest.approx(15 * SECOND, abs=0.1 * SECOND)
    assert desk.view.by_time.isChecked()
    assert not desk.view.by_step.isChecked()


def test_the_voltage_is_that_across_the_motor(desk):
    for curve in _curves(desk, Quantity.VOLTAGE):
        late = curve.values[np.isfinite(curve.values)][-20:]
        assert np.mean(late) == pytest.approx(9.0, abs=0.05)


def test_the_limits_stand_behind_the_current_of_their_speed(desk):
    bands = desk.view.picture._bands
    assert [(one.speed, one.min_a, one.max_a) for one in bands] == [(1, 2.0, 5.0), (2, 6.0, 12.0)]
    assert [one.start_ns for one in bands] == [0, 6 * SECOND]


def test_a_row_chooses_the_step_in_the_picture_and_a_click_the_row(desk, qtbot):
    picture, table = desk.view.picture, desk.view.table.table
    table.setCurrentCell(1, 0)
    assert picture.speed == 2
    assert picture.stretch == (6 * SECOND, picture.axis.end_ns)
    assert "Speed 2: " in desk.view.table.said.text()
    desk.look_at_all()
    assert picture.stretch == (0, picture.axis.end_ns)
    assert table.currentRow() == -1
    scale = picture.scale()
    at = QPoint(round(scale.x(3 * SECOND)), picture.height() // 2)
    qtbot.mouseClick(picture, Qt.MouseButton.LeftButton, pos=at)
    assert picture.speed == 1
    assert table.currentRow() == 0


def test_the_wheel_zooms_at_the_pointer_and_a_drag_moves(desk, qtbot):
    picture = desk.view.picture
    scale = picture.scale()
    x = scale.x(9 * SECOND)
    wheel = QWheelEvent(
        QPointF(x, 200.0), picture.mapToGlobal(QPointF(x, 200.0)), QPoint(), QPoint(0, 240),
        Qt.MouseButton.NoButton, Qt.KeyboardModifier.NoModifier, Qt.ScrollPhase.NoScrollPhase,
        False,
    )  # fmt: skip
    picture.wheelEvent(wheel)
    start, end = picture.stretch
    assert end - start == pytest.approx(7.5 * SECOND, rel=0.01)
    assert picture.scale().t_ns(x) == pytest.approx(9 * SECOND, abs=0.05 * SECOND)
    qtbot.mousePress(picture, Qt.MouseButton.LeftButton, pos=QPoint(400, 200))
    qtbot.mouseMove(picture, QPoint(300, 200))
    qtbot.mouseRelease(picture, Qt.MouseButton.LeftButton, pos=QPoint(300, 200))
    moved, _ = picture.stretch
    assert moved > start
    assert picture.speed is None
    qtbot.mouseDClick(picture, Qt.MouseButton.LeftButton, pos=QPoint(300, 200))
    assert picture.stretch == (0, picture.axis.end_ns)


def test_nobody_can_zoom_or_move_beyond_the_runs(desk):
    picture = desk.view.picture
    for _ in range(60):
        picture.zoom(1.0)
    start, end = picture.stretch
    assert 0 < end - start <= 2_000_000
    for _ in range(9):
        picture.look_on(-4e9)
    assert picture.stretch[0] == 0
    for _ in range(60):
        picture.zoom(-1.0)
    assert picture.stretch == (0, picture.axis.end_ns)


@pytest.mark.parametrize("palette", [DAY, DARK])
def test_old_and_new_are_told_apart_without_colour(desk, palette):
    assert line_pen(palette, new=True).widthF() > line_pen(palette, new=False).widthF()
    desk.set_palette(palette, 15)
    picture = desk.view.picture
    piece = picture.axis.pieces[1]
    picture._look(piece.end_ns - 2 * SECOND, piece.end_ns)
    image = picture.grab().toImage()
    lower = picture.plots()[1].values
    ink = line_pen(palette, new=True).color().rgb()
    y = round(lower.y(9.0))
    columns = range(round(lower.rect.left()) + 2, round(lower.rect.right()) - 2)
    heights = [sum(image.pixel(x, at) == ink for at in range(y - 6, y + 7)) for x in columns]
    assert max(heights) >= 6  # a square
    assert sum(one >= 1 for one in heights) > 0.9 * len(heights)
    assert sorted(heights)[len(heights) // 2] < 5  # the line between them


def test_a_frame_is_quick(desk):
    desk.set_palette(DAY, 15)
    picture = desk.view.picture
    took = []
    for _ in range(20):
        picture.zoom(0.05)
        begun = time.perf_counter()
        picture.repaint()
        took.append(time.perf_counter() - begun)
    # 16 ms are what a frame has; ten times that is no slow computer but a slow painter.
    assert sorted(took)[10] < 0.16


def test_typed_readings_are_marked_and_joined_by_nothing(page, recorded, tmp_path):
    more = {"each_s": 1.0, "dwell_s": (2, 30, 30)}
    old = recorded(tmp_path / "by hand", **more)
    new = recorded(tmp_path / "by hand too", **more)
    desk = page([old], [new])
    assert "TYPED BY HAND" in desk.laid.mark
    desk.set_palette(DAY, 12)
    curves = _curves(desk)
    assert all(curve.typed for curve in curves)
    picture = desk.view.picture
    picture._look(4 * SECOND, 20 * SECOND)
    image = picture.grab().toImage()
    current = picture.plots()[1]
    t_ns = current.curves[1].t_ns
    scale, values = picture.scale(), current.values
    ink = line_pen(DAY, new=True).color().rgb()
    y = round(values.y(4.0))
    inside = t_ns[(t_ns > 6 * SECOND) & (t_ns < 18 * SECOND)]
    assert inside.size > 6
    for at, after in pairwise(inside):
        x = round(scale.x(at))
        across = [image.pixel(x + dx, y + dy) for dx in (-1, 0, 1) for dy in range(-8, 9)]
        assert ink in across
        middle = round(scale.x((at + after) / 2))
        assert ink not in [image.pixel(middle, y + dy) for dy in range(-8, 9)]
