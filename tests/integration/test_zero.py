"""A zero taken while a recording runs: over a real port, in this process and in a second one."""

import json
import os
import pty
import signal
import subprocess
import sys
import threading
import time
import tty

import numpy as np
import pytest

from meterlog.cli import main
from meterlog.model import DoubtKind, EventKind, Flag, Limits, Role
from meterlog.model.errors import UsageError
from meterlog.model.zero_text import parse_zero
from meterlog.recording import Recording
from meterlog.work import Run, SensorWords, Wiring, choose_meters, review_folder

PROFILE = """
title = "Three voltages, the third from a clamp (invented)"
dialect = "ascii-lines"
interval_s = 0.02
integration_s = 0.02

[link]
baud = 115200

[lines]
delimiter = ","
columns = ["feed", "return", "clamp"]
"""
CHANNEL = """
[[channels]]
name = "{}"
quantity = "voltage"

[channels.accuracy]
percent_of_reading = 0.5
digits = 2
resolution = 0.0001
basis = "invented"
"""
ROLES = (
    "motor-feed=clamp-logger.feed",
    "motor-return=clamp-logger.return",
    "motor-current=clamp-logger.clamp",
)
CLAMP = SensorWords(clamps=("motor-current=10mV/A",), accuracies=("motor-current=1.5+0.3",))


class Logger:
    """Sends a line every 20 ms on a pseudo terminal, with the clamp's volts as set."""

    def __init__(self):
        self.far, self._near = pty.openpty()
        tty.setraw(self._near)
        self.url = os.ttyname(self._near)
        self.clamp_v = 0.0012
        self.noise_v = 0.0
        self._sent = 0
        self._end = threading.Event()
        self._thread = threading.Thread(target=self._run)
        self._thread.start()

    def _run(self):
        while not self._end.wait(0.02):
            self._sent += 1
            volts = self.clamp_v + self.noise_v * (-1) ** self._sent
            os.write(self.far, f"12.40,12.40,{volts:.4f}\r\n".encode())

    def close(self):
        self._end.set()
        self._thread.join()
        for handle in (self.far, self._near):
            os.close(handle)


@pytest.fixture
def logger():
    logger = Logger()
    yield logger
    logger.close()


@pytest.fixture(autouse=True)
def own_settings(tmp_path, monkeypatch):
    """Keep zeros and profiles of the tests away from the user's own."""
    profiles = tmp_path / "profiles"
    (profiles / "meters").mkdir(parents=True)
    names = ("feed", "return", "clamp")
    text = PROFILE + "".join(CHANNEL.format(name) for name in names)
    (profiles / "meters" / "clamp-logger.toml").write_text(text)
    monkeypatch.setenv("METERLOG_PROFILES", str(profiles))
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "config"))
    return tmp_path


def wiring(logger, **more):
    return Wiring([f"clamp-logger@{logger.url}"], ROLES, sensors=CLAMP, **more)


def until(true, seconds=60.0):
    end = time.monotonic() + seconds
    while not true():
        assert time.monotonic() < end, "it did not come to pass"
        time.sleep(0.01)


def rows(run):
    return sum(run.status().rows.values())


