"""What speaks against a claim is told on its page before the pack is made."""

from dataclasses import replace
from datetime import UTC, datetime

import pytest

from meterlog.recording import Recording, about_bytes, layout
from meterlog.recording.continuation import Continuation, continuation_bytes
from meterlog.window.claim_page import ClaimDesk
from meterlog.window.claim_page.made_view import MadeView
from meterlog.window.session import Session
from meterlog.work.claim import ClaimMade
from meterlog.work.job_folder import Side


@pytest.fixture
def make_desk(qtbot):
    """Put the page of a job on show."""
    made = []

    def make(at_hand):
        desk = ClaimDesk(at_hand, Session())
        made.append(desk)
        qtbot.addWidget(desk.widget)
        desk.widget.show()
        desk.begin()
        return desk

    yield make
    for desk in made:
        desk.close()


def wait(desk, qtbot, done):
    qtbot.waitUntil(lambda: desk.tick() or done(), timeout=30000)


def test_a_card_that_contradicts_the_run_before_is_told_in_time(make_desk, full, qtbot, tmp_path):
    folder = tmp_path / "shelf" / "before"
    about = Recording.open(folder).about
    under = replace(about.job.measured_under, filter="used", battery_v=12.6)
    job = replace(about.job, measured_under=under)
    (folder / "data" / "about.json").write_bytes(about_bytes(replace(about, job=job)))
    full.enter("filter", "clogged")
    full.enter("battery", "12,4 V")
    desk = make_desk(full)
    wait(desk, qtbot, lambda: "clogged" in desk.page.card.doubts.text())
    told = desk.page.card.doubts.text()
    assert "The job card gives 'clogged' for the filter" in told
    assert "the run before the repair was recorded with 12.6 V at it" in told
    full.enter("filter", "used")
    full.enter("battery", "12,6 V")
    assert "clogged" not in desk.page.card.doubts.text()
    assert "12.6 V at it" not in desk.page.card.doubts.text()


def test_a_run_of_another_job_or_day_is_told_before_the_pack(make_desk, full, qtbot, tmp_path):
    shelf = tmp_path / "shelf"
    days = {
        "before": datetime(2026, 5, 7, 9, tzinfo=UTC),
        "after": datetime(2026, 5, 5, 9, tzinfo=UTC),
    }
    for name, day in days.items():
        about = Recording.open(shelf / name).about
        job = replace(about.job, work_order="WO-9", part="FM-20, serial 8")
        changed = replace(about, job=job, started_utc=day)
        (shelf / name / "data" / "about.json").write_bytes(about_bytes(changed))
    full.enter("repaired_on", "2026-05-05")
    desk = make_desk(full)
    wait(desk, qtbot, lambda: "2026-05-07" in desk.page.card.doubts.text())
    told = desk.page.card.doubts.text()
    before = "before the repair: The job card has the"
    assert f"{before} work order 'WO-7781'; the recording was made for 'WO-9'." in told
    assert f"{before} repair on 2026-05-05; the run before the repair is of 2026-05-07." in told
    assert "before the repair: It was begun 2026-05-07" in told
    full.enter("new_part.serial", "S-9")
    assert "after the repair: The job card gives the serial number S-9 for this part" in (
        desk.page.card.doubts.text()
    )
    # What goes in instead is held against the card at once.
    desk.page.before.box.setCurrentIndex(0)
    desk.page.before.box.activated.emit(0)
    assert "before the repair: The" not in desk.page.card.doubts.text()


def test_a_circuit_check_of_another_job_is_told_as_long_as_it_goes_in(
    make_desk, full, qtbot, tmp_path
):
    folder = tmp_path / "shelf" / "after"
    about = Recording.open(folder).about
    changed = replace(about, job=replace(about.job, work_order="WO-9"))
    (folder / "data" / "about.json").write_bytes(about_bytes(changed))
    full.change_work(lambda work: work.taking(folder, Side.OLD, circuit=True))
    desk = make_desk(full)
    wait(desk, qtbot, lambda: "after: The job card has the work" in desk.page.card.doubts.text())
    (tick,) = desk.page.circuits.ticks.values()
    tick.click()
    assert "after: The job card" not in desk.page.card.doubts.text()


def test_one_part_of_a_run_is_marked_on_its_card(make_desk, full, qtbot, tmp_path):
    folder = tmp_path / "shelf" / "before"
    note = continuation_bytes(Continuation(tmp_path / "begun", "no space left.", {}, {}))
    (folder / layout.CONTINUES).write_bytes(note)
    desk = make_desk(full)
    page = desk.page
    sides = page.before, page.after
    wait(desk, qtbot, lambda: all("min" in one.facts.text() for one in sides))
    assert page.before.mark.text() == "IMPORTED · NOT WHOLE"
    told = page.before.warnings.text()
    assert f"ONE PART: It goes on from {tmp_path / 'begun'}, whose disk failed" in told
    assert page.after.mark.text() == "IMPORTED"
    assert "ONE PART" not in page.after.warnings.text()


def test_what_is_known_only_of_the_pack_that_was_made_is_told_beside_it(qtbot, tmp_path):
    view = MadeView()
    qtbot.addWidget(view)
    doubts = ("before: No difference from the new part is seen.",)
    view.show_made(tmp_path, ClaimMade((), (), ("photo a: can't be put in.",), "", doubts))
    assert view.remarks.text() == f"{doubts[0]}\nphoto a: can't be put in."
