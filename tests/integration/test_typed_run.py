"""A meter without a plug, typed on a real terminal while another process records."""

import contextlib
import csv
import json
import os
import pty
import re
import select
import subprocess
import sys
import threading
import time
import tty

import pytest

from meterlog import cli
from meterlog.evidence import verify_folder
from meterlog.model import Flag, Origin
from meterlog.recording import Recording

pytestmark = pytest.mark.pty


class Logger(threading.Thread):
    """Sends three columns every 20 ms: volts 12.0 and 0.5, and 5 A."""

    def __init__(self):
        super().__init__(name="test logger")
        self._far, self._near = os.openpty()
        tty.setraw(self._near)
        self.path = os.ttyname(self._near)
        self._stop_now = threading.Event()
        self.start()

    def run(self):
        while not self._stop_now.wait(0.02):
            os.write(self._far, b"12.0,0.5,5.00\n")

    def close(self):
        self._stop_now.set()
        self.join()
        os.close(self._far)
        os.close(self._near)


_ON_ITS_TERMINAL = """
import fcntl, sys, termios
from meterlog.cli import main

fcntl.ioctl(0, termios.TIOCSCTTY, 0)  # as a shell would have it
sys.exit(main(sys.argv[1:]))
"""


class Terminal:
    """A person's terminal: what the program prints, and what is typed."""

    def __init__(self, *arguments):
        self._far, near = pty.openpty()
        self.process = subprocess.Popen(
            [sys.executable, "-c", _ON_ITS_TERMINAL, *arguments],
            stdin=near,
            stdout=near,
            stderr=near,
            start_new_session=True,
        )
        os.close(near)
        self.text = ""

    def wait_for(self, words, seconds=120.0):
        until = time.monotonic() + seconds
        while not re.search(words, self.text):
            left = until - time.monotonic()
            assert left > 0, self.text
            if not select.select([self._far], [], [], left)[0]:
                continue
            try:
                self.text += os.read(self._far, 4096).decode()
            except OSError:  # the other side has gone
                assert re.search(words, self.text), self.text

    def type(self, line):
        os.write(self._far, line.encode() + b"\n")

    def end(self):
        self.wait_for("sealed in")
        with contextlib.suppress(OSError):  # the other side has gone
            while data := os.read(self._far, 4096):
                self.text += data.decode()
        os.close(self._far)
        return self.process.wait(20)


@pytest.fixture
def logger():
    device = Logger()
    yield device
    device.close()


@pytest.fixture
def meterlog(qapp, capsys):
    """Run a command to its end in this process, which saves the start of another."""
    del qapp  # a picture would else make a lesser application than the window tests need

    def command(*words):
        capsys.readouterr()
        try:
            code = cli.main([str(word) for word in words])
        except SystemExit as leaving:
            code = leaving.code
        said = capsys.readouterr()
        return subprocess.CompletedProcess(words, code, said.out, said.err)

    return command


