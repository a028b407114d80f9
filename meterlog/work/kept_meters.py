"""KeptMeters: what a meter's label and certificate say, stated once and kept for later recordings.

An instrument with a serial number of its own (*IDN?), or one stated now, is known by it; else by
that of its USB adapter. One without any is not known again: what is stated of it holds for the one
recording, as nobody could tell it from another of its kind.
"""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from meterlog.model import Identity, Instrument
from meterlog.model.errors import UsageError
from meterlog.model.iso_date import iso_date
from meterlog.work.kept_entries import KeptEntries

_NOT_KEPT = (
    "What was stated of {} is in this recording, but could not be kept for the next one: the folder"
    " of your settings can't be written."
)
_FIELDS = ("model", "serial", "calibration_due")


@dataclass(frozen=True, slots=True)
class StatedMeter:
    """What the technician states of one meter. None: nothing; empty: what was kept is taken back.

    Attributes
    ----------
    model, serial : str or None
        From its label; for a meter that does not say them itself.
    calibration_due : str or None
        From its certificate, ISO 8601 (``2027-01-31``).
    """

    model: str | None = None
    serial: str | None = None
    calibration_due: str | None = None


class KeptMeters:
    """What was stated of meters, in one JSON file.

    Parameters
    ----------
    folder : Path or None
        None: the user's settings folder. It need not exist.

    Attributes
    ----------
    not_kept : tuple of str
        What :meth:`identified` could not keep, in words.
    """

    def __init__(self, folder: Path | None = None) -> None:
        self._entries = KeptEntries("meters.json", folder)
        self.not_kept: tuple[str, ...] = ()

    def identified(
        self, instruments: Sequence[Instrument], stated: Mapping[str, StatedMeter]
    ) -> tuple[Instrument, ...]:
        """Give instruments with what is stated of them now, else what is kept; keep what is new.

        Parameters
        ----------
        instruments : sequence of Instrument
            As they were met.
        stated : mapping of str to StatedMeter
            By the key of the instrument.

        Returns
        -------
        tuple of Instrument

        Raises
        ------
        UsageError
            If a model or serial number contradicts what the instrument says of itself; nothing is
            kept then.
        """
        kept = self._entries.read()
        new: dict[str, object] = {}
        known = []
        for one in instruments:
            said = stated.get(one.key, StatedMeter())
            identity = _identity(one, said, kept)
            known.append(replace(one, identity=identity))
            if said != StatedMeter():
                new |= _to_keep(one, identity)
        if new:
            self._keep(new, stated)
        return tuple(known)

    def known(self) -> tuple[Instrument, ...]:
        """Give the meters of which a calibration is known, in the order in which it was stated.

        Returns
        -------
        tuple of Instrument
            Without channels; a simulated one has no calibration and is left out.
        """
        found = []
        for key, entry in self._entries.read().items():
            kept = _entry({key: entry}, key)
            who = _who(key)
            if who is None or not kept["calibration_due"]:
                continue
            profile, serial = who
            identity = Identity(
                model=kept["model"], serial=serial, calibration_due=kept["calibration_due"]
            )
            found.append(Instrument(profile, profile, "", (), identity=identity))
        return tuple(found)

    def _keep(self, new: Mapping[str, object], stated: Mapping[str, StatedMeter]) -> None:
        entries = {key: entry for key, entry in self._entries.read().items() if key not in new}
        try:
            self._entries.write(entries | dict(new))
        except OSError:
            self.not_kept = (_NOT_KEPT.format(", ".join(stated)),)


def _identity(one: Instrument, said: StatedMeter, kept: Mapping[str, object]) -> Identity:
    own = one.identity
    for name, says, states in (
        ("model", own.model, said.model),
        ("serial", own.serial, said.serial),
    ):
        if says and states and says != states:
            raise UsageError(
                f"says of itself that its {name} is {says!r}, not {states!r}.",
                subject=one.key,
                remedy=f"Leave --{name} out, or see whether it is the right meter.",
            )
    adapter = _entry(kept, _by_adapter(one))
    serial = own.serial or (adapter["serial"] if said.serial is None else said.serial)
    # By its adapter it is only known as the meter whose serial number was stated there.
    label = _entry(kept, _by_serial(one, serial)) if serial else adapter
    due = label["calibration_due"] if said.calibration_due is None else said.calibration_due
    model = own.model or (label["model"] if said.model is None else said.model)
    return replace(own, model=model, serial=serial, calibration_due=due)


def _to_keep(one: Instrument, identity: Identity) -> dict[str, object]:
    """Give the entries that what is known of an instrument now is kept in."""
    label = {"model": identity.model, "calibration_due": identity.calibration_due}
    entries: dict[str, object] = {}
    if identity.serial:
        entries[_by_serial(one, identity.serial)] = label
    if one.usb_serial and not one.identity.serial:
        # With a serial number the rest is kept under that: another meter may come behind it.
        entries[_by_adapter(one)] = {"serial": identity.serial} if identity.serial else label
    return entries


def _by_serial(one: Instrument, serial: str) -> str:
    return json.dumps([one.profile, "serial", serial, one.simulated], ensure_ascii=False)


def _by_adapter(one: Instrument) -> str:
    return json.dumps([one.profile, "adapter", one.usb_serial, one.simulated], ensure_ascii=False)


def _who(key: str) -> tuple[str, str] | None:
    """Give profile and serial number of an entry's key; None for a simulated meter's."""
    try:
        found = json.loads(key)
    except (ValueError, RecursionError):
        return None
    match found:
        case [str(profile), str(by), str(number), False]:
            return profile, number if by == "serial" else ""
    return None


def _entry(kept: Mapping[str, object], key: str) -> dict[str, str]:
    """Give an entry's texts; empty where there is none, or a hand has spoilt it."""
    found = kept.get(key)
    values = found if isinstance(found, dict) else {}
    texts = {name: values.get(name) for name in _FIELDS}
    read = {name: text if isinstance(text, str) else "" for name, text in texts.items()}
    if iso_date(read["calibration_due"]) is None:
        read["calibration_due"] = ""
    return read
