"""A plug is pulled while the program records in a process of its own; the review says so."""

import json
import os
import pty
import select
import subprocess
import sys
import threading
import time
from pathlib import Path

import calm
import pytest

from meterlog import cli

pytestmark = [pytest.mark.pty, pytest.mark.slow]
RIG = str(Path(__file__).resolve().parents[1] / "rig")


@pytest.fixture
def plug(tmp_path):
    sys.path.insert(0, RIG)
    try:
        from plugs import PtyPlug
    finally:
        sys.path.remove(RIG)
    made = PtyPlug(tmp_path / "meter")
    yield made
    made.close()


class Logger(threading.Thread):
    """Sends a reading every 20 ms, except while it is told to rest."""

    def __init__(self, plug) -> None:
        super().__init__(name="test logger")
        self._plug = plug
        self._stop_it = threading.Event()
        self.rest = threading.Lock()

    def run(self) -> None:
        while not self._stop_it.wait(0.02):
            with self.rest:
                self._plug.send(b"12.400,0.900,5.000\n")

    def stop(self) -> None:
        self._stop_it.set()
        self.join(60)


class Screen:
    """The terminal on which the program says what is happening."""

    def __init__(self) -> None:
        self._far, self.near = pty.openpty()
        self.text = ""

    def wait(self, words: str, limit_s: float = 20.0) -> None:
        until = time.monotonic() + limit_s
        while words not in self.text:
            assert time.monotonic() < until, self.text
            if select.select([self._far], [], [], 0.1)[0]:
                self.text += os.read(self._far, 65_536).decode()

    def close(self) -> None:
        os.close(self._far)
        os.close(self.near)


def test_a_pulled_plug_rings_the_bell_and_the_finding_names_it(plug, tmp_path, capsys):
    screen, logger = Screen(), Logger(plug)
    folder = tmp_path / "recording"
    command = [sys.executable, "-m", "meterlog"]
    told = ["--meter", f"line-logger@{plug.url}", "--out", str(folder)]
    told += ["--assign", "motor-current=line-logger.current"]
    logger.start()
    recorder = subprocess.Popen(
        [*command, "record", *told],
        stdin=subprocess.DEVNULL,
        stdout=subprocess.DEVNULL,
        stderr=screen.near,
    )
    with recorder as program, calm.StallWatch() as watch:
        screen.wait("recording to ")
        time.sleep(1.0)
        with logger.rest:
            plug.pull()
            screen.wait("\aNO READINGS FROM line-logger: lost: ")
            time.sleep(0.5)
            plug.plug_in()
        screen.wait("readings from line-logger again")
        time.sleep(1.0)
        program.terminate()
        assert program.wait(60) in {0, 1}
    logger.stop()
    assert screen.text.count("\a") == 1
    screen.close()
    cli.main(["review", str(folder), "--json"])
    findings = json.loads(capsys.readouterr().out)["findings"]
    missing = [finding for finding in findings if finding["kind"] == "no-data"]
    gone = "line-logger: its port was gone (plug, cable or adapter)"
    (gap,) = [finding for finding in missing if gone in finding["statement"]]
    # A machine that stalls may hold the logger up for a while as well.
    assert missing == [gap] or watch.worst_s > 0.02
    assert 0.4 < gap["end_s"] - gap["start_s"] < 3.0
