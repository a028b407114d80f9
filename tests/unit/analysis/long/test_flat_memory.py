"""The memory of a live judgement of days is that of its first hour."""

import subprocess
import sys
from pathlib import Path

import pytest

_FED = """
import os, sys
from pathlib import Path
import numpy as np
from meterlog.analysis import Reviewer
from meterlog.model import Block, Channel, Event, EventKind, Instrument, Limits, Quantity, Role
from meterlog.work.attic_file import AtticFile

roles = (
    Role.MOTOR_FEED, Role.MOTOR_RETURN, Role.MOTOR_CURRENT, Role.BATTERY, Role.COMMAND,
    Role.RELAY_OUT,
)
channels = tuple(
    Channel(
        role.value,
        Quantity.CURRENT if role is Role.MOTOR_CURRENT else Quantity.VOLTAGE,
        role,
        interval_s=0.1,
    )
    for role in roles
)
hours, lot = int(sys.argv[2]), 900
rng = np.random.default_rng(1)
attic = None if sys.argv[1] == "without" else AtticFile()
reviewer = Reviewer([Instrument("meter", "test", "-", channels)], Limits(), attic=attic)
reviewer.feed(Event(0, EventKind.SPEED, "2"))
page = os.sysconf("SC_PAGE_SIZE")
base = np.array([12.2, 5.0, 5.7, 12.5, 3.0, 12.3])
seen = []
for at in range(0, hours * 36_000, lot):
    t_ns = np.arange(at, at + lot, dtype=np.int64) * 100_000_000
    values = np.round(base + rng.normal(0.0, 0.02, (lot, 6)), 3)
    if at % 36_000 == 18_000:  # once an hour a probe slips, and the current goes
        values[200:240, 0] = 0.02
        values[400:430, 2] = 0.0
    reviewer.feed(Block("meter", t_ns, values, np.zeros(values.shape, np.uint8)))
    reviewer.live()
    if at % 36_000 == 35_100:
        seen.append(int(Path("/proc/self/statm").read_text().split()[1]) * page)
print(*seen)
"""


def grown(how, hours):
    """Give how many bytes all later hours took more than the first two."""
    command = [sys.executable, "-c", _FED, how, str(hours)]
    done = subprocess.run(command, check=True, capture_output=True, text=True, timeout=240)
    seen = [int(one) for one in done.stdout.split()]
    assert len(seen) == hours
    return max(seen) - seen[1]


@pytest.mark.slow
@pytest.mark.skipif(not Path("/proc/self/statm").exists(), reason="reads it where Linux tells it")
def test_sixteen_hours_take_no_more_memory_than_two():
    assert grown("with", 16) < 2_000_000
    # Six channels and their levels are 10 MB an hour: what is measured does tell.
    assert grown("without", 8) > 50_000_000
