"""A second process is killed at any instant of any work; what it leaves opens, and is right.

The rig is ``tests/rig/kills.py``; ``make survive`` makes a thousand kills.
"""

import subprocess
import sys
from pathlib import Path

import pytest

RIG = str(Path(__file__).resolve().parents[1] / "rig")

CHILD = """
import sys
sys.path.insert(0, sys.argv[1])
from kills import many_kills
kinds, wrong, _ = many_kills(range(int(sys.argv[2]), int(sys.argv[2]) + int(sys.argv[3])))
print(kinds.total(), len(kinds), wrong)
"""


@pytest.mark.kill
@pytest.mark.skipif(sys.platform == "win32", reason="SIGKILL and fork are POSIX")
def test_twenty_kills_at_random_instants_leave_nothing_wrong():
    # In a process of its own: this one has threads, and a fork takes their locks along.
    done = subprocess.run(
        [sys.executable, "-c", CHILD, RIG, "40000", "20"],
        capture_output=True,
        text=True,
        timeout=240,
        check=False,
    )
    assert done.stderr == ""
    total, kinds, wrong = done.stdout.split(" ", 2)
    assert wrong.strip() == "[]"
    assert int(total) == 20
    assert int(kinds) >= 5  # works of so many kinds
