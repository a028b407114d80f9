"""VisaLink: an instrument that keeps its messages apart, such as one on USBTMC, through PyVISA."""

from __future__ import annotations

import contextlib
import threading
from typing import TYPE_CHECKING

from meterlog.instruments.addresses import usb_parts
from meterlog.instruments.inbox import Inbox
from meterlog.instruments.link import LineCounts, Link
from meterlog.instruments.link_errors import lost
from meterlog.instruments.usb_devices import library_missing, usb_serials
from meterlog.model.errors import LinkBusy, LinkLost, LinkNotFound, LinkRefused, UsageError

if TYPE_CHECKING:
    from pyvisa.resources import MessageBasedResource

USBTMC_LIBRARY = "@py"
"""USBTMC is spoken by PyVISA-py: the same code on every system, and no driver to install."""
_SLICE_MS = 1_000
"""So long one wait for an answer lasts, and so long closing takes at most."""
_STREAMS = ("ASRL", "SOCKET")


class VisaLink(Link):
    """An open instrument: a :class:`meterlog.instruments.Link` made by :meth:`open`.

    An answer is fetched only after a question: an instrument that is asked for an answer it does
    not owe takes that for an error (IEEE 488.2, query unterminated). A thread of its own does it,
    since such a wait can't be ended from outside.

    Attributes
    ----------
    url : str
        For USBTMC with the instrument's serial number.
    byte_s : float, seconds
        0: no serial wire.
    messages : bool
        True.
    """

    byte_s = 0.0
    messages = True

    def __init__(self, url: str, resource: MessageBasedResource) -> None:
        self.url = url
        self._resource = resource
        self._inbox = Inbox(apart=True)
        self._owed = False
        self._asked = threading.Condition()
        self._closed = False
        # All calls of the library for one instrument happen one after the other.
        self._calling = threading.Lock()
        self._thread = threading.Thread(target=self._fetch, name=f"answers {url}", daemon=True)
        self._thread.start()

    @classmethod
    def open(cls, url: str) -> VisaLink:
        """Open ``usbtmc://VVVV:PPPP[/SERIAL]``, or ``visa://RESOURCE`` by the system's library.

        Raises
        ------
        LinkNotFound
            If there is no such instrument.
        LinkBusy
            If another program holds it.
        LinkRefused
            If a library is not installed, this user may not open it, or the address fits several.
        UsageError
            If the address is not written as it must be, or names a serial or network port.
        """
        if url.lower().startswith("usbtmc:"):
            return cls._open_usbtmc(url)
        name = url.partition("://")[2]
        if name.upper().startswith(_STREAMS) or name.upper().endswith(_STREAMS):
            raise UsageError(
                "is a port without messages.",
                subject=url,
                remedy="Give the port's name itself, or socket://HOST:PORT.",
            )
        return cls(url, _resource(url, name, ""))

    @classmethod
    def _open_usbtmc(cls, url: str) -> VisaLink:
        vendor, product, serial = usb_parts(url)
        found = usb_serials(vendor, product, url)
        if serial:
            found = tuple(name for name in found if name == serial)
        if not found:
            raise LinkNotFound(
                "no such instrument is plugged in.",
                subject=url,
                remedy="Check the plug, and that the instrument is switched on.",
            )
        if len(found) > 1:
            named = ", ".join(f"{url}/{name}" for name in found)
            raise LinkRefused(
                f"{len(found)} such instruments are plugged in.",
                subject=url,
                remedy=f"Name one of them: {named}.",
            )
        name = f"USB0::0x{vendor:04x}::0x{product:04x}::{found[0]}::INSTR"
        known = f"usbtmc://{vendor:04x}:{product:04x}/{found[0]}"
        return cls(known, _resource(url, name, USBTMC_LIBRARY))

    def _fetch(self) -> None:
        """Fetch what is owed until the link is closed or the instrument has gone."""
        while True:
            with self._asked:
                self._asked.wait_for(lambda: self._owed or self._closed)
                if self._closed:
                    return
            try:
                with self._calling:
                    message = self._resource.read_raw()
            # PyVISA's libraries raise whatever their own parts meet.
            except Exception as error:  # noqa: BLE001
                if _is_timeout(error):
                    continue
                gone = lost(self.url, error)
                gone.__cause__ = error
                self._inbox.end(gone)
                return
            with self._asked:
                self._owed = False
            self._inbox.put(bytes(message))

    def read(self, wait_s: float) -> bytes:
        """Give the next message, waiting at most ``wait_s``; empty when none came.

        Raises
        ------
        LinkLost
            If the instrument went away or the link was closed.
        """
        return self._inbox.take(wait_s)

    def write(self, data: bytes) -> None:
        """Send ``data`` as one message.

        Raises
        ------
        LinkLost
            If the instrument went away or the link was closed.
        """
        self._inbox.refuse_ended()
        try:
            with self._calling:
                self._resource.write_raw(data)
        # As in _fetch.
        except Exception as error:
            raise lost(self.url, error) from error
        if b"?" in data:
            with self._asked:
                # A question ends the wait for an answer that never came: the instrument has
                # dropped it (IEEE 488.2, query interrupted).
                self._owed = True
                self._asked.notify_all()

    def drop_input(self) -> None:
        """Forget what has come in so far, and what is still owed.

        Raises
        ------
        LinkLost
            If the instrument went away or the link was closed.
        """
        self._inbox.refuse_ended()
        with self._asked:
            owed, self._owed = self._owed, False
        if owed:
            # Device clear takes back an answer that is on its way; not every library has it.
            with self._calling, contextlib.suppress(Exception):
                self._resource.clear()
        self._inbox.drop()

    def line_counts(self) -> LineCounts:
        """Give how many bytes nobody fetched in time."""
        return LineCounts(lost=self._inbox.lost)

    def close(self) -> None:
        """Close; a read in another thread ends. Never raises; may be called again."""
        with self._asked:
            if self._closed:
                return
            self._closed = True
            self._asked.notify_all()
        self._inbox.end(LinkLost("the port has been closed.", subject=self.url))
        self._thread.join()
        # Closing an instrument that has gone may fail in any way.
        with self._calling, contextlib.suppress(Exception):
            self._resource.close()


