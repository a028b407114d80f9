"""The virtual bench as a process of its own, on a real pseudo terminal and a real TCP port."""

import contextlib
import csv
import json
import os
import select
import signal
import socket
import subprocess
import sys
import time
from pathlib import Path

import numpy as np
import pytest

from meterlog.instruments.virtual import simulate
from meterlog.profile import load_meter

ROOT = Path(__file__).resolve().parents[2]
BANNER = b"# VIRTUAL BENCH"

needs_pty = pytest.mark.skipif(not hasattr(os, "openpty"), reason="needs pseudo terminals")


class Bench:
    """A child process that serves a virtual meter."""

    def __init__(self, *arguments):
        self.process = subprocess.Popen(
            [sys.executable, "-m", "meterlog", "virtual", *arguments],
            cwd=ROOT,
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
        )
        self.address = self.process.stdout.readline().decode().strip()

    def type(self, line):
        self.process.stdin.write(line.encode() + b"\n")
        self.process.stdin.flush()

    def told(self, kind, value=None):
        """Wait for a JSON line of ``kind``."""
        while line := self.process.stdout.readline():
            said = json.loads(line)
            if said["kind"] == kind and value in {None, said["value"]}:
                return said
        raise AssertionError(f"the bench ended without telling {kind}")

    def end(self):
        """Ask it to end and give the exit code and what it said on standard error."""
        self.process.send_signal(signal.SIGTERM)
        _, errors = self.process.communicate(timeout=240)
        return self.process.returncode, errors.decode()


@pytest.fixture
def bench():
    with contextlib.ExitStack() as stack:

        def start(*arguments):
            child = Bench(*arguments)

            def stop():
                child.process.kill()
                child.process.communicate()

            stack.callback(stop)
            return child

        yield start


class Port:
    """The client's end: a pseudo terminal or a TCP port, read without any help."""

    def __init__(self, address):
        if address.startswith("socket://"):
            host, port = address.removeprefix("socket://").split(":")
            self._socket = socket.create_connection((host, int(port)))
            self._end = self._socket.detach()
        else:
            self._end = os.open(address, os.O_RDWR | os.O_NOCTTY)
        self._got = b""

    def write(self, data):
        os.write(self._end, data)

    def line(self, within_s=60.0):
        until = time.monotonic() + within_s
        while b"\n" not in self._got:
            left = until - time.monotonic()
            assert left > 0.0, f"no line within {within_s} s, only {self._got!r}"
            if select.select([self._end], [], [], left)[0]:
                data = os.read(self._end, 65_536)
                assert data, "the bench closed the port"
                self._got += data
        line, _, self._got = self._got.partition(b"\n")
        return line.rstrip(b"\r")

    def more(self, within_s):
        """Wait until something lies there unread."""
        return bool(select.select([self._end], [], [], within_s)[0])

    def row(self):
        while (line := self.line()).startswith(b"#"):
            pass
        return [float(field) for field in line.split(b",")]

    def close(self):
        os.close(self._end)


@pytest.fixture
def port():
    with contextlib.ExitStack() as stack:

        def opened(address):
            end = Port(address)
            stack.callback(end.close)
            return end

        yield opened


def read_rows(end, seconds_of_scenario):
    rows = []
    while not rows or rows[-1][0] < seconds_of_scenario * 1000.0:
        rows.append(end.row())
    return np.array(rows)


@pytest.mark.pty
@needs_pty
def test_the_scenario_begins_when_the_port_is_opened_and_says_when_that_was(bench, port, tmp_path):
    child = bench("line-logger", "--scenario", "healthy-new", "--truth", str(tmp_path / "t.json"))
    before_ns = time.monotonic_ns()
    end = port(child.address)
    opened = child.told("open")
    assert end.line().startswith(BANNER)
    assert end.row()[:2] == pytest.approx([12.47, 12.47], abs=0.1)
    assert opened["elapsed_s"] == 0.0
    assert 0 <= opened["monotonic_ns"] - before_ns < 50_000_000
    kept = json.loads((tmp_path / "t.json").read_text())
    assert kept["zero_monotonic_ns"] == opened["monotonic_ns"]


