"""KeptZeros: the zeros of clamps, kept from one recording to the next."""

from __future__ import annotations

import json
import math
import os
import tempfile
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path

from meterlog.instruments import list_ports
from meterlog.model import Channel, Zero
from meterlog.profile.folders import settings_folder

_FILE = "zeros.json"
_MOST = 200
"""The oldest ones go first: a workshop has fewer clamps than this."""


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


def usb_serial_of(url: str) -> str:
    """Give the serial number of the USB adapter at a port; empty where there is none."""
    if "://" in url:
        return ""
    real = os.path.realpath(url)
    for port in list_ports():
        if url == port.device or real == os.path.realpath(port.device):
            return port.serial
    return ""


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
        self._path = (settings_folder() if folder is None else folder) / _FILE

    def find(self, key: ZeroKey) -> Zero | None:
        """Give the zero kept for ``key``; None when there is none."""
        return _zero(self._read().get(str(key)))

    def keep(self, key: ZeroKey, zero: Zero) -> bool:
        """Keep a zero in the place of the one before.

        Returns
        -------
        bool
            False when the disk does not take it.
        """
        entries = self._read()
        entries.pop(str(key), None)
        entries[str(key)] = {
            "offset": zero.offset,
            "scatter": zero.scatter,
            "count": zero.count,
            "taken_utc": (zero.taken_utc or datetime.now(UTC)).isoformat(),
            "range_top": zero.range_top,
        }
        newest = dict(list(entries.items())[-_MOST:])
        return self._write(json.dumps(newest, ensure_ascii=False, indent=1, allow_nan=False))

    def _read(self) -> dict[str, object]:
        try:
            found = json.loads(self._path.read_text("utf-8"))
        except (OSError, ValueError, RecursionError):
            return {}
        return dict(found) if isinstance(found, dict) else {}

    def _write(self, text: str) -> bool:
        try:
            self._path.parent.mkdir(parents=True, exist_ok=True)
            handle, name = tempfile.mkstemp(dir=self._path.parent, prefix=f".{_FILE}")
            try:
                with os.fdopen(handle, "w", encoding="utf-8") as stream:
                    stream.write(text)
                    stream.flush()
                    os.fsync(stream.fileno())
                Path(name).replace(self._path)
            except BaseException:
                Path(name).unlink(missing_ok=True)
                raise
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
    except (KeyError, TypeError, ValueError):
        return None
    sound = math.isfinite(zero.offset) and math.isfinite(zero.scatter)
    return zero if sound and taken.tzinfo is not None else None