def test_a_zero_is_subtracted_from_its_event_on_and_kept(logger, tmp_path):
    run = Run(choose_meters(wiring(logger)), Limits(), tmp_path / "one")
    run.start()
    until(lambda: rows(run) > 10)
    until(lambda: any("No zero was taken" in text for text in run.status().warnings))
    taking = run.take_zero(Role.MOTOR_CURRENT, 0.4)
    with pytest.raises(UsageError, match="being taken already"):
        run.take_zero(Role.MOTOR_CURRENT, 0.4)
    assert taking.wait(60.0)
    before = rows(run)
    until(lambda: rows(run) > before + 10)
    assert "0.12 A are subtracted" in run.status().zero
    run.stop()

    recording, review = review_folder(tmp_path / "one")
    (event,) = [e for e in recording.events if e.kind is EventKind.ZERO]
    name, zero = parse_zero(event.value)
    assert (name, event.source) == ("clamp", "clamp-logger")
    assert zero.offset == pytest.approx(0.12)
    assert zero.count >= 10
    blocks = list(recording.blocks("clamp-logger"))
    t_ns = np.concatenate([block.t_ns for block in blocks])
    amps = np.concatenate([block.values[:, 2] for block in blocks])
    flags = np.concatenate([block.flags[:, 2] for block in blocks])
    zeroed = (flags & int(Flag.ZEROED)) != 0
    np.testing.assert_allclose(amps[~zeroed], 0.12, atol=1e-9)
    np.testing.assert_allclose(amps[zeroed], 0.0, atol=1e-9)
    # Nothing but the order of blocks and event decides, so one reading may lie on the edge.
    assert np.count_nonzero(zeroed != (t_ns > event.t_ns)) <= 1
    assert np.count_nonzero(zeroed) >= 10
    assert not [d for d in review.doubts if d.kind is DoubtKind.ZERO_MISSING]

    (choice,) = choose_meters(wiring(logger, kept_zeros=(Role.MOTOR_CURRENT,)))
    assert choice.channels[2].offset == pytest.approx(0.12)
    assert choice.channels[2].zero.taken_utc is not None


def test_a_zero_that_can_not_be_stored_is_in_force_and_told(logger, tmp_path):
    (tmp_path / "config").write_text("a file where the folder of settings would be")
    run = Run(choose_meters(wiring(logger)), Limits(), tmp_path / "one")
    run.start()
    try:
        taking = run.take_zero(Role.MOTOR_CURRENT, 0.3)
        assert not [text for text in run.status().warnings if "could not be stored" in text]
        assert taking.wait(60.0)
        (told,) = [text for text in run.status().warnings if "could not be stored" in text]
        assert "The zero of clamp is in force" in told
    finally:
        run.stop()
    assert [e for e in Recording.open(tmp_path / "one").events if e.kind is EventKind.ZERO]


def test_what_moves_or_flows_is_refused_and_the_recording_goes_on(logger, tmp_path):
    run = Run(choose_meters(wiring(logger)), Limits(), tmp_path / "one")
    run.start()
    try:
        logger.noise_v = 0.02
        moving = run.take_zero(Role.MOTOR_CURRENT, 0.3)
        assert moving.wait(60.0)
        assert "is the fan running" in moving.refused
        logger.noise_v, logger.clamp_v = 0.0, 0.136
        flowing = run.take_zero(Role.MOTOR_CURRENT, 0.3)
        assert flowing.wait(60.0)
        assert "a current is flowing" in flowing.refused
        run.mark(EventKind.SPEED, "1")
        logger.clamp_v = 0.009
        running = run.take_zero(Role.MOTOR_CURRENT, 0.3)
        assert running.wait(60.0)
        assert "speed 1 is commanded" in running.refused
        with pytest.raises(UsageError, match="no channel plays this role"):
            run.take_zero(Role.BATTERY)
        before = rows(run)
        until(lambda: rows(run) > before + 5)
    finally:
        run.stop()
    recording = Recording.open(tmp_path / "one")
    assert not [e for e in recording.events if e.kind is EventKind.ZERO]
    with pytest.raises(UsageError, match="nothing is being recorded"):
        run.take_zero(Role.MOTOR_CURRENT)


def command(logger, out, *more):
    return [
        *(sys.executable, "-m", "meterlog", "record", "--meter", f"clamp-logger@{logger.url}"),
        *(part for role in ROLES for part in ("--assign", role)),
        *("--clamp", "motor-current=10 mV/A", "--sensor-accuracy", "motor-current=1.5+0.3"),
        *("--out", str(out), *more),
    ]


