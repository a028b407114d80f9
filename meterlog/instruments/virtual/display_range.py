"""DisplayRange and AutoRange: where the point of a four-digit display stands, and when it moves."""

from __future__ import annotations

import dataclasses
import math
from dataclasses import dataclass

from meterlog.instruments.virtual.lcd_frame import DIGITS
from meterlog.model import Accuracy, Channel

_MOST = int("9" * DIGITS)
_FINEST = Accuracy(0.0, 0.0, 1e-3)
_BACK = 0.9
"""A meter goes to a narrower range only when the value fits in well, else it would go to and fro.
Common practice, no source."""


@dataclass(frozen=True, slots=True)
class DisplayRange:
    """One range as a display of four digits shows it.

    Attributes
    ----------
    top : float, unit of the channel
        The largest value.
    accuracy : Accuracy
        With the step of the display as its resolution.
    multiplier : str
        ``""``, ``m`` or ``u``.
    decimals : int
        Digits behind the point, 0 to 3.
    """

    top: float
    accuracy: Accuracy
    multiplier: str
    decimals: int

    @property
    def point(self) -> int:
        """After which digit the point stands; 0 for none."""
        return DIGITS - self.decimals if self.decimals else 0

    def number(self, raw: float) -> int:
        """Give the digits of a value in the display's unit, without point and sign."""
        times = {"": 1.0, "m": 1e3, "u": 1e6}[self.multiplier]
        return min(round(abs(raw) * times * 10.0**self.decimals), _MOST)


def display_range(top: float, accuracy: Accuracy, scale: float = 1.0) -> DisplayRange:
    """Give the way in which four digits show a range.

    Parameters
    ----------
    top : float, unit of the channel
    accuracy : Accuracy
    scale : float
        Unit of the channel per unit of the display.
    """
    step = (accuracy.resolution or _FINEST.resolution) / abs(scale)
    while top / abs(scale) / step > _MOST + 1:
        step *= 10.0
    decimals = max(0, math.ceil(-math.log10(step) - 1e-9))
    multiplier = ""
    for smaller in ("m", "u"):
        if decimals > DIGITS - 1:
            multiplier, decimals = smaller, max(0, decimals - 3)
    stepped = dataclasses.replace(accuracy, resolution=step * abs(scale))
    return DisplayRange(top, stepped, multiplier, min(decimals, DIGITS - 1))


def display_ranges(channel: Channel, counts: int, usual_top: float) -> tuple[DisplayRange, ...]:
    """Give the ranges of a channel, from the narrowest.

    Parameters
    ----------
    channel : Channel
    counts : int
        What the display shows at most; tells the range where the profile states none.
    usual_top : float, unit of the channel
        For a profile that says neither.
    """
    if channel.ranges:
        return tuple(display_range(r.top, r.accuracy, channel.scale) for r in channel.ranges)
    accuracy = channel.accuracy or _FINEST
    top = counts * accuracy.resolution or usual_top
    return (display_range(top, accuracy, channel.scale),)


class AutoRange:
    """Chooses the range that a value needs, until somebody presses the range key.

    Parameters
    ----------
    ranges : tuple of DisplayRange
        From the narrowest.
    """

    def __init__(self, ranges: tuple[DisplayRange, ...]) -> None:
        self._ranges = ranges
        self._at = len(ranges) - 1
        self.automatic = True

    @property
    def now(self) -> DisplayRange:
        """The range the meter is on."""
        return self._ranges[self._at]

    def fit(self, value: float) -> bool:
        """Go to the range that ``value`` needs; True when that is another one."""
        if not self.automatic:
            return False
        before = self._at
        while self._at < len(self._ranges) - 1 and abs(value) > self.now.top:
            self._at += 1
        while self._at and abs(value) < _BACK * self._ranges[self._at - 1].top:
            self._at -= 1
        return self._at != before

    def press(self) -> None:
        """Press the range key: the first time it stays where it is, then goes to the next."""
        if self.automatic:
            self.automatic = False
        else:
            self._at = (self._at + 1) % len(self._ranges)
