"""What a thread finds in a folder, on a disk or at a port is shown of that one and of no other."""

import threading
from pathlib import Path
from types import SimpleNamespace

import pytest

from meterlog.acquire import Fit, Outcome, PortAnswer, PortProgress
from meterlog.instruments import PortInfo
from meterlog.window import disk_watch, recordings_list
from meterlog.window.disk_watch import DiskWatch
from meterlog.window.one_thread import OneThread
from meterlog.window.ports_panel import PortsPanel
from meterlog.window.recordings_list import RecordingsList
from tests.rig.held_work import HeldWork

HERE, THERE = Path("here"), Path("there")


@pytest.fixture
def rooms(monkeypatch):
    held = HeldWork(lambda folder: {HERE: 1_000, THERE: 2_000}[folder])
    monkeypatch.setattr(disk_watch, "free_bytes", held)
    monkeypatch.setattr(disk_watch, "STANDS_S", 0.0)
    yield held
    held.let_go(HERE)
    held.let_go(THERE)


def _finds(watch, qtbot, folder, free):
    def done():
        watch.tick(folder)
        assert watch.free == free

    qtbot.waitUntil(done)


def test_room_on_the_disk_before_is_not_told_of_another(rooms, qtbot):
    watch = DiskWatch()
    rooms.let_go(HERE)
    watch.tick(HERE)
    _finds(watch, qtbot, HERE, 1_000)
    watch.tick(THERE)
    assert watch.free == -1
    rooms.let_go(THERE)
    _finds(watch, qtbot, THERE, 2_000)


def test_a_disk_that_hangs_does_not_hold_up_the_look_at_another(rooms, qtbot):
    watch = DiskWatch()
    watch.tick(HERE)
    rooms.let_go(THERE)
    watch.tick(THERE)
    _finds(watch, qtbot, THERE, 2_000)
    rooms.let_go(HERE)
    watch.tick(THERE)
    assert watch.free == 2_000


def test_while_a_folder_is_being_typed_nothing_is_looked_at_and_no_room_is_told(
    rooms, qtbot, monkeypatch
):
    watch, now_s = DiskWatch(), [100.0]
    monkeypatch.setattr(disk_watch, "STANDS_S", 1.0)
    monkeypatch.setattr(disk_watch, "time", SimpleNamespace(monotonic=lambda: now_s[0]))
    rooms.let_go(HERE)

    def typed(*letters):
        for text in letters:
            watch.tick(Path(text))
            now_s[0] += 0.9
            watch.tick(Path(text))
            assert (watch.free, watch._work.busy) == (-1, False)
            now_s[0] += 0.05

    typed("h", "he", "her", "here")
    now_s[0] += 0.1
    _finds(watch, qtbot, HERE, 1_000)
    typed("her", "here")
    assert rooms.asked == [HERE]


@pytest.fixture
def listed(qtbot, monkeypatch):
    """A list of recordings, and what lies in two folders, held until the test lets it go."""

    def look(folder):
        if folder == Path("odd"):
            raise ValueError("embedded null byte")
        newest = ((folder / "run", True),)
        return recordings_list._Found(newest, (folder / "cut-off",), f"{folder} is barred")

    held = HeldWork(look)
    monkeypatch.setattr(recordings_list, "_look_into", held)
    view = RecordingsList()
    qtbot.addWidget(view)
    view.show()
    yield view, held
    held.let_all_go()


def _shown(view):
    return [view.list.item(row).toolTip() or view.list.item(row).text() for row in range(
        view.list.count()
    )]  # fmt: skip


def test_recordings_of_the_folder_before_do_not_stand_under_another(listed, qtbot):
    view, held = listed
    held.let_go(HERE)
    view.show_folder(HERE)
    qtbot.waitUntil(lambda: not view.reading)
    assert _shown(view) == ["here/run"]
    assert view.cut_off.isVisible()
    view.show_folder(THERE)
    assert _shown(view) == ["being read…"]
    assert not view.cut_off.isVisible()
    held.let_go(THERE)
    qtbot.waitUntil(lambda: not view.reading)
    assert _shown(view) == ["there/run"]
    assert view._unsealed == (THERE / "cut-off",)


def test_of_two_folders_asked_for_the_second_one_is_listed(listed, qtbot):
    view, held = listed
    said = []
    view.looked.connect(said.append)
    view.show_folder(HERE)
    view.show_folder(THERE)
    held.let_go(HERE)
    qtbot.waitUntil(lambda: held.asked == [HERE, THERE])
    assert _shown(view) == ["being read…"]
    held.let_go(THERE)
    qtbot.waitUntil(lambda: not view.reading)
    assert (_shown(view), said) == (["there/run"], ["there is barred"])


def test_a_folder_that_cannot_be_looked_into_says_so_and_lists_nothing(listed, qtbot):
    view, held = listed
    said = []
    view.looked.connect(said.append)
    for folder in (HERE, Path("odd")):
        held.let_go(folder)
        view.show_folder(folder)
        qtbot.waitUntil(lambda: not view.reading)
    assert _shown(view) == ["None yet."]
    assert said[0] == "here is barred"
    assert "embedded null byte" in said[1]


class Asking:
    """Pretends to ask one port, which has answered as soon as ``answered`` is set."""

    def __init__(self, ports, _profiles):
        self._ports = ports
        self.answered = False

    def start(self):
        """Nothing to do."""

    def progress(self):
        fits = (Fit("bench-scpi", "Bench", "answers *IDN?", ()),)
        return tuple(
            PortProgress(
                one.device,
                "" if self.answered else "listening",
                PortAnswer(one.device, Outcome.FITS, fits) if self.answered else None,
            )
            for one in self._ports
        )


@pytest.mark.parametrize("same", [True, False])
def test_an_answer_is_shown_at_the_adapter_that_gave_it_alone(qtbot, same):
    first = PortInfo("/dev/ttyUSB0", "an adapter", "1a2b", "3c4d", "SN7")
    then = first if same else PortInfo("/dev/ttyUSB0", "another", "5e6f", "7a8b", "SN8")
    made = []

    def make(ports, profiles):
        made.append(Asking(ports, profiles))
        return made[-1]

    panel = PortsPanel(lambda: [first], list, make)
    qtbot.addWidget(panel)
    panel.entries[0].may_ask.setChecked(True)
    panel.ask()
    panel.show_ports([])
    panel.show_ports([then])
    made[0].answered = True
    panel.look()
    (entry,) = panel.entries
    assert (entry.answer is not None, len(entry.buttons)) == (same, same)
    assert not panel.asking


class Raced(OneThread):
    """Whose work is done between two glances of one look: as the first of them has been taken."""

    def __init__(self):
        self.go = threading.Event()
        self._step = None
        super().__init__()

    @property
    def _early(self):
        step = self._step
        if not self.go.is_set() and self._thread is not None:
            self.go.set()
            self._thread.join()
        return step

    @_early.setter
    def _early(self, step):
        self._step = step


def test_what_is_shown_before_the_outcome_is_never_taken_after_it():
    work, taken = Raced(), []

    def early_and_done():
        assert work.go.wait(60.0)
        work.meanwhile(lambda: taken.append("first sight"))
        return lambda: taken.append("judged")

    work.begin(early_and_done, "raced", lambda _: lambda: None, lambda: None)
    while work.busy or work.has_news:
        work.settle()
    assert taken == ["first sight", "judged"]
