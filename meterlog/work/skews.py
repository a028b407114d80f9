"""KeptSkews: how much later one meter's times are than another's, kept between recordings."""

from __future__ import annotations

import json
import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from pathlib import Path

from meterlog.model import Instrument
from meterlog.model.errors import DiskFailed
from meterlog.work.kept_entries import KeptEntries


@dataclass(frozen=True, slots=True)
class MeterKey:
    """What a skew belongs to on one side.

    Attributes
    ----------
    profile : str
        Name of the meter profile.
    serial : str
        The instrument's own serial number, else that of its adapter; empty when neither is known:
        then any meter of this profile is meant.
    simulated : bool
        A virtual meter's times say nothing about a real one's.
    """

    profile: str
    serial: str
    simulated: bool = False

    @classmethod
    def of(cls, instrument: Instrument) -> MeterKey:
        """Give the key of an instrument as it was met."""
        serial = instrument.identity.serial or instrument.usb_serial
        return cls(instrument.profile, serial, instrument.simulated)

    @property
    def words(self) -> list[str | bool]:
        """Give it as part of a JSON key."""
        return [self.profile, self.serial, self.simulated]


@dataclass(frozen=True, slots=True)
class KeptSkew:
    """A skew as it was measured.

    Attributes
    ----------
    later_s : float, seconds
        How much later the second meter's times are than the first's, nothing subtracted.
    u_s : float, seconds
        Standard uncertainty.
    steps : int
        It was measured with.
    measured_utc : datetime
        When.
    """

    later_s: float
    u_s: float
    steps: int
    measured_utc: datetime


class KeptSkews:
    """The skews that were kept, in one JSON file.

    Parameters
    ----------
    folder : Path or None
        None: the user's settings folder. It need not exist.
    """

    def __init__(self, folder: Path | None = None) -> None:
        self._entries = KeptEntries("skews.json", folder)

    @property
    def path(self) -> Path:
        """The file."""
        return self._entries.path

    def find(self, first: MeterKey, second: MeterKey) -> KeptSkew | None:
        """Give how much later ``second`` is than ``first``, whichever way round it was kept."""
        if first == second:
            return None
        entries = self._entries.read()
        straight = _skew(entries.get(_pair(first, second)))
        if straight is not None:
            return straight
        turned = _skew(entries.get(_pair(second, first)))
        return None if turned is None else replace(turned, later_s=-turned.later_s)

    def keep(self, first: MeterKey, second: MeterKey, skew: KeptSkew) -> None:
        """Keep a skew in the place of the one before.

        Raises
        ------
        DiskFailed
            If it can't be written.
        """
        entries = self._entries.read()
        entries.pop(_pair(second, first), None)
        entries.pop(_pair(first, second), None)
        entries[_pair(first, second)] = {
            "later_s": skew.later_s,
            "u_s": skew.u_s,
            "steps": skew.steps,
            "measured_utc": skew.measured_utc.astimezone(UTC).isoformat(),
        }
        self._write(entries)

    def forget(self, first: MeterKey, second: MeterKey) -> bool:
        """Forget what was kept of a pair; tell whether there was anything.

        Raises
        ------
        DiskFailed
            If it can't be written.
        """
        entries = self._entries.read()
        pairs = (_pair(first, second), _pair(second, first))
        left = {pair: entry for pair, entry in entries.items() if pair not in pairs}
        if len(left) == len(entries):
            return False
        self._write(left)
        return True

    def applied(self, instruments: Sequence[Instrument]) -> tuple[Instrument, ...]:
        """Give instruments with what is known of their skews against the first of them.

        Returns
        -------
        tuple of Instrument
            ``skew_s`` is to be subtracted from each one's times, and is never below 0: where one
            is earlier than the first, all others are moved back instead, as no reading can be
            moved behind its arrival. ``skew_u_s`` is above 0 for those that were measured.
        """
        if not instruments:
            return ()
        reference = MeterKey.of(instruments[0])
        found = [self.find(reference, MeterKey.of(one)) for one in instruments]
        if not any(found):
            return tuple(instruments)
        later = [0.0 if skew is None else skew.later_s for skew in found]
        return tuple(
            replace(
                one,
                skew_s=amount - min(later),
                skew_u_s=0.0 if skew is None else skew.u_s,
            )
            for one, amount, skew in zip(instruments, later, found, strict=True)
        )

    def _write(self, entries: dict[str, object]) -> None:
        try:
            self._entries.write(entries)
        except OSError as error:
            raise DiskFailed(
                f"can't be written: {error.strerror}.",
                subject=str(self.path),
                remedy="Make that folder writable, then try again.",
            ) from error


def _pair(first: MeterKey, second: MeterKey) -> str:
    return json.dumps([first.words, second.words], ensure_ascii=False)


def _skew(entry: object) -> KeptSkew | None:
    if not isinstance(entry, dict):
        return None
    try:
        skew = KeptSkew(
            float(entry["later_s"]),
            float(entry["u_s"]),
            int(entry["steps"]),
            datetime.fromisoformat(entry["measured_utc"]),
        )
    except (KeyError, TypeError, ValueError, OverflowError):
        return None
    sound = math.isfinite(skew.later_s) and math.isfinite(skew.u_s) and skew.u_s > 0.0
    return skew if sound else None
