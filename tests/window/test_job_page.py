"""The Job page: filled in by keyboard alone and by mouse alone, each entry kept at once."""

import json
from datetime import date, timedelta

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QAbstractButton, QListWidget

from meterlog.evidence.palette import DAY
from meterlog.model.card_fields import ASKED
from meterlog.model.errors import DiskFailed
from meterlog.window.job_at_hand import JobAtHand
from meterlog.window.job_page import JobDesk, entry_box
from meterlog.window.theme import style_sheet
from meterlog.work.card_templates import CardTemplates
from meterlog.work.job_cards import load_card
from meterlog.work.job_folder import CARD, Side, load_work
from meterlog.work.kept_meters import KeptMeters

Key = Qt.Key
VIN = "1M8GDM9AXKP042788"


@pytest.fixture
def at_hand(tmp_path):
    return JobAtHand(lambda: tmp_path / "shelf", tmp_path / "settings")


@pytest.fixture
def desk(qtbot, at_hand):
    desk = JobDesk(at_hand)
    qtbot.addWidget(desk.widget)
    desk.widget.setStyleSheet(style_sheet(DAY, 14))
    desk.set_palette(DAY, 14)
    desk.widget.resize(1000, 600)
    desk.widget.show()
    qtbot.waitExposed(desk.widget)
    desk.widget.activateWindow()
    desk.begin()
    yield desk
    desk.close()


def edit(desk, key):
    return desk.page.form.boxes[key].edit


def kept(desk):
    return load_card(desk.at_hand.folder / CARD)


def press(desk, name):
    """Press a key of the page, as the frame does."""
    acting = desk.keys()
    (one,) = [key for key in acting if key.shown == name]
    one.do()


def picture(path, colour=0xFF884422):
    image = QImage(80, 60, QImage.Format.Format_RGB32)
    image.fill(colour)
    assert image.save(str(path))
    return path


def wait_photos(desk, qtbot, count):
    def shown():
        desk.tick()
        names = [
            desk.page.photos.list.item(row).data(Qt.ItemDataRole.UserRole)
            for row in range(desk.page.photos.list.count())
        ]
        assert len([name for name in names if name]) == count
        assert not desk.photos.copying
        assert not desk.photos._making.busy

    qtbot.waitUntil(lambda: not shown(), timeout=5000)


def test_a_card_is_filled_in_by_keyboard_alone(desk, qtbot):
    desk.new()
    for key, text in (("work_order", "WO-7"), ("customer", "I. Vantablank"), ("vehicle", "Nomad")):
        assert desk.widget.focusWidget() is edit(desk, key)
        qtbot.keyClicks(desk.widget.focusWidget(), text)
        qtbot.keyClick(desk.widget.focusWidget(), Key.Key_Return)
        assert getattr(kept(desk), key) == text
    qtbot.keyClick(desk.widget.focusWidget(), Key.Key_Escape)
    assert desk.widget.focusWidget() is None
    press(desk, "A")  # on to the first thing a reviewer will ask
    assert desk.widget.focusWidget() is edit(desk, "vin")
    qtbot.keyClicks(desk.widget.focusWidget(), VIN)
    qtbot.keyClick(desk.widget.focusWidget(), Key.Key_Tab)
    assert kept(desk).vin == VIN
    assert desk.page.form.boxes["vin"].doubt.text() == ""
    edit(desk, "complaint").setFocus()
    qtbot.keyClicks(edit(desk, "complaint"), "dead until I hit it")
    qtbot.keyClick(edit(desk, "complaint"), Key.Key_Tab)
    assert kept(desk).complaint == "dead until I hit it"
    assert "Kept " in desk.page.kept.text()
    assert str(desk.at_hand.folder) in desk.page.kept.text()


