"""Signals that come while one is being handled stop a command, and never lock it up.

A process whose parent is killed on Linux is told once for each of the parent's threads that end.
"""

import subprocess
import sys

import pytest

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="sends POSIX signals")

_FLOOD = """
import os, signal, threading, time
def flood():
    for _ in range(20000):
        os.kill(os.getpid(), signal.SIGTERM)
sender = threading.Thread(target=flood)
"""
_RECORDER = """
from meterlog.commands.stop_signals import StopSignals
with StopSignals() as stop:
    assert not stop.wait(0.01)
    sender.start()
    while sender.is_alive():
        stop.wait(0.0001)
    assert stop.wanted and stop.wait(60.0)
"""
_BENCH = """
from meterlog.commands.virtual import _stop_signals
with _stop_signals() as stopped:
    assert not stopped()
    sender.start()
    while sender.is_alive():
        time.sleep(0.0001)
    assert stopped()
"""


@pytest.mark.parametrize("watch", [_RECORDER, _BENCH], ids=["recorder", "bench"])
def test_a_flood_of_signals_locks_nothing_up(watch):
    command = [sys.executable, "-c", _FLOOD + watch]
    done = subprocess.run(command, capture_output=True, text=True, timeout=120, check=False)
    assert done.returncode == 0, done.stderr