def test_the_command_takes_a_zero_first_and_uses_the_kept_one_next_time(
    logger, tmp_path, capsys, qapp
):
    del (
        qapp
    )  # a picture would else make a lesser application, which would stand in the way of windows
    first = subprocess.run(
        command(logger, tmp_path / "a", "--take-zero", "motor-current", "--seconds", "4.5"),
        capture_output=True,
        text=True,
        timeout=240,
        check=False,
    )
    assert first.returncode == 0, first.stderr
    assert "leave the clamp empty and shut" in first.stderr
    assert "Zero of motor-current: 0.12 A are subtracted" in first.stderr
    assert "No zero was taken" not in first.stderr
    second = subprocess.run(
        command(logger, tmp_path / "b", "--zero", "motor-current=kept", "--seconds", "1", "--json"),
        capture_output=True,
        text=True,
        timeout=240,
        check=False,
    )
    assert second.returncode == 0, second.stderr
    assert json.loads(second.stdout)["warnings"] == []
    about = Recording.open(tmp_path / "b").about
    channel = about.instruments[0].channels[2]
    assert channel.zero.offset == pytest.approx(0.12)
    assert channel.sensor.words == "10 mV/A"
    assert (channel.sensor.own_percent, channel.sensor.own_floor) == (1.5, 0.3)
    assert 0.0 < (about.started_utc - channel.zero.taken_utc).total_seconds() < 60.0
    assert main(["export", str(tmp_path / "b"), "--out", str(tmp_path / "tables")]) == 0
    readme = (tmp_path / "tables" / "README.txt").read_text()
    assert "clamp 10 mV/A (1 V read is 100 A)" in readme
    assert "motor-current from the beginning: zero 0.12 A" in readme
    capsys.readouterr()
    assert main(["review", str(tmp_path / "a"), "--json"]) == 0
    sensors = json.loads(capsys.readouterr().out)["recording"]["sensors"]
    assert [one["sensor"] for one in sensors] == ["clamp 10 mV/A"]
    assert sensors[0]["zeros"][0]["offset"] == pytest.approx(0.12)


class Typist:
    """``meterlog record`` on a terminal of its own, in a second process."""

    def __init__(self, words):
        self.far, near = pty.openpty()
        own_terminal = (
            "import fcntl, os, sys, termios; fcntl.ioctl(0, termios.TIOCSCTTY, 0);"
            " os.execv(sys.argv[1], sys.argv[1:])"
        )
        self.process = subprocess.Popen(
            [sys.executable, "-c", own_terminal, *words],
            stdin=near,
            stdout=near,
            stderr=near,
            start_new_session=True,
        )
        os.close(near)
        self.heard = ""
        self._thread = threading.Thread(target=self._listen)
        self._thread.start()

    def _listen(self):
        while True:
            try:
                data = os.read(self.far, 4096)
            except OSError:
                return
            if not data:
                return
            self.heard += data.decode(errors="replace")

    def type(self, line):
        os.write(self.far, f"{line}\n".encode())

    def end(self):
        if self.process.poll() is None:
            self.process.send_signal(signal.SIGTERM)
        self.process.wait(20)
        self._thread.join(60)
        os.close(self.far)


def test_a_typed_z_takes_the_zero_and_warnings_are_said_within_seconds(logger, tmp_path):
    typist = Typist(command(logger, tmp_path / "a"))
    try:
        until(lambda: "WARNING: No zero was taken of motor-current" in typist.heard, 20.0)
        assert "z zero of the clamp" in typist.heard
        typist.type("z")
        until(lambda: "0.12 A are subtracted" in typist.heard)
        typist.type("q")
        assert typist.process.wait(60) == 0
    finally:
        typist.end()
    events = Recording.open(tmp_path / "a").events
    assert [e.kind for e in events].count(EventKind.ZERO) == 1


@pytest.mark.parametrize(
    ("more", "words"),
    [
        (["--take-zero", "battery"], "no channel plays this role"),
        (["--take-zero", "motor-current", "--zero", "motor-current=0.1"], "one of --zero"),
        (["--zero", "motor-current=kept"], "no zero is kept"),
        (["--zero", "motor-current=0,1"], "point as decimal mark"),
        (["--shunt", "motor-current=1mOhm"], "also behind clamp"),
    ],
)
def test_bad_use_is_refused_before_any_port_is_opened(own_settings, more, words, capsys):
    class Nowhere:
        url = "/dev/there-is-no-such-port"

    code = main(command(Nowhere, own_settings / "x", *more)[3:])
    assert code == 2
    assert words in capsys.readouterr().err
    assert not (own_settings / "x").exists()
