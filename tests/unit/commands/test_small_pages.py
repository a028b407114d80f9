"""What records has no huge pages, as the system itself tells, and the pages stay as they are."""

import subprocess
import sys

import pytest

pytestmark = pytest.mark.skipif(sys.platform != "linux", reason="asks Linux")

PAGES = """
import ctypes, mmap, sys
from pathlib import Path
ctypes.CDLL(None).prctl(41, 0, 0, 0, 0)  # a test before may have forbidden them to its children
if sys.argv[1] == "small":
    from meterlog.commands.small_pages import use_small_pages
    use_small_pages()
room = mmap.mmap(-1, 16 << 20, flags=mmap.MAP_PRIVATE | mmap.MAP_ANONYMOUS)
room.madvise(mmap.MADV_HUGEPAGE)
for start in range(0, len(room), 2 << 20):
    room[start] = 1
lines = Path("/proc/self/smaps_rollup").read_text().splitlines()
huge = next(int(line.split()[1]) for line in lines if line.startswith("AnonHugePages:"))
print(ctypes.CDLL(None).prctl(42, 0, 0, 0, 0), huge)
"""


def told(how):
    done = subprocess.run(
        [sys.executable, "-c", PAGES, how], capture_output=True, text=True, check=True
    )
    return [int(one) for one in done.stdout.split()]


def test_no_huge_page_is_made_of_what_records():
    off, huge = told("usual")
    if off or not huge:
        pytest.skip("this system makes no huge pages")
    assert told("small") == [1, 0]
