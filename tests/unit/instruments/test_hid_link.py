"""HidLink with a faked ``hid`` module: no such device is at hand.

The face of the fake is that of hidapi 0.15: ``enumerate(vendor, product)`` gives dicts,
``device()`` has ``open_path``, ``read(size, timeout_ms)`` (a list of numbers, empty when nothing
came, OSError when the device has gone), ``write`` and ``send_feature_report``. The reports are
laid out as bridge chips lay them out: a count in the first byte, or its low bits, then the data.
"""

import queue
import sys
import threading
import time
from types import SimpleNamespace

import pytest

from meterlog.instruments import open_link
from meterlog.instruments.hid_reports import unwrap, wrap
from meterlog.model.errors import LinkBusy, LinkLost, LinkNotFound, LinkRefused
from meterlog.profile import HidBridge, LinkSettings

BRIDGE = HidBridge(
    setup=bytes.fromhex("00 60 09 00 00 03"),
    in_count_byte=0,
    in_count_mask=0x0F,
    in_first=1,
    out_report=0,
    out_size=8,
    out_count=True,
)
SETTINGS = LinkSettings(baud=2400, hid=BRIDGE)


class FakeDevice:
    def __init__(self) -> None:
        self.reports: queue.Queue = queue.Queue()
        self.written: list[bytes] = []
        self.features: list[bytes] = []
        self.path = b""
        self.closed = False
        self.refuses_setup = False
        self.reading = False

    def open_path(self, path: bytes) -> None:
        if path == b"broken":
            raise OSError("open failed")
        self.path = path

    def read(self, size: int, timeout_ms: int) -> list[int]:
        assert not self.closed, "read from a closed device"
        self.reading = True
        try:
            report = self.reports.get(timeout=timeout_ms / 1e3)
        except queue.Empty:
            return []
        finally:
            self.reading = False
        if report is None:
            raise OSError("read error")
        return list(report)

    def write(self, report: bytes) -> int:
        self.written.append(bytes(report))
        return len(report)

    def send_feature_report(self, report: bytes) -> int:
        self.features.append(bytes(report))
        return -1 if self.refuses_setup else len(report)

    def close(self) -> None:
        assert not self.reading, "closed under a read"
        self.closed = True


@pytest.fixture
def bench(monkeypatch):
    """Give the fake: which devices are plugged in, and the one that is opened."""
    device = FakeDevice()
    plugged = [{"path": b"1-2:1.0", "serial_number": "A7", "interface_number": 0}]
    asked = []

    def enumerate_(vendor: int, product: int) -> list[dict]:
        asked.append((vendor, product))
        return plugged

    module = SimpleNamespace(enumerate=enumerate_, device=lambda: device)
    monkeypatch.setitem(sys.modules, "hid", module)
    return SimpleNamespace(device=device, plugged=plugged, asked=asked)


def test_reports_are_unwrapped_in_order_and_the_bridge_is_set_up_first(bench):
    with open_link("hid://1A2B:3C4D", SETTINGS) as link:
        assert bench.asked == [(0x1A2B, 0x3C4D)]
        assert bench.device.features == [BRIDGE.setup]
        bench.device.reports.put(b"\xf2\x1b\x27\0\0\0\0\0")  # 2 bytes in the low bits
        bench.device.reports.put(b"\xf0\0\0\0\0\0\0\0")  # none
        bench.device.reports.put(b"\xf1\x3d\0\0\0\0\0\0")
        data = b""
        until = time.monotonic() + 60.0
        while len(data) < 3 and time.monotonic() < until:
            data += link.read(1.0)
        assert data == b"\x1b\x27\x3d"
        assert link.read(0.02) == b""
        assert link.url == "hid://1a2b:3c4d/A7"
        assert link.byte_s == pytest.approx(10 / 2400)
        assert not link.messages
    assert bench.device.closed


def test_what_is_sent_is_wrapped_filled_up_and_counted(bench):
    with open_link("hid://1a2b:3c4d/A7", SETTINGS) as link:
        link.write(b"READ?\n*IDN?\n")
    assert bench.device.written == [
        b"\0\x07READ?\n*",
        b"\0\x05IDN?\n\0\0",
    ]


def test_nothing_can_be_sent_where_the_profile_does_not_say_how(bench):
    settings = LinkSettings(hid=HidBridge())
    with (
        open_link("hid://1a2b:3c4d", settings) as link,
        pytest.raises(LinkRefused, match="nothing can be sent"),
    ):
        link.write(b"x")


@pytest.mark.parametrize(
    ("report", "bridge", "data"),
    [
        (b"\x02AB??", HidBridge(in_count_byte=0, in_first=1), b"AB"),
        (b"\x02\xf1A?", HidBridge(in_count_byte=1, in_count_mask=0x07, in_first=2), b"A"),
        (b"\xffAB", HidBridge(in_count_byte=0, in_first=1), b"AB"),
        (b"ABC", HidBridge(), b"ABC"),
        (b"?ABC", HidBridge(in_first=1), b"ABC"),
        (b"", HidBridge(in_count_byte=0, in_first=1), b""),
    ],
)
def test_a_report_gives_the_bytes_its_layout_says_and_no_more_than_it_has(report, bridge, data):
    assert unwrap(report, bridge) == data