def test_tab_goes_through_every_control_once_and_each_has_a_name(desk, qtbot):
    desk.page.new.setFocus()
    seen = [desk.page.new]
    while True:
        qtbot.keyClick(desk.widget.focusWidget(), Key.Key_Tab)
        if desk.widget.focusWidget() in seen:
            break
        seen.append(desk.widget.focusWidget())
    fields = [box.edit for box in desk.page.form.boxes.values()]
    assert [one for one in seen if one in fields] == fields
    assert desk.page.missing.list in seen
    assert desk.page.photos.adding in seen
    for one in desk.widget.findChildren(QAbstractButton) + desk.widget.findChildren(QListWidget):
        if one.isVisible():
            assert one.accessibleName(), one.text()
    assert all(one.accessibleName() for one in fields)


def test_by_mouse_alone_a_missing_line_leads_to_its_field(desk, qtbot):
    missing = desk.page.missing.list
    assert missing.count() == len(ASKED)
    item = next(
        missing.item(row) for row in range(missing.count()) if "cause" in missing.item(row).text()
    )
    missing.scrollToItem(item)
    at = missing.visualItemRect(item).center()
    qtbot.mouseClick(missing.viewport(), Qt.MouseButton.LeftButton, pos=at)
    assert desk.widget.focusWidget() is edit(desk, "cause")
    top = edit(desk, "cause").mapTo(desk.page.form.viewport(), edit(desk, "cause").rect().topLeft())
    assert 0 <= top.y() < desk.page.form.viewport().height()
    qtbot.keyClicks(edit(desk, "cause"), "brush worn")
    qtbot.mouseClick(edit(desk, "correction"), Qt.MouseButton.LeftButton)
    assert kept(desk).cause == "brush worn"
    assert missing.count() == len(ASKED) - 1


def test_what_is_typed_is_kept_after_a_pause_though_the_cursor_stays(desk, qtbot, monkeypatch):
    assert entry_box.PAUSE_MS < 2000
    desk.page.form.boxes["plate"]._pause.setInterval(20)
    edit(desk, "plate").setFocus()
    qtbot.keyClicks(edit(desk, "plate"), "QX 118")
    qtbot.waitUntil(lambda: desk.at_hand.card.plate == "QX 118")
    assert kept(desk).plate == "QX 118"
    qtbot.keyClicks(edit(desk, "plate"), " ZZ")
    desk.at_hand.enter("hours", "12 h")  # another entry takes nothing away from the one in hand
    assert edit(desk, "plate").text() == "QX 118 ZZ"


def test_what_the_field_cannot_show_as_it_is_kept_is_no_entry(desk, at_hand):
    at_hand.enter("complaint", "dead\u00a0until I hit it")
    at_hand.enter("plate", "QX\u00a01")
    assert desk.page.form.waiting == ()
    at_hand.enter("hours", "12 h")
    assert desk.may_close()
    assert kept(desk).complaint == "dead\u00a0until I hit it"
    at_hand.enter("complaint", "no, it runs")
    assert edit(desk, "complaint").toPlainText() == "no, it runs"


def test_a_wrong_vin_is_told_beside_it_and_kept_all_the_same(desk, qtbot):
    edit(desk, "vin").setFocus()
    qtbot.keyClicks(edit(desk, "vin"), f"{VIN[:-1]}9")
    qtbot.keyClick(edit(desk, "vin"), Key.Key_Tab)
    box = desk.page.form.boxes["vin"]
    assert box.doubt.isVisible()
    assert "check digit" in box.doubt.text()
    assert "check digit" in box.edit.accessibleDescription()
    assert kept(desk).vin == f"{VIN[:-1]}9"


