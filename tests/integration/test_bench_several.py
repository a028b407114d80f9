"""Several virtual meters on one fan, in a process of their own, each at a real port."""

import contextlib
import json
import os
import re
import select
import struct
import subprocess
import sys
import threading
import time
from pathlib import Path

import numpy as np
import pytest
from pymodbus.client import ModbusSerialClient

from meterlog import cli
from meterlog.profile import load_meter

ROOT = Path(__file__).resolve().parents[2]

_TERMINALS = pytest.mark.skipif(not hasattr(os, "openpty"), reason="needs pseudo terminals")
pytestmark = [pytest.mark.pty, pytest.mark.calm(0.02), _TERMINALS]


class Bench:
    """A child process that serves several meters; its lines are gathered as they come."""

    def __init__(self, *arguments, meters=2):
        self.process = subprocess.Popen(
            [sys.executable, "-m", "meterlog", "virtual", *map(str, arguments)],
            cwd=ROOT,
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
        )
        first = [self.process.stdout.readline().strip() for _ in range(meters)]
        self.names = [line.partition(" ")[0] for line in first]
        self.address = dict(line.split(" ", 1) for line in first) if meters > 1 else first[0]
        self.lines = []
        self._news = threading.Condition()
        self._listener = threading.Thread(target=self._listen, daemon=True)
        self._listener.start()

    def _listen(self):
        for line in self.process.stdout:
            with self._news:
                self.lines.append(json.loads(line))
                self._news.notify_all()

    def type(self, line):
        self.process.stdin.write(line + "\n")
        self.process.stdin.flush()

    def told(self, kind, meter=None):
        """Wait for a line of ``kind``."""

        def found():
            return [
                line
                for line in self.lines
                if line["kind"] == kind and meter in {None, line.get("meter")}
            ]

        with self._news:
            assert self._news.wait_for(found, 20.0), f"no {kind} among {self.lines}"
            return found()[0]

    def end(self):
        """End it; give its exit code and what it complained of."""
        self.process.terminate()
        self.process.wait(20)
        self._listener.join(20)
        return self.process.returncode, self.process.stderr.read()

    def close(self):
        self.process.kill()
        self.process.wait()
        self._listener.join(20)
        for stream in (self.process.stdin, self.process.stdout, self.process.stderr):
            with contextlib.suppress(OSError):
                stream.close()


@pytest.fixture
def bench():
    with contextlib.ExitStack() as stack:

        def start(*arguments, meters=2):
            child = Bench(*arguments, meters=meters)
            stack.callback(child.close)
            return child

        yield start


@pytest.fixture
def opened():
    with contextlib.ExitStack() as stack:

        def port(address):
            end = os.open(address, os.O_RDWR | os.O_NOCTTY)
            stack.callback(os.close, end)
            return end

        yield port


def chunks(end, until):
    """Give what comes from ``end`` with the time of its coming, until ``until`` says so."""
    got = []
    give_up = time.monotonic() + 60.0
    while not until(got):
        assert time.monotonic() < give_up, f"only {got[-5:]}"
        if select.select([end], [], [], 0.05)[0]:
            got.append((time.monotonic_ns(), os.read(end, 65_536)))
    return got


def whole(got):
    return b"".join(data for _, data in got)


def test_each_meter_has_a_line_with_its_name_and_address_in_the_order_given(bench):
    child = bench("hand-meter", "line-logger", "hand-meter", "--scenario", "worn", meters=3)
    assert child.names == ["hand-meter", "line-logger", "hand-meter-2"]
    assert len({child.address[name] for name in child.names}) == 3
    made = [Path(address).stat().st_ctime_ns for address in child.address.values()]
    assert child.end()[0] == 0
    left = [path.stat().st_ctime_ns for path in map(Path, child.address.values()) if path.exists()]
    assert not set(made) & set(left)  # a name may have been given out again


