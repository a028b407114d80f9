"""A run belongs to the job that it was begun for, and what is told of a run to that run."""

import errno
import os
from dataclasses import replace
from types import SimpleNamespace

import pytest
from PySide6.QtCore import Qt

from meterlog.model import Event, EventKind
from meterlog.model.errors import DiskFailed, UsageError
from meterlog.window import session as of_session
from meterlog.window.job_at_hand import JobAtHand
from meterlog.window.judging import JudgingStopped
from meterlog.window.opened import opened
from meterlog.window.pages import Page
from meterlog.window.session import Phase
from meterlog.work.job_folder import CARD, Side, load_work
from tests.rig.fake_run import FakeRun
from tests.rig.held_work import HeldWork

S = 1_000_000_000


@pytest.fixture
def run_of(tmp_path, about_of, block_of):
    return lambda name: FakeRun(tmp_path / name, about_of(), block_of(0, 8, (12.5, 8.0, 4.0)))


@pytest.fixture
def held(window, run_of, monkeypatch):
    """Connecting, held until the test lets it go; what is connected is called ``run``."""
    held = HeldWork(run_of)
    plan = SimpleNamespace(run=lambda: held("run"))
    monkeypatch.setattr(window.desk.meters_page, "plan", lambda: plan)
    yield held
    held.let_go("run")
    window.desk.session.wait(20.0)


def _goes_into(window, qtbot, phase):
    def done():
        window.desk.tick()
        assert window.desk.session.phase is phase

    qtbot.waitUntil(done)


def _job(window, order):
    at_hand = window.desk.at_hand
    at_hand.new()
    at_hand.enter("work_order", order)
    return at_hand.folder


def _names(job):
    return [(one.folder.name, one.side, one.speeds) for one in load_work(job).recordings]


def test_a_run_is_filed_with_the_job_it_was_begun_for_though_another_is_at_hand_by_then(
    window, held, qtbot
):
    other = _job(window, "WO-2 (invented)")
    own = _job(window, "WO-1 (invented)")
    window.desk.at_hand.fit(Side.NEW)
    window.desk.start_or_stop()
    window.desk.open_job(other)
    window.desk.at_hand.fit(Side.OLD)
    held.let_go("run")
    _goes_into(window, qtbot, Phase.RECORDING)
    assert _names(own) == [("run", Side.NEW, None)]
    assert _names(other) == []
    window.desk.session.stop()
    _goes_into(window, qtbot, Phase.SHOWING)
    assert _names(own) == [("run", Side.NEW, 1)]
    assert _names(other) == []


def test_speeds_of_a_run_go_to_its_job_though_another_came_to_hand_while_it_ran(
    window, held, qtbot
):
    other = _job(window, "WO-2 (invented)")
    own = _job(window, "WO-1 (invented)")
    held.let_go("run")
    window.desk.start_or_stop()
    _goes_into(window, qtbot, Phase.RECORDING)
    job = window.desk._telling.status.job
    assert job.text() == "WO-1 (invented): old part in"
    window.desk.open_job(other)
    # Nobody may take the run for one of the job at hand.
    told = f"this run: {own.name} · WO-2 (invented): old part in"
    qtbot.waitUntil(lambda: window.desk.tick() or job.text() == told)
    window.desk.session.stop()
    _goes_into(window, qtbot, Phase.SHOWING)
    assert job.text() == told
    window.desk.at_hand.open(own)
    window.desk.at_hand.fit(Side.NEW)
    words = "this run: old part · WO-1 (invented): new part in"
    qtbot.waitUntil(lambda: window.desk.tick() or job.text() == words)
    assert _names(own) == [("run", Side.OLD, 1)]
    assert _names(other) == []


