"""The page Before / after says what the comparison says, the weighty things first."""

import time
from dataclasses import replace

import pytest
from PySide6.QtGui import QGuiApplication

from meterlog.model.amendment import Amendment, AmendmentKind
from meterlog.recording import layout
from meterlog.recording.continuation import Continuation, continuation_bytes
from meterlog.window.compare_page.picks import Picks
from meterlog.window.compare_page.told_first import headline, warning_words
from meterlog.window.session import Phase
from meterlog.work.amendments import add_amendment
from meterlog.work.compare import CompareRequest, compare_folders
from meterlog.work.job_folder import JobWork, Side


def _cells(desk):
    table = desk.view.table.table
    return [
        [table.item(row, column).text() for column in range(table.columnCount())]
        for row in range(table.rowCount())
    ]


def _details(desk):
    return [desk.view.details.item(row).text() for row in range(desk.view.details.count())]


def test_the_newest_of_both_parts_are_compared_at_once(page, worn, healthy):
    desk = page([worn], [healthy])
    assert (desk.picks.before, desk.picks.after) == (worn, healthy)
    assert desk.view.verdict.text() == "≠ THEY DIFFER at speeds 1 and 2"
    said = compare_folders(CompareRequest((worn,), healthy))
    assert replace(desk.laid.comparison, overlays=()) == replace(said, overlays=())
    assert said.overlays
    rows = _cells(desk)
    assert [row[0] for row in rows] == ["1", "2"]
    assert [row[-1] for row in rows] == ["≠ differ", "≠ differ"]
    for row, step in zip(rows, said.steps, strict=True):
        assert float(row[2].split()[0]) == pytest.approx(step.old_a.value, rel=0.01)
        assert "±" in row[4]
        assert float(row[4].split()[0]) < -0.5


def test_conditions_that_differ_are_warned_of_before_the_table(page, worn, healthy):
    desk = page([worn], [healthy])
    view = desk.view
    assert "cabin filter (used / new)" in view.warned.text()
    assert view.warned.isVisible()
    assert "engine" in view.unstated.text()
    assert view.warned.geometry().bottom() < view.table.mapTo(view, view.table.rect().topLeft()).y()
    assert any(text.startswith("⚠ cabin filter: used / new, differs: ") for text in _details(desk))


def test_who_measured_with_what_and_that_it_is_simulated_is_said(page, worn, healthy):
    desk = page([worn], [healthy])
    assert desk.laid.mark == "SIMULATED"
    told = [text for text in _details(desk) if text.startswith(("old: ", "new: "))]
    assert len(told) == 2
    assert "worn (invented)" in told[0]
    for text in told:
        assert "simulated" in text
        assert "by N. Obody" in text
        assert "2030-01-02 03:04 UTC" in text
        assert "Meters: bench" in text


@pytest.mark.parametrize(
    ("options", "told"),
    [
        ({"nominal_v": 24.0}, "Record both with limits of the same nominal voltage."),
        ({"place": "bench"}, "measure both in the same state"),
        ({"dwell_s": (2,)}, "Record the same speeds in both"),
        ({"commanded": False}, "Tick “pair by order of current” above."),
    ],
)
def test_what_cannot_be_compared_says_so_first_and_what_to_do(
    page, healthy, recorded, tmp_path, options, told
):
    other = recorded(tmp_path / "other", **options)
    desk = page([other], [healthy])
    assert desk.view.verdict.text() == "✕ NOT COMPARED"
    assert told in desk.view.refused.text()
    assert desk.view.refused.isVisible()
    assert "--" not in desk.view.refused.text()
    assert desk.view.refused.property("rank") == "alert"
    assert not desk.view.table.isVisible()
    assert not desk.view.picture.axis.by_step
    assert not desk.view.by_step.isEnabled()


def test_order_of_current_pairs_what_was_not_commanded(page, finished, worn, recorded, tmp_path):
    bare = recorded(tmp_path / "bare", commanded=False)
    desk = page([worn], [bare])
    assert desk.view.verdict.text() == "✕ NOT COMPARED"
    desk.view.sides.by_current.click()
    finished(desk)
    assert "THEY DIFFER" in desk.view.verdict.text()
    assert desk.view.refused.isHidden()


def test_an_allowed_difference_gives_pass_and_fail(page, finished, qtbot, worn, healthy):
    desk = page([worn], [healthy])
    most = desk.view.sides.most
    qtbot.keyClicks(most, "60")
    most.editingFinished.emit()
    finished(desk)
    assert desk.view.verdict.text() == "✓ PASS: differs by less than 60 % at speeds 1 and 2"
    most.clear()
    qtbot.keyClicks(most, "2,5 %")
    most.editingFinished.emit()
    finished(desk)
    assert desk.view.verdict.text() == "✕ FAIL: differs by more than 2.5 % at speeds 1 and 2"
    most.setText("much")
    most.editingFinished.emit()
    assert "'much' is no percentage" in desk.view.sides.wrong.text()
    assert "2.5 %" in desk.view.verdict.text()


def test_several_good_ones_stand_for_the_side_before(page, finished, worn, good, healthy):
    desk = page([worn], [healthy])
    desk.view.sides.good.click()
    assert "Choose the good ones" in desk.view.lacking.text()
    desk.take_folder("before", good[0].parent)
    finished(desk)
    assert desk.picks.good == good
    assert desk.view.verdict.text().startswith("✓ PASS: within what good ones draw")
    assert len(_cells(desk)) == 2
    assert sum(text.startswith("good: ") for text in _details(desk)) == 3
    desk.view.sides.take_out.click()
    finished(desk)
    assert len(desk.laid.comparison.old) == 2


