"""The virtual bench as a child process."""

import os
import threading
import time

import pytest

from meterlog.work.bench_process import BenchProcess

pytestmark = pytest.mark.pty


def test_a_bench_outlives_the_thread_that_asked_for_it():
    """A window connects in a thread that ends when the run has begun."""
    made = []
    asking = threading.Thread(
        target=lambda: made.append(BenchProcess("line-logger", "healthy-new"))
    )
    asking.start()
    asking.join()
    with made[0] as bench:
        address = bench.address()
        time.sleep(0.3)  # a child that is taken along goes at once
        port = os.open(address, os.O_RDWR | os.O_NOCTTY)
        try:
            assert b"VIRTUAL BENCH" in os.read(port, 200)
        finally:
            os.close(port)