@pytest.mark.pty
@needs_pty
def test_what_comes_over_the_line_agrees_with_the_truth_in_time(bench, port, tmp_path):
    truth, events = tmp_path / "truth.json", tmp_path / "events.csv"
    child = bench(
        "line-logger-timed", "--scenario", "dead-spot", "--seed", "5", "--speedup", "8",
        "--truth", str(truth), "--events", str(events),
    )  # fmt: skip
    end = port(child.address)
    rows = read_rows(end, 23.5)
    code, errors = child.end()
    assert (code, errors) == (0, "")
    kept = json.loads(truth.read_text())
    assert kept["complete"]
    dead = [span for span in kept["spans"] if span["kind"] == "dead"]
    assert len(dead) == 4
    times, current = rows[:, 0] / 1000.0, rows[:, 3]
    on = (times > 2.0) & (times < 22.48)
    nothing = on & (np.abs(current) < 0.3)
    inside = np.zeros(len(times), bool)
    for span in dead:
        # A reading is the mean over the 20 ms before its time.
        inside |= (times > span["start_s"] + 0.021) & (times < span["end_s"])
        started = times[nothing & (times > span["start_s"] - 0.02)][0]
        assert started - span["start_s"] <= 0.041
    assert nothing[inside].all()
    assert (nothing & ~inside).sum() <= 2 * len(dead)
    with events.open(newline="") as file:
        written = [(float(r["elapsed_s"]), r["kind"], r["value"]) for r in csv.DictReader(file)]
    assert written[:3] == [(0.0, "speed", "0"), (2.0, "speed", "1"), (3.6, "tap", "")]
    assert written[-1] == (22.5, "speed", "0")


@pytest.mark.pty
@needs_pty
def test_the_served_readings_are_those_of_the_simulation_in_process(bench, port):
    child = bench("line-logger-timed", "--scenario", "bad-feed-connector", "--speedup", "8")
    rows = read_rows(port(child.address), 12.0)
    sim = simulate("bad-feed-connector", 1, 12.5, load_meter("line-logger-timed"))
    ends_ms = (sim.block.t_ns + 10_000_000) / 1e6
    index = np.searchsorted(ends_ms, rows[:, 0] - 0.5)
    assert ends_ms[index] == pytest.approx(rows[:, 0])
    # The same specimen of circuit and meter: only the noise differs.
    assert np.abs(sim.block.values[index] - rows[:, 1:]).max(axis=0) == pytest.approx(
        [0.0, 0.0, 0.0], abs=0.1
    )


@pytest.mark.pty
@needs_pty
def test_typed_orders_drive_the_fan_and_the_end_of_typing_does_not_end_it(bench, port, tmp_path):
    events = tmp_path / "events.csv"
    child = bench(
        "line-logger", "--scenario", "healthy-new", "--no-script", "--speedup", "5",
        "--events", str(events),
    )  # fmt: skip
    end = port(child.address)
    assert abs(end.row()[2]) < 0.3
    child.type("spede 4")
    child.type("speed 4")
    child.process.stdin.close()
    child.process.stdin = None
    at = child.told("speed", "4")["elapsed_s"]
    assert at > 0.0
    assert child.told("truth", "running")["elapsed_s"] == pytest.approx(at, abs=0.01)
    while end.row()[2] < 10.0:
        pass
    assert events.read_text().splitlines()[-1].endswith(",speed,4")
    code, errors = child.end()
    assert code == 0
    assert "'spede 4': is no order. There are: speed 0 to speed 4" in errors


@pytest.mark.pty
@needs_pty
def test_quit_ends_it_and_leaves_no_port_behind(bench):
    child = bench("line-logger", "--scenario", "seized")
    before = Path(child.address).stat().st_ctime_ns
    child.type("quit")
    assert child.process.wait(timeout=240) == 0
    # The system may have given the name to another program at once.
    with contextlib.suppress(FileNotFoundError):
        assert Path(child.address).stat().st_ctime_ns != before


@pytest.mark.pty
@needs_pty
def test_closing_and_opening_again_does_not_start_the_scenario_anew(bench, port):
    child = bench("line-logger-timed", "--scenario", "healthy-old", "--speedup", "4")
    first = Port(child.address)
    first.row()
    # What the first client leaves unread is not for the second.
    assert first.more(within_s=60.0)
    first.close()
    opened = child.told("open")
    child.told("speed", "1")
    for _ in range(2):  # a turn of its loop at least, in which it sees that nobody has it open
        child.type("tap")
        child.told("tap")
    again = port(child.address)
    assert again.line().startswith(BANNER)
    now_ms = (time.monotonic_ns() - opened["monotonic_ns"]) * 4e-6
    seen_ms = again.row()[0]
    assert 2000.0 < seen_ms <= now_ms + 400.0


@pytest.mark.pty
@needs_pty
def test_a_reader_that_does_not_read_loses_whole_lines_and_blocks_nobody(bench, port, tmp_path):
    slow = load_meter("line-logger-timed").text
    fast = slow.replace("interval_s = 0.02", "interval_s = 0.002")
    assert fast != slow
    profile = tmp_path / "fast.toml"
    profile.write_text(fast)
    child = bench(str(profile), "--scenario", "healthy-new", "--speedup", "20")
    end = port(child.address)
    # The script runs to its end although nobody reads.
    child.told("speed", "0")
    child.told("speed", "0")
    child.told("truth", "off")
    fields = {len(end.line().split(b",")) for _ in range(200)}
    assert fields <= {1, 2, 4}
    code, errors = child.end()
    assert code == 0
    assert "lines were lost because the reader did not read" in errors


