"""A hand-held meter behind a HID bridge, read from its reports to rows, unplugged and back.

No such device is at hand: the ``hid`` module is faked with the face of hidapi 0.15. The frame is
that of 12.34 V DC (segment codes of the common 14-byte frame; see
``tests/reference/test_lcd_segments.py`` for its source).
"""

import queue
import sys
import threading
from types import SimpleNamespace

import numpy as np
import pytest

from meterlog.acquire import Acquisition, Clock, MeterChoice
from meterlog.model import Block, Event, EventKind
from meterlog.profile import load_meter

FRAME = bytes.fromhex("17203545 5B697F82 97A0B0C0 D4E0")
PROFILE = load_meter("hand-meter-hid")


class Bridge:
    """A bridge that gives its meter's bytes a few at a time, count in the low bits in front."""

    def __init__(self) -> None:
        self.reports: queue.Queue = queue.Queue()
        self.set_up: list[bytes] = []

    def say(self, data: bytes, size: int = 3) -> None:
        for start in range(0, len(data), size):
            part = data[start : start + size]
            self.reports.put(bytes([0xF0 | len(part)]) + part.ljust(7, b"\0"))

    def open_path(self, _path: bytes) -> None:
        pass

    def read(self, _size: int, timeout_ms: int) -> list[int]:
        try:
            report = self.reports.get(timeout=timeout_ms / 1e3)
        except queue.Empty:
            return []
        if report is None:
            raise OSError("read error")
        return list(report)

    def send_feature_report(self, report: bytes) -> int:
        self.set_up.append(bytes(report))
        return len(report)

    def close(self) -> None:
        pass


@pytest.fixture
def bench(monkeypatch):
    """Give what is plugged in: serial number and bridge."""
    plugged: dict[str, Bridge] = {"A7": Bridge()}
    opened: list[Bridge] = []

    class Device:
        def open_path(self, path: bytes) -> None:
            self.bridge = plugged[path.decode()]
            opened.append(self.bridge)

        def __getattr__(self, name: str) -> object:
            return getattr(self.bridge, name)

    def enumerate_(_vendor: int, _product: int) -> list[dict]:
        return [{"path": s.encode(), "serial_number": s, "interface_number": 0} for s in plugged]

    module = SimpleNamespace(enumerate=enumerate_, device=Device)
    monkeypatch.setitem(sys.modules, "hid", module)
    return SimpleNamespace(plugged=plugged, opened=opened)


def test_reports_become_rows_and_the_same_device_is_met_again_after_a_loss(bench):
    choice = MeterChoice(PROFILE, "hid://1a2b:3c4d", "hand", PROFILE.channels)
    acquisition = Acquisition([choice], Clock.start())
    (instrument,) = acquisition.connect()
    assert instrument.usb_serial == "A7"
    items: list = []
    news = threading.Condition()

    def put(item) -> None:
        with news:
            items.append(item)
            news.notify_all()

    def volts() -> list[float]:
        blocks = [item for item in items if isinstance(item, Block)]
        values = np.concatenate([np.empty(0), *(block.values[:, 0] for block in blocks)])
        return values[np.isfinite(values)].tolist()

    def links() -> list[str]:
        return [i.value for i in items if isinstance(i, Event) and i.kind is EventKind.LINK]

    def wait(told) -> None:
        with news:
            assert news.wait_for(told, 60), (volts(), links())

    acquisition.start(put)
    first = bench.plugged["A7"]
    assert first.set_up == [PROFILE.link.hid.setup]
    first.say(FRAME[5:] + FRAME + FRAME)
    wait(lambda: volts() == [12.34, 12.34])

    bench.plugged.clear()
    first.reports.put(None)
    wait(lambda: any(words.startswith("lost: ") for words in links()))
    stranger, second = Bridge(), Bridge()
    bench.plugged["B9"] = stranger
    stranger.say(FRAME * 3)
    bench.plugged["A7"] = second
    second.say(FRAME[9:] + FRAME)
    wait(lambda: volts() == [12.34] * 3)
    assert second.set_up == [PROFILE.link.hid.setup]
    assert bench.opened == [first, second]
    acquisition.stop()
    assert acquisition.state()[0].refused == 0
