"""ZeroKept: the zero that is being taken in a run, kept for later runs once it is there."""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.acquire import ZeroTaking
from meterlog.model import Instrument, Zero
from meterlog.work.zeros import KeptZeros, ZeroKey, adapter_serial

_NOT_STORED = (
    "The zero of {} is in force and in this recording, but could not be stored for the next one:"
    " the folder of your settings can't be written. Take it again next time."
)


class ZeroKept:
    """Follows one taking after the other.

    Attributes
    ----------
    not_stored : str
        That a zero could not be kept for later; empty when all is well.
    """

    def __init__(self) -> None:
        self._kept = KeptZeros()
        self._taking: ZeroTaking | None = None
        self._last: Zero | None = None
        self.not_stored = ""

    def follow(self, taking: ZeroTaking) -> None:
        """Follow this one from now on."""
        self._taking = taking

    def settle(self, instruments: Sequence[Instrument]) -> None:
        """Keep a zero that was taken; not by the reader, which must never wait for a disk."""
        taking = self._taking
        if taking is None or taking.zero is None or taking.zero is self._last:
            return
        self._last = taking.zero
        instrument = next(one for one in instruments if one.key == taking.key)
        serial = adapter_serial(instrument.url, instrument.usb_serial)
        key = ZeroKey.of(instrument.profile, serial, taking.channel)
        stored = self._kept.keep(key, taking.zero)
        self.not_stored = "" if stored else _NOT_STORED.format(taking.channel.name)

    @property
    def words(self) -> str:
        """How it goes or went, in one sentence; empty before the first."""
        return "" if self._taking is None else str(self._taking)
