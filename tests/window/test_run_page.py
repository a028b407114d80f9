import math

import pytest

from meterlog.evidence.trace_store import TraceStore
from meterlog.model import Flag, Origin, SpanKind, Verdict
from meterlog.window.findings_view import finding_words
from meterlog.window.session import Phase
from meterlog.window.shown import Shown


def test_digits_show_the_voltage_across_the_motor_and_its_current(window, show):
    show(window)
    page = window.desk.run_page
    assert page.volts.text == "4.25"
    assert page.volts.label == "across the motor"
    assert page.amperes.text == "3.81"


def test_live_blocks_appear_in_the_trace(window, show, block_of):
    shown = show(window, live=True)
    page = window.desk.run_page
    line = shown.traces.lines[2]
    curve = page.trace._amperes.curves[2 - 2][1]
    before = curve.getData()[0].size
    shown.traces.take(block_of(8, 10, (12.25, 8.0, 5.5)))
    page.show_session(window.desk.session)
    x, y = curve.getData()
    assert x.size > before
    assert x[-1] == pytest.approx(9.9)
    assert y[-1] == 5.5
    assert line.last == 5.5


def test_a_gap_is_a_gap_in_the_curve(window, show, block_of):
    shown = show(window, live=True)
    shown.traces.take(block_of(8, 9, (math.nan,) * 3))
    window.desk.run_page.show_session(window.desk.session)
    x, y = window.desk.run_page.trace._amperes.curves[0][1].getData()
    assert math.isnan(y[-1])
    assert x[-1] == pytest.approx(8.9)
    assert window.desk.run_page.amperes.text == "—"
    assert window.desk.run_page.amperes.note == "no data"


def test_an_overload_is_named(window, show, block_of):
    shown = show(window, live=True)
    block = block_of(8, 9, (12.0, 8.0, math.nan))
    block.flags[:, 2] = Flag.OVERLOAD
    shown.traces.take(block)
    window.desk.run_page.show_session(window.desk.session)
    assert window.desk.run_page.amperes.text == "—"
    assert window.desk.run_page.amperes.note == "OVERLOAD"
    assert window.desk.run_page.volts.note == ""


def test_a_meter_that_fell_silent_shows_no_number(window, show, monkeypatch):
    show(window, live=True)
    monkeypatch.setattr(window.desk.session, "now_ns", lambda: 9_000_000_000)
    window.desk.run_page.show_session(window.desk.session)
    assert window.desk.run_page.amperes.text == "—"
    assert window.desk.run_page.amperes.note == "no data"


def test_the_ribbon_has_the_spans_where_the_trace_has_their_times(window, show, qtbot):
    shown = show(window)
    page = window.desk.run_page
    qtbot.waitUntil(lambda: page.ribbon.spans == shown.review.spans)
    page.redraw()
    box = page.trace._volts.item.getViewBox()
    inside = page.trace._surface.mapFromScene(box.mapViewToScene(_point(4.5, 0.0)))
    over = page.trace._surface.viewport().mapToGlobal(inside)
    x = page.ribbon.mapFromGlobal(over).x()
    assert page.ribbon.span_at(x).kind is SpanKind.DEAD
    early = page.trace._surface.mapFromScene(box.mapViewToScene(_point(1.0, 0.0)))
    x = page.ribbon.mapFromGlobal(page.trace._surface.viewport().mapToGlobal(early)).x()
    assert page.ribbon.span_at(x).kind is SpanKind.OFF


def _point(x, y):
    from PySide6.QtCore import QPointF

    return QPointF(x, y)


def test_the_two_plots_share_one_time_axis(window, show):
    show(window)
    page = window.desk.run_page
    page._on_look(3.0, 6.0)
    upper = page.trace._volts.item.getViewBox().viewRange()[0]
    lower = page.trace._amperes.item.getViewBox().viewRange()[0]
    assert upper == pytest.approx([3.0, 6.0])
    assert lower == pytest.approx(upper)


def test_findings_say_the_verdict_in_words_and_lead_to_their_place(window, show):
    shown = show(window)
    page = window.desk.run_page
    finding = shown.review.findings[0]
    item = page.findings.list.item(0)
    assert item.text() == finding_words(finding)
    assert "FAIL" in item.text()
    assert finding.verdict is Verdict.FAIL
    page.findings.list.itemClicked.emit(item)
    start_ns, end_ns = page.outlook.stretch(shown.end_ns)
    assert start_ns < finding.start_ns < finding.end_ns < end_ns
    assert not page.outlook.follows


