"""Recordings beside good ones: the table found by itself or chosen, its marks, words and errors."""

import os
import shutil

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog

from meterlog.window.good_ones import KeptChoice
from meterlog.work.library import Usual

_Key = Qt.Key
COLUMN = 6
MANY = 11


@pytest.fixture
def held(turned, motors, qtbot):
    """Turn to the page, and wait until all is judged and held against the table."""

    def turn():
        desk = turned(MANY)

        def done():
            desk.tick()
            hits = desk.page.table.hits.hits
            assert all(one.usual is not None for one in hits)
            assert (len(hits), desk.good_ones.busy) == (MANY, False)

        qtbot.waitUntil(done, timeout=60000)
        return desk

    return turn


def _go_to(desk, name, qtbot, words):
    table = desk.page.table
    row = [one.folder.name for one in table.hits.hits].index(name)
    table.selectRow(row)

    def told():
        desk.tick()
        assert words in desk.page.detail.text()

    qtbot.waitUntil(told, timeout=5000)
    return desk.page.detail.text()


def _choose(desk, box, words, qtbot):
    """Choose from a box that has the focus, by keys."""
    place = next(at for at in range(box.count()) if words in box.itemText(at))
    box.setFocus()
    for _ in range(abs(place - box.currentIndex())):
        qtbot.keyClick(box, _Key.Key_Down if place > box.currentIndex() else _Key.Key_Up)
    assert words in box.currentText()


def test_a_table_in_a_watched_folder_is_found_and_every_run_says_how_it_lies(held, motors, qtbot):
    desk = held()
    page, table = desk.page, desk.page.table
    assert desk.good_ones.usuals.sign.path == motors / "screening" / "baselines.parquet"
    assert "found by itself" in page.good_ones.tables.currentText()
    assert str(motors / "screening") in page.good_ones.tables.currentText()
    assert page.good_ones.told.text() == "1 part number: FM-20"
    assert not table.isColumnHidden(COLUMN)
    cells = {
        one.folder.name: table.hits.index(row, COLUMN).data()
        for row, one in enumerate(table.hits.hits)
    }
    assert cells["heavy"] == "▲ higher"
    assert cells["strange"] == "– no baseline"
    assert {cells[f"good-{at:02d}"] for at in range(0, 27, 3)} <= {"✓ as usual", "? can't tell"}


def test_words_and_numbers_of_the_chosen_one(held, motors, qtbot):
    desk = held()
    words = _go_to(desk, "heavy", qtbot, "Speed 4")
    assert f"▲ higher. 9 good motors of FM-20 by {motors / 'screening'}, written" in words
    lines = [line for line in words.split("\n") if line.startswith("Speed ")]
    held_one = desk.good_ones.usuals.held(desk.work.library, desk.page.table.current_hit()).held
    assert len(lines) == len(held_one.speeds) == 4
    for line, one in zip(lines, held_one.speeds, strict=True):
        low, high = one.good.middle_a
        assert f"Speed {one.step.speed}: ▲ higher, {one.step.new_a.value:.2f} ± " in line
        assert f"{one.off_percent:.0f} % above the median {one.good.median_a:.3g} A of 9" in line
        assert f"(middle half {low:.3g} to {high:.3g} A)" in line
    strange = _go_to(desk, "strange", qtbot, "no baseline")
    assert "The table holds none of ZZ-1 of its kind." in strange


def test_only_what_is_higher_is_found_by_keyboard_and_sorted_by_it(held, window, qtbot):
    desk = held()
    search, table = desk.page.search, desk.page.table
    search.words.setFocus()
    for _ in range(5):
        qtbot.keyClick(window.focusWidget(), _Key.Key_Tab)
    assert window.focusWidget() is search.usual
    _choose(desk, search.usual, "higher", qtbot)
    found = lambda: [one.folder.name for one in table.hits.hits]  # noqa: E731
    qtbot.waitUntil(lambda: found() == ["heavy"], timeout=5000)
    table.setFocus()
    qtbot.keyClick(table, _Key.Key_Q)
    qtbot.waitUntil(lambda: len(found()) == MANY, timeout=5000)
    for _ in range(COLUMN):
        qtbot.keyClick(table, _Key.Key_Y)
    qtbot.waitUntil(lambda: found()[0] == "heavy" and found()[-1] == "strange", timeout=5000)


