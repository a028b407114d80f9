"""What is read, made and checked for the claim stands beside the job and file that it is of."""

from pathlib import Path

import pytest

from meterlog.evidence.checked import Checked
from meterlog.window.claim_page import ClaimDesk, check_desk, claim_desk, sides_desk
from meterlog.window.claim_page.check_desk import CheckDesk
from meterlog.window.claim_page.claim_page import ClaimPage
from meterlog.window.claim_page.recording_facts import RecordingFacts
from meterlog.window.session import Session
from meterlog.work.claim import ClaimMade
from meterlog.work.job_folder import Side
from tests.rig.held_work import HeldWork


@pytest.fixture
def facts(monkeypatch):
    """What heads say is told by a number that the test raises."""
    told = {"now": "as it was"}
    held = HeldWork(lambda asked: tuple(RecordingFacts(one, (asked[1],)) for one in asked[0]))
    monkeypatch.setattr(
        sides_desk, "read_facts", lambda folders, _: held((tuple(folders), told["now"]))
    )
    held.told = told
    yield held
    held.let_all_go()


@pytest.fixture
def make_desk(qtbot, in_a_thread, facts):
    """Make the page of a job with recordings; their heads are being read."""
    made = []

    def make(at_hand):
        desk = ClaimDesk(at_hand, Session())
        made.append(desk)
        qtbot.addWidget(desk.widget)
        desk.widget.resize(1000, 600)
        desk.widget.show()
        qtbot.waitUntil(lambda: len(facts.asked) == 1)
        return desk

    yield make
    facts.let_all_go()
    for desk in made:
        desk.close()


@pytest.fixture
def two_sides(at_hand, tmp_path):
    at_hand.enter("work_order", "WO-1 (invented)")
    at_hand.take_recording(tmp_path / "shelf" / "before")
    at_hand.fit(Side.NEW)
    at_hand.take_recording(tmp_path / "shelf" / "after")
    return at_hand


def _until(desk, qtbot, told):
    def done():
        desk.tick()
        told()

    qtbot.waitUntil(done)


def test_heads_read_before_a_recording_was_sealed_are_read_again(
    make_desk, two_sides, facts, qtbot
):
    desk = make_desk(two_sides)
    facts.told["now"] = "sealed by now"
    desk.begin()
    facts.let_all_go()

    def told():
        facts.let_all_go()
        assert "being read" not in desk.page.after.facts.text()
        assert not desk.sides._reading.busy

    _until(desk, qtbot, told)
    assert desk.page.after.facts.text() == "sealed by now"
    assert desk.page.before.facts.text() == "sealed by now"


@pytest.fixture
def making(monkeypatch):
    held = HeldWork(lambda plan: ClaimMade((plan.out / "claim.pdf",), (), (), ""))
    monkeypatch.setattr(claim_desk, "make", lambda plan, _tell: held(plan))
    yield held
    held.let_all_go()


def test_a_pack_that_is_made_when_another_job_is_at_hand_is_not_shown_as_its_own(
    make_desk, two_sides, making, qtbot
):
    desk = make_desk(two_sides)
    first = two_sides.folder
    desk.make()
    qtbot.waitUntil(lambda: len(making.asked) == 1)
    two_sides.new()
    two_sides.enter("work_order", "WO-2 (invented)")
    desk.page.options.out.setText("chosen-for-the-second")
    making.let_all_go()
    _until(desk, qtbot, lambda: _is_made(desk))
    assert desk.page.made.isHidden()
    assert desk.page.made.folder is None
    assert "X" not in _shown(desk)
    assert first.name in desk.page.said.text()
    assert str(making.asked[0].out) in desk.page.said.text()
    assert desk.page.options.out.text() == "chosen-for-the-second"
    two_sides.open(first)
    assert desk.page.made.isVisible()
    assert desk.page.made.folder == making.asked[0].out
    two_sides.new()
    assert desk.page.made.isHidden()


def test_the_pack_of_the_job_before_goes_from_sight_with_it(make_desk, two_sides, making, qtbot):
    desk = make_desk(two_sides)
    desk.make()
    qtbot.waitUntil(lambda: len(making.asked) == 1)
    making.let_all_go()
    _until(desk, qtbot, lambda: _is_made(desk))
    assert desk.page.made.isVisible()
    two_sides.new()
    assert desk.page.made.isHidden()
    assert "X" not in _shown(desk)


def _shown(desk):
    keys = desk.keys()
    return [one.shown for one in keys]


def _is_made(desk):
    assert not desk._making.busy


def test_dialogs_go_with_the_job_that_they_were_opened_for(make_desk, two_sides, facts):
    desk = make_desk(two_sides)
    desk.sides._ask(Side.OLD, circuit=False)
    desk._ask_out()
    dialogs = desk.sides._asking, desk._asking
    assert [one.isVisible() for one in dialogs] == [True, True]
    two_sides.new()
    assert [one.isVisible() for one in dialogs] == [False, False]
    facts.let_all_go()
    desk.close()
    two_sides.new()


@pytest.fixture
def checks(qtbot, monkeypatch, in_a_thread):
    held = HeldWork(lambda asked: Checked(True, f"{asked[0].name}: intact.", (asked[1],), {}))
    monkeypatch.setattr(check_desk, "_checked", lambda path, key, _tell: held((path, key)))
    page = ClaimPage()
    qtbot.addWidget(page)
    yield CheckDesk(page), page.check, held
    held.let_all_go()


def test_of_two_files_to_be_checked_the_second_one_is_told(checks, qtbot):
    desk, panel, held = checks
    desk.check(Path("first.zip"))
    panel.key.setText("0123")
    desk.check(Path("second.zip"))
    seen = []

    def done():
        held.let_all_go()
        desk.tick()
        seen.append(panel.head.text())
        assert panel.verdict.text() == "Intact"

    qtbot.waitUntil(done)
    assert set(seen) == {"checking second.zip…", "second.zip: intact."}
    assert panel.lines.text() == "0123"
