"""A second Ctrl-C ends a screening at once, also while it waits for its workers to end."""

import shutil
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

pytestmark = pytest.mark.skipif(sys.platform != "linux", reason="looks where Linux lists them")


def _children(pid):
    return Path(f"/proc/{pid}/task/{pid}/children").read_text().split()


@pytest.mark.parametrize(("after_s", "apart_s"), [(0.0, 0.05), (0.1, 0.05), (0.1, 0.2)])
def test_nobody_is_waited_for(small, tmp_path, after_s, apart_s):
    for number in range(12):
        shutil.copytree(small, tmp_path / "shelf" / f"run-{number}")
    words = ["screen", str(tmp_path / "shelf"), "--out", str(tmp_path / "out"), "--workers", "2"]
    with subprocess.Popen(
        [sys.executable, "-m", "meterlog", *words],
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        start_new_session=True,
    ) as screening:
        # Workers have begun, and have not ended yet.
        until = time.monotonic() + 60.0
        while len(_children(screening.pid)) < 3 and time.monotonic() < until:
            time.sleep(0.005)
        time.sleep(after_s)
        screening.send_signal(signal.SIGINT)
        time.sleep(apart_s)
        if screening.poll() is None:
            screening.send_signal(signal.SIGINT)
        try:
            assert screening.wait(60) != 0
        finally:
            screening.kill()
