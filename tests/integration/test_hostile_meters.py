"""Meters that never answer, or answer what nobody asked, under the program as it is started."""

import os
import pty
import signal
import socket
import subprocess
import sys
import threading
import time
import tty

import pytest
from pymodbus.framer import FramerRTU

from meterlog.model import join
from meterlog.recording import Recording

PANEL = """
title = "Panel meter of two far registers (invented)"
dialect = "modbus-rtu"
interval_s = 0.05
[modbus]
function = 4
poll_s = 0.05
answer_s = 0.15
[[channels]]
name = "a"
quantity = "voltage"
register = { address = 0 }
[[channels]]
name = "b"
quantity = "voltage"
register = { address = 10 }
"""


def _record(*options):
    command = [sys.executable, "-m", "meterlog", "record", *options]
    return subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)


@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM])
def test_who_waits_for_a_meter_that_never_speaks_can_stop_at_once(number, tmp_path):
    profile = tmp_path / "slow.toml"
    profile.write_text(
        'title = "Slow (invented)"\ndialect = "scpi"\ninterval_s = 1\n'
        '[scpi]\nquery = "READ?"\nanswer_s = 60\n[[channels]]\nname = "v"\nquantity = "voltage"\n'
    )
    with socket.create_server(("127.0.0.1", 0)) as door:
        door.settimeout(20.0)
        url = f"socket://127.0.0.1:{door.getsockname()[1]}"
        run = _record("--meter", f"{profile}@{url}", "--out", str(tmp_path / "out"))
        line, _ = door.accept()
        with line:
            line.settimeout(20.0)
            heard = b""
            while b"*IDN?" not in heard:
                heard += line.recv(100)
            begun_s = time.monotonic()
            run.send_signal(number)
            said, complaint = run.communicate(timeout=240)
    assert time.monotonic() - begun_s < 3.0
    assert (run.returncode, said, complaint) == (130, "", "meterlog: stopped.\n")
    assert not (tmp_path / "out").exists()


class Panel(threading.Thread):
    """Holds 100 in the first register and 200 in the second; answers some late, all twice."""

    def __init__(self):
        super().__init__(name="test panel")
        self._far, self._near = pty.openpty()
        tty.setraw(self._near)
        self.url = os.ttyname(self._near)
        self.late = 0
        self._ended = threading.Event()
        self.start()

    def run(self):
        begun, count = b"", 0
        os.set_blocking(self._far, False)
        while not self._ended.wait(0.001):
            try:
                begun += os.read(self._far, 100)
            except BlockingIOError:
                continue
            size = 7 if begun[1:2] == b"\x2b" else 8
            if len(begun) < size:
                continue
            request, begun = begun[:size], begun[size:]
            if size == 7:
                self._send(bytes((1, 0xAB, 1)))
                continue
            count += 1
            if count % 10 == 6:
                self.late += 1
                self._ended.wait(0.2)
            value = 100 if request[3] == 0 else 200
            self._send(bytes((1, 4, 2)) + value.to_bytes(2, "big"), times=2)

    def _send(self, body, times=1):
        frame = body + FramerRTU.compute_CRC(body).to_bytes(2, "big")
        os.write(self._far, frame * times)

    def close(self):
        self._ended.set()
        self.join(60)
        os.close(self._far)
        os.close(self._near)


def test_no_value_of_a_device_that_answers_late_and_twice_gets_into_another_channel(tmp_path):
    (tmp_path / "panel.toml").write_text(PANEL)
    panel, out = Panel(), tmp_path / "out"
    try:
        run = _record(
            "--meter", f"{tmp_path / 'panel.toml'}@{panel.url}", "--seconds", "4", "--out", str(out)
        )
        assert run.communicate(timeout=240)[1].count("reading stopped") == 0
    finally:
        panel.close()
    assert panel.late > 3
    recording = Recording.open(out)
    block = join(list(recording.blocks("panel")))
    rows = block.values[(block.flags == 0).all(axis=1)]
    assert len(rows) > 10
    assert (rows == [100.0, 200.0]).all()
    refused = [event for event in recording.events if event.kind == "refused"]
    assert sum(int(event.value.split()[0]) for event in refused) >= len(rows)
    assert b"".join(raw.data for raw in recording.raw("panel")).count(b"\x01\x04\x02") > 2 * len(
        rows
    )