def test_two_meters_see_the_same_edge_at_the_same_time_of_the_scenario(bench, opened):
    child = bench(
        "line-logger", "panel-meter", "--scenario", "healthy-new", "--no-script",
        "--at", "1.5", "speed 4",
    )  # fmt: skip
    fast, slow = (opened(child.address[name]) for name in ("line-logger", "panel-meter"))
    amps = []

    def ask():
        # Function 04, two registers from 0: the volts and the amperes.
        while len(amps) < 25:
            os.write(slow, bytes.fromhex("01 04 00 00 00 02 71 CB"))
            answer = b""
            while len(answer) < 9:
                answer += os.read(slow, 100)
            amps.append((time.monotonic_ns(), struct.unpack(">h", answer[5:7])[0] * 0.01))
            time.sleep(0.1)

    asking = threading.Thread(target=ask)
    asking.start()
    zero_ns = child.told("open")["monotonic_ns"]
    lines = chunks(fast, lambda got: got and got[-1][0] - zero_ns > 2.2e9)
    asking.join()
    rows = [
        (at, float(line.split(b",")[2]))
        for at, data in lines
        for line in data.splitlines()
        if line.count(b",") == 2
    ]
    edges = [
        next(at for at, current in seen if current > 2.0) * 1e-9 - zero_ns * 1e-9
        for seen in (rows, amps)
    ]
    truth = child.told("speed")
    assert truth["elapsed_s"] == 0.0
    # Each is at most one interval and one pause between questions late, and never early.
    for edge, late_s in zip(edges, (0.02, 0.25), strict=True):
        assert 1.5 < edge < 1.5 + late_s + 0.1
    running = [line for line in child.lines if line["kind"] == "truth"][-1]
    assert running["value"] == "running"
    assert running["elapsed_s"] == pytest.approx(1.5, abs=0.02)


def test_a_client_that_does_not_read_delays_nobody_else(bench, opened, tmp_path):
    usual = load_meter("line-logger-timed").text
    profile = tmp_path / "fast.toml"
    profile.write_text(usual.replace("interval_s = 0.02", "interval_s = 0.001"))
    child = bench(profile, "line-logger-timed", "--scenario", "healthy-new", "--no-script")
    stuck, alive = (opened(child.address[name]) for name in ("fast", "line-logger-timed"))
    zero_ns = child.told("open")["monotonic_ns"]
    # Long enough for the port that nobody reads to fill up: 28 bytes each millisecond, 64 KiB.
    got = chunks(alive, lambda got: got and got[-1][0] - zero_ns > 3.0e9)
    late_ms = [
        (at - zero_ns) * 1e-6 - float(line.split(b",")[0])
        for at, data in got
        for line in data.split(b"\r\n")[-2:-1]
        if at - zero_ns > 2.0e9 and line.count(b",") == 3
    ]
    assert len(late_ms) > 20
    # The lower part shows what the bench itself takes; the upper what else the computer does. Who
    # waited for the one that does not read would be late by all the second that it has not read.
    assert np.percentile(late_ms, 20) < 20.0
    assert np.median(late_ms) < 200.0
    assert os.read(stuck, 30).startswith(b"# VIRTUAL BENCH")
    code, errors = child.end()
    assert code == 0
    assert re.search(r"^fast: \d+ lines were lost", errors, re.MULTILINE)
    assert "line-logger-timed:" not in errors


def test_an_unplugged_meter_comes_back_under_the_same_link(bench, opened, tmp_path):
    link = tmp_path / "meter"
    child = bench(
        "line-logger", "hand-meter", "--scenario", "healthy-new", "--link", f"line-logger={link}",
    )  # fmt: skip
    assert child.address["line-logger"] == str(link)
    end = opened(link)
    chunks(end, lambda got: whole(got).count(b"\n") > 3)
    other = opened(child.address["hand-meter"])
    child.type("unplug line-logger 0.6")
    told = child.told("unplug", "line-logger")
    give_up = time.monotonic() + 60.0
    while link.is_symlink():
        assert time.monotonic() < give_up
    # A terminal that has gone reads as ended or as failed, and can't be written to.
    with contextlib.suppress(OSError):
        while os.read(end, 4096):
            pass
    with pytest.raises(OSError, match="Input/output error"):
        os.write(end, b"x")
    back = child.told("plugged", "line-logger")
    assert back["value"] == str(link)
    assert back["elapsed_s"] - told["elapsed_s"] == pytest.approx(0.6, abs=0.01)
    again = chunks(opened(link), lambda got: whole(got).count(b"\n") > 3)
    assert whole(again).startswith(b"# VIRTUAL BENCH")
    # The other one went on all the time.
    assert len(chunks(other, lambda got: whole(got).count(b"\x17") > 2)) > 1
    assert child.end()[0] == 0
    assert not link.is_symlink()


