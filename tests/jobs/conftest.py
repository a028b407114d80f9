"""What every story needs: the program as a user starts it, and a virtual fan to measure."""

import io
import json
import os
import subprocess
import sys
import time
from contextlib import redirect_stderr, redirect_stdout
from pathlib import Path

import pytest

from meterlog import cli
from meterlog.work.bench_process import BenchProcess

HOUSE = Path(__file__).resolve().parents[2]
ROLES = [
    "--assign",
    "motor-feed=line-logger.feed",
    "--assign",
    "motor-return=line-logger.return",
    "--assign",
    "motor-current=line-logger.current",
]


class Shell:
    """Runs meterlog as a user does, and ends the processes that are left over."""

    def __init__(self):
        self._started = []

    def begin(self, *words):
        child = subprocess.Popen(
            [sys.executable, "-m", "meterlog", *map(str, words)],
            cwd=HOUSE,
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
            env={**os.environ, "PYTHONUNBUFFERED": "1"},
        )
        self._started.append(child)
        return child

    def run(self, *words, code=0):
        """Run a command to its end; in this process, which saves a second of start."""
        out, err = io.StringIO(), io.StringIO()
        with redirect_stdout(out), redirect_stderr(err):
            left = cli.main([str(word) for word in words])
        assert left == code, f"{words}\n{out.getvalue()}\n{err.getvalue()}"
        return out.getvalue(), err.getvalue()

    def json(self, *words, code=0):
        return json.loads(self.run(*words, "--json", code=code)[0])

    def record(self, address, folder, *more):
        return self.begin(
            "record",
            "--meter",
            f"line-logger@{address}",
            *ROLES,
            "--limits",
            "linear-12v",
            "--out",
            folder,
            *more,
        )

    def close(self):
        for child in self._started:
            if child.poll() is None:
                child.kill()
            child.wait()
            for stream in (child.stdout, child.stderr):
                stream.close()


@pytest.fixture
def shell(qapp):
    # With pytest-qt's application there: a picture would else make a lesser one, which would
    # stand in the way of every window tested after it.
    del qapp
    one = Shell()
    yield one
    one.close()


@pytest.fixture
def fan():
    """Start a virtual fan with a fault; gives what makes one."""
    started = []

    def make(scenario, meter="line-logger", happened=None):
        bench = BenchProcess(meter, scenario, 1, happened)
        started.append(bench)
        return bench

    yield make
    for bench in started:
        bench.stop()


@pytest.fixture
def wait_until():
    def wait(condition, seconds=120.0):
        end = time.monotonic() + seconds
        while not condition():
            assert time.monotonic() < end, "waited in vain"
            time.sleep(0.02)

    return wait


@pytest.fixture
def grows(wait_until):
    """Wait until a recording's readings have been written for a while."""

    def wait(folder, size=6000):
        file = folder / "data" / "line-logger.arrows"
        wait_until(lambda: file.exists() and file.stat().st_size > size)

    return wait