def _resource(url: str, name: str, library: str) -> MessageBasedResource:
    """Open a resource by PyVISA; ``library`` empty for the one that the system has."""
    try:
        import pyvisa
        from pyvisa.resources import MessageBasedResource
    except ImportError as error:
        raise library_missing(url) from error
    try:
        resource = pyvisa.ResourceManager(library).open_resource(name)
    # Besides its own errors PyVISA lets through those of the libraries beneath it.
    except Exception as error:
        raise _open_failed(url, error) from error
    if not isinstance(resource, MessageBasedResource):
        resource.close()
        raise UsageError("is no instrument that messages can be sent to.", subject=url)
    resource.timeout = _SLICE_MS
    return resource


def _open_failed(url: str, error: Exception) -> LinkNotFound | LinkBusy | LinkRefused:
    from pyvisa.constants import StatusCode

    code = getattr(error, "error_code", None)
    if code in {StatusCode.error_resource_busy, StatusCode.error_resource_locked}:
        return LinkBusy(
            "another program holds this instrument.", subject=url, remedy="Close the other program."
        )
    if code == StatusCode.error_resource_not_found or "No device found" in str(error):
        return LinkNotFound(
            "there is no such instrument.",
            subject=url,
            remedy="Check the plug, the address, and that the instrument is switched on.",
        )
    first = (str(error) or type(error).__name__).splitlines()[0].rstrip(".")[:200]
    return LinkRefused(
        f"can't be opened: {first}.",
        subject=url,
        remedy="Check the address, and that no other program uses the instrument.",
    )


def _is_timeout(error: Exception) -> bool:
    from pyvisa.constants import StatusCode

    return getattr(error, "error_code", None) == StatusCode.error_timeout
