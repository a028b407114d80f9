"""Rights: which ports are plugged in, and whether this user may open them."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator

from meterlog.instruments import PortInfo, list_ports
from meterlog.work.doctor.look import Line, State

GROUPS = ("dialout", "uucp", "tty", "plugdev")
"""Groups that own serial ports on Linux, the usual one first; common practice, no source."""
_OWNING = GROUPS[:2]


def look_at_ports() -> Iterator[Line]:
    """Look at ports; none is opened, no serial number is told."""
    ports = list_ports()
    for port in ports:
        usb = f" USB {port.vendor}:{port.product}" if port.vendor else ""
        words = f"{_plain(port.device, port)}{usb}"
        if port.usable:
            yield Line("port", State.OK, f"{words}, may be opened")
        else:
            cure = _plain(_cure(port.reason), port)
            yield Line("port", State.BAD, f"{words}, may not be opened", cure)
    if not ports:
        yield Line("port", State.OK, "no serial port is plugged in")
    if sys.platform == "linux":
        yield _group()


def _plain(text: str, port: PortInfo) -> str:
    """Leave out the serial number of the adapter, by which some systems call its port."""
    return text.replace(port.serial, "SERIAL") if port.serial else text


def _cure(reason: str) -> str:
    return reason.partition(". ")[2] or reason


def _group() -> Line:
    import grp

    if os.geteuid() == 0:
        return Line("rights", State.OK, "root may open every port")
    mine = {*os.getgroups(), os.getegid()}
    there = {one.gr_name: one.gr_gid for one in grp.getgrall() if one.gr_name in _OWNING}
    held = [name for name, number in there.items() if number in mine]
    if held or not there:
        words = f"member of {', '.join(held)}" if held else "no group owns serial ports here"
        return Line("rights", State.OK, words)
    wanted = next(name for name in _OWNING if name in there)
    return Line(
        "rights",
        State.LOOK,
        f"not a member of {wanted}, which owns serial ports here",
        f"Run sudo usermod -aG {wanted} $USER, then log out and in again.",
    )
