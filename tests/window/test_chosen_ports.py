"""No port is opened that nobody chose or ticked; and where a run could not begin, the page says."""

import errno

import pytest
from PySide6.QtCore import Qt

from meterlog.instruments import PortInfo
from meterlog.instruments.scpi_dialogue import _REMEDY as SCPI_REMEDY
from meterlog.model.errors import DiskFailed, TalkError
from meterlog.recording import Recorder
from meterlog.recording.append_file import remedy_against
from meterlog.window.last_setup import LastSetup
from meterlog.window.meters_page import MetersPage
from meterlog.window.remedies_here import remedy_here
from meterlog.window.session import Phase

PORTS = (PortInfo("/dev/ttyS0", "built in"), PortInfo("/dev/ttyUSB1", vendor="0403"))


@pytest.fixture
def page(qtbot, monkeypatch, tmp_path):
    """A Meters page of a first start, with two ports there."""
    monkeypatch.setattr("meterlog.window.meters_page.recordings_folder", lambda: tmp_path)
    page = MetersPage(ports=lambda: PORTS, last=LastSetup(tmp_path / "settings"))
    qtbot.addWidget(page)
    page.resize(1000, 500)
    page.show()
    qtbot.waitExposed(page)
    return page


def _tick(page, device, *, ticked=True):
    (entry,) = (one for one in page.ports.entries if one.port.device == device)
    entry.may_ask.setChecked(ticked)


def test_a_first_start_proposes_no_port_and_the_row_asks_for_one(page):
    (row,) = page.rows
    assert row.url() == ""
    assert row.port.lineEdit().placeholderText() == "choose a port, or type an address"
    assert row.trouble.isHidden()
    assert page.plan().meters == (f"{row.profile.currentText()}@",)
    assert "Choose above the port" in row.trouble.text()
    row.set_url("/dev/ttyS0")
    assert row.trouble.isHidden()


def test_a_start_without_a_port_is_refused_in_plain_words(window, qtbot):
    page = window.desk.meters_page
    page.rows[0].set_url("")
    qtbot.mouseClick(page.begin, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: window.desk.session.phase is Phase.IDLE)
    qtbot.waitUntil(lambda: "has no port" in window.said.text())
    assert "Choose above the port" in page.rows[0].trouble.text()


def test_a_ticked_port_is_proposed_and_taken_back_with_its_tick(page):
    (row,) = page.rows
    _tick(page, "/dev/ttyS0")
    assert row.url() == "/dev/ttyS0"
    _tick(page, "/dev/ttyS0", ticked=False)
    assert row.url() == ""
    _tick(page, "/dev/ttyUSB1")
    second = page.add_row()
    assert (row.url(), second.url()) == ("/dev/ttyUSB1", "")
    _tick(page, "/dev/ttyS0")
    assert second.url() == "/dev/ttyS0"


def test_a_port_that_somebody_chose_stays_without_a_tick(page):
    (row,) = page.rows
    row.set_url("/dev/ttyS0")
    _tick(page, "/dev/ttyS0")
    _tick(page, "/dev/ttyS0", ticked=False)
    assert row.url() == "/dev/ttyS0"


def test_a_proposed_port_leaves_the_row_to_the_meter_that_was_found(page):
    _tick(page, "/dev/ttyS0")
    page.take_meter("line-logger", "/dev/ttyUSB1")
    assert page.plan().meters == ("line-logger@/dev/ttyUSB1",)


def test_a_folder_that_takes_nothing_is_told_under_its_field(page, qtbot, tmp_path):
    page.rows[0].set_url("/dev/ttyS0")
    (tmp_path / "file").write_text("x")
    for folder, words in ((tmp_path / "file" / "runs", "is no folder"), (tmp_path / "new", "")):
        page.folder.setText(str(folder))
        page.show_recordings()
        qtbot.waitUntil(lambda: not page.recordings.reading)
        assert words in page.place.barred.text()
        assert page.place.barred.isVisible() is bool(words)


def test_cautions_are_on_show_until_they_were_read(qtbot, page, tmp_path):
    assert page.cautions.words.isVisibleTo(page)
    page.keep()
    again = MetersPage(ports=lambda: PORTS, last=LastSetup(tmp_path / "settings"))
    qtbot.addWidget(again)
    assert not again.cautions.words.isVisibleTo(again)
    qtbot.mouseClick(again.cautions.fold, Qt.MouseButton.LeftButton)
    assert again.cautions.words.isVisibleTo(again)
    again.keep()
    assert LastSetup(tmp_path / "settings").load().cautions_read


def test_a_meter_that_does_not_answer_is_told_without_the_words_of_its_dialect():
    error = TalkError("no answer to *IDN? within 2 s.", subject="/dev/ttyS0", remedy=SCPI_REMEDY)
    words = remedy_here(str(error))
    assert "choose another meter or port on the Meters page" in words
    assert not any(jargon in words for jargon in ("*IDN?", "parity", "profile", "SCPI"))


def test_where_the_folder_takes_nothing_no_space_is_asked_for(tmp_path, about_of):
    (tmp_path / "file").write_text("x")
    with pytest.raises(DiskFailed) as told:
        Recorder.create(tmp_path / "file" / "run", about_of())
    assert "space" not in str(told.value)
    assert remedy_here(str(told.value)).endswith(
        "Choose another folder on the Meters page, then start again."
    )
    full = OSError(errno.ENOSPC, "No space left on device")
    assert remedy_against(full).startswith("Free some space")