def test_troubles_are_done_told_and_kept_in_the_truth(bench, opened, tmp_path):
    truth = tmp_path / "truth.json"
    plan = [
        ("0.5", "hold line-logger"),
        ("1.5", "hold line-logger off"),
        ("2.0", "stall line-logger 1"),
        ("4.0", "off line-logger"),
        ("5.0", "on line-logger"),
        ("6.0", "garble line-logger 24"),
        ("6.5", "dial hand-meter A"),
        ("7.0", "battery-low hand-meter"),
        ("8.0", "clamp-dead line-logger"),
    ]
    times = [word for pair in plan for word in ("--at", *pair)]
    child = bench(
        "line-logger", "hand-meter", "--scenario", "healthy-new", "--speedup", "4",
        "--truth", truth, *times,
    )  # fmt: skip
    lines = opened(child.address["line-logger"])
    frames = opened(child.address["hand-meter"])
    zero_ns = child.told("open")["monotonic_ns"]
    hand, got = [], []

    def listen():
        hand.extend(chunks(frames, lambda g: g and g[-1][0] - zero_ns > 2.4e9))

    listening = threading.Thread(target=listen)
    listening.start()
    got = chunks(lines, lambda g: g and g[-1][0] - zero_ns > 2.5e9)
    listening.join()
    assert child.end()[0] == 0
    kept = json.loads(truth.read_text())
    ordered = [
        (h["elapsed_s"], h["meter"], h["kind"], h["value"]) for h in kept["meter_happenings"]
    ]
    told = [
        (line["elapsed_s"], line["meter"], line["kind"], line["value"])
        for line in child.lines
        if "meter" in line
    ]
    assert ordered == told
    done = [(at, f"{kind} {meter} {value}") for at, meter, kind, value in ordered]
    assert (2.0, "stall line-logger 1") in done
    assert len([one for one in done if "ranged" not in one[1]]) == len(plan)
    assert [meter["meter"] for meter in kept["meters"]] == ["line-logger", "hand-meter"]
    # Times of the scenario at which something came: nothing while stalled or off.
    came = np.array([(at - zero_ns) * 4e-9 for at, _ in got])
    assert not ((came > 2.2) & (came < 2.95)).any()
    assert not ((came > 4.2) & (came < 5.0)).any()
    rows = whole(got)
    # 20 ms a line; what was stalled came afterwards, and nothing while it was off. The bytes of
    # garbage may hold a line end.
    assert rows.count(b"\r\n") == pytest.approx(50 * (came[-1] - 1.0), abs=25)
    currents = [line.split(b",")[2] for line in rows.split(b"\r\n")[-60:] if line.count(b",") == 2]
    assert len(set(currents[-50:])) == 1
    units = [frame[12] & 12 for frame in re.findall(rb"[\x10-\x1f].{12}[\xe0-\xef]", whole(hand))]
    assert set(units[:10]) == {4}
    assert units[-1] == 8
    assert whole(hand)[-2] & 1
    assert not whole(hand)[-14 * 8 - 2] & 1


def test_an_outside_modbus_client_reads_the_panel_meter(bench):
    child = bench("panel-meter", "--scenario", "healthy-new", "--no-script", meters=1)
    client = ModbusSerialClient(child.address, baudrate=9600, timeout=2.0, retries=0)
    try:
        assert client.connect()
        answer = client.read_input_registers(0, count=2, device_id=1)
        assert answer.registers[0] == pytest.approx(1247, abs=10)
        assert client.read_input_registers(5, count=2, device_id=1).exception_code == 2
        assert client.read_holding_registers(0, count=2, device_id=1).exception_code == 1
        who = client.read_device_information(device_id=1)
        assert who.information[0] == b"VIRTUAL BENCH"
    finally:
        client.close()


