"""The virtual bench as a child process."""

import contextlib
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


def test_several_meters_are_served_by_one_process_and_obey_typed_lines():
    happened = []
    with BenchProcess(
        ["line-logger", "line-logger"],
        "healthy-new",
        1,
        lambda kind, value, _: happened.append((kind.value, value)),
        ["--no-script", "--at", "0.2", "speed 3"],
    ) as bench:
        addresses = bench.addresses()
        assert list(addresses) == ["line-logger", "line-logger-2"]
        assert bench.address() == addresses["line-logger"]
        port = os.open(addresses["line-logger-2"], os.O_RDWR | os.O_NOCTTY)
        try:
            end = time.monotonic() + 60.0
            while ("speed", "3") not in happened:
                assert time.monotonic() < end
            assert b"VIRTUAL BENCH" in os.read(port, 200)
            bench.order("unplug line-logger-2")
            # A terminal that has gone reads as ended or as failed.
            with contextlib.suppress(OSError):
                while os.read(port, 4096):
                    assert time.monotonic() < end
            with pytest.raises(OSError, match="Input/output error"):
                os.write(port, b"x")
        finally:
            os.close(port)