def test_the_choice_is_kept_for_the_next_time_and_none_takes_all_marks_away(held, qtbot):
    desk = held()
    row, table = desk.page.good_ones, desk.page.table
    _go_to(desk, "heavy", qtbot, "Speed 4")
    _choose(desk, row.tables, "none", qtbot)

    def gone():
        desk.tick()
        assert table.isColumnHidden(COLUMN)
        assert all(one.usual is None for one in table.hits.hits)
        assert "Speed 4" not in desk.page.detail.text()

    qtbot.waitUntil(gone, timeout=10000)
    assert desk.page.search.usual.isHidden()
    assert row.told.text() == "no table: “meterlog screen FOLDER” makes one"
    assert KeptChoice().load() == ""
    for _ in range(8):
        qtbot.keyClick(table, _Key.Key_Y)
        assert desk._sort[0] != COLUMN, "no order by a column that is not there"


def test_a_table_is_chosen_in_the_dialog_by_mouse(held, motors, qtbot, tmp_path_factory):
    desk = held()
    other = tmp_path_factory.mktemp("elsewhere") / "of-good-ones.parquet"
    shutil.copy(motors / "screening" / "baselines.parquet", other)
    qtbot.mouseClick(desk.page.good_ones.other, Qt.MouseButton.LeftButton)
    dialog = desk.good_ones._dialog
    assert isinstance(dialog, QFileDialog)
    assert dialog.isVisible()
    dialog.selectFile(str(other))
    dialog.accept()

    def taken():
        desk.tick()
        assert desk.good_ones.usuals.sign.path == other

    qtbot.waitUntil(taken, timeout=10000)
    assert KeptChoice().load() == str(other)
    assert desk.page.good_ones.tables.currentText() == str(other)


@pytest.mark.parametrize(
    ("spoil", "words"),
    [
        (lambda path: path.write_bytes(b"PAR1 no"), "can't be read"),
        (lambda path: shutil.copy(path.with_name("findings.parquet"), path), "is no table of"),
        (lambda path: path.unlink(), "is not there. Plug in or connect its disk"),
    ],
)
def test_a_table_that_is_damaged_or_gone_is_told_with_what_to_do(held, motors, qtbot, spoil, words):
    desk = held()
    path = motors / "screening" / "baselines.parquet"
    desk.good_ones.choose(str(path))
    spoil(path)
    desk.begin()

    def told():
        desk.tick()
        assert f"{path}: {words}" in desk.page.trouble.text()

    qtbot.waitUntil(told, timeout=10000)
    assert desk.page.trouble.isVisible()
    assert desk.good_ones.usuals is None
    assert len(desk.page.table.hits.hits) == MANY, "what was found stays"


def test_a_table_written_anew_is_read_when_the_page_is_turned_to(held, motors, qtbot):
    desk = held()
    before = desk.good_ones.usuals
    desk.begin()
    qtbot.waitUntil(lambda: desk.tick() or not desk.good_ones.busy, timeout=10000)
    assert desk.good_ones.usuals is before, "what has not changed is not read again"
    path = motors / "screening" / "baselines.parquet"
    later = path.stat().st_mtime + 10
    os.utime(path, (later, later))
    desk.begin()

    def anew():
        desk.tick()
        assert desk.good_ones.usuals is not before

    qtbot.waitUntil(anew, timeout=10000)


def test_without_any_table_the_page_is_as_it_was(turned, recording, qtbot, monkeypatch, tmp_path):
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    recording("a")
    desk = turned(1)
    qtbot.waitUntil(lambda: desk.tick() or not desk.good_ones.busy, timeout=10000)
    page = desk.page
    assert page.table.isColumnHidden(COLUMN)
    assert page.search.usual.isHidden()
    assert page.good_ones.tables.currentText() == "found by itself: none found"
    assert not page.trouble.isVisible()
    assert desk.page.table.hits.hits[0].usual is None
    assert Usual.NO_BASELINE not in {one.usual for one in page.table.hits.hits}