def test_a_box_whose_memory_overran_says_so_in_its_errors_and_in_the_truth(bench, opened, tmp_path):
    truth = tmp_path / "truth.json"
    child = bench(
        "block-daq", "--scenario", "healthy-new", "--speedup", "20", "--truth", truth, meters=1
    )
    end = opened(child.address)
    os.write(end, b"INIT;*OPC?\n")
    assert whole(chunks(end, lambda got: whole(got).endswith(b"\n"))) == b"1\n"
    zero_ns = child.told("open")["monotonic_ns"]
    latest_start_s = (time.monotonic_ns() - zero_ns) * 20e-9
    while (time.monotonic_ns() - zero_ns) * 20e-9 < 18.0:
        time.sleep(0.01)
    os.write(end, b"FETC?\n")
    head = whole(chunks(end, lambda got: len(whole(got)) > 10))
    size = int(head[2 : 2 + int(head[1:2])])
    rest = chunks(end, lambda got: len(head) + len(whole(got)) >= size + 8)
    assert (head + whole(rest)).endswith(b"\n")
    os.write(end, b"SYST:ERR?\n")
    assert whole(chunks(end, lambda got: whole(got).endswith(b"\n"))).startswith(b"-363,")
    lost = child.told("overrun")
    rows = size // 6
    # Told with the time of the first row that had no room, whenever the bench came round to it.
    start_s = lost["elapsed_s"] - (rows + 1) * 0.001
    assert -0.001 < start_s < latest_start_s
    assert child.end()[0] == 0
    kept = json.loads(truth.read_text())
    assert kept["meter_happenings"][0]["value"] == lost["value"]
    assert re.fullmatch(r"\d+ rows lost", lost["value"])
    assert abs(kept["meters"][0]["sample_clock_ppm"]) <= 50.0


def test_several_meters_on_tcp_have_ports_one_after_the_other(bench):
    import socket

    with socket.create_server(("127.0.0.1", 0)) as free:
        port = free.getsockname()[1]
    child = bench("line-logger", "hand-meter", "--scenario", "worn", "--tcp", port)
    assert child.address["line-logger"] == f"socket://127.0.0.1:{port}"
    assert child.address["hand-meter"] == f"socket://127.0.0.1:{port + 1}"
    with socket.create_connection(("127.0.0.1", port + 1)) as hand:
        hand.settimeout(10.0)
        assert hand.recv(100).startswith(b"# VIRTUAL BENCH")
        child.type("unplug hand-meter")
        while hand.recv(100):
            pass
        with pytest.raises(ConnectionRefusedError):
            socket.create_connection(("127.0.0.1", port + 1)).close()
        child.type("plug hand-meter")
        child.told("plugged", "hand-meter")
    with socket.create_connection(("127.0.0.1", port + 1)) as again:
        again.settimeout(10.0)
        assert again.recv(100).startswith(b"# VIRTUAL BENCH")


def test_an_order_that_a_meter_can_not_show_is_said_in_a_sentence(bench, opened):
    child = bench("line-logger", "hand-meter", "--scenario", "worn")
    opened(child.address["hand-meter"])
    child.told("open")
    for line in ("dial line-logger A", "unplug", "dial hand-meter A"):
        child.type(line)
    child.told("dial", "hand-meter")
    code, errors = child.end()
    assert code == 0
    assert "line-logger: dial is nothing that a meter with dialect ascii-lines can show" in errors
    assert "'unplug': does not say which meter. Expected unplug [METER] [SECONDS]" in errors


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["typed-volts"], "typed-volts: is typed by hand: such a meter has no plug"),
        (["line-logger", "--at", "3", "dial A"], "dial is nothing that a meter with dialect"),
        (["line-logger", "--at", "3", "jump"], "'jump': is no order"),
        (["line-logger", "--link", "/no/such/folder/x"], "/no/such/folder/x: can't be made"),
        (["line-logger", "--link", str(ROOT)], "is there already and is no symbolic link"),
        (["line-logger", "--link", "x", "--tcp"], "--link: is for pseudo terminals"),
        (["line-logger", "hand-meter", "--tcp", "65535"], "--tcp: 65536 is no port"),
        (["line-logger", "bench-scpi", "--link", "x"], "does not say which meter's"),
    ],
)
def test_bad_use_is_said_before_anything_is_served(arguments, words, capsys):
    assert cli.main(["virtual", *arguments, "--scenario", "worn"]) == cli.BAD_USE
    said = capsys.readouterr()
    assert said.out == ""
    assert words in said.err
