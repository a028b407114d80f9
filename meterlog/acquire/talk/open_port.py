"""OpenPort: the port of one conversation, opened, found again after a loss, and closed."""

from __future__ import annotations

from meterlog.acquire.choice import MeterChoice
from meterlog.instruments import LineCounts, Link, PortMemory, open_link, remember, whereabouts
from meterlog.model.errors import LinkNotFound


class OpenPort:
    """Holds the one link that a conversation may have.

    Parameters
    ----------
    choice : MeterChoice
    """

    def __init__(self, choice: MeterChoice) -> None:
        self._choice = choice
        self._link: Link | None = None
        self._memory: PortMemory | None = None

    def open(self) -> Link:
        """Open the port; a second time the same device, wherever it is now.

        Raises
        ------
        LinkError
            If it can't be opened, or another device is in its place.
        """
        self.close()
        known = self._memory
        url = self._choice.url if known is None else whereabouts(known)
        link = self._link = open_link(url, self._choice.profile.link)
        if known is not None:
            self._refuse_another(known)
        found = remember(link.url)
        if known is None or found.vendor or not known.vendor:
            self._memory = found
        return link

    def _refuse_another(self, known: PortMemory) -> None:
        """Look again who is there: between asking and opening, a name may go to another device."""
        try:
            whereabouts(known)
        except LinkNotFound:
            self.close()
            raise

    @property
    def link(self) -> Link:
        """The link as it was opened last."""
        if self._link is None:
            raise RuntimeError("open() comes first")
        return self._link

    @property
    def url(self) -> str:
        """The port as it was opened last; as it was chosen before that."""
        return self._choice.url if self._link is None else self._link.url

    @property
    def usb_serial(self) -> str:
        """Serial number on the USB; empty when there is none, or it was never open."""
        return "" if self._memory is None else self._memory.serial

    @property
    def byte_s(self) -> float:
        """Seconds that a byte takes on the wire; 0 where there is none, or it is not open."""
        return 0.0 if self._link is None else self._link.byte_s

    def line_counts(self) -> LineCounts | None:
        """Give the system's counts of the line; None where it keeps none, or it is not open."""
        return None if self._link is None else self._link.line_counts()

    def close(self) -> None:
        """Close the port. Never raises; may be called again."""
        if self._link is not None:
            self._link.close()