def test_a_run_begun_without_a_job_gets_one_of_its_own_where_another_is_opened_meanwhile(
    window, held, qtbot
):
    other = _job(window, "WO-2 (invented)")
    at_hand = window.desk.at_hand
    at_hand.new()
    window.desk.start_or_stop()
    window.desk.open_job(other)
    held.let_go("run")
    _goes_into(window, qtbot, Phase.RECORDING)
    assert _names(other) == []
    jobs = [one for one in at_hand.jobs_folder().iterdir() if one != other]
    assert [_names(one) for one in jobs] == [[("run", Side.OLD, None)]]


@pytest.mark.parametrize("other_opened", [True, False])
def test_a_run_that_was_handed_over_without_a_job_gets_none(window, held, qtbot, other_opened):
    other = _job(window, "WO-2 (invented)")
    at_hand = window.desk.at_hand
    at_hand.new()
    window.desk.session.start(lambda: held("run"))
    if other_opened:
        window.desk.open_job(other)
    else:
        at_hand.new()
    held.let_go("run")
    _goes_into(window, qtbot, Phase.RECORDING)
    assert at_hand.folder == (other if other_opened else None)
    assert list(at_hand.jobs_folder().iterdir()) == [other]
    assert _names(other) == []


def _typed(window, key, text):
    """Type in a field of the Job page, and leave it open."""
    window.show_page(Page.JOB)
    window.desk.parts[Page.JOB].page.form.boxes[key].edit.setText(text)


def test_the_part_of_a_run_stays_barred_where_its_job_could_not_be_left(
    window, held, qtbot, monkeypatch
):
    other = _job(window, "WO-2 (invented)")
    own = _job(window, "WO-1 (invented)")
    at_hand = window.desk.at_hand
    window.desk.start_or_stop()
    _typed(window, "plate", "QX 1")
    with monkeypatch.context() as patched:

        def refuse(*_):
            raise DiskFailed("can't be written: no space left.")

        patched.setattr(at_hand, "enter", refuse)
        window.desk.open_job(other)
    assert "Not kept yet: plate" in window.desk.session.trouble
    assert at_hand.folder == own
    with pytest.raises(UsageError, match="filed with the old part"):
        at_hand.fit(Side.NEW)
    held.let_go("run")
    _goes_into(window, qtbot, Phase.RECORDING)
    assert _names(own) == [("run", load_work(own).fitted, None)]


def test_whoever_turned_to_another_job_and_back_is_in_the_job_of_the_run_again(window, held, qtbot):
    other = _job(window, "WO-2 (invented)")
    own = _job(window, "WO-1 (invented)")
    at_hand = window.desk.at_hand
    window.desk.start_or_stop()
    window.desk.open_job(other)
    at_hand.fit(Side.NEW)
    window.desk.open_job(own)
    with pytest.raises(UsageError, match="filed with the old part"):
        at_hand.fit(Side.NEW)
    held.let_go("run")
    _goes_into(window, qtbot, Phase.RECORDING)
    assert _names(own) == [("run", Side.OLD, None)]
    assert (at_hand.folder, at_hand.work) == (own, load_work(own))


def test_the_job_made_for_a_run_holds_what_was_being_typed_and_is_named_by_it(window, held, qtbot):
    other = _job(window, "WO-2 (invented)")
    at_hand = window.desk.at_hand
    at_hand.new()
    window.desk.start_or_stop()
    _typed(window, "work_order", "WO-3 invented")
    window.desk.open_job(other)
    held.let_go("run")
    _goes_into(window, qtbot, Phase.RECORDING)
    (own,) = [one for one in at_hand.jobs_folder().iterdir() if one != other]
    assert own.name.endswith("-WO-3-invented")
    assert _names(own) == [("run", Side.OLD, None)]


def test_no_job_is_made_for_a_run_where_the_other_one_cannot_be_read(window, held, qtbot):
    other = _job(window, "WO-2 (invented)")
    (other / CARD).write_text("no card")
    at_hand = window.desk.at_hand
    at_hand.new()
    window.desk.start_or_stop()
    window.desk.open_job(other)
    assert (at_hand.folder, list(at_hand.jobs_folder().iterdir())) == (None, [other])
    held.let_go("run")
    _goes_into(window, qtbot, Phase.RECORDING)
    assert _names(at_hand.folder) == [("run", Side.OLD, None)]


