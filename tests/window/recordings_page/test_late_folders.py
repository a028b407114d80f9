"""What was found in folders is told of those alone that are looked into now."""

from pathlib import Path

import pytest

from meterlog.window.recordings_page.library_work import LibraryWork
from meterlog.work.library import Refreshed
from tests.rig.held_work import HeldWork

HERE, THERE = Path("/here"), Path("/there")


def _found(roots):
    """In each folder something was cut off, and each has one that can't be looked into."""
    unsealed = tuple(one / "cut-off" for one in roots)
    return Refreshed(0, 0, 0, tuple((one, "is away") for one in roots), unsealed, 0)


@pytest.fixture
def work(tmp_path, monkeypatch):
    work, held = LibraryWork(tmp_path / "index.sqlite3"), HeldWork(_found)
    monkeypatch.setattr(work.library, "refresh", lambda roots, *_: held(tuple(roots)))
    monkeypatch.setattr(work.library, "forget", lambda _: None)
    yield work, held
    held.let_go((HERE, THERE))
    held.let_go((HERE,))
    work.close()


def _settled(work, qtbot):
    def done():
        work.tick(may_judge=False)
        assert not work.busy

    qtbot.waitUntil(done)


def test_what_was_cut_off_in_a_folder_is_not_offered_once_it_is_forgotten(work, qtbot):
    work, held = work
    held.let_go((HERE, THERE))
    work.look((HERE, THERE), HERE / "never")
    _settled(work, qtbot)
    assert work.unsealed == (HERE / "cut-off", THERE / "cut-off")
    work.forget(THERE)
    assert (work.unsealed, set(work.gone)) == ((HERE / "cut-off",), {HERE})


def test_a_look_that_was_begun_before_a_folder_was_forgotten_tells_nothing_of_it(work, qtbot):
    work, held = work
    work.look((HERE, THERE), HERE / "never")
    qtbot.waitUntil(lambda: held.asked == [(HERE, THERE)])
    work.forget(THERE)
    held.let_go((HERE, THERE))

    def again():
        work.tick(may_judge=False)
        assert THERE / "cut-off" not in work.unsealed
        assert len(held.asked) == 2

    qtbot.waitUntil(again)
    held.let_go((HERE,))
    _settled(work, qtbot)
    assert (work.unsealed, set(work.gone)) == ((HERE / "cut-off",), {HERE})
