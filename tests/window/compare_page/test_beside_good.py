"""The new part beside good ones of its number: with a part before, without one, and by its card."""

import shutil

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication

from meterlog.model.job_card import with_value
from meterlog.window.compare_page import CompareDesk
from meterlog.window.good_ones import KeptChoice
from meterlog.window.pages import Page
from meterlog.window.session import Phase, Session
from meterlog.work.job_folder import JobWork, Kept, Side
from meterlog.work.screening import AgainstRequest, hold_folder

_Key = Qt.Key


@pytest.fixture
def page(qtbot, job, motors):
    """Turn to the page of a job; wait until all is compared and held."""

    def make(old=(), new=(), number="", session=None):
        at_hand = job([motors / one for one in old], [motors / one for one in new])
        KeptChoice().keep(str(motors / "screening"))
        if number:
            at_hand.card = with_value(at_hand.card, "new_part.number", number)
        desk = CompareDesk(at_hand, session or Session())
        qtbot.addWidget(desk.widget)
        desk.widget.resize(1280, 700)
        desk.widget.show()
        desk.begin()
        settle(desk)
        return desk

    def settle(desk):
        def done():
            desk.tick()
            assert not desk._work.busy
            assert not desk.beside.busy

        qtbot.waitUntil(done, timeout=30_000)

    make.settle = settle
    return make


def _cells(desk):
    table = desk.view.good.table.table
    return [
        [table.item(row, column).text() for column in range(table.columnCount())]
        for row in range(table.rowCount())
    ]


def _details(desk):
    listed = desk.view.good.details
    return [listed.item(row).text() for row in range(listed.count())]


def test_without_a_part_before_the_new_one_stands_beside_good_ones(page, motors):
    desk = page(new=["heavy"])
    view = desk.view
    assert view.good_verdict.text() == (
        "Beside good FM-20: ✕ FAIL: not within what good ones draw at speeds 1, 2, 3 and 4"
    )
    assert view.good.isVisible()
    assert not view._left.isVisible()
    said = hold_folder(AgainstRequest(motors / "screening", motors / "heavy"))
    rows = _cells(desk)
    assert [row[0] for row in rows] == ["1", "2", "3", "4"]
    assert {row[-1] for row in rows} == {"✕ fail"}
    for row, step in zip(rows, said.comparison.steps, strict=True):
        assert float(row[4].split()[0]) == pytest.approx(step.new_a.value, rel=0.01)
        assert float(row[2].split()[0]) == pytest.approx(step.baseline_mean_a, rel=0.01)
    details = _details(desk)
    assert details[0].startswith(f"9 good motors of FM-20 by {motors / 'screening'}, written ")
    assert sum(text.startswith("Speed ") for text in details) == 4
    assert sum(text.startswith("good: FM-20, ") for text in details) == 5
    assert details[-1] == "and 4 more good ones"


def test_f9_turns_to_the_good_ones_and_back_in_the_whole_window(window, motors, qtbot):
    KeptChoice().keep(str(motors / "screening"))
    window.desk.at_hand.work = JobWork(
        recordings=(Kept(motors / "heavy", Side.OLD), Kept(motors / "good" / "good-03", Side.NEW))
    )
    window.show_page(Page.COMPARE)
    desk = window.desk.parts[Page.COMPARE]

    def done():
        desk.tick()
        assert (desk._work.busy, desk.beside.busy) == (False, False)

    qtbot.waitUntil(done, timeout=30_000)
    view = desk.view
    assert view.good_verdict.isVisible()
    for shown in (True, False):
        qtbot.keyClick(window, _Key.Key_F9)
        assert (view.good.isVisible(), view.table.isVisible()) == (shown, not shown)
    qtbot.keyClick(window, _Key.Key_F9)
    view.beside_good.setFocus()
    qtbot.keyClick(view.beside_good, _Key.Key_Tab)
    assert window.focusWidget() is view.good.table.table
    qtbot.keyClick(window.focusWidget(), _Key.Key_Tab)
    assert window.focusWidget() is view.good.details
    window.close()