def test_after_one_that_could_not_be_connected_the_next_is_filed_with_the_job_at_hand(
    window, held, qtbot, monkeypatch, run_of
):
    other = _job(window, "WO-2 (invented)")
    own = _job(window, "WO-1 (invented)")
    monkeypatch.setattr(held, "_answer", lambda _: 1 / 0)
    window.desk.start_or_stop()
    window.desk.open_job(other)
    held.let_go("run")
    _goes_into(window, qtbot, Phase.IDLE)
    assert "ZeroDivisionError" in window.desk.session.trouble
    monkeypatch.setattr(held, "_answer", run_of)
    window.desk.start_or_stop()
    _goes_into(window, qtbot, Phase.RECORDING)
    assert _names(own) == []
    assert _names(other) == [("run", Side.OLD, None)]


def test_a_zero_that_the_end_of_a_run_broke_off_is_told_then_and_not_in_the_next_run(
    window, run_of, qtbot
):
    session = window.desk.session
    session.adopt(run_of("first"))
    session.take_zero()
    assert session.trouble.startswith("Taking the zero")
    session.stop()
    assert session.wait(60.0)
    assert session.phase is Phase.SHOWING
    assert "the recording ended first" in session.trouble
    session.leave_page()
    session.adopt(run_of("second"))
    session.glance()
    assert session.trouble == ""


@pytest.mark.parametrize("judged", [True, False])
@pytest.mark.parametrize("long", [True, False])
def test_what_is_wrong_with_the_recording_stays_when_the_zero_that_broke_off_is_forgotten(
    window, run_of, monkeypatch, judged, long
):
    def read(folder, *, first, **options):
        found = opened(folder, first=first, **options)
        if long:
            first(found.shown)
        if not judged:
            raise JudgingStopped
        return replace(found, damage=("One second can't be read.",))

    monkeypatch.setattr(of_session, "opened", read)
    session = window.desk.session
    session.adopt(run_of("first"))
    session.take_zero()
    session.stop()
    assert session.wait(60.0)
    stays = "One second can't be read." if judged else "Not judged: "
    assert session.trouble.startswith(stays)
    assert "the recording ended first" in session.trouble
    session.leave_page()
    assert session.trouble.startswith(stays)
    assert "the recording ended first" not in session.trouble
    session.trouble = "Taken back: tap."
    session.leave_page()
    assert session.trouble == (stays if judged else "")


def test_a_zero_broken_off_is_not_told_of_a_recording_that_is_opened_later(window, run_of):
    session = window.desk.session
    first, other = run_of("first"), run_of("other")
    session.adopt(first)
    session.take_zero()
    first.stop = lambda _outcome: 1 / 0
    session.stop()
    assert session.wait(60.0)
    assert "ZeroDivisionError" in session.trouble
    first.taking.give_up("the recording ended first.")
    session.open(other.folder)
    assert session.wait(60.0)
    assert (session.folder, session.trouble) == (other.folder, "")


def test_a_note_left_open_belongs_to_the_run_it_is_kept_in(window, run_of, qtbot):
    desk, line = window.desk, window.desk.run_page.note
    first, second = run_of("first"), run_of("second")
    first.now, second.now = 7 * S, 3 * S
    desk.session.adopt(first)
    desk.tick()
    desk.lines.note()
    line.field.setText("the fan hums")
    assert line.at_ns == 7 * S
    desk.run_page.findings.list.setFocus()
    desk.session.stop()
    _goes_into(window, qtbot, Phase.SHOWING)
    assert line.at_ns is None
    assert "Nothing is being recorded" in line.hint.text()
    desk.session.adopt(second)
    desk.tick()
    assert line.hint.text() == (
        "Typed before this recording began · Enter keeps it in this one · Esc drops"
    )
    line.field.setFocus()
    qtbot.keyClick(line.field, Qt.Key.Key_Return)
    assert first.marks == []
    assert second.marks == [Event(3 * S, EventKind.NOTE, "the fan hums")]


