"""The window opens where the last work ended: job, page and recording."""

import os
import shutil

import numpy as np
import pytest

from meterlog.model import Block
from meterlog.recording import Recorder, seal
from meterlog.window.main_window import MainWindow
from meterlog.window.pages import Page
from meterlog.window.session import Phase
from meterlog.window.where_i_was import Where, WhereIWas


@pytest.fixture
def sealed(tmp_path, about):
    recorder = Recorder.create(tmp_path / "run", about)
    t_ns = np.arange(30) * 100_000_000
    values = np.tile([12.0, 0.1, 4.0], (30, 1))
    key = about.instruments[0].key
    recorder.take(Block(key, t_ns, values, np.zeros((30, 3), np.uint8)))
    recorder.close()
    seal(tmp_path / "run")
    return tmp_path / "run"


@pytest.fixture
def opening(qtbot, monkeypatch, tmp_path):
    """Open a whole window, as the program does; closed windows keep where they were."""
    monkeypatch.setattr("meterlog.window.meters_page.recordings_folder", lambda: tmp_path)

    def open_one(**handed):
        window = MainWindow()
        qtbot.addWidget(window)
        window.show()
        window.fill(**handed)
        return window

    return open_one


def wait_shown(qtbot, window):
    qtbot.waitUntil(lambda: window.desk.session.phase is Phase.SHOWING, timeout=10_000)


def test_the_first_time_it_opens_on_the_job_page_with_nothing(opening):
    window = opening()
    assert window.desk.page is Page.JOB
    assert window.desk.session.phase is Phase.IDLE
    assert window.desk.at_hand.folder is None


def test_job_page_and_recording_of_the_last_time_are_there_again(opening, qtbot, sealed):
    window = opening()
    window.desk.at_hand.enter("work_order", "WO-9 (invented)")
    job = window.desk.at_hand.folder
    window.desk.open(sealed)
    wait_shown(qtbot, window)
    window.show_page(Page.COMPARE)
    window.close()
    again = opening()
    assert again.desk.page is Page.COMPARE
    assert again.desk.at_hand.folder == job
    assert again.desk.at_hand.card.work_order == "WO-9 (invented)"
    wait_shown(qtbot, again)
    assert again.desk.session.folder == sealed


@pytest.mark.parametrize("before", [Page.JOB, Page.RECORDINGS, Page.CIRCUIT])
def test_the_trace_that_is_turned_to_shows_what_came_meanwhile(opening, qtbot, sealed, before):
    window = opening()
    window.desk.open(sealed)
    wait_shown(qtbot, window)
    window.desk.go_to(before)
    window.close()
    again = opening()
    assert again.desk.page is before
    wait_shown(qtbot, again)
    qtbot.wait(150)  # all has been looked at that was to come
    page = again.desk.run_page
    again.desk.go_to(Page.RUN)
    qtbot.waitUntil(lambda: page.amperes.text.startswith("4.00"), timeout=2_000)
    assert not page.empty.isVisible()
    assert page.amperes.note == "last reading"


def test_what_is_handed_over_goes_before_and_is_not_where_the_next_time_begins(
    opening, qtbot, sealed
):
    window = opening()
    window.show_page(Page.METERS)
    window.close()
    handed = opening(recording=sealed)
    assert handed.desk.page is Page.RUN
    wait_shown(qtbot, handed)
    handed.close()
    assert opening().desk.page is Page.METERS


def test_a_recording_or_job_that_is_gone_is_left_out(opening, qtbot, sealed):
    window = opening()
    window.desk.at_hand.enter("work_order", "WO-9 (invented)")
    window.desk.open(sealed)
    wait_shown(qtbot, window)
    window.close()
    shutil.rmtree(sealed)
    shutil.rmtree(window.desk.at_hand.folder)
    again = opening()
    assert again.desk.session.phase is Phase.IDLE
    assert again.desk.session.trouble == ""
    assert again.desk.at_hand.folder is None


@pytest.mark.parametrize("content", ["", "{", "[]", '{"page": 99, "recording": ""}', '{"page": 1}'])
def test_a_damaged_file_costs_nothing(tmp_path, content):
    (tmp_path / "where.json").write_text(content)
    assert WhereIWas(tmp_path).load() is None


def test_an_unsealed_recording_is_not_opened_by_itself(tmp_path, sealed):
    where = WhereIWas(tmp_path)
    where.keep(Where(Page.RUN, sealed))
    assert where.load() == Where(Page.RUN, sealed)
    (sealed / "bagit.txt").unlink()
    assert where.load() == Where(Page.RUN, None)


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="no pipes with a name here")
@pytest.mark.parametrize("name", ["keys", "where", "sound", "last-job", "last-setup"])
@pytest.mark.parametrize("kind", ["pipe", "device", "deep"])
def test_what_takes_the_place_of_a_settings_file_holds_up_nothing(opening, tmp_path, name, kind):
    path = tmp_path / "settings" / "meterlog" / f"{name}.json"
    path.parent.mkdir(parents=True)
    if kind == "pipe":
        os.mkfifo(path)
    elif kind == "device":
        path.symlink_to("/dev/zero")
    else:
        path.write_text("[" * 1_000_000)
    assert opening().desk.page is Page.JOB
