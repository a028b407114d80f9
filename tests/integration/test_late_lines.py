"""Lines that a busy computer held up on their way."""

import itertools
import os
import pty
import time
import tty

import pytest

from meterlog.acquire import Acquisition, Clock, MeterChoice
from meterlog.model import Block
from meterlog.profile import load_meter

pytestmark = pytest.mark.pty


def test_lines_held_up_on_the_way_get_their_intervals_back():
    """A busy computer hands over four late lines one after the other; none was missing."""
    ours, theirs = pty.openpty()
    tty.setraw(theirs)
    profile = load_meter("line-logger")
    choice = MeterChoice(profile, os.ttyname(theirs), "line-logger", profile.channels)
    acquisition = Acquisition([choice], Clock.start())
    acquisition.connect()
    items = []
    acquisition.start(items.append)
    try:
        os.write(ours, b"\n")
        number = 0
        for pause_s in [0.02] * 12 + [0.1, 0.0004, 0.0004, 0.0004, 0.0004] + [0.02] * 4:
            time.sleep(pause_s)
            number += 1
            os.write(ours, b"12.0,0.5,%d.0\n" % number)
        deadline = time.monotonic() + 5.0
        while sum(len(i) for i in items if isinstance(i, Block)) < number:
            assert time.monotonic() < deadline
            time.sleep(0.01)
    finally:
        acquisition.stop()
        os.close(ours)
        os.close(theirs)
    blocks = [item for item in items if isinstance(item, Block)]
    numbers = [round(value) for block in blocks for value in block.values[:, 2]]
    stamps = [int(t) for block in blocks for t in block.t_ns]
    assert numbers == list(range(1, number + 1))
    held_up = stamps[11:17]
    assert max(b - a for a, b in itertools.pairwise(held_up)) < 45_000_000
