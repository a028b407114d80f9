"""HidLink: a meter behind a bridge chip that the system takes for a human-interface device."""

from __future__ import annotations

import contextlib
import threading
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from meterlog.instruments.addresses import usb_parts
from meterlog.instruments.extras import HID, install_line
from meterlog.instruments.hid_reports import unwrap, wrap
from meterlog.instruments.inbox import Inbox
from meterlog.instruments.link import LineCounts, Link
from meterlog.instruments.link_errors import lost
from meterlog.instruments.port_rights import rights_cure
from meterlog.model.errors import LinkBusy, LinkLost, LinkNotFound, LinkRefused
from meterlog.profile import HidBridge, LinkSettings

INSTALL = install_line(HID)
_SLICE_MS = 100
"""So long one wait for a report lasts, and so long closing takes at most."""
_LONGEST_REPORT = 1_025


class HidLink(Link):
    """An open device: a :class:`meterlog.instruments.Link` made by :meth:`open`.

    A thread of its own fetches the reports: the system keeps only some dozens of them, and a wait
    for the next can't be ended from outside.

    Attributes
    ----------
    url : str
        With the device's serial number, if it has one.
    byte_s : float, seconds
        Of the serial line behind the bridge.
    messages : bool
        False: a stream.
    """

    messages = False

    # hidapi has no type stubs.
    def __init__(self, url: str, device: Any, settings: LinkSettings) -> None:  # noqa: ANN401
        self.url = url
        self.byte_s = settings.byte_s if settings.on_wire else 0.0
        self._bridge = settings.hid
        self._device = device
        self._inbox = Inbox(apart=False)
        self._closed = threading.Event()
        self._writing = threading.Lock()
        self._thread = threading.Thread(target=self._fetch, name=f"reports {url}", daemon=True)
        self._thread.start()

    @classmethod
    def open(cls, url: str, settings: LinkSettings) -> HidLink:
        """Open ``hid://VVVV:PPPP[/SERIAL]`` and set the bridge's line up.

        Raises
        ------
        LinkNotFound
            If no such device is plugged in.
        LinkBusy
            If another program holds it.
        LinkRefused
            If hidapi is not installed, this user may not open it, the address fits several, or
            the bridge does not take its setup.
        UsageError
            If the address is not written as it must be.
        """
        vendor, product, serial = usb_parts(url)
        hid = _hidapi(url)
        found = _one(hid.enumerate(vendor, product), url, serial)
        device = hid.device()
        try:
            device.open_path(found["path"])
        except OSError as error:
            raise _open_failed(url, found["path"], error) from error
        named = found.get("serial_number") or ""
        known = f"hid://{vendor:04x}:{product:04x}/{named}" if named else url
        try:
            _set_up(device, settings.hid, known)
        except BaseException:
            _close(device)
            raise
        return cls(known, device, settings)

    def _fetch(self) -> None:
        """Fetch reports until the link is closed or the device has gone."""
        try:
            while not self._closed.is_set():
                report = bytes(self._device.read(_LONGEST_REPORT, _SLICE_MS))
                data = unwrap(report, self._bridge) if report else b""
                if data:
                    self._inbox.put(data)
        # hidapi raises OSError for a device that has gone, and ValueError for one just closed.
        except (OSError, ValueError) as error:
            gone = lost(self.url, error)
            gone.__cause__ = error
            self._inbox.end(gone)

    def read(self, wait_s: float) -> bytes:
        """Give what waits, or else what comes first within ``wait_s``.

        Raises
        ------
        LinkLost
            If the device went away or the link was closed. What had come before is given first.
        """
        return self._inbox.take(wait_s)

    def write(self, data: bytes) -> None:
        """Send all of ``data``.

        Raises
        ------
        LinkLost
            If the device went away or the link was closed.
        LinkRefused
            If the profile does not say how to send.
        """
        self._inbox.refuse_ended()
        if self._bridge.out_report is None:
            raise LinkRefused(
                "nothing can be sent to this device.",
                subject=self.url,
                remedy="Set out_report under [link.hid] in the profile, if it can.",
            )
        with self._writing:
            for report in wrap(data, self._bridge):
                try:
                    sent = self._device.write(report)
                except (OSError, ValueError) as error:
                    raise lost(self.url, error) from error
                if sent < 0:
                    raise lost(self.url, OSError("it takes no reports"))

    def drop_input(self) -> None:
        """Forget what has come in so far.

        Raises
        ------
        LinkLost
            If the device went away or the link was closed.
        """
        self._inbox.drop()
        self._inbox.refuse_ended()

    def line_counts(self) -> LineCounts:
        """Give how many bytes nobody fetched in time; the chip's own counts are not known."""
        return LineCounts(lost=self._inbox.lost)

    def close(self) -> None:
        """Close; a read in another thread ends. Never raises; may be called again."""
        if self._closed.is_set():
            return
        self._closed.set()
        self._inbox.end(LinkLost("the port has been closed.", subject=self.url))
        # Never close under a read: hidapi's handle would be gone while it is in use.
        self._thread.join()
        with self._writing:
            _close(self._device)


