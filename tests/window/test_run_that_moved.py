"""A run whose disk failed belongs to its job where it went on, and the window says where."""

import shutil
from dataclasses import replace

import pytest

from meterlog.model import EventKind
from meterlog.model.errors import DiskFailed
from meterlog.recording import layout, seal
from meterlog.recording.continuation import Continuation, continuation_bytes
from meterlog.window.session import Phase
from meterlog.work.job_folder import Side, load_work
from tests.rig.fake_run import FakeRun

MOVED = "run/data: is no longer where it was made. The recording goes on in goes-on."


class MovedRun(FakeRun):
    """It moves when it is told to; at its end it is where the test puts it."""

    status_moved = ""

    def status(self):
        return replace(super().status(), moved=self.status_moved)

    def move(self, folder):
        self.folder, self.status_moved = folder, MOVED

    def stop(self, outcome):
        super().stop(outcome)
        if isinstance(self.end, Exception):
            raise self.end
        self.folder = self.end
        self.status_moved = f"{MOVED} The whole of it is in {self.end.name}."
        return self.folder


@pytest.fixture
def run(tmp_path, about_of, block_of):
    return MovedRun(tmp_path / "run", about_of(), block_of(0, 8, (12.5, 8.0, 4.0)))


@pytest.fixture
def moved(window, run, qtbot, tmp_path):
    """A job's run, of the new part, that goes on elsewhere; a circuit check follows it."""
    at_hand = window.desk.at_hand
    at_hand.enter("work_order", "WO-1 (invented)")
    at_hand.fit(Side.NEW)
    desk = window.desk
    desk.session.adopt(run)
    desk.tick()
    assert _kept(at_hand) == [("run", Side.NEW, False)]
    run.move(tmp_path / "goes-on")
    desk._glanced_s = float("-inf")
    desk.tick()
    assert desk.circuit.log.folder == tmp_path / "goes-on"
    assert _kept(at_hand) == [("run", Side.NEW, False)]
    return window


def _kept(at_hand):
    return [
        (one.folder.name, one.side, one.circuit) for one in load_work(at_hand.folder).recordings
    ]


def _stop(window, qtbot):
    window.desk.session.stop()

    def done():
        window.desk.tick()
        assert window.desk.session.phase is Phase.SHOWING

    qtbot.waitUntil(done)


def test_a_run_that_was_put_together_takes_the_place_of_its_first_part(moved, run, qtbot, tmp_path):
    shutil.copytree(tmp_path / "run", tmp_path / "run-whole")
    run.end = tmp_path / "run-whole"
    _stop(moved, qtbot)
    desk = moved.desk
    assert _kept(desk.at_hand) == [("run-whole", Side.NEW, False)]
    assert [one.speeds for one in desk.at_hand.work.recordings] == [1]
    assert desk.session.folder == tmp_path / "run-whole"
    assert desk.session.trouble == f"{MOVED} The whole of it is in run-whole."
    desk.go_to(desk.page)
    assert "The whole of it is in run-whole." in desk.session.trouble


def test_a_last_part_alone_is_kept_beside_the_first_and_says_what_it_is(
    moved, run, qtbot, tmp_path
):
    last = tmp_path / "goes-on"
    shutil.copytree(tmp_path / "run", last)
    for one in (layout.BAGIT, layout.MANIFEST, layout.BAG_INFO, "tagmanifest-sha256.txt"):
        (last / one).unlink()
    keys = dict.fromkeys([one.key for one in run.about.instruments], 0)
    went_on = Continuation(tmp_path / "run", "no space left.", keys, keys)
    (last / layout.CONTINUES).write_bytes(continuation_bytes(went_on))
    seal(last)
    run.end = last
    _stop(moved, qtbot)
    desk = moved.desk
    assert _kept(desk.at_hand) == [("run", Side.NEW, False), ("goes-on", Side.NEW, False)]
    assert MOVED in desk.session.trouble
    assert "Put together with" not in desk.session.trouble  # the run said what became of it
    desk.open(last)
    qtbot.waitUntil(lambda: desk.session.phase is Phase.SHOWING)
    assert f"It goes on from {tmp_path / 'run'}, whose disk failed" in desk.session.trouble
    assert f"meterlog join {last}" in desk.session.trouble


def test_a_run_that_could_not_be_ended_is_where_it_went_on(moved, run, qtbot, tmp_path):
    run.end = DiskFailed("not everything could be kept.")
    _stop(moved, qtbot)
    session = moved.desk.session
    assert session.folder == tmp_path / "goes-on"
    assert "not everything could be kept" in session.trouble
    assert not session.shown.live
    assert session.mark(EventKind.TAP) is None


def test_an_own_circuit_check_is_filed_as_one(moved, run, qtbot, tmp_path):
    run.end = tmp_path / "run"
    _stop(moved, qtbot)
    moved.desk.job.add_circuit(tmp_path / "check")
    assert _kept(moved.desk.at_hand)[-1] == ("check", Side.NEW, True)