def test_steps_show_the_steady_figures(window, show):
    show(window)
    table = window.desk.run_page.steps.table
    cells = [table.item(0, column).text() for column in range(table.columnCount())]
    assert cells == ["1", "0:02", "4.25", "3.81", "—", "7.0"]


@pytest.mark.parametrize("origin", list(Origin))
def test_readings_that_were_not_measured_are_marked_on_header_and_trace(window, show, origin):
    show(window, origin=origin)
    measured = origin is Origin.MEASURED
    words = {Origin.MEASURED: "", Origin.TYPED: "TYPED BY HAND"}
    word = words.get(origin, origin.value.upper())
    assert window.header.mark.text() == word
    assert window.header.mark.isVisible() is not measured
    assert window.desk.run_page.trace.mark.text() == word
    assert window.desk.run_page.trace.mark.isVisible() is not measured


def test_following_keeps_the_newest_reading_in_sight(window, show, block_of):
    shown = show(window, live=True)
    page = window.desk.run_page
    for start in range(8, 80, 4):
        shown.traces.take(block_of(start, start + 4, (12.25, 8.0, 3.0)))
        page.show_session(window.desk.session)
        left, right = page.trace._volts.item.getViewBox().viewRange()[0]
        assert left <= shown.end_ns / 1e9 <= right + 1e-9
    assert right - left == pytest.approx(30.0)
    assert left > 45.0


def test_each_theme_repaints_everything(window, show, qtbot):
    show(window)
    day = window.grab().toImage()
    window.toggle_looks()
    qtbot.wait(1)
    dark = window.grab().toImage()
    changed = sum(
        day.pixel(x, y) != dark.pixel(x, y)
        for x in range(0, day.width(), 40)
        for y in range(0, day.height(), 40)
    )
    assert changed > 0.95 * len(range(0, day.width(), 40)) * len(range(0, day.height(), 40))


def test_every_control_has_a_name_for_a_screen_reader(window):
    from PySide6.QtWidgets import QAbstractButton, QComboBox, QLineEdit, QListWidget, QTableWidget

    nameless = [
        widget
        for kind in (QAbstractButton, QComboBox, QLineEdit, QListWidget, QTableWidget)
        for widget in window.findChildren(kind)
        if not widget.accessibleName()
        and not (isinstance(widget, QAbstractButton) and widget.text())
        and not isinstance(widget.parent(), (QComboBox, QTableWidget))
    ]
    assert nameless == []


def test_a_run_without_readings_yet_shows_dashes(window):
    from meterlog.window.digits import NOTHING

    about = make(Origin.MEASURED)
    session = window.desk.session
    session.shown = Shown(about, TraceStore(about.instruments), live=True)
    session.phase = Phase.SHOWING
    window.show_page(1)
    window.desk.tick()
    assert window.desk.run_page.volts.text == NOTHING
    assert window.desk.run_page.state.words == "waiting for readings"


def make(origin):
    from datetime import UTC, datetime

    from meterlog.model import About

    return About("x", datetime(2030, 1, 1, tzinfo=UTC), 0, 0, "meterlog test", origin, ())


def test_at_small_size_nothing_is_cut_off(window, show, qtbot):
    window.resize(1024, 600)
    show(window)
    qtbot.waitUntil(lambda: window.width() == 1024 and window.height() == 600)
    page = window.desk.run_page
    window.grab()
    assert page.trace.height() > 150
    assert page.findings.list.height() > 100
    for widget in (window.keys, window.header, page.ribbon, window.desk.status):
        bottom = widget.mapTo(window, widget.rect().bottomRight())
        assert bottom.x() <= window.width()
        assert bottom.y() <= window.height()
    assert window.keys.heightForWidth(window.keys.width()) <= window.keys.height()
    assert page.trace.mark.font().pixelSize() >= 12


def test_doubts_about_a_meter_stand_among_the_findings_and_lead_to_their_time(window, show, qtbot):
    from dataclasses import replace

    from meterlog.model import Doubt, DoubtKind

    shown = show(window)
    doubt = Doubt(DoubtKind.STUCK, "It repeats itself.", 3_000_000_000, 5_000_000_000, "logger")
    notes = (doubt.text, *shown.review.notes)
    shown.review = replace(shown.review, doubts=(doubt,), notes=notes)
    page = window.desk.run_page
    page.show_judgement(window.desk.session)
    view = page.findings
    texts = [view.list.item(i).text() for i in range(view.list.count())]
    assert any("METER" in text and doubt.text in text for text in texts)
    assert doubt.text not in view.unseen.text(), "once is enough"
    view.picked.emit(doubt)
    start_ns, end_ns = page.outlook.stretch(shown.end_ns)
    assert start_ns <= doubt.start_ns
    assert doubt.end_ns <= end_ns
