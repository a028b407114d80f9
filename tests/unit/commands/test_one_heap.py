"""Threads of a recording share one heap, as the C library itself tells."""

import subprocess
import sys

import pytest

pytestmark = pytest.mark.skipif(sys.platform != "linux", reason="asks the C library of Linux")

THREADS = """
import ctypes, sys, threading
libc = ctypes.CDLL(None)
if not hasattr(libc, "malloc_stats"):
    sys.exit(3)
libc.malloc.restype = ctypes.c_void_p
if sys.argv[1] == "shared":
    from meterlog.commands.one_heap import share_one_heap
    share_one_heap()
import meterlog.work  # which begins threads of its own
gate = threading.Barrier(4)
def work():
    gate.wait()
    libc.malloc(ctypes.c_size_t(50_000))
    gate.wait()
for thread in [threading.Thread(target=work) for _ in range(4)]:
    thread.start()
for thread in threading.enumerate():
    if thread is not threading.main_thread():
        thread.join()
libc.malloc_stats()
"""


def heaps(how):
    done = subprocess.run(
        [sys.executable, "-c", THREADS, how], capture_output=True, text=True, check=False
    )
    if done.returncode == 3:
        pytest.skip("this C library tells nothing of its heaps")
    assert done.returncode == 0, done.stderr
    return done.stderr.count("Arena ")


def test_one_heap_for_all_threads():
    assert heaps("shared") == 1
    assert heaps("own") > 1
