"""Ctrl-C at a terminal goes to the workers, too, from their first instant on: they leave it be."""

import os
import select
import signal
import subprocess
import sys
import time

import pytest

pytestmark = pytest.mark.skipif(not hasattr(signal, "pthread_sigmask"), reason="has no such signal")

SCREENING = """
import signal
from meterlog.work.screening.workers import Workers, _pool
if __name__ == "__main__":
    signal.signal(signal.SIGINT, lambda *_: None)
    print("begun", flush=True)
    with _pool(Workers(2)) as pool:
        print(*pool.map(abs, [-3, -4]), flush=True)
        input()
"""


def test_workers_that_are_still_starting_do_not_hear_it(tmp_path):
    script = tmp_path / "screening.py"
    script.write_text(SCREENING)
    with subprocess.Popen(
        [sys.executable, script],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        start_new_session=True,
    ) as program:
        assert program.stdout.readline() == "begun\n"
        until = time.monotonic() + 60.0
        while not select.select([program.stdout], [], [], 0.05)[0] and time.monotonic() < until:
            os.killpg(program.pid, signal.SIGINT)
        said, complaint = program.communicate("\n", timeout=240)
    assert (program.returncode, said, complaint) == (0, "3 4\n", "")