def _hidapi(url: str) -> Any:  # noqa: ANN401
    try:
        import hid  # type: ignore[import-not-found]
    except ImportError as error:
        raise LinkRefused(
            "the library for such devices is not installed.",
            subject=url,
            remedy=f"Run: {INSTALL}",
        ) from error
    return hid


def _one(found: Sequence[dict[str, Any]], url: str, serial: str) -> dict[str, Any]:
    """Give the one device that is meant; of one with several parts the first."""
    if serial:
        found = [one for one in found if (one.get("serial_number") or "") == serial]
    if not found:
        raise LinkNotFound(
            "no such device is plugged in.",
            subject=url,
            remedy="Check the plug and the cable; the meter may have to be switched on first.",
        )
    names = sorted({one.get("serial_number") or "" for one in found})
    parts = [one.get("interface_number") for one in found]
    alike = not names[0] and len(set(parts)) < len({one["path"] for one in found})
    if len(names) > 1 or alike:
        remedy = "They have no serial number to tell them apart: unplug all but one."
        if all(names):
            remedy = f"Name one of them: {', '.join(f'{url}/{name}' for name in names)}."
        raise LinkRefused("several such devices are plugged in.", subject=url, remedy=remedy)
    return found[0]


def _open_failed(url: str, path: bytes, error: OSError) -> LinkRefused | LinkBusy:
    node = path.decode(errors="replace")
    if not Path(node).exists():
        return LinkRefused(
            f"can't be opened: {str(error).rstrip('.') or 'no reason given'}.",
            subject=url,
            remedy=(
                "Close other programs that use it. If there are none, this user may not open it: "
                "ask whoever administers this computer for a rule that allows it."
            ),
        )
    try:
        with Path(node).open("r+b", buffering=0):
            pass
    except PermissionError:
        return LinkRefused("you may not open it.", subject=url, remedy=rights_cure(node))
    except OSError:
        pass
    return LinkBusy("another program holds it.", subject=url, remedy="Close the other program.")


def _set_up(device: Any, bridge: HidBridge, url: str) -> None:  # noqa: ANN401
    if not bridge.setup:
        return
    try:
        sent = device.send_feature_report(bridge.setup)
    except (OSError, ValueError) as error:
        raise _set_up_failed(url) from error
    if sent < 0:
        raise _set_up_failed(url)


def _set_up_failed(url: str) -> LinkRefused:
    return LinkRefused(
        "does not take its setup report.",
        subject=url,
        remedy="Check `setup` under [link.hid] in the profile against the chip's data sheet.",
    )


def _close(device: Any) -> None:  # noqa: ANN401
    # Closing a device that has gone may fail in any way.
    with contextlib.suppress(Exception):
        device.close()