def test_with_a_part_before_a_click_turns_between_the_two_and_the_speed_goes_with_it(page, qtbot):
    desk = page(old=["heavy"], new=["good/good-03"])
    view = desk.view
    assert view.verdict.text().startswith("≠ THEY DIFFER")
    assert "✕" not in view.good_verdict.text()
    assert view.table.isVisible()
    assert not view.good.isVisible()
    qtbot.mouseClick(view.beside_good, Qt.MouseButton.LeftButton)
    assert view.good.isVisible()
    assert not view.table.isVisible()
    qtbot.keyClick(view.good.table.table, _Key.Key_Down)
    assert view.picture.speed == 1
    assert view.good.table.said.text().startswith("Speed 1: new ")
    desk._step(1)
    assert (view.picture.speed, view.good.table.chosen_speed, view.table.chosen_speed) == (2, 2, 2)
    qtbot.mouseClick(view.beside_pair, Qt.MouseButton.LeftButton)
    assert view.table.isVisible()
    assert not view.good.isVisible()
    counts = {one.step.count for one in desk.beside.found.held.speeds}
    assert counts == {8}, "it does not stand against itself"


def test_the_jobs_card_tells_the_part_number(page):
    assert page(new=["strange"]).view.good_verdict.text() == ""
    desk = page(new=["strange"], number="fm-20")
    assert desk.view.good_verdict.text().startswith("Beside good FM-20: ")


def test_why_there_is_nothing_is_one_quiet_line_with_what_to_do(page, motors):
    desk = page(new=["strange"])
    table = motors / "screening" / "baselines.parquet"
    assert desk.view.no_good.text() == (
        f"{table}: holds no measured baseline of ZZ-1. Screen folders with good runs of it"
        " (meterlog screen), or enter the part's number on the Job page."
    )
    assert not desk.view.good.isVisible()


def test_a_damaged_table_is_told_and_the_pair_is_compared_all_the_same(page, motors):
    (motors / "screening" / "baselines.parquet").write_bytes(b"no")
    desk = page(old=["heavy"], new=["good/good-03"])
    assert "can't be read: it is no Parquet table." in desk.view.good_wrong.text()
    assert "on the Recordings page." in desk.view.good_wrong.text()
    assert desk.view.good_wrong.isVisible()
    assert desk.view.verdict.text().startswith("≠ THEY DIFFER")
    shutil.rmtree(motors / "screening")
    desk.begin()
    page.settle(desk)
    assert "is not there" in desk.view.good_wrong.text()


def test_another_new_part_takes_the_old_words_away_at_once(page, motors):
    desk = page(new=["heavy"])
    desk.take_folder("after", motors / "strange")
    assert desk.view.good_verdict.text() == ""
    assert not desk.view.good.isVisible()
    page.settle(desk)
    assert "ZZ-1" in desk.view.no_good.text()


def test_the_page_turned_to_again_reviews_nothing_again(page, monkeypatch):
    desk = page(new=["heavy"])
    found = desk.beside.found

    def never(*_, **__):
        raise AssertionError

    monkeypatch.setattr("meterlog.work.screening.against.review_folder", never)
    desk.begin()
    page.settle(desk)
    assert desk.beside.found is found
    assert desk.view.good.isVisible()


def test_none_chosen_shows_nothing(page):
    desk = page(new=["heavy"])
    KeptChoice().keep("")
    desk.begin()
    page.settle(desk)
    view = desk.view
    for label in (view.good_verdict, view.no_good, view.good_wrong):
        assert not label.isVisible()
    assert not view.good.isVisible()


def test_while_recording_it_waits_until_it_is_asked_for(page, job, motors, qtbot):
    session = Session()
    session.phase = Phase.RECORDING
    at_hand = job(new=[motors / "heavy"])
    KeptChoice().keep(str(motors / "screening"))
    desk = CompareDesk(at_hand, session)
    qtbot.addWidget(desk.widget)
    desk.widget.show()
    desk.begin()
    for _ in range(20):
        desk.tick()
    assert (desk.beside.working, desk.beside.found) == (False, None)
    desk.compare()
    page.settle(desk)
    assert desk.view.good_verdict.text().startswith("Beside good FM-20")


def test_what_is_copied_holds_the_good_ones_and_where_they_come_from(page, motors):
    desk = page(new=["heavy"])
    desk.copy()
    text = QGuiApplication.clipboard().text()
    assert text.startswith(f"good ones: {motors / 'screening' / 'baselines.parquet'}\n")
    assert "It is not within what good ones draw at speeds 1, 2, 3 and 4." in " ".join(text.split())
    assert "4 more good ones are not named here" in text


def test_a_job_opened_later_has_its_own(page, motors):
    desk = page(new=["heavy"])
    desk._at_hand.folder = motors / "jobs" / "2"
    desk._at_hand.work = JobWork(recordings=(Kept(motors / "strange", Side.NEW),))
    desk._on_job()
    page.settle(desk)
    assert desk.picks.after == motors / "strange"
    assert "ZZ-1" in desk.view.no_good.text()
