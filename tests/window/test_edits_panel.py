"""Marks and limits of a sealed recording are amended in the window, by keys alone or the mouse."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QApplication, QWidget

from meterlog.model import Event, EventKind
from meterlog.recording import Recorder, seal
from meterlog.window.edits import EditsPanel
from meterlog.window.language import speak, speak_english
from meterlog.window.session import Phase, Session
from meterlog.work.amendments import amendments_of, amendments_path

S = 1_000_000_000
EVENTS = (
    Event(2 * S, EventKind.SPEED, "1"),
    Event(4 * S, EventKind.TAP),
    Event(5 * S, EventKind.SPEED, "2"),
    Event(7 * S, EventKind.SPEED, "0"),
)


@pytest.fixture
def folder(tmp_path, about_of, block_of):
    """A sealed recording of eight seconds."""
    folder = tmp_path / "run"
    recorder = Recorder.create(folder, about_of(), keep_raw=False)
    recorder.take(block_of(0, 2, (12.5, 12.5, 0.0)))
    for event in EVENTS:
        recorder.take(event)
    recorder.take(block_of(2, 7, (12.25, 8.0, 3.81)))
    recorder.take(block_of(7, 8, (12.5, 12.5, 0.0)))
    recorder.close()
    seal(folder)
    return folder


@pytest.fixture
def panel(qtbot, folder):
    session = Session()
    panel = EditsPanel(session)
    qtbot.addWidget(panel)
    panel.resize(360, 600)
    panel.show()
    qtbot.waitExposed(panel)
    assert not panel.isEnabled()
    session.open(folder)
    settle(panel, session)
    panel.form.who.setText("N. N. (invented)")
    return panel


def settle(panel, session):
    assert session.wait(60.0)
    panel.show_session(session)


def done(panel):
    settle(panel, panel._session)
    return amendments_of(panel._shown.top.folder)[0]


def rows(panel):
    marks = panel.form.marks
    return [marks.item(row).text() for row in range(marks.count())]


def test_a_step_is_relabelled_by_keys_alone_and_judged_anew(panel, folder, qtbot):
    before = {path: path.read_bytes() for path in folder.rglob("*") if path.is_file()}
    panel.form.marks.setFocus()
    qtbot.keyClick(panel.form.marks, Qt.Key.Key_Down)
    assert panel.form.marks.mark() == EVENTS[1]
    qtbot.keyClick(panel.form.marks, Qt.Key.Key_Down)
    panel.form.speed.setFocus(Qt.FocusReason.TabFocusReason)
    qtbot.keyClicks(panel.form.speed, "3")
    assert panel.form.said.text().startswith("NOT WRITTEN YET")
    qtbot.keyClick(panel.form.speed, Qt.Key.Key_Return)
    assert panel.form.why.hasFocus()
    assert not amendments_path(folder).exists()
    qtbot.keyClicks(panel.form.why, "wrong key")
    qtbot.keyClick(panel.form.why, Qt.Key.Key_Return)
    (edit,) = done(panel)
    assert (edit.old, edit.new, edit.who, edit.why) == ("2", "3", "N. N. (invented)", "wrong key")
    assert {step.speed for step in panel._session.review.steps} == {0, 1, 3, None}
    assert any("5.000 s  speed 3" in one for one in rows(panel))
    assert {path: path.read_bytes() for path in before} == before


def test_a_mark_moves_by_samples_and_by_typed_seconds(panel, qtbot):
    seen = []
    panel.pending_changed.connect(seen.append)
    assert panel.pick(round(4.1 * S))
    panel.form.at.setFocus(Qt.FocusReason.TabFocusReason)
    for key in (Qt.Key.Key_Left, Qt.Key.Key_Left, Qt.Key.Key_Right):
        qtbot.keyClick(panel.form.at, key)
    assert panel.form.at.text() == "3.9"
    assert seen[-3:] == [round(3.9 * S), round(3.8 * S), round(3.9 * S)]
    panel.form.at.selectAll()
    qtbot.keyClicks(panel.form.at, "3,75")
    panel.form.why.setText("hand was late")
    qtbot.keyClick(panel.form.at, Qt.Key.Key_Return)
    (edit,) = done(panel)
    assert (edit.subject, edit.old, edit.new) == ("tap", "4", "3.75")
    assert seen[-1] is None


def test_what_can_not_be_is_told_at_once_and_nothing_is_pending(panel, qtbot):
    panel.pick(5 * S)
    panel.form.at.setFocus(Qt.FocusReason.TabFocusReason)
    qtbot.keyClicks(panel.form.at, "1.5")
    assert panel.pending is None
    assert "would pass the command at 2 s" in panel.form.said.text()
    panel.form.at.selectAll()
    qtbot.keyClicks(panel.form.at, "x")
    assert "is no time" in panel.form.said.text()
    assert not panel.form.write.isEnabled()


def test_undo_drops_what_is_not_written_and_says_so(panel, folder, qtbot):
    panel.pick(4 * S)
    qtbot.mouseClick(panel.form.on, Qt.MouseButton.LeftButton)
    assert panel.pending is not None
    qtbot.mouseClick(panel.form.undo, Qt.MouseButton.LeftButton)
    assert panel.pending is None
    assert panel.form.said.text() == "Dropped: nothing had been written."
    assert panel.form.at.text() == "4.000"
    assert not amendments_path(folder).exists()


def test_by_mouse_a_tap_is_withdrawn_undone_and_withdrawn_again_each_by_an_entry(panel, qtbot):
    panel.pick(4 * S)
    panel.form.why.setText("nobody tapped")
    for button in (panel.form.withdraw, panel.form.write):
        qtbot.mouseClick(button, Qt.MouseButton.LeftButton)
    assert len(done(panel)) == 1
    assert EVENTS[1] not in panel._shown.events
    assert any("✕ 4.000 s  tap" in one for one in rows(panel))
    qtbot.mouseClick(panel.form.undo, Qt.MouseButton.LeftButton)
    assert len(done(panel)) == 2
    assert panel.form.said.text() == "Undone by an edit on top; both stay listed."
    assert EVENTS[1] in panel._shown.events
    assert not panel.form.undo.isEnabled()
    qtbot.mouseClick(panel.form.redo, Qt.MouseButton.LeftButton)
    edits = done(panel)
    assert [one.new for one in edits] == ["", "4", ""]
    assert edits[2].why.startswith("redo of the edit of ")
    assert "(nobody tapped)" in edits[2].why
    assert EVENTS[1] not in panel._shown.events
    assert panel.form.edits.count() == 3


def test_a_limit_is_changed_and_one_out_of_range_is_refused(panel, qtbot):
    limit = panel.form.limit
    limit.setCurrentIndex(limit.findData("speed.1.max_a"))
    limit.activated.emit(limit.currentIndex())
    assert panel.form.value.text() == "5"
    panel.form.value.setFocus(Qt.FocusReason.TabFocusReason)
    qtbot.keyClicks(panel.form.value, "1")
    assert panel.pending is None
    assert panel.form.said.text()
    panel.form.value.selectAll()
    qtbot.keyClicks(panel.form.value, "3.5")
    panel.form.why.setText("data sheet")
    qtbot.keyClick(panel.form.value, Qt.Key.Key_Return)
    (edit,) = done(panel)
    assert (edit.subject, edit.old, edit.new) == ("speed.1.max_a", "5", "3.5")
    assert panel._shown.about.limits.at(1).max_a == 3.5


def test_who_is_remembered_and_a_refused_edit_stays_pending(panel, folder, qtbot):
    panel.pick(4 * S)
    qtbot.mouseClick(panel.form.back, Qt.MouseButton.LeftButton)
    panel.form.why.setText("hand was late")
    amendments_path(folder).write_text("damaged\n")
    qtbot.mouseClick(panel.form.write, Qt.MouseButton.LeftButton)
    settle(panel, panel._session)
    assert "can't be added to" in panel.form.said.text()
    assert panel.pending is not None
    assert amendments_path(folder).read_text() == "damaged\n"
    amendments_path(folder).unlink()
    qtbot.mouseClick(panel.form.write, Qt.MouseButton.LeftButton)
    assert len(done(panel)) == 1
    other = EditsPanel(Session())
    qtbot.addWidget(other)
    other._session.open(folder)
    settle(other, other._session)
    assert other.form.who.text() == "N. N. (invented)"


def test_nothing_can_be_amended_while_something_else_is_on_show(panel):
    panel._session.phase = Phase.RECORDING
    panel.show_session(panel._session)
    assert not panel.isEnabled()
    assert not panel._session.amend(lambda top: top.undoing("N. N."))
    assert "stop it first" in panel._session.trouble


def test_all_controls_have_a_name_and_esc_leaves(panel, qtbot):
    assert all(one.accessibleName() for one in panel.form.in_order())
    left = []
    panel.closed.connect(lambda: left.append(1))
    panel.form.why.setFocus()
    qtbot.keyClick(panel.form.why, Qt.Key.Key_Escape)
    assert left == [1]
    assert panel.form.marks.hasFocus()


def test_a_mark_is_shown_to_the_millisecond_and_edited_in_full(panel, qtbot, folder):
    at = panel.form.at
    at.show_seconds("4.814617556")
    assert at.text() == "4.815"
    assert at.toolTip().startswith("4.814617556 s")
    at.setFocus(Qt.FocusReason.TabFocusReason)
    assert at.text() == "4.814617556"
    panel.form.who.setFocus(Qt.FocusReason.TabFocusReason)
    assert at.text() == "4.815"
    at.setFocus(Qt.FocusReason.TabFocusReason)
    qtbot.keyClicks(at, "4.9")
    panel.form.who.setFocus(Qt.FocusReason.TabFocusReason)
    assert at.text() == "4.9"
    assert panel.pending.t_ns == round(4.9 * S)


def test_limits_are_named_in_words_with_their_key_in_the_tip(panel, qtbot):
    limit = panel.form.limit
    named = {limit.itemData(row): limit.itemText(row) for row in range(limit.count())}
    assert named["nominal_v"] == "nominal voltage: 12 V"
    assert named["speed.1.max_a"].startswith("highest current at speed 1: ")
    assert all("_" not in words for words in named.values())
    limit.setCurrentIndex(limit.findData("open_current_a"))
    limit.activated.emit(limit.currentIndex())
    assert limit.toolTip().endswith("(open_current_a)")
    panel.form.value.setFocus(Qt.FocusReason.TabFocusReason)
    qtbot.keyClicks(panel.form.value, "0.5")
    assert "next to no current below: 0.3 A becomes 0.5 A" in panel.form.said.text()


def test_what_is_said_of_an_edit_moves_nothing_that_is_clicked(panel, qtbot):
    def places():
        for _ in range(4):
            QApplication.processEvents()
        # The list of edits, which is only read, gives the room.
        clicked = [one for one in panel.form.in_order() if one is not panel.form.edits]
        return [(one.mapTo(panel, QPoint(0, 0)), one.size()) for one in clicked]

    panel.resize(300, 390)  # as on a screen of 1024 x 600
    assert panel.pick(4 * S)
    before = places()
    qtbot.mouseClick(panel.form.withdraw, Qt.MouseButton.LeftButton)
    assert panel.form.said.text().startswith("NOT WRITTEN YET")
    assert panel.form.said.isVisible()
    assert places() == before
    panel.form.why.setText("slipped finger")
    qtbot.mouseClick(panel.form.write, Qt.MouseButton.LeftButton)
    done(panel)
    assert panel.form.withdraw.text() == "Put back"
    assert places() == before
    panel.form.told.say("words without end " * 40)
    assert places() == before
    assert panel.form.said.toolTip() == panel.form.said.text()


def test_the_ribbon_stays_under_the_trace_beside_a_wider_panel(window, show, qtbot):
    window.resize(1024, 600)
    shown = show(window)
    page = window.desk.run_page
    qtbot.wait(50)

    def right():
        return page.trace.time_scale(page.ribbon, 0, shown.end_ns).right

    before = right()
    wider = QWidget()
    wider.setMinimumWidth(500)
    page.put_aside(wider)
    page.show_aside(wider)
    qtbot.waitUntil(lambda: right() < before - 50)
    qtbot.waitUntil(lambda: page.ribbon._scale.right == right())


def test_that_an_edit_is_not_written_stands_out_in_any_language(panel, qtbot):
    try:
        assert speak("de") == "de"
        panel.pick(4 * S)
        qtbot.mouseClick(panel.form.withdraw, Qt.MouseButton.LeftButton)
        assert panel.form.said.text().startswith("NOCH NICHT GESCHRIEBEN")
        assert panel.form.said.property("rank") == "caution"
    finally:
        speak_english()
