"""The window's thread waits for nobody; others still do."""

import sys
import threading
import time

import pytest

from meterlog.model.errors import DiskFailed
from meterlog.window.window_thread import LOCK_S, TURN_S, wait_for_nobody
from meterlog.work.file_lock import PATIENCE_S, alone_with


@pytest.fixture(autouse=True)
def as_before():
    turn_s, patience_s = sys.getswitchinterval(), PATIENCE_S.get()
    yield
    PATIENCE_S.set(patience_s)
    sys.setswitchinterval(turn_s)


def test_a_file_that_another_program_changes_is_told_at_once(tmp_path):
    wait_for_nobody()
    path = tmp_path / "card.json"
    with alone_with(path):
        begun_s = time.perf_counter()
        with pytest.raises(DiskFailed, match="being changed by another program"), alone_with(path):
            pytest.fail("the lock was taken twice")
        assert time.perf_counter() - begun_s < 5.0  # ten seconds without it
    with alone_with(path):
        pass


def test_other_threads_keep_their_patience():
    before_s = PATIENCE_S.get()
    wait_for_nobody()
    assert PATIENCE_S.get() == LOCK_S
    seen = []
    thread = threading.Thread(target=lambda: seen.append(PATIENCE_S.get()))
    thread.start()
    thread.join()
    assert seen == [before_s]
    assert before_s > LOCK_S


def test_turns_are_short_and_never_made_longer():
    wait_for_nobody()
    assert sys.getswitchinterval() == pytest.approx(TURN_S)
    sys.setswitchinterval(TURN_S / 2)
    wait_for_nobody()
    assert sys.getswitchinterval() == pytest.approx(TURN_S / 2)
