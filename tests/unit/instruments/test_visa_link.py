"""VisaLink against a simulated instrument of pyvisa-sim; no USBTMC instrument is at hand.

The system's library for ``visa://`` is chosen by PyVISA's own variable PYVISA_LIBRARY. For
``usbtmc://`` the list of what is plugged in is faked, and the library named in its place.
"""

import sys
import threading
import time
from types import SimpleNamespace

import numpy as np
import pytest
import usb.core

from meterlog.acquire import Acquisition, Clock, MeterChoice
from meterlog.instruments import ScpiDialogue, open_link, usb_devices, visa_link
from meterlog.model import Block, Event, EventKind
from meterlog.model.errors import LinkBusy, LinkLost, LinkNotFound, LinkRefused, UsageError
from meterlog.profile import LinkSettings, ScpiTalk, load_meter

SETTINGS = LinkSettings()
BENCH = """
spec: "1.0"
devices:
  meter:
    eom:
      USB INSTR: {q: "\\n", r: "\\n"}
      GPIB INSTR: {q: "\\n", r: "\\n"}
    error:
      status_register: []
      error_queue:
        - q: "SYST:ERR?"
          default: '0,"No error"'
          command_error: '-113,"Undefined header"'
          query_error: '-400,"Query error"'
    dialogues:
      - {q: "*IDN?", r: "EXAMPLE,INVENTED METER,A1,1.0"}
      - {q: "*CLS"}
      - {q: "READ?", r: "12.431"}
resources:
  USB::0x1a2b::0x3c4d::A1::INSTR: {device: meter}
  GPIB::8::INSTR: {device: meter}
"""


@pytest.fixture
def bench(tmp_path, monkeypatch):
    file = tmp_path / "bench.yaml"
    file.write_text(BENCH)
    plugged = ["A1"]
    monkeypatch.setenv("PYVISA_LIBRARY", f"{file}@sim")
    monkeypatch.setattr(visa_link, "USBTMC_LIBRARY", f"{file}@sim")
    monkeypatch.setattr(visa_link, "_SLICE_MS", 100)
    monkeypatch.setattr(visa_link, "usb_serials", lambda _v, _p, _url: tuple(plugged))
    return plugged


@pytest.fixture(params=["usbtmc://1A2B:3C4D", "visa://GPIB::8::INSTR"])
def link(bench, request):
    with open_link(request.param, SETTINGS) as opened:
        yield opened


def test_each_read_gives_one_whole_message(link):
    assert link.messages
    assert link.byte_s == 0.0
    for _ in range(3):
        link.write(b"READ?\n")
        assert link.read(5.0) == b"12.431\n"
    link.write(b"*CLS\n")
    began = time.monotonic()
    assert link.read(0.05) == b""
    assert 0.04 < time.monotonic() - began < 1.0


def test_nothing_is_asked_of_an_instrument_that_owes_no_answer(link, monkeypatch):
    asked = []
    fetch = link._resource.read_raw
    monkeypatch.setattr(link._resource, "read_raw", lambda: asked.append(1) or fetch())
    link.write(b"*CLS\n")
    assert link.read(0.15) == b""
    assert not asked
    link.write(b"*IDN?\n")
    assert link.read(5.0).startswith(b"EXAMPLE")
    assert link.read(0.15) == b""
    assert len(asked) == 1


def test_an_answer_that_never_comes_does_not_spoil_the_next(link):
    link.write(b"NONSENSE?\n")
    assert link.read(0.25) == b""
    link.drop_input()
    link.write(b"SYST:ERR?\n")
    assert link.read(5.0) == b'-113,"Undefined header"\n'
    link.write(b"READ?\n")
    assert link.read(5.0) == b"12.431\n"


def test_the_dialogue_of_scpi_runs_over_it(link):
    identity, errors = ScpiDialogue(link, ScpiTalk(setup=("CONF:NONSENSE",))).introduce()
    assert (identity.maker, identity.serial) == ("EXAMPLE", "A1")
    assert errors == ("-113 Undefined header",)


def test_a_whole_acquisition_polls_it_and_knows_its_serial_number(bench):
    profile = load_meter("bench-scpi")
    choice = MeterChoice(profile, "usbtmc://1a2b:3c4d", "bench-scpi", profile.channels)
    acquisition = Acquisition([choice], Clock.start())
    (instrument,) = acquisition.connect()
    items: list = []
    enough = threading.Event()

    def put(item) -> None:
        items.append(item)
        if sum(isinstance(one, Block) for one in items) >= 5:
            enough.set()

    acquisition.start(put)
    assert enough.wait(60)
    acquisition.stop()
    assert instrument.identity.model == "INVENTED METER"
    assert instrument.usb_serial == "A1"
    rows = np.concatenate([item.values for item in items if isinstance(item, Block)])
    good = rows[np.isfinite(rows).all(axis=1)]
    assert len(good) >= 5
    np.testing.assert_array_equal(good, np.full((len(good), 1), 12.431))
    links = [i.value for i in items if isinstance(i, Event) and i.kind is EventKind.LINK]
    assert not [words for words in links if words.startswith("lost")]


