"""KeptZeros: the zeros of clamps, kept from one recording to the next."""

from __future__ import annotations

import json
import math
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path

from meterlog.instruments import remember
from meterlog.model import Channel, Zero
from meterlog.work.kept_entries import KeptEntries


@dataclass(frozen=True, slots=True)
class ZeroKey:
    """What a zero belongs to. Another clamp setting or another adapter has another zero.

    Attributes
    ----------
    profile : str
        Name of the meter profile.
    usb_serial : str
        Serial number of the adapter; empty when it has none.
    channel : str
    sensor : str
        In words; its own accuracy does not matter.
    """

    profile: str
    usb_serial: str
    channel: str
    sensor: str

    @classmethod
    def of(cls, profile: str, usb_serial: str, channel: Channel) -> ZeroKey:
        """Give the key of a channel behind its sensor."""
        return cls(profile, usb_serial, channel.name, str(channel.sensor))

    def __str__(self) -> str:
        """Give it as the key of a JSON object."""
        return json.dumps([self.profile, self.usb_serial, self.channel, self.sensor])


def adapter_serial(url: str, at_port: str | None = None) -> str:
    """Give the serial number of the adapter that a zero is kept under; empty where none is known.

    Before a meter is opened and after, it must come to the same. So an address with ``://`` counts
    as it is written, whatever more is learnt of the device by opening it.

    Parameters
    ----------
    url : str
        As the port was chosen.
    at_port : str or None
        The serial number of the adapter at a serial port, where it is known already; None: look.
    """
    if at_port is not None and "://" not in url:
        return at_port
    return remember(url).serial


def age_words(age: timedelta) -> str:
    """Write an age in the coarsest unit that says enough."""
    minutes = age.total_seconds() / 60.0
    if minutes < 1.0:
        return "less than a minute"
    if minutes < 120.0:
        return f"{minutes:.0f} min"
    return f"{minutes / 60.0:.0f} h" if minutes < 2880.0 else f"{minutes / 1440.0:.0f} days"


class KeptZeros:
    """The zeros that were taken, in one JSON file.

    A file that can't be read or written costs nothing but the convenience: a zero is taken again
    within seconds, and a recording holds its own.

    Parameters
    ----------
    folder : Path or None
        None: the user's settings folder. It need not exist.
    """

    def __init__(self, folder: Path | None = None) -> None:
        self._entries = KeptEntries("zeros.json", folder)

    def find(self, key: ZeroKey) -> Zero | None:
        """Give the zero kept for ``key``; None when there is none."""
        return _zero(self._entries.read().get(str(key)))

    def keep(self, key: ZeroKey, zero: Zero) -> bool:
        """Keep a zero in the place of the one before.

        Returns
        -------
        bool
            False when the disk does not take it.
        """
        entries = self._entries.read()
        entries.pop(str(key), None)
        entries[str(key)] = {
            "offset": zero.offset,
            "scatter": zero.scatter,
            "count": zero.count,
            "taken_utc": (zero.taken_utc or datetime.now(UTC)).isoformat(),
            "range_top": zero.range_top,
        }
        try:
            self._entries.write(entries)
        except OSError:
            return False
        return True


def _zero(entry: object) -> Zero | None:
    if not isinstance(entry, dict):
        return None
    try:
        taken = datetime.fromisoformat(entry["taken_utc"])
        top = entry["range_top"]
        zero = Zero(
            float(entry["offset"]),
            float(entry["scatter"]),
            int(entry["count"]),
            taken,
            None if top is None else float(top),
        )
    except (KeyError, TypeError, ValueError, OverflowError):
        return None
    sound = math.isfinite(zero.offset) and math.isfinite(zero.scatter)
    return zero if sound and taken.tzinfo is not None else None
