"""The system's counts of a line, from the structure that Linux gives.

No serial port is at hand here: the structure is laid out by hand after linux/serial.h.
"""

import fcntl
import os
import pty
import struct
import sys

import pytest

from meterlog.instruments import LineCounts, open_link
from meterlog.instruments.line_counters import line_counts_of
from meterlog.model.errors import LinkLost
from meterlog.profile import LinkSettings

linux = pytest.mark.skipif(sys.platform != "linux", reason="counts of Linux")


def counts(**given: int) -> bytes:
    places = ["cts", "dsr", "rng", "dcd", "rx", "tx"]
    places += ["frame", "overrun", "parity", "brk", "buf_overrun"]
    return struct.pack("=20i", *(given.get(name, 0) for name in places), *[7] * 9)


@linux
def test_each_count_is_taken_from_its_place(monkeypatch):
    given = counts(rx=1000, tx=500, frame=3, overrun=20, parity=5, brk=1, buf_overrun=100)
    asked = []

    def ioctl(handle: int, request: int, space: bytes) -> bytes:
        asked.append((handle, request, len(space)))
        return given

    monkeypatch.setattr(fcntl, "ioctl", ioctl)
    assert line_counts_of(9) == LineCounts(framing=4, parity=5, lost=120)
    assert asked == [(9, 0x545D, 80)]


@linux
@pytest.mark.pty
def test_a_pseudo_terminal_keeps_no_counts_and_has_no_wire():
    far, near = pty.openpty()
    with open_link(os.ttyname(near), LinkSettings(baud=2400)) as link:
        assert link.line_counts() is None
        assert link.byte_s == 0.0
    os.close(far)
    os.close(near)
    assert line_counts_of(None) is None


@linux
@pytest.mark.pty
def test_counts_begin_at_the_opening_and_a_closed_port_has_none(monkeypatch):
    now = {"overrun": 40, "frame": 7}
    real = fcntl.ioctl

    def ioctl(handle: int, request: int, *rest: object) -> object:
        return counts(**now) if request == 0x545D else real(handle, request, *rest)

    monkeypatch.setattr(fcntl, "ioctl", ioctl)
    far, near = pty.openpty()
    link = open_link(os.ttyname(near), LinkSettings())
    assert link.line_counts() == LineCounts()
    now.update(overrun=45, frame=9)
    assert link.line_counts() == LineCounts(framing=2, lost=5)
    link.close()
    with pytest.raises(LinkLost):
        link.line_counts()
    os.close(far)
    os.close(near)


@linux
@pytest.mark.pty
def test_a_pseudo_terminal_is_opened_whatever_form_of_bytes_the_profile_has():
    far, near = pty.openpty()
    settings = LinkSettings(data_bits=7, parity="even", stop_bits=2.0)
    with open_link(os.ttyname(near), settings) as link:
        os.write(far, b"\xffx\n")
        assert link.read(5.0) == b"\xffx\n"
    os.close(far)
    os.close(near)


@pytest.mark.parametrize("on_wire", [True, False])
def test_a_byte_takes_its_time_on_a_wire_and_none_where_the_profile_says_so(on_wire, monkeypatch):
    # A pseudo terminal stands in for a port with a wire.
    monkeypatch.setattr("meterlog.instruments.serial_link.pty_made_ns", lambda _path: None)
    far, near = pty.openpty()
    settings = LinkSettings(baud=2400, stop_bits=2.0, on_wire=on_wire)
    with open_link(os.ttyname(near), settings) as link:
        assert link.byte_s == pytest.approx(11 / 2400 if on_wire else 0.0)
    os.close(far)
    os.close(near)