def test_an_instrument_that_goes_away_is_lost(link, monkeypatch):
    def gone(*_args):
        raise OSError("no such device")

    monkeypatch.setattr(link._resource, "read_raw", gone)
    link.write(b"READ?\n")
    for _ in range(2):
        with pytest.raises(LinkLost, match="no such device") as caught:
            link.read(5.0)
    assert caught.value.subject == link.url
    for act in (lambda: link.write(b"x"), link.drop_input):
        with pytest.raises(LinkLost):
            act()


def test_what_can_not_be_written_is_lost(link, monkeypatch):
    def gone(_data):
        raise ValueError("no such device")

    monkeypatch.setattr(link._resource, "write_raw", gone)
    with pytest.raises(LinkLost, match="no such device"):
        link.write(b"READ?\n")


def test_closing_ends_a_read_though_an_answer_is_owed(link):
    link.write(b"NONSENSE?\n")
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
    assert f"answers {link.url}" not in {thread.name for thread in threading.enumerate()}


def test_one_of_several_must_be_named_and_a_missing_one_is_said(bench):
    bench.append("B2")
    with pytest.raises(LinkRefused, match="2 such instruments") as caught:
        open_link("usbtmc://1a2b:3c4d", SETTINGS)
    assert "usbtmc://1a2b:3c4d/B2" in caught.value.remedy
    with open_link("usbtmc://1a2b:3c4d/A1", SETTINGS) as link:
        assert link.url == "usbtmc://1a2b:3c4d/A1"
    with pytest.raises(LinkNotFound):
        open_link("usbtmc://1a2b:3c4d/C3", SETTINGS)


@pytest.mark.parametrize("name", ["ASRL/dev/ttyS0::INSTR", "TCPIP::127.0.0.1::5025::SOCKET"])
def test_a_port_without_messages_is_not_opened_this_way(bench, name):
    with pytest.raises(UsageError, match="without messages"):
        open_link(f"visa://{name}", SETTINGS)


@pytest.mark.parametrize(
    ("code", "kind"),
    [
        ("error_resource_busy", LinkBusy),
        ("error_resource_not_found", LinkNotFound),
        ("error_system_error", LinkRefused),
    ],
)
def test_what_the_library_says_on_opening_is_translated(bench, monkeypatch, code, kind):
    import pyvisa
    from pyvisa.constants import StatusCode

    def refuse(*_args, **_more):
        raise pyvisa.VisaIOError(getattr(StatusCode, code).value)

    monkeypatch.setattr(pyvisa.ResourceManager, "open_resource", refuse)
    with pytest.raises(kind) as caught:
        open_link("visa://GPIB::9::INSTR", SETTINGS)
    assert caught.value.subject == "visa://GPIB::9::INSTR"
    assert caught.value.remedy


@pytest.mark.parametrize(
    ("module", "url"),
    [("pyvisa", "visa://GPIB::8::INSTR"), ("usb.core", "usbtmc://1a2b:3c4d")],
)
def test_an_absent_library_gives_the_line_that_installs_it(monkeypatch, module, url):
    monkeypatch.setitem(sys.modules, module, None)
    with pytest.raises(LinkRefused) as caught:
        open_link(url, SETTINGS)
    assert f"{sys.executable} -m pip install pyvisa pyvisa-py pyusb" in caught.value.remedy


class _Locked:
    bus, address = 1, 4

    @property
    def serial_number(self) -> str:
        raise ValueError("The device has no langid")


def test_the_serial_numbers_on_the_usb_are_listed_and_what_is_in_the_way_is_said(monkeypatch):
    asked = {}

    def find(**wanted):
        asked.update(wanted)
        return iter([SimpleNamespace(serial_number="B2"), SimpleNamespace(serial_number="A1")])

    monkeypatch.setattr(usb.core, "find", find)
    assert usb_devices.usb_serials(0x1A2B, 0x3C4D, "u") == ("A1", "B2")
    assert asked == {"find_all": True, "idVendor": 0x1A2B, "idProduct": 0x3C4D}
    monkeypatch.setattr(usb.core, "find", lambda **_wanted: iter([_Locked()]))
    with pytest.raises(LinkRefused, match="may not"):
        usb_devices.usb_serials(0x1A2B, 0x3C4D, "u")

    def no_backend(**_wanted):
        raise usb.core.NoBackendError("no backend")

    monkeypatch.setattr(usb.core, "find", no_backend)
    with pytest.raises(LinkRefused, match="libusb"):
        usb_devices.usb_serials(0x1A2B, 0x3C4D, "u")
