"""A recording program is killed at any instant; nothing it had flushed is lost or changed."""

import os
import random
import select
import signal
import subprocess
import sys
import time

import numpy as np
import pytest

from meterlog.evidence import verify_folder
from meterlog.recording import Recording, find_unsealed, seal

pytestmark = [
    pytest.mark.kill,
    pytest.mark.skipif(sys.platform == "win32", reason="SIGKILL is POSIX"),
]

# Imports once, then makes one child process for each line it is given: "<folder> <seed>". The
# child writes an endless trace and says after each flush how many rows the system has.
NURSERY = """
import os, sys
from datetime import UTC, datetime
from pathlib import Path
import numpy as np
from meterlog.model import *
from meterlog.recording import Recorder

def record(folder, seed):
    keys = ("a", "b")
    instruments = tuple(
        Instrument(k, "p", "x", (Channel("u", Quantity.VOLTAGE), Channel("i", Quantity.CURRENT)))
        for k in keys
    )
    about = About("id", datetime.now(UTC), 0, 0, "t", Origin.MEASURED, instruments)
    recorder = Recorder.create(Path(folder), about)
    rng = np.random.default_rng(int(seed))
    first = {key: 0 for key in keys}
    marks = 0
    while True:
        for key in keys:
            rows = int(rng.integers(1, 400))
            number = np.arange(first[key], first[key] + rows)
            first[key] += rows
            values = np.stack([number * 0.25, -number * 3.0], axis=1)
            flags = np.zeros(values.shape, np.uint8)
            recorder.take(RawBytes(key, int(number[0]), b"x" * rows))
            recorder.take(Block(key, number * 1000, values, flags))
        if rng.random() < 0.2:
            recorder.take(Event(int(number[-1]) * 1000, EventKind.NOTE, str(marks)))
            marks += 1
        recorder.flush()
        os.write(1, f"{recorder.rows['a']} {recorder.rows['b']} {marks}\\n".encode())

for line in sys.stdin:
    folder, seed = line.split()
    child = os.fork()
    if child == 0:
        record(folder, seed)
    os.write(2, f"{child}\\n".encode())
    os.waitpid(child, 0)
    os.write(1, b"dead\\n")
"""


class Nursery:
    """Starts recording processes and kills them."""

    def __init__(self):
        command = [sys.executable, "-c", NURSERY]
        pipe = subprocess.PIPE
        self._process = subprocess.Popen(command, stdin=pipe, stdout=pipe, stderr=pipe)

    def killed(self, folder, seed, seconds):
        """Record, kill ``seconds`` after the first flush, give what was flushed last."""
        said, child, out = b"", self._start(folder, seed), self._process.stdout
        while b"\n" not in said:
            said += self._read(out, 30)
        until = time.monotonic() + seconds
        while (left := until - time.monotonic()) > 0:
            said += self._read(out, left)
        os.kill(child, signal.SIGKILL)
        while not said.endswith(b"dead\n"):
            said += self._read(out, 30)
        # the kill may have come in the middle of a line; only whole ones were said
        lines = said.removesuffix(b"dead\n").split(b"\n")[:-1]
        return [int(word) for word in lines[-1].split()]

    def _start(self, folder, seed):
        self._process.stdin.write(f"{folder} {seed}\n".encode())
        self._process.stdin.flush()
        return int(self._process.stderr.readline())

    def _read(self, stream, wait_s):
        ready, _, _ = select.select([stream], [], [], wait_s)
        return os.read(stream.fileno(), 1 << 16) if ready else b""

    def close(self):
        """End the nursery."""
        _, errors = self._process.communicate(timeout=240)
        assert errors == b""


def _check(folder, rows_a, rows_b, marks):
    recording = Recording.open(folder)
    for key, flushed in (("a", rows_a), ("b", rows_b)):
        assert recording.rows(key) >= flushed
        count = 0
        for block in recording.blocks(key):
            number = np.arange(count, count + len(block))
            np.testing.assert_array_equal(block.t_ns, number * 1000)
            np.testing.assert_array_equal(block.values[:, 0], number * 0.25)
            np.testing.assert_array_equal(block.values[:, 1], -number * 3.0)
            assert not block.flags.any()
            count += len(block)
        assert count >= flushed
        assert sum(len(raw.data) for raw in recording.raw(key)) >= flushed
    assert [event.value for event in recording.events][:marks] == [str(k) for k in range(marks)]
    assert not recording.is_ended


def test_thirty_killed_recordings_give_back_all_that_was_flushed(tmp_path):
    rng = random.Random(30)
    nursery = Nursery()
    for run in range(30):
        folder = tmp_path / f"run-{run:02}"
        _check(folder, *nursery.killed(folder, run, rng.uniform(0, 0.15)))
    nursery.close()
    left = find_unsealed(tmp_path)
    assert len(left) == 30
    seal(left[0], recovered=True)
    assert Recording.open(left[0]).state == "recovered"
    assert verify_folder(left[0]).intact
