"""The computer is kept awake where it lets us; where it does not, that is said."""

import os
import pathlib
import signal
import stat
import subprocess
import sys
import threading
import time

import pytest

from meterlog.acquire import SleepBlock
from meterlog.acquire.sleep_block import BLOCKED, NOT_BLOCKED

pytestmark = pytest.mark.skipif(sys.platform != "linux", reason="what Linux has")

HOLDS = """#!/bin/sh
echo "$@" >> "$LOG"
while [ "$1" != cat ]; do shift; done
exec "$@"
"""
REFUSES = """#!/bin/sh
echo "$@" >> "$LOG"
echo "" >&2
echo "Failed to inhibit: Access denied" >&2
exit 1
"""
LESS = """#!/bin/sh
echo "$@" >> "$LOG"
case "$1" in *lid*) echo "Access denied" >&2; exit 1;; esac
while [ "$1" != cat ]; do shift; done
exec "$@"
"""


@pytest.fixture
def program(tmp_path, monkeypatch):
    """Put a program of the system's name first on the path."""
    monkeypatch.setenv("LOG", str(tmp_path / "log"))

    def make(text):
        path = tmp_path / "bin" / "systemd-inhibit"
        path.parent.mkdir()
        path.write_text(text)
        path.chmod(path.stat().st_mode | stat.S_IXUSR)
        monkeypatch.setenv("PATH", f"{path.parent}:{os.environ['PATH']}")
        return tmp_path / "log"

    return make


def wait_for(condition):
    end = time.monotonic() + 60.0
    while not condition():
        assert time.monotonic() < end
        time.sleep(0.01)


def test_it_holds_until_it_is_let_go(program):
    log = program(HOLDS)
    block = SleepBlock()
    wait_for(log.exists)
    assert block.holds
    assert block.words == BLOCKED
    assert log.read_text().startswith("--what=sleep:idle:handle-lid-switch --who=meterlog")
    child = block._holder._process
    block.release()
    assert child.poll() is not None
    assert (block.holds, block.words) == (False, "")
    block.release()


def test_less_is_asked_for_where_all_is_refused(program):
    log = program(LESS)
    block = SleepBlock()
    wait_for(lambda: block.holds and log.exists() and log.read_text().count("\n") == 2)
    assert block.words == BLOCKED
    assert "--what=sleep:idle --who" in log.read_text().splitlines()[1]
    block.release()


def test_a_refusal_is_said_with_what_to_do(program):
    log = program(REFUSES)
    block = SleepBlock()
    wait_for(lambda: NOT_BLOCKED in block.words)
    assert log.read_text().count("\n") == 3
    assert "systemd-inhibit says 'Failed to inhibit: Access denied'" in block.words
    assert "leave the lid open" in block.words
    block.release()


def test_nothing_is_begun_once_it_was_let_go_while_another_thread_asked(program, monkeypatch):
    """A refusal makes whoever asks try with less; a child begun then would never be ended."""
    log = program(LESS)
    block = SleepBlock()
    first = block._holder._process
    wait_for(lambda: first.poll() is not None)
    begun, go_on, children = threading.Event(), threading.Event(), [first]
    start = block._holder._start

    def slowly():
        begun.set()
        assert go_on.wait(60.0)
        children.append(start())
        return children[-1]

    monkeypatch.setattr(block._holder, "_start", slowly)
    asking = threading.Thread(target=lambda: block.words)
    asking.start()
    assert begun.wait(60.0)
    ending = threading.Thread(target=block.release)
    ending.start()
    ending.join(0.2)
    go_on.set()
    asking.join(20.0)
    ending.join(20.0)
    assert [child.returncode is None for child in children] == [False, False]
    assert log.read_text().count("\n") <= 2


def test_where_there_is_no_such_program_that_is_said(monkeypatch, tmp_path):
    monkeypatch.setenv("PATH", str(tmp_path))
    block = SleepBlock()
    assert block.words.startswith(f"{NOT_BLOCKED}: there is no systemd-inhibit here")
    assert not block.holds
    block.release()


def test_one_that_ends_by_itself_is_noticed(program):
    program(HOLDS)
    block = SleepBlock()
    for _ in range(3):  # it is begun anew while less can be asked for
        wait_for(lambda: block.holds)
        child = block._holder._process
        child.kill()
        child.wait(20)
    assert NOT_BLOCKED in block.words
    block.release()


@pytest.mark.kill
def test_it_ends_with_a_program_that_is_killed(program, tmp_path):
    program(HOLDS.replace("echo", f"echo $$ > {tmp_path}/pid; echo", 1))
    code = "import time; from meterlog.acquire import SleepBlock; b = SleepBlock(); time.sleep(60)"
    with subprocess.Popen([sys.executable, "-c", code]) as holder:
        wait_for(lambda: (tmp_path / "pid").exists() and (tmp_path / "pid").read_text())
        pid = int((tmp_path / "pid").read_text())
        holder.send_signal(signal.SIGKILL)
    wait_for(lambda: _is_gone(pid))


def _is_gone(pid):
    try:
        with pathlib.Path(f"/proc/{pid}/stat").open() as stream:
            return (
                stream.read().rsplit(")", 1)[1].split()[0] == "Z"
            )  # nobody waits for orphans here
    except FileNotFoundError:
        return True
