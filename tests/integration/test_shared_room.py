"""Workers' tests side by side, or one alone: with locks of real files, a process each."""

import select
import subprocess
import sys
from pathlib import Path

import pytest

pytest.importorskip("fcntl")

RIG = Path(__file__).resolve().parents[1] / "rig"
GUEST = """
import sys
from pathlib import Path
from shared_room import shared_room
with shared_room(Path(sys.argv[1])) as room:
    for line in sys.stdin:
        word = line.strip()
        print("begun", flush=True)
        if word == "leave":
            room.leave()
        else:
            room.enter(alone=word == "alone")
        print("done", flush=True)
"""


class Guest:
    """A process that enters and leaves the room when it is told to."""

    def __init__(self, folder):
        self._process = subprocess.Popen(
            [sys.executable, "-c", GUEST, folder],
            cwd=RIG,
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            text=True,
        )

    def begin(self, word):
        self._process.stdin.write(word + "\n")
        self._process.stdin.flush()
        assert self._process.stdout.readline() == "begun\n"

    def done(self):
        return self._process.stdout.readline() == "done\n"

    def do(self, word):
        self.begin(word)
        assert self.done()

    def waits(self):
        """Tell whether it has not got in after a while."""
        return not select.select([self._process.stdout], [], [], 0.3)[0]

    def close(self):
        self._process.kill()
        self._process.communicate()


@pytest.fixture
def guests(tmp_path):
    some = [Guest(tmp_path) for _ in range(3)]
    yield some
    for one in some:
        one.close()


def test_who_wants_to_be_alone_waits_for_those_inside_and_goes_before_those_who_come(guests):
    first, alone, later = guests
    first.do("enter")
    alone.begin("alone")
    assert alone.waits()
    later.begin("enter")
    assert later.waits()
    first.do("leave")
    assert alone.done()
    assert later.waits()
    alone.do("leave")
    assert later.done()


def test_one_inside_may_want_to_be_alone_and_so_may_two_at_once(guests):
    one, two, beside = guests
    for guest in guests:
        guest.do("enter")
    for guest in (one, two):
        guest.do("leave")
        guest.begin("alone")
    assert one.waits()
    assert two.waits()
    beside.do("leave")
    assert one.done()
    assert two.waits()
    one.do("leave")
    assert two.done()


def test_one_that_dies_inside_keeps_nobody_out(guests):
    first, second, _ = guests
    first.do("alone")
    second.begin("alone")
    assert second.waits()
    first.close()
    assert second.done()