def test_what_another_window_said_of_the_job_counts_for_the_run_to_come(window, held, qtbot):
    job = _job(window, "WO-1 (invented)")
    other = JobAtHand(lambda: job.parent.parent, job.parent.parent / "other-settings")
    other.open(job)
    other.fit(Side.NEW)
    other.enter("complaint", "no air")
    window.desk.start_or_stop()
    held.let_go("run")
    _goes_into(window, qtbot, Phase.RECORDING)
    assert _names(job) == [("run", Side.NEW, None)]
    assert window.desk.at_hand.card.complaint == "no air"


@pytest.mark.parametrize("why", [errno.ENOTCONN, errno.ESTALE, errno.EIO])
def test_a_job_on_a_share_that_is_gone_holds_up_no_run(window, held, qtbot, monkeypatch, why):
    job = _job(window, "WO-1 (invented)")
    truly = os.stat

    def stat(path, *more, **named):
        if str(path).startswith(str(job)):
            raise OSError(why, os.strerror(why))
        return truly(path, *more, **named)

    monkeypatch.setattr(os, "stat", stat)
    window.desk.start_or_stop()
    assert window.desk.session.phase is Phase.CONNECTING
    assert os.strerror(why) in window.desk.session.trouble
    held.let_go("run")
    _goes_into(window, qtbot, Phase.RECORDING)
    monkeypatch.undo()
    assert "work.json" in window.desk.session.trouble or _names(job)


def test_a_card_that_can_t_be_read_holds_up_no_run(window, held, qtbot):
    job = _job(window, "WO-1 (invented)")
    (job / CARD).write_text("{")
    window.desk.start_or_stop()
    assert window.desk.session.phase is Phase.CONNECTING
    assert CARD in window.desk.session.trouble
    held.let_go("run")
    _goes_into(window, qtbot, Phase.RECORDING)


def test_a_note_typed_before_the_run_is_not_slipped_into_it_when_it_ends(window, run_of, qtbot):
    desk, run, line = window.desk, run_of("first"), window.desk.run_page.note
    desk.lines.note()
    line.field.setText("of the other part")
    desk.session.adopt(run)
    desk.tick()
    desk.start_or_stop()
    desk.start_or_stop()
    _goes_into(window, qtbot, Phase.SHOWING)
    assert run.marks == []
    assert line.field.text() == "of the other part"


def test_a_circuit_check_begun_while_ports_are_opened_belongs_to_the_job(
    window, held, qtbot, monkeypatch, tmp_path
):
    job = _job(window, "WO-1 (invented)")
    window.desk.start_or_stop()
    monkeypatch.setattr(type(window.desk.circuit.log), "folder", tmp_path / "check")
    window.desk._glanced_s = float("-inf")
    window.desk.tick()
    monkeypatch.undo()
    assert [(one.folder.name, one.circuit) for one in load_work(job).recordings] == [
        ("check", True)
    ]
    held.let_go("run")
    _goes_into(window, qtbot, Phase.RECORDING)


def test_a_note_being_typed_when_it_is_stopped_is_kept_in_that_run(window, run_of, qtbot):
    desk, run = window.desk, run_of("first")
    desk.session.adopt(run)
    desk.tick()
    run.now = 5 * S
    desk.lines.note()
    desk.run_page.note.field.setText("smells hot")
    desk.start_or_stop()
    assert run.marks == []  # asked once: it goes on
    desk.start_or_stop()
    _goes_into(window, qtbot, Phase.SHOWING)
    assert run.marks == [Event(5 * S, EventKind.NOTE, "smells hot")]
    assert desk.run_page.note.isHidden()