def test_the_copied_text_holds_the_marks_and_the_figures(page, worn, healthy):
    desk = page([worn], [healthy])
    desk.view.copy.click()
    text = QGuiApplication.clipboard().text()
    assert text.startswith("SIMULATED\n")
    assert "new - old A" in text
    for cell in _cells(desk)[0][2:4]:
        assert cell in text


def test_an_edit_on_top_of_a_recording_is_seen_when_the_page_is_turned_to_again(
    page, finished, worn, recorded, tmp_path
):
    other = recorded(tmp_path / "other")
    desk = page([worn], [other])
    assert len(_cells(desk)) == 2
    desk.begin()
    assert not desk._work.busy
    edit = Amendment(AmendmentKind.STEP, "", 8_000_000_000, "2", "7", "N. Obody", "slip")
    add_amendment(other, edit)
    desk.begin()
    finished(desk)
    assert [row[0] for row in _cells(desk)] == ["1"]
    assert any("slip" in text for text in _details(desk))


def test_nothing_is_judged_while_a_recording_is_in_progress_unless_asked(
    page, finished, worn, healthy
):
    desk = page()
    desk._session.phase = Phase.RECORDING
    work = desk._at_hand.work.taking(worn, Side.OLD)
    desk._at_hand.work = work.taking(healthy, Side.NEW)
    desk.begin()
    assert (desk.picks.before, desk.picks.after) == (worn, healthy)
    assert not desk._work.busy
    assert "Compare again" in desk.view.lacking.text()
    desk.compare()
    finished(desk)
    assert "THEY DIFFER" in desk.view.verdict.text()


def test_another_job_is_looked_at_with_nothing_of_the_one_before(
    page, finished, worn, healthy, good, tmp_path
):
    desk = page([worn], [healthy])
    desk.view.sides.most.setText("60")
    desk.view.sides.most.editingFinished.emit()
    desk.take_folder("before", good[0])
    finished(desk)
    at_hand = desk._at_hand
    at_hand.folder = tmp_path / "same job"
    desk.begin()
    assert desk.picks.before == good[0]
    at_hand.folder = tmp_path / "other job"
    at_hand.work = JobWork().taking(good[1], Side.OLD).taking(good[2], Side.NEW)
    at_hand.listeners[-1]()
    desk.tick()
    finished(desk)
    assert (desk.picks.before, desk.picks.after) == (good[1], good[2])
    assert desk.picks.most_percent is None
    assert desk.view.sides.most.text() == ""
    assert "NO DIFFERENCE" in desk.view.verdict.text() or "DIFFER" in desk.view.verdict.text()


def test_a_cancelled_comparison_leaves_nothing_and_can_be_made_again(
    page, finished, qtbot, monkeypatch, worn, healthy
):
    def slow(_request, progress):
        while True:
            progress(0.5)
            time.sleep(0.005)

    desk = page([worn], [healthy])
    with monkeypatch.context() as patched:
        patched.setattr("meterlog.window.compare_page.compare_desk.lay_runs", slow)
        desk.compare()
        desk.tick()
        assert desk.view.work.isVisible()
        desk.view.work.stop.click()
        finished(desk)
    assert desk.laid is None
    assert "Cancelled" in desk.view.lacking.text()
    desk.compare()
    finished(desk)
    assert "THEY DIFFER" in desk.view.verdict.text()


def test_a_folder_that_is_damaged_or_none_is_told_with_what_to_do(
    page, worn, healthy, recorded, tmp_path
):
    desk = page([worn], [healthy])
    (tmp_path / "empty").mkdir()
    desk.take_folder("before", tmp_path / "empty")
    assert "holds no recording. Choose" in desk.view.sides.wrong.text()
    assert desk.picks.before == worn
    broken = recorded(tmp_path / "broken")
    (broken / "data" / "about.json").write_bytes(b"{")
    spoiled = page([broken], [healthy])
    assert str(broken) in spoiled.view.refused.text()
    assert spoiled.laid is None


def test_one_recording_on_both_sides_is_refused_before_any_work(page, worn):
    desk = page([worn], [])
    assert "Choose the recording after" in desk.view.lacking.text()
    desk._take(Picks(before=worn, after=worn))
    assert "two different ones" in desk.view.lacking.text()
    assert not desk._work.busy


def test_the_verdict_is_what_the_engine_says_of_equal_motors(healthy, recorded, tmp_path):
    twin = recorded(tmp_path / "twin")
    said = compare_folders(CompareRequest((twin,), healthy))
    assert headline(said) == "= NO DIFFERENCE SEEN at speeds 1 and 2"


def test_that_one_is_a_part_of_a_whole_is_warned_of_first(healthy, recorded, tmp_path):
    part = recorded(tmp_path / "part")
    note = continuation_bytes(Continuation(tmp_path / "begun", "no space left.", {}, {}))
    (part / layout.CONTINUES).write_bytes(note)
    told = warning_words(compare_folders(CompareRequest((part,), healthy)))
    assert f"⚠ part: ONE PART: It goes on from {tmp_path / 'begun'}, whose disk failed" in told
    twin = recorded(tmp_path / "twin")
    assert "ONE PART" not in warning_words(compare_folders(CompareRequest((healthy,), twin)))
