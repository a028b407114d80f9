"""The photos that are shown are those of the job at hand, however late small ones are made."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage

from meterlog.model.job_card import with_value
from meterlog.window.job_at_hand import JobAtHand
from meterlog.window.job_page import JobDesk, photo_desk
from meterlog.window.job_page.photo_files import Thumb
from tests.rig.held_work import HeldWork


@pytest.fixture
def held(monkeypatch):
    image = QImage(8, 8, QImage.Format.Format_RGB32)
    held = HeldWork(lambda names: tuple(Thumb(one, image, "made small") for one in names))

    def thumbs(names, _job, _pixels, tell):
        made = held(tuple(names))
        tell(1.0)
        return made

    monkeypatch.setattr(photo_desk, "thumbs_of", thumbs)
    yield held
    held.let_all_go()


@pytest.fixture
def at_hand(tmp_path):
    """Three jobs: one with a label, one with a plug, one without photos."""
    at_hand = JobAtHand(lambda: tmp_path / "shelf", tmp_path / "settings")
    for name in ("label", "plug", ""):
        at_hand.new()
        at_hand.enter("work_order", f"WO {name} (invented)")
        if name:
            photo = f"photos/{name}.png"
            at_hand.change(lambda card, photo=photo: with_value(card, "photos", photo))
    return at_hand


@pytest.fixture
def jobs(at_hand, held, qtbot):
    """The desk, with what turns to a job."""
    folders = {}
    for folder in at_hand.jobs_folder().iterdir():
        at_hand.open(folder)
        folders[at_hand.card.work_order.split()[1]] = folder
    at_hand.new()
    desk = JobDesk(at_hand)
    qtbot.addWidget(desk.widget)
    desk.widget.show()
    yield desk, lambda name: at_hand.open(folders[name])
    for name in ("label", "plug"):
        held.let_go((f"photos/{name}.png",))
    desk.close()


def _shown(desk):
    listed = desk.page.photos.list
    rows = [listed.item(row) for row in range(listed.count())]
    return [
        (one.data(Qt.ItemDataRole.UserRole), "made small" in one.text())
        for one in rows
        if one.data(Qt.ItemDataRole.UserRole)
    ]


def _until(desk, qtbot, shown):
    def done():
        desk.tick()
        assert _shown(desk) == shown
        assert not desk.photos._making.busy

    qtbot.waitUntil(done)


def test_the_photos_of_the_job_before_go_with_it(jobs, held, qtbot):
    desk, turn = jobs
    held.let_go(("photos/label.png",))
    turn("label")
    _until(desk, qtbot, [("photos/label.png", True)])
    turn("plug")
    assert _shown(desk) == [("photos/plug.png", False)]
    held.let_go(("photos/plug.png",))
    _until(desk, qtbot, [("photos/plug.png", True)])
    turn("(invented)")
    assert _shown(desk) == []


def test_small_ones_of_the_job_before_that_come_late_are_not_shown(jobs, held, qtbot):
    desk, turn = jobs
    turn("label")
    qtbot.waitUntil(lambda: held.asked == [("photos/label.png",)])
    turn("(invented)")
    held.let_go(("photos/label.png",))
    _until(desk, qtbot, [])
    turn("plug")
    held.let_go(("photos/plug.png",))
    _until(desk, qtbot, [("photos/plug.png", True)])


def test_whoever_turns_back_meanwhile_gets_the_small_ones_too(jobs, held, qtbot):
    desk, turn = jobs
    turn("label")
    qtbot.waitUntil(lambda: held.asked == [("photos/label.png",)])
    turn("plug")
    turn("label")
    assert _shown(desk) == [("photos/label.png", False)]
    held.let_go(("photos/label.png",))
    _until(desk, qtbot, [("photos/label.png", True)])


def test_a_dialog_for_photos_goes_with_the_job_that_it_was_opened_for(jobs, at_hand):
    desk, turn = jobs
    turn("label")
    desk.photos.ask()
    dialog = desk.photos._asking
    assert dialog.isVisible()
    turn("plug")
    assert not dialog.isVisible()
    assert at_hand.card.photos == ("photos/plug.png",)
