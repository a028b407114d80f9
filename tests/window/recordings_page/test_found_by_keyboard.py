"""The Recordings page by keyboard alone, in the whole window."""

import shutil

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from meterlog.window.pages import Page
from meterlog.window.session import Phase
from meterlog.work.library import Verdicts, WatchedFolders

_Key = Qt.Key


def press(qtbot, window, *keys):
    """Press keys where the focus is."""
    for key in keys:
        qtbot.keyClick(window.focusWidget() or window, key)


def names(desk):
    return [hit.folder.name for hit in desk.page.table.hits.hits]


def shown_keys(desk):
    keys = desk.keys()
    return [key.shown for key in keys]


def test_a_recording_is_found_by_words_and_opened(window, recording, turned, qtbot):
    recording("a", 0, "Löwe hatch (invented)")
    recording("b", 1)
    desk = turned(2)
    assert names(desk) == ["b", "a"]
    press(qtbot, window, _Key.Key_I)
    assert window.focusWidget() is desk.page.search.words
    qtbot.keyClicks(window.focusWidget(), "hatch lowe")
    qtbot.waitUntil(lambda: names(desk) == ["a"], timeout=5000)
    assert "no air" in desk.page.detail.text()
    press(qtbot, window, _Key.Key_Return)
    assert window.focusWidget() is desk.page.table
    press(qtbot, window, _Key.Key_Return)
    assert window.desk.page is Page.RUN
    qtbot.waitUntil(lambda: window.desk.session.phase is Phase.SHOWING, timeout=10000)
    assert window.desk.session.folder.name == "a"


def test_a_job_is_opened_with_enter(window, recording, job, turned, qtbot):
    job("j", recording("a"))
    desk = turned(2)
    press(qtbot, window, _Key.Key_I)
    qtbot.keyClicks(window.focusWidget(), "lowe")
    qtbot.waitUntil(lambda: names(desk) == ["j", "a"], timeout=5000)  # its card's word is lent
    press(qtbot, window, _Key.Key_Return, _Key.Key_Home, _Key.Key_Return)
    assert window.desk.page is Page.JOB
    assert window.desk.at_hand.card.vehicle == "Löwe hatch (invented)"


def test_rows_are_walked_sorted_chosen_and_their_currents_shown(window, recording, turned, qtbot):
    for day, (name, amps) in enumerate((("c", 4.2), ("a", 4.0), ("b", 3.8))):
        recording(name, day, amps=amps)
    desk = turned(3)
    table = desk.page.table
    table.setFocus()
    assert names(desk) == ["b", "a", "c"]
    press(qtbot, window, _Key.Key_Down, _Key.Key_Down)
    assert table.current_hit().folder.name == "c"
    press(qtbot, window, *[_Key.Key_Y] * 4)
    qtbot.waitUntil(lambda: names(desk) == ["a", "b", "c"], timeout=5000)
    assert table.current_hit().folder.name == "c", "another order moves nobody's place"
    press(qtbot, window, _Key.Key_V)
    qtbot.waitUntil(lambda: names(desk) == ["c", "b", "a"], timeout=5000)
    judged = {Verdicts.IN_ORDER}
    qtbot.waitUntil(lambda: {one.verdict for one in table.hits.hits} == judged, timeout=20000)
    press(qtbot, window, _Key.Key_A)
    view = desk.page.currents
    qtbot.waitUntil(lambda: view.shown is not None and len(view.shown.points) == 3, timeout=5000)
    assert view.accessibleName() == (
        "motor current over dates: Speed 1: mean 4.00 A of 3, spread 0.20 A (standard deviation)"
        " SIMULATED"
    )
    press(qtbot, window, _Key.Key_H)
    assert view.shown.speed == 1, "there is one speed only"


def test_what_was_cut_off_is_sealed_with_one_key_and_judged(window, recording, turned, qtbot):
    folder = recording("cut", sealed=False)
    desk = turned(1)
    qtbot.waitUntil(lambda: desk.work.unsealed == (folder,), timeout=5000)
    assert "not sealed" in desk.page.table.hits.index(0, 1).data()
    assert "C" in shown_keys(desk)
    desk.page.table.setFocus()
    press(qtbot, window, _Key.Key_C)
    qtbot.waitUntil((folder / "bagit.txt").is_file, timeout=10000)
    qtbot.waitUntil(lambda: desk.work.unsealed == (), timeout=10000)
    qtbot.waitUntil(lambda: desk.page.table.hits.hits[0].state == "recovered", timeout=5000)
    assert not desk.page.folders.mend.isVisible()
    assert "C" not in shown_keys(desk)


def test_what_is_sealed_between_two_looks_is_looked_for_again(window, recording, turned, qtbot):
    folder = recording("cut", sealed=False)
    desk = turned(1)
    qtbot.waitUntil(lambda: desk.work.unsealed == (folder,), timeout=5000)
    session = window.desk.session
    window.desk.tick()
    session.mend((folder,))
    session._work.join(20.0)
    window.desk.tick()
    assert not session.busy
    qtbot.waitUntil(lambda: desk.work.unsealed == (), timeout=5000)


def test_a_bad_date_is_said_where_it_was_typed_and_esc_leaves_the_field(
    window, recording, turned, qtbot
):
    recording("a")
    desk = turned(1)
    press(qtbot, window, _Key.Key_I, _Key.Key_Tab)
    assert window.focusWidget() is desk.page.search.since
    qtbot.keyClicks(window.focusWidget(), "soon")
    desk.tick()
    assert "soon: is no date." in desk.page.trouble.text()
    press(qtbot, window, _Key.Key_Escape, _Key.Key_Q)
    desk.tick()
    assert desk.page.search.since.text() == ""
    assert not desk.page.trouble.isVisible()


def test_tab_goes_as_the_eye_goes_and_every_control_has_a_name(window, recording, turned, qtbot):
    recording("a")
    desk = turned(1)
    page = desk.page
    page.search.words.setFocus()
    seen = []
    for _ in range(9):
        seen.append(window.focusWidget())
        qtbot.keyClick(window.focusWidget(), _Key.Key_Tab)
    asked = [one for one in page.search.in_order() if one.isVisible()]
    assert seen[:7] == [*asked, page.table]
    assert seen[8] is page.folders.folders
    assert all(one.accessibleName() for one in seen)


def test_a_folder_that_is_gone_is_said_and_its_rows_open_nothing(
    window, recording, turned, qtbot, shelf, tmp_path_factory
):
    stick = tmp_path_factory.mktemp("stick")
    recording("there")
    recording("away", 1, place=stick)
    WatchedFolders().keep([stick])
    desk = turned(2)
    desk.watch(stick)
    qtbot.waitUntil(lambda: not desk.work.busy or desk.tick(), timeout=20000)
    shutil.move(stick, f"{stick}-pulled")
    desk.begin()
    qtbot.waitUntil(lambda: stick in desk.work.gone, timeout=10000)
    qtbot.waitUntil(lambda: any(one.away for one in desk.page.table.hits.hits), timeout=5000)
    assert f"{stick}: can't be looked into: it is not there now." in desk.page.note.text()
    assert names(desk)[0] == "away"
    assert desk.page.table.hits.index(0, 1).data().startswith("SIMULATED · not there now")
    desk.page.table.setFocus()
    desk.page.table.selectRow(0)
    press(qtbot, window, _Key.Key_Return)
    assert window.desk.page is Page.RECORDINGS
    assert "plug in or connect" in desk.page.trouble.text()
    QApplication.processEvents()