def test_an_entry_that_cannot_be_kept_says_so_at_its_field_and_stays_there(
    desk, qtbot, monkeypatch
):
    def fail(key, text):
        raise DiskFailed("can't be written: no space left.", remedy="Free some space.")

    monkeypatch.setattr(desk.at_hand, "enter", fail)
    edit(desk, "plate").setFocus()
    qtbot.keyClicks(edit(desk, "plate"), "QX 1")
    qtbot.keyClick(edit(desk, "plate"), Key.Key_Return)
    assert "Free some space" in desk.page.form.boxes["plate"].doubt.text()
    assert edit(desk, "plate").text() == "QX 1"
    assert not desk.may_close()
    assert "Not kept: plate" in desk.page.said.text()
    with pytest.raises(DiskFailed, match="Not kept yet: plate"):
        desk.at_hand.new()  # whoever asks for it, such as another page
    assert edit(desk, "plate").text() == "QX 1"
    monkeypatch.undo()
    assert desk.may_close()
    assert kept(desk).plate == "QX 1"


def test_undo_takes_back_the_last_entry_and_redo_puts_it_in_again(desk, qtbot):
    desk.page.form.entered.emit("plate", "QX 1")
    desk.page.form.entered.emit("hours", "12 h")
    press(desk, "U")
    assert (kept(desk).plate, kept(desk).hours) == ("QX 1", "")
    assert edit(desk, "hours").text() == ""
    assert "Taken back: hours" in desk.page.said.text()
    press(desk, "Y")
    assert kept(desk).hours == "12 h"
    qtbot.mouseClick(desk.page.undo, Qt.MouseButton.LeftButton)
    qtbot.mouseClick(desk.page.undo, Qt.MouseButton.LeftButton)
    assert kept(desk).plate == ""
    assert not desk.page.undo.isEnabled()


def test_which_part_is_in_the_vehicle_is_one_key_or_one_click(desk, qtbot):
    press(desk, "X")
    assert load_work(desk.at_hand.folder).fitted is Side.NEW
    assert desk.page.sides[Side.NEW].isChecked()
    qtbot.mouseClick(desk.page.sides[Side.OLD], Qt.MouseButton.LeftButton)
    assert load_work(desk.at_hand.folder).fitted is Side.OLD
    qtbot.mouseClick(desk.page.sides[Side.OLD], Qt.MouseButton.LeftButton)
    assert desk.page.sides[Side.OLD].isChecked()


def test_the_last_job_is_continued_and_a_new_one_takes_nothing_of_it(desk, at_hand):
    assert desk.open_last() is False
    desk.page.form.entered.emit("work_order", "WO-7")
    first = at_hand.folder
    edit(desk, "vehicle").setText("Nomad")  # still being typed
    press(desk, "Q")
    assert load_card(first / CARD).vehicle == "Nomad"
    assert (edit(desk, "work_order").text(), edit(desk, "vehicle").text()) == ("", "")
    assert at_hand.folder is None
    assert desk.page.last.isVisible()
    assert desk.open_last()
    assert edit(desk, "vehicle").text() == "Nomad"
    assert not desk.page.undo.isEnabled()
    assert desk.open(first / "nothing") is False
    assert "holds no job" in desk.page.said.text()
    assert at_hand.folder == first


def test_what_is_being_typed_stays_with_its_job_though_another_page_opens_the_next(desk, at_hand):
    desk.page.form.entered.emit("work_order", "WO-7")
    first = at_hand.folder
    at_hand.new()
    edit(desk, "vehicle").setText("Nomad")  # of a job that has no folder yet
    at_hand.open(first)
    assert edit(desk, "vehicle").text() == ""
    assert kept(desk).vehicle == ""
    (second,) = [one for one in first.parent.iterdir() if one != first]
    assert load_card(second / CARD).vehicle == "Nomad"


