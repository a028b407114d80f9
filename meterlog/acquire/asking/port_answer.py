"""PortAnswer: what was found at one port that was asked."""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from enum import StrEnum

from meterlog.instruments import Readings
from meterlog.model import UNUSABLE, Channel, Flag, Identity


class Outcome(StrEnum):
    """What came of asking a port."""

    FITS = "fits"
    """At least one profile fits what answers."""
    UNKNOWN = "unknown"
    """Something answers, but no profile fits it."""
    GARBLED = "garbled"
    """Bytes come that nothing understands."""
    SILENT = "silent"
    CLOSED = "closed"
    """The port could not be opened, or went away."""
    STOPPED = "stopped"
    """The user stopped it before it was known."""


@dataclass(frozen=True, slots=True)
class LiveValue:
    """One value of a reading taken while asking.

    Attributes
    ----------
    channel : str
    value : float or None, volts or amperes by the profile
        None where there is no value.
    unit : str
    words : str
        Such as ``12.431 V``, ``overload`` or ``no value``.
    """

    channel: str
    value: float | None
    unit: str
    words: str


@dataclass(frozen=True, slots=True)
class Fit:
    """A profile that fits what answers at a port.

    Attributes
    ----------
    profile : str
        Its name.
    title : str
    why : str
        By what it was told, such as ``lines of 3 columns``.
    values : tuple of LiveValue
        One reading; empty when none could be had without changing the instrument.
    note : str
        What the user has to know or do before it can be used; empty for nothing.
    """

    profile: str
    title: str
    why: str
    values: tuple[LiveValue, ...] = ()
    note: str = ""

    @property
    def words(self) -> str:
        """The reading on one line; empty when there is none."""
        return ", ".join(value.words for value in self.values)


@dataclass(frozen=True, slots=True)
class PortAnswer:
    """What was found at one port.

    Attributes
    ----------
    port : str
        As it is opened.
    outcome : Outcome
    fits : tuple of Fit
        The best first; several when they can't be told apart.
    identity : Identity
        Who the instrument says it is.
    simulated : bool
        It says that it is a virtual one.
    reason : str
        Why nothing fits and what to do; empty when something does.
    tried : tuple of str
        Line settings at which was listened or asked; empty where there is no serial wire.
    took_s : float, seconds
    """

    port: str
    outcome: Outcome
    fits: tuple[Fit, ...] = ()
    identity: Identity = field(default_factory=Identity)
    simulated: bool = False
    reason: str = ""
    tried: tuple[str, ...] = ()
    took_s: float = 0.0

    @property
    def who(self) -> str:
        """Maker, model and serial number as the instrument says them; empty when it does not."""
        fields = (self.identity.maker, self.identity.model, self.identity.serial)
        return " ".join(field for field in fields if field)


def live_values(channels: tuple[Channel, ...], readings: Readings) -> tuple[LiveValue, ...]:
    """Give the last row of ``readings`` in volts and amperes; empty when there is none."""
    if not len(readings):
        return ()
    return tuple(
        _live_value(channel, float(raw), int(flags))
        for channel, raw, flags in zip(
            channels, readings.values[-1], readings.flags[-1], strict=True
        )
    )


def _live_value(channel: Channel, raw: float, flags: int) -> LiveValue:
    value = raw * channel.scale - channel.offset
    if flags & int(Flag.OVERLOAD):
        return LiveValue(channel.name, None, channel.unit, "overload")
    if flags & int(UNUSABLE) or not math.isfinite(value):
        return LiveValue(channel.name, None, channel.unit, "no value")
    words = f"{value:.{_decimals(channel, value)}f} {channel.unit}"
    return LiveValue(channel.name, value, channel.unit, words)


def _decimals(channel: Channel, value: float) -> int:
    """Give how many decimals the meter itself shows; four digits when nobody has said."""
    accuracy = channel.accuracy_at(value)
    step = accuracy.resolution if accuracy is not None and accuracy.resolution > 0 else 0.0
    if not step:
        step = 10.0 ** (math.floor(math.log10(abs(value))) - 3) if value else 0.001
    return max(0, min(9, math.ceil(-math.log10(step) - 1e-9)))
