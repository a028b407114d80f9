"""Nothing blocks the paint loop: each long work with a recording of ten minutes, watched."""

import importlib
import sys
from contextlib import contextmanager

import pytest
from PySide6.QtWidgets import QApplication

from meterlog.model import Event, EventKind
from meterlog.recording import Recorder
from meterlog.window import load_ahead
from meterlog.window.application import in_turns
from meterlog.window.circuit_choice import circuit_titles
from meterlog.window.claim_page import ClaimDesk
from meterlog.window.compare_page import CompareDesk
from meterlog.window.main_window import MainWindow
from meterlog.window.pages import Page
from meterlog.window.session import Phase
from meterlog.window.window_thread import wait_for_nobody
from meterlog.work.file_lock import PATIENCE_S
from meterlog.work.job_folder import JobWork, Side
from tests.benchmarks.traces import about, fan_block, write_recording
from tests.rig.paint_watch import PaintWatch, allowed_s

RATE_HZ = 1000
MINUTES = 10
MANY = 2000


@pytest.fixture(scope="module")
def shelf(tmp_path_factory):
    """Give a folder with two recordings of three channels, 600 000 rows each, and a shorter one."""
    folder = tmp_path_factory.mktemp("shelf")
    rows = fan_block(RATE_HZ * 60 * MINUTES, 1.0 / RATE_HZ)
    for name in ("before", "after"):
        write_recording(folder / name, about(1.0 / RATE_HZ), rows)
    # A pack is made and checked in a process of its own, most of it writing tables.
    write_recording(folder / "short", about(1.0 / RATE_HZ), rows.rows(0, len(rows) // 4))
    return folder


@pytest.fixture
def window(window, monkeypatch, tmp_path):
    """The window as the program opens it: its thread waits for nobody, its modules are there."""
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    for name in (*load_ahead.FOR_THE_WINDOW, *load_ahead.FOR_THE_PAGES):
        importlib.import_module(name)
    turn_s, patience_s = sys.getswitchinterval(), PATIENCE_S.get()
    wait_for_nobody()
    yield window
    PATIENCE_S.set(patience_s)
    sys.setswitchinterval(turn_s)


@pytest.fixture
def watched(qtbot):
    """Watch what is done in a block; at its end nothing may have blocked the loop."""

    @contextmanager
    def watch(what):
        QApplication.processEvents()
        limit_s, watch = allowed_s(), PaintWatch()
        with watch:
            yield
            before = watch.turns
            qtbot.waitUntil(lambda: watch.turns > before + 3, timeout=30000)
        # Others who share the machine come and go: what was slow meanwhile may be quick again.
        limit_s = max(limit_s, allowed_s())
        late = watch.over(limit_s)
        words = f"{what} blocked the paint loop for over {limit_s * 1e3:.0f} ms:"
        assert not late, "\n".join([words, *map(str, late[:3])])

    return watch


def opened(window, qtbot, folder):
    desk = window.desk
    desk.open(folder)
    qtbot.waitUntil(
        lambda: desk.session.phase is Phase.SHOWING and not desk.session.busy, timeout=60000
    )


def test_filling_the_window(qtbot, watched, monkeypatch, tmp_path):
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    for name in load_ahead.FOR_THE_WINDOW:
        importlib.import_module(name)
    window, ended = MainWindow(), []
    qtbot.addWidget(window)
    window.show()
    qtbot.waitExposed(window)
    with watched("filling"):
        in_turns(window, window.filling(), lambda: ended.append(True))
        qtbot.waitUntil(lambda: bool(ended), timeout=30000)
    assert window.filled


def made_ahead(window, qtbot):
    ended = []
    in_turns(window, window.desk.parts.making(), lambda: ended.append(True))
    qtbot.waitUntil(lambda: bool(ended), timeout=30000)


def test_making_the_pages_ahead(window, qtbot, watched):
    qtbot.wait(100)  # until the window that has just been filled stands painted
    with watched("making the pages"):
        made_ahead(window, qtbot)


@pytest.mark.parametrize("page", list(Page))
def test_turning_to_a_page_for_the_first_time(window, qtbot, watched, page):
    made_ahead(window, qtbot)
    circuit_titles()
    qtbot.wait(100)  # until the window that has just been filled stands painted
    with watched(page.name):
        window.show_page(page)


def test_opening_looking_and_measuring(window, qtbot, watched, shelf):
    with watched("opening"):
        opened(window, qtbot, shelf / "before")
    page = window.desk.run_page
    with watched("looking"):
        for zoom, move in ((1, 0), (1, 0), (1, 0), (0, -0.25), (0, 0.25), (-1, 0), (-1, 0)):
            page.look(zoom=zoom, move=move)
            qtbot.wait(20)
    with watched("measuring"):
        page.follow()
        page.turn_stretch()
        qtbot.waitUntil(lambda: "mean" in page.stretch.words.text(), timeout=60000)


def test_mending(window, qtbot, watched, tmp_path):
    folder, rows = tmp_path / "cut", fan_block(RATE_HZ * 60 * MINUTES, 1.0 / RATE_HZ)
    recorder = Recorder.create(folder, about(1.0 / RATE_HZ), keep_raw=False)
    recorder.take(Event(0, EventKind.SPEED, "4"))
    recorder.take(rows)
    recorder.close()
    with watched("mending"):
        window.desk._mend([folder])
        qtbot.waitUntil((folder / "bagit.txt").is_file, timeout=60000)
        qtbot.waitUntil(lambda: not window.desk.session.busy, timeout=60000)


def test_comparing(window, qtbot, watched, shelf):
    window.show_page(Page.COMPARE)
    desk = window.desk.parts[Page.COMPARE]
    assert isinstance(desk, CompareDesk)
    with watched("comparing"):
        desk.take_folder("before", shelf / "before")
        desk.take_folder("after", shelf / "after")
        qtbot.waitUntil(lambda: desk.laid is not None, timeout=60000)
    with watched("looking at both"):
        desk.look(by_step=False)
        qtbot.wait(20)
        desk.view.picture.zoom(1.0)
        qtbot.wait(20)
        desk.look(by_step=True)


def test_judging_a_circuit(window, qtbot, watched):
    window.show_page(Page.CIRCUIT)
    circuit = window.desk.circuit
    with watched("judging a circuit"):
        circuit.choose("low-side-linear-12v")
        qtbot.waitUntil(lambda: circuit.verdict is not None, timeout=60000)


def test_a_folder_with_very_many_recordings(window, qtbot, watched, tmp_path):
    for number in range(MANY):
        (tmp_path / f"r{number:04}" / "data").mkdir(parents=True)
        (tmp_path / f"r{number:04}" / "data" / "about.json").write_text("{}")
    page = window.desk.meters_page
    with watched("the list of recordings"):
        page.show_recordings()
        qtbot.waitUntil(lambda: not page.recordings.reading, timeout=60000)
    assert page.recordings.list.count() > 10


@pytest.mark.slow
def test_making_and_checking_a_pack(window, qtbot, watched, shelf, tmp_path):
    window.desk.at_hand.set_work(JobWork().taking(shelf / "short", Side.OLD))
    window.show_page(Page.CLAIM)
    desk = window.desk.parts[Page.CLAIM]
    assert isinstance(desk, ClaimDesk)
    desk.page.options.out.setText(str(tmp_path / "pack"))
    with watched("making a pack"):
        desk.make()
        qtbot.waitUntil(lambda: not desk._making.busy, timeout=90000)
    assert desk.page.said.text() == ""
    for name in ("claim.pdf", "claim.zip"):
        with watched(f"checking {name}"):
            desk.check.check(tmp_path / "pack" / name)
            qtbot.waitUntil(lambda: not desk.check._checking.busy, timeout=60000)
        assert desk.page.check.verdict.text() == "Intact"