def test_a_template_fills_what_is_empty_and_is_made_without_what_belongs_to_one_job(desk, qtbot):
    for key, text in (("fitted_by", "R. Quill"), ("customer", "I. V."), ("claimant", "Shop")):
        desk.page.form.entered.emit(key, text)
    qtbot.mouseClick(desk.page.templates.keep, Qt.MouseButton.LeftButton)
    assert "name first" in desk.page.said.text()
    qtbot.keyClicks(desk.widget.focusWidget(), "fan motor")
    qtbot.keyClick(desk.page.templates.name, Key.Key_Return)
    assert CardTemplates().load("fan motor").customer == ""
    desk.new()
    desk.page.form.entered.emit("claimant", "Other shop")
    qtbot.mouseClick(desk.page.templates.fill, Qt.MouseButton.LeftButton)
    assert (kept(desk).fitted_by, kept(desk).claimant) == ("R. Quill", "Other shop")
    press(desk, "U")
    assert kept(desk).fitted_by == ""
    (CardTemplates().folder / "fan motor.json").unlink()
    qtbot.mouseClick(desk.page.templates.fill, Qt.MouseButton.LeftButton)
    assert "no such template" in desk.page.said.text()
    assert "--" not in desk.page.said.text()


def test_photos_are_copied_shown_taken_off_and_missed(desk, qtbot, tmp_path):
    desk.photos.add([picture(tmp_path / "label.png"), picture(tmp_path / "plug.png", 0xFF224488)])
    wait_photos(desk, qtbot, 2)
    assert kept(desk).photos == ("photos/label.png", "photos/plug.png")
    photos = desk.page.photos.list
    assert not photos.item(0).icon().isNull()
    photos.setCurrentRow(0)
    qtbot.keyClick(photos, Key.Key_Delete)
    assert kept(desk).photos == ("photos/plug.png",)
    assert (desk.at_hand.folder / "photos" / "label.png").is_file()
    press(desk, "U")
    wait_photos(desk, qtbot, 2)
    (desk.at_hand.folder / "photos" / "plug.png").unlink()
    desk.begin()
    qtbot.waitUntil(lambda: desk.tick() or "GONE" in photos.item(1).text())
    desk.photos.add([tmp_path / "never.png"])
    qtbot.waitUntil(lambda: desk.tick() or "is no file" in desk.page.said.text())
    assert len(kept(desk).photos) == 2


def test_meters_that_are_known_are_told_with_their_calibration(desk, monkeypatch):
    assert not desk.page.meters.isVisible()
    today = date.today()  # noqa: DTZ011 (the day on the wall, as the page takes it)
    kept_meters = KeptMeters()
    late = json.dumps(["scope", "serial", "S1", False])
    soon = json.dumps(["logger", "adapter", "U7", False])
    none = json.dumps(["bench", "serial", "V1", True])
    due = {"model": "M1", "calibration_due": str(today + timedelta(days=1))}
    kept_meters._entries.write({soon: due, none: due, "spoilt": due})
    desk.begin()
    assert desk.page.meters.text() == "Calibration in date: 1 meter known."
    kept_meters._entries.write({late: due | {"calibration_due": "2026-01-31"}, soon: due})
    desk.begin()
    assert desk.page.meters.text() == "scope (M1 serial S1): calibration OVERDUE since 2026-01-31."


def test_columns_follow_the_width(desk, qtbot):
    form = desk.page.form
    grid = form._grids[0][1]
    desk.widget.resize(700, 500)
    qtbot.waitUntil(lambda: form._columns == 1)
    desk.widget.resize(1700, 900)
    qtbot.waitUntil(lambda: form._columns == 4)
    assert grid.itemAtPosition(0, 3).widget() is form.boxes["plate"]


def test_one_endless_word_widens_nothing(desk, qtbot):
    page, word = desk.page, "W" * 240
    before = page.minimumSizeHint().width()
    edit(desk, "odometer").setText(word)
    page.form.boxes["odometer"].commit()
    page.tell(f"{word}: is no name.")
    page.show_meters(word, overdue=True)
    qtbot.wait(20)
    doubt = page.form.boxes["odometer"].doubt
    assert word in doubt.text(), "all of it is told"
    assert doubt.isVisible()
    assert page.form.widget().width() <= page.form.viewport().width()
    assert page.minimumSizeHint().width() == before
    assert page.said.text() == f"{word}: is no name."