def test_readings_typed_beside_a_live_meter_are_kept_and_flagged_everywhere(
    logger, meterlog, tmp_path
):
    folder, out = tmp_path / "run", tmp_path / "tables"
    person = Terminal(
        "record", "--meter", f"line-logger@{logger.path}", "--meter", "typed-volts@typed:",
        "--assign", "motor-current=line-logger.current",
        "--assign", "motor-feed=typed-volts.volts", "--out", str(folder),
    )  # fmt: skip
    person.wait_for("typed by hand: typed-volts; = NUMBER")
    person.type("2")
    person.type("= 12,43")
    person.wait_for(r"taken at [0-9.]+ s: typed-volts: volts 12\.43 V")
    person.type("= 12.4 V")
    person.wait_for("not taken: V: is no number")
    person.type("= 12.4 0.8")
    person.wait_for("not taken: typed-volts: 2 numbers are not one for each channel")
    person.type("= typed-volts 12.50")
    person.wait_for(r"taken at [0-9.]+ s: typed-volts: volts 12\.5 V")
    person.wait_for("2 typed by hand")
    person.type("q")
    assert person.end() == 0
    assert "typed-volts: 2 rows, typed by hand" in person.text

    recording = Recording.open(folder)
    assert recording.about.origin is Origin.MEASURED
    assert [one.typed for one in recording.about.instruments] == [False, True]
    blocks = list(recording.blocks("typed-volts"))
    assert [value for block in blocks for value in block.values[:, 0].tolist()] == [12.43, 12.5]
    assert {flag for block in blocks for flag in block.flags.ravel().tolist()} == {int(Flag.TYPED)}
    assert b"".join(raw.data for raw in recording.raw("typed-volts")) == b"12.43\n12.5\n"
    assert not [e for e in recording.events if e.source == "typed-volts"]
    live = [flags for block in recording.blocks("line-logger") for flags in block.flags.ravel()]
    assert not any(flag & Flag.TYPED for flag in live)

    review = meterlog("review", folder)
    assert review.returncode == 0, review.stderr
    assert "TYPED BY HAND: the readings of typed-volts" in review.stdout
    said = json.loads(meterlog("review", folder, "--json").stdout)
    assert said["recording"]["typed_by_hand"] == ["typed-volts"]
    assert any("motor feed (typed-volts)" in note for note in said["notes"])

    export = meterlog("export", folder, "--out", out)
    assert export.returncode == 0, export.stderr
    readme = (out / "README.txt").read_text()
    assert "PARTLY TYPED: the readings of typed-volts were typed by hand." in readme
    assert "TYPED BY HAND: each is what somebody read off" in readme
    with (out / "readings-typed-volts.csv").open(newline="") as file:
        rows = list(csv.DictReader(file))
    assert [row["flags"] for row in rows] == ["motor-feed:typed"] * 2
    assert {row["origin"] for row in rows} == {"typed"}
    with (out / "readings-line-logger.csv").open(newline="") as file:
        assert "origin" not in next(csv.reader(file))
    assert verify_folder(folder).intact
    assert meterlog("verify", folder).returncode == 0


def test_a_recording_of_nothing_but_typed_readings_is_typed(meterlog, tmp_path):
    folder = tmp_path / "run"
    person = Terminal(
        "record", "--meter", "typed-amps@typed:", "--meter", "typed-volts@typed:",
        "--assign", "motor-current=typed-amps.amps",
        "--assign", "motor-feed=typed-volts.volts", "--out", str(folder),
    )  # fmt: skip
    person.wait_for("typed by hand: typed-amps, typed-volts")
    person.type("= 5")
    person.wait_for("not taken: 5: more than one meter is typed by hand")
    person.type("3")
    for number in ("5.0", "5,2", "4.9"):
        person.type(f"= typed-amps {number}")
        person.type("= typed-volts 12.4")
    person.wait_for(r"(?s)(taken at.*){6}")
    person.type("q")
    assert person.end() == 0
    recording = Recording.open(folder)
    assert recording.about.origin is Origin.TYPED
    said = json.loads(meterlog("review", folder, "--json").stdout)
    assert said["recording"]["origin"] == "typed"
    assert said["shortest_visible_dropout_s"] is None
    (step,) = (one for one in said["steps"] if one["speed"] == 3)
    assert step["n"] == 3
    assert step["mean_a"] == pytest.approx((5.0 + 5.2 + 4.9) / 3)
    assert step["mean_v"] == pytest.approx(12.4)


def test_a_typed_meter_needs_no_port_and_another_does(meterlog, tmp_path):
    wrong = meterlog("record", "--meter", "typed-volts@/dev/ttyUSB0", "--out", tmp_path / "a")
    assert wrong.returncode == 2
    assert "typed-volts is typed by hand and has no port" in wrong.stderr
    assert "typed-volts@typed:" in wrong.stderr
    wrong = meterlog("record", "--meter", "line-logger@typed:", "--out", tmp_path / "b")
    assert wrong.returncode == 2
    assert "line-logger is not typed by hand" in wrong.stderr
    assert not (tmp_path / "a").exists()
    assert not (tmp_path / "b").exists()


def test_without_a_terminal_that_is_said_and_the_run_goes_on(tmp_path):
    words = ["record", "--meter", "typed-volts@typed:", "--seconds", "0.3"]
    done = subprocess.run(
        [sys.executable, "-m", "meterlog", *words, "--out", str(tmp_path / "run")],
        capture_output=True,
        text=True,
        check=False,
        timeout=240,
    )
    assert done.returncode == 0, done.stderr
    assert "no terminal to type on" in done.stderr
    assert "typed-volts: 0 rows, typed by hand" in done.stdout
