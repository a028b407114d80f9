"""PortMemory: what is known of an open port, and where the same device is when it comes back."""

from __future__ import annotations

import os
import re
import stat
import sys
from dataclasses import dataclass
from pathlib import Path

from meterlog.instruments.ports import PortInfo, list_ports
from meterlog.model.errors import LinkNotFound

_USB_ADDRESS = re.compile(r"(?:hid|usbtmc)://[0-9a-f]{4}:[0-9a-f]{4}/(?P<serial>.+)", re.IGNORECASE)
_PTY_MAJORS = range(136, 144)
"""Device numbers of the near sides of pseudo terminals on Linux (the kernel's list of devices)."""


@dataclass(frozen=True, slots=True)
class PortMemory:
    """One port, as it was when it was opened.

    Attributes
    ----------
    url : str
        As it was chosen.
    device : str
        The same with symbolic links followed; empty where that means nothing.
    vendor, product, serial, location : str
        Of the USB device behind it; empty when there is none.
    made_ns : int or None, nanoseconds
        When a pseudo terminal was made; None for anything else.
    renewed_ns : int or None, nanoseconds
        When the symbolic link that ``url`` names was made; None when it names none.
    """

    url: str
    device: str = ""
    vendor: str = ""
    product: str = ""
    serial: str = ""
    location: str = ""
    made_ns: int | None = None
    renewed_ns: int | None = None


def remember(url: str) -> PortMemory:
    """Give what can be known of a port that is there. Never raises."""
    by_usb = _USB_ADDRESS.fullmatch(url)
    if by_usb is not None:
        return PortMemory(url, serial=by_usb["serial"])
    if "://" in url:
        return PortMemory(url)
    device = _followed(url)
    renewed_ns, made_ns = _renewed_ns(url), pty_made_ns(device)
    if made_ns is None:
        for port in list_ports():
            if _followed(port.device) == device and port.vendor:
                return PortMemory(
                    url, device, port.vendor, port.product, port.serial, port.location
                )
    return PortMemory(url, device, made_ns=made_ns, renewed_ns=renewed_ns)


def whereabouts(memory: PortMemory) -> str:
    """Give what is to be opened to meet the same device again.

    A USB device is known by its serial number, whatever the system calls its port now; one
    without a serial number by its kind and the socket it is in. A pseudo terminal that has gone
    does not come back; if there is one of the same name it is another program's. If the user
    named a symbolic link, and that has been made anew, it is followed.

    Raises
    ------
    LinkNotFound
        If it is not there, with what is there in its place.
    """
    if memory.vendor:
        return _usb_device(memory, list_ports())
    if memory.made_ns is not None:
        _refuse_another_pty(memory)
    return memory.url


def _usb_device(memory: PortMemory, ports: tuple[PortInfo, ...]) -> str:
    kind = [p for p in ports if (p.vendor, p.product) == (memory.vendor, memory.product)]
    same = [p for p in kind if p.serial == memory.serial]
    here = [p for p in same if p.location == memory.location]
    if here:
        return here[0].device
    if memory.serial:
        # One with several ports has them all under one serial number, told apart by the end.
        part = _part(memory.location)
        beside = [p for p in same if _part(p.location) == part]
        if len(beside) == 1:
            return beside[0].device
        if beside:
            raise _not_there(memory, f"{_named(beside)} have the same serial number")
    elif kind:
        raise _not_there(
            memory, f"{_named(kind)} is of its kind, but has no serial number to know it by"
        )
    places = {memory.device, _followed(memory.url)}
    stranger = [p for p in ports if _followed(p.device) in places]
    if stranger:
        raise _not_there(memory, f"another device is there now: {_about(stranger[0])}")
    raise _not_there(memory, "")


def _not_there(memory: PortMemory, instead: str) -> LinkNotFound:
    message = "is not plugged in" + (f"; {instead}" if instead else "")
    known = f" with serial number {memory.serial}" if memory.serial else ""
    remedy = f"Plug in the device {memory.vendor}:{memory.product}{known}."
    if instead and not memory.serial:
        remedy = "Plug it into the USB socket where it was."
    return LinkNotFound(f"{message}.", subject=memory.url, remedy=remedy)


def _refuse_another_pty(memory: PortMemory) -> None:
    now_ns = pty_made_ns(_followed(memory.url))
    if now_ns is None or now_ns == memory.made_ns:
        return  # gone, which opening will say; or still the same
    if memory.renewed_ns is not None and _renewed_ns(memory.url) != memory.renewed_ns:
        return
    raise LinkNotFound(
        "has gone; what has this name now is another program's.",
        subject=memory.url,
        remedy="Start the other side again, and record at the port it gives.",
    )


def pty_made_ns(path: str) -> int | None:
    """Give when the pseudo terminal at ``path`` was made; None where there is none.

    It is the time of the last change of its node, which reading and writing do not touch.
    """
    if not sys.platform.startswith("linux"):
        return None
    try:
        found = Path(path).stat()
    except (OSError, ValueError):
        return None
    if not stat.S_ISCHR(found.st_mode) or os.major(found.st_rdev) not in _PTY_MAJORS:
        return None
    return found.st_ctime_ns


def _renewed_ns(path: str) -> int | None:
    try:
        found = Path(path).lstat()
    except (OSError, ValueError):
        return None
    return found.st_ctime_ns if stat.S_ISLNK(found.st_mode) else None


def _followed(path: str) -> str:
    return os.path.realpath(path) if path and sys.platform != "win32" else path.upper()


def _part(location: str) -> str:
    return location.partition(":")[2]


def _about(port: PortInfo) -> str:
    usb = f"{port.vendor}:{port.product}" if port.vendor else ""
    return " ".join(words for words in (port.text, usb, port.serial) if words) or port.device


def _named(ports: list[PortInfo]) -> str:
    return " and ".join(port.device for port in ports)