@pytest.mark.pty
@needs_pty
def test_a_scpi_meter_answers_over_the_pseudo_terminal(bench, port):
    child = bench("bench-scpi-2ch", "--scenario", "healthy-new", "--no-script", "--seed", "9")
    end = port(child.address)
    end.write(b"*CLS\n*IDN?\n")
    assert end.line().startswith(b"VIRTUAL,bench-scpi-2ch,9,")
    asked_s = time.monotonic()
    end.write(b"READ?\n")
    volts, amperes = (float(field) for field in end.line().split(b","))
    assert time.monotonic() - asked_s >= 0.099
    assert (volts, amperes) == pytest.approx((12.47, 0.0), abs=0.05)
    end.write(b"BREW?\nSYST:ERR?\n")
    assert end.line() == b'-113,"Undefined header;BREW?"'


def test_a_meter_can_be_served_over_tcp_to_one_client_at_a_time(bench, port):
    child = bench("bench-scpi", "--scenario", "healthy-new", "--tcp")
    assert child.address.startswith("socket://127.0.0.1:")
    end = port(child.address)
    end.write(b"*IDN?\n")
    assert end.line().startswith(b"VIRTUAL,bench-scpi,1,")
    number = int(child.address.rpartition(":")[2])
    with socket.create_connection(("127.0.0.1", number)) as second:
        second.settimeout(10.0)
        assert second.recv(10) == b""
    end.write(b"*OPC?\n")
    assert end.line() == b"1"


def test_a_lost_tcp_client_does_not_end_the_bench(bench, port):
    child = bench("line-logger", "--scenario", "healthy-new", "--tcp", "--speedup", "5")
    first = Port(child.address)
    first.row()
    first.close()
    assert port(child.address).line().startswith(BANNER)
    assert child.end()[0] == 0


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["line-logger", "--scenario", "deadspot"], "Did you mean 'dead-spot'?"),
        (["line-loger", "--scenario", "worn"], "Did you mean 'line-logger'?"),
        (["line-logger"], "a meter profile and a scenario are needed"),
        (["line-logger", "--scenario", "worn", "--speedup", "0"], "--speedup: 0 is out of range"),
        (["line-logger", "--scenario", "worn", "--probe", "feed"], "CHANNEL=POINT"),
        (["line-logger", "--scenario", "worn", "--truth", "/no/such/t.json"], "/no/such/t.json"),
    ],
)
def test_bad_use_is_said_in_a_sentence(arguments, words, capfd, monkeypatch):
    from meterlog import cli

    with Path(os.devnull).open(encoding="utf-8") as nobody_types:
        monkeypatch.setattr("sys.stdin", nobody_types)
        try:
            code = cli.main(["virtual", *arguments])
        except SystemExit as leaving:
            code = leaving.code
    said = capfd.readouterr()
    assert code == cli.BAD_USE
    assert said.out == ""
    assert words in said.err
    assert "Traceback" not in said.err


def test_a_program_refused_ends_with_the_code_of_bad_use():
    from meterlog import cli

    done = subprocess.run(
        [sys.executable, "-m", "meterlog", "virtual", "line-logger", "--scenario", "deadspot"],
        cwd=ROOT,
        capture_output=True,
        text=True,
        timeout=240,
        check=False,
    )
    assert done.returncode == cli.BAD_USE
    assert done.stdout == ""
    assert "Did you mean 'dead-spot'?" in done.stderr
    assert "Traceback" not in done.stderr


def test_a_tcp_port_in_use_is_said_in_a_sentence(capsys):
    from meterlog import cli

    with socket.create_server(("127.0.0.1", 0)) as taken:
        number = str(taken.getsockname()[1])
        code = cli.main(["virtual", "line-logger", "--scenario", "worn", "--tcp", number])
    assert code == cli.FAILED
    assert f"TCP port {number}: can't be used" in capsys.readouterr().err


def test_the_scenarios_are_listed_for_people_and_for_programs(capsys):
    from meterlog import cli

    assert cli.main(["virtual", "--list"]) == 0
    assert "dead-spot" in capsys.readouterr().out
    assert cli.main(["virtual", "--list", "--json"]) == 0
    listed = json.loads(capsys.readouterr().out)
    assert len(listed["scenarios"]) >= 8
    assert "invented" in listed["note"]


@pytest.mark.pty
@needs_pty
def test_it_goes_on_when_nobody_reads_what_it_tells_any_more(bench, port):
    child = bench("line-logger-timed", "--scenario", "healthy-new", "--speedup", "20")
    child.process.stdout.close()
    assert read_rows(port(child.address), 8.0)[-1, 3] > 3.0
    child.process.send_signal(signal.SIGINT)
    assert child.process.wait(timeout=240) == 0
    child.process.stdout = None