@pytest.mark.parametrize("size", [1, 2, 7, 8, 63])
@pytest.mark.parametrize("counted", [True, False])
def test_all_that_is_wrapped_can_be_unwrapped_again(size, counted):
    sent = bytes(range(1, 200))
    out = HidBridge(out_report=3, out_size=size, out_count=counted)
    reports = wrap(sent, out)
    assert {len(report) for report in reports} == {max(size, 1 + counted) + 1}
    assert {report[0] for report in reports} == {3}
    if counted and size > 1:
        back = HidBridge(in_count_byte=1, in_first=2)
        assert b"".join(unwrap(report, back) for report in reports) == sent


def test_a_device_that_goes_away_is_lost_after_its_last_words(bench):
    with open_link("hid://1a2b:3c4d", SETTINGS) as link:
        bench.device.reports.put(b"\x01Z\0\0\0\0\0\0")
        bench.device.reports.put(None)
        assert link.read(5.0) == b"Z"
        for _ in range(2):
            with pytest.raises(LinkLost, match="read error") as caught:
                link.read(5.0)
        assert caught.value.subject == "hid://1a2b:3c4d/A7"
        with pytest.raises(LinkLost):
            link.write(b"x")


def test_closing_ends_a_read_and_never_closes_under_one(bench):
    link = open_link("hid://1a2b:3c4d", SETTINGS)
    said = []

    def wait() -> None:
        try:
            link.read(30.0)
        except LinkLost as error:
            said.append(error.message)

    reader = threading.Thread(target=wait)
    reader.start()
    link.close()
    link.close()
    reader.join(60)
    assert said == ["the port has been closed."]
    assert bench.device.closed


def test_dropped_input_is_gone_and_what_finds_no_room_is_counted(bench):
    with open_link("hid://1a2b:3c4d", SETTINGS) as link:
        link._inbox._most = 4
        for report in (b"\x03abc", b"\x03def"):
            bench.device.reports.put(report)
        until = time.monotonic() + 60.0
        while not link.line_counts().lost and time.monotonic() < until:
            time.sleep(0.005)
        assert link.line_counts().lost == 3
        link.drop_input()
        bench.device.reports.put(b"\x03ghi")
        assert link.read(5.0) == b"ghi"


def test_an_absent_library_gives_the_line_that_installs_it(monkeypatch):
    monkeypatch.setitem(sys.modules, "hid", None)
    with pytest.raises(LinkRefused) as caught:
        open_link("hid://1a2b:3c4d", SETTINGS)
    assert f"{sys.executable} -m pip install hidapi" in caught.value.remedy


def test_one_of_several_must_be_named_and_a_missing_one_is_said(bench):
    bench.plugged.append({"path": b"1-3:1.0", "serial_number": "B9", "interface_number": 0})
    with pytest.raises(LinkRefused, match="several") as caught:
        open_link("hid://1a2b:3c4d", SETTINGS)
    assert "hid://1a2b:3c4d/A7, hid://1a2b:3c4d/B9" in caught.value.remedy
    with open_link("hid://1a2b:3c4d/B9", SETTINGS):
        assert bench.device.path == b"1-3:1.0"
    with pytest.raises(LinkNotFound):
        open_link("hid://1a2b:3c4d/C1", SETTINGS)
    bench.plugged[:] = []
    with pytest.raises(LinkNotFound, match="plugged in"):
        open_link("hid://1a2b:3c4d", SETTINGS)


def test_two_without_serial_numbers_can_not_be_told_apart_but_two_parts_of_one_can(bench):
    nameless = {"serial_number": "", "interface_number": 0}
    bench.plugged[:] = [{"path": b"a", **nameless}, {"path": b"b", **nameless}]
    with pytest.raises(LinkRefused, match="several") as caught:
        open_link("hid://1a2b:3c4d", SETTINGS)
    assert "unplug all but one" in caught.value.remedy
    bench.plugged[1]["interface_number"] = 1
    with open_link("hid://1a2b:3c4d", SETTINGS) as link:
        assert bench.device.path == b"a"
        assert link.url == "hid://1a2b:3c4d"


def test_a_bridge_that_takes_no_setup_is_said_and_closed(bench):
    bench.device.refuses_setup = True
    with pytest.raises(LinkRefused, match="setup"):
        open_link("hid://1a2b:3c4d", SETTINGS)
    assert bench.device.closed


def test_a_device_that_can_not_be_opened_says_why(bench, tmp_path, monkeypatch):
    bench.plugged[0]["path"] = b"broken"
    with pytest.raises(LinkRefused, match="open failed"):
        open_link("hid://1a2b:3c4d", SETTINGS)
    node = tmp_path / "hidraw0"
    node.touch()
    bench.plugged[0]["path"] = str(node).encode()

    def refuse(_path: bytes) -> None:
        raise OSError("open failed")

    monkeypatch.setattr(bench.device, "open_path", refuse)
    with pytest.raises(LinkBusy):
        open_link("hid://1a2b:3c4d", SETTINGS)
