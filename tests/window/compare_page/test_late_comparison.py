"""A comparison that comes late is shown beside the recordings that it is of, or not at all."""

from dataclasses import replace

import pytest

from meterlog.model.errors import UsageError
from meterlog.window.compare_page import CompareDesk, beside_good, compare_desk
from meterlog.window.compare_page.beside_good import Asked, Beside, BesideGood
from meterlog.window.compare_page.laid_runs import lay_runs
from meterlog.window.session import Phase, Session
from tests.rig.held_work import HeldWork


@pytest.fixture
def held(monkeypatch):
    held = HeldWork(lambda request: lay_runs(request, lambda _: None))
    monkeypatch.setattr(compare_desk, "lay_runs", lambda request, _tell: held(request))
    yield held
    held.let_all_go()


@pytest.fixture
def desk(qtbot, job, worn, healthy, held):
    """Turn to the page of a job; its two runs are being compared."""
    desk = CompareDesk(job([worn], [healthy]), Session())
    qtbot.addWidget(desk.widget)
    desk.widget.show()
    desk.begin()
    qtbot.waitUntil(lambda: [one.new for one in held.asked] == [healthy])
    return desk


def test_what_was_compared_before_a_side_was_left_out_is_not_shown(desk, held, finished):
    desk._take(replace(desk.picks, after=None))
    held.let_all_go()
    finished(desk)
    assert desk.laid is None
    assert desk.view.lacking.text().startswith("Choose the recording after.")
    assert desk.view.verdict.text() == ""


def test_what_was_compared_before_others_were_chosen_is_not_shown_while_recording(
    desk, held, finished, good
):
    desk._session.phase = Phase.RECORDING
    desk._take(replace(desk.picks, after=good[0]))
    assert "A recording is in progress" in desk.view.lacking.text()
    held.let_all_go()
    finished(desk)
    assert desk.laid is None
    assert "A recording is in progress" in desk.view.lacking.text()
    assert len(held.asked) == 1


def test_others_that_waited_for_their_turn_are_not_begun_while_recording(
    desk, held, finished, good
):
    desk._take(replace(desk.picks, after=good[0]))
    desk._session.phase = Phase.RECORDING
    desk._take(replace(desk.picks, after=good[1]))
    held.let_all_go()
    finished(desk)
    assert desk.laid is None
    assert len(held.asked) == 1


def test_a_comparison_that_was_done_before_it_could_be_stopped_is_shown(desk, held, finished):
    desk._cancel()
    held.let_all_go()
    finished(desk)
    assert desk.laid is not None


def test_what_is_wrong_with_the_part_before_is_not_told_where_none_is_chosen(
    job, qtbot, monkeypatch, worn
):
    def wrong(asked):
        raise UsageError("can't be read.", subject=str(asked.after))

    held = HeldWork(wrong)
    monkeypatch.setattr(beside_good, "hold", lambda asked, *_: held(asked))
    beside = BesideGood(job())
    beside.ask(worn, 0)
    beside.tick(may_begin=True)
    qtbot.waitUntil(lambda: held.asked == [Asked(worn, "", 0)])
    beside.ask(None, 0)
    held.let_all_go()

    def done():
        beside.tick(may_begin=True)
        assert not beside.busy

    qtbot.waitUntil(done)
    assert (beside.found, beside.trouble) == (None, "")


def test_of_two_parts_asked_for_the_second_one_is_held(job, qtbot, monkeypatch, worn, healthy):
    held = HeldWork(lambda asked: Beside(asked, words=asked.after.name))
    monkeypatch.setattr(beside_good, "hold", lambda asked, *_: held(asked))
    beside, seen = BesideGood(job()), []
    for one in (worn, healthy):
        beside.ask(one, 0)
        beside.tick(may_begin=True)

    def done():
        beside.tick(may_begin=True)
        held.let_all_go()
        seen.append(beside.found)
        assert not beside.busy

    qtbot.waitUntil(done)
    assert {one.words for one in seen if one is not None} == {"healthy"}


def test_a_dialog_for_a_side_goes_with_the_job_that_it_was_opened_for(desk, tmp_path, good):
    at_hand = desk._at_hand
    desk._browse("before")
    dialog = desk._dialog
    assert dialog.isVisible()
    desk._on_job()
    desk.tick()
    assert dialog.isVisible()
    at_hand.new()
    at_hand.take_recording(good[0])
    desk.tick()
    assert not dialog.isVisible()
