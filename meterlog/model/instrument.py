"""Instrument: one meter as it takes part in one recording."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from meterlog.model.channel import Channel, Role

IMPORTED = "imported"
"""Stands for a profile where the readings are columns of an imported trace."""


@dataclass(frozen=True, slots=True)
class Identity:
    """Who the instrument says it is (*IDN?), or what the user typed from its label.

    Attributes
    ----------
    maker, model, serial, firmware : str
        The four fields of IEEE 488.2 section 10.14; empty when unknown.
    calibration_due : str
        ISO date, or empty when nobody has stated it.
    """

    maker: str = ""
    model: str = ""
    serial: str = ""
    firmware: str = ""
    calibration_due: str = ""


@dataclass(frozen=True, slots=True)
class Instrument:
    """One meter in one recording.

    Attributes
    ----------
    key : str
        Unique in the recording and fit for a file name: the profile's name, with ``-2``, ``-3``
        added when the same profile is used more than once. Equals ``Block.source``.
    profile : str
        Name of the meter profile; :data:`IMPORTED` for columns of a trace.
    url : str
        The port as it was opened, or the imported file's name.
    channels : tuple of Channel
        In the order of the Block's columns.
    identity : Identity
    simulated : bool
        True for the virtual bench. Shown permanently on screen and in every export.
    typed : bool
        True when its readings are typed by hand. Shown wherever they are.
    usb_serial : str
        Serial number of the adapter or instrument on the USB; empty when it has none.
    time_u_s : float or None, seconds
        Standard uncertainty of its times against this computer's clock as far as known when it
        was connected; None when nothing is known. A ``timing`` event may say more later.
    skew_s, skew_u_s : float, seconds
        So much later than the others its times were found to be by a common step; already
        subtracted. And the standard uncertainty of that. 0 when never measured.
    """

    key: str
    profile: str
    url: str
    channels: tuple[Channel, ...]
    identity: Identity = Identity()
    simulated: bool = False
    typed: bool = False
    usb_serial: str = ""
    time_u_s: float | None = None
    skew_s: float = 0.0
    skew_u_s: float = 0.0

    def column(self, role: Role) -> int | None:
        """Give the column that plays ``role``, or None."""
        for index, channel in enumerate(self.channels):
            if channel.role is role:
                return index
        return None


def share_times(first: Instrument, second: Instrument) -> bool:
    """Tell whether both are columns of one imported trace, whose column of time is theirs.

    A recording is made of one trace at most; a meter's times have an uncertainty of their own.
    """
    return all(one.profile == IMPORTED and one.time_u_s is None for one in (first, second))


def channel_of(instruments: Iterable[Instrument], role: Role) -> Channel | None:
    """Give the first channel that plays ``role``, or None."""
    for instrument in instruments:
        index = instrument.column(role)
        if index is not None:
            return instrument.channels[index]
    return None
