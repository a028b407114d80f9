"""MeterModel: what a meter of a given profile shows of a physical value."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.instruments.virtual.probe import is_clamped, pick, place
from meterlog.instruments.virtual.scenario import dice
from meterlog.model import Accuracy, Channel, Quantity
from meterlog.model.errors import UsageError
from meterlog.profile import MeterProfile

RANGES = {Quantity.VOLTAGE: 60.0, Quantity.CURRENT: 100.0}
"""Ranges that fit a 12 or 24 V circuit, where nobody sets another. Common practice, no source."""


@dataclass(frozen=True, slots=True)
class Shown:
    """What a meter shows.

    Attributes
    ----------
    raw : ndarray, float64, shape (n, channels), raw units
        As they go over the line; NaN where overloaded.
    overload : ndarray, bool, shape (n, channels)
        With the sign of the value kept in ``negative``.
    negative : ndarray, bool, shape (n, channels)
    """

    raw: NDArray[np.float64]
    overload: NDArray[np.bool_]
    negative: NDArray[np.bool_]


def _digit(accuracy: Accuracy | None) -> float:
    return accuracy.resolution if accuracy is not None and accuracy.resolution > 0 else 1e-3


def resolution(channel: Channel) -> float:
    """Give the last digit's worth, in the channel's unit; 1 mV or 1 mA where it isn't stated.

    That of the narrowest range where there are several.
    """
    ranges = channel.ranges
    return min((_digit(one.accuracy) for one in ranges), default=_digit(channel.accuracy))


def decimals(channel: Channel) -> int:
    """Give the number of decimals with which the raw value is written."""
    return max(0, math.ceil(-math.log10(resolution(channel) / abs(channel.scale)) - 1e-9))


class MeterModel:
    """One specimen of a meter: its errors stay within what the profile states.

    Each channel has a gain and a zero of its own, at most half of what the accuracy allows; a
    reading adds noise of about one digit, is rounded to the last digit, and overloads beyond the
    range.

    Parameters
    ----------
    profile : MeterProfile
    name : str
        The scenario's, which with ``seed`` decides all errors.
    seed : int
    probes : mapping of channel name to point
        See :func:`meterlog.instruments.virtual.probe.place`.
    key : str
        Name of this specimen on its bench; empty for the profile's.

    Attributes
    ----------
    held : bool
        Whether the display is held.

    Raises
    ------
    UsageError
        If the probes do not fit.
    """

    def __init__(
        self,
        profile: MeterProfile,
        name: str,
        seed: int,
        probes: Mapping[str, str] | None = None,
        key: str = "",
    ) -> None:
        self.profile = profile
        self.key = key or profile.name
        self.points = place(profile.channels, probes or {})
        channels = profile.channels
        self.interval_s = channels[0].interval_s
        self.integration_s = min(channels[0].integration_s, self.interval_s)
        self.held = False
        self._rng = dice(f"{name}/{self.key}", seed, 3)
        self._scale = np.array([channel.scale for channel in channels])
        self._offset = np.array([channel.offset for channel in channels])
        self._half = 0.5 * self._rng.uniform(-1.0, 1.0, (2, len(channels)))
        self._clamped = np.array([is_clamped(point) for point in self.points])
        self._clamp_dead = False
        self._digit, self._gain, self._zero, self._noise, self._range = np.zeros((5, len(channels)))
        self._last: NDArray[np.float64] | None = None
        self.restore()

    def restore(self) -> None:
        """Set the ranges that suit a fan circuit."""
        for quantity, top in RANGES.items():
            self._fit(quantity, top, top)

    def set_range(self, quantity: Quantity, top: float) -> None:
        """Set the range of all channels of ``quantity``: overload is above 1.2 times ``top``.

        Where the profile states ranges, the narrowest that has ``top``, or else the widest, is
        taken as it is.
        """
        self._fit(quantity, top, 1.2 * top)

    def _fit(self, quantity: Quantity, top: float, limit: float) -> None:
        for index, channel in enumerate(self.profile.channels):
            if channel.quantity is not quantity:
                continue
            if not channel.ranges:
                self.use(index, channel.accuracy, limit)
                continue
            wide = [one for one in channel.ranges if one.top >= top] or [channel.ranges[-1]]
            self.use(index, wide[0].accuracy, wide[0].top)

    def use(self, index: int, accuracy: Accuracy | None, limit: float) -> None:
        """Put one channel on a range.

        Parameters
        ----------
        index : int
            Of the channel.
        accuracy : Accuracy or None
        limit : float, unit of the channel
            Beyond it there is overload.
        """
        floor = accuracy.floor if accuracy else 0.0
        percent = accuracy.percent_of_reading if accuracy else 0.0
        self._digit[index] = _digit(accuracy)
        self._gain[index] = 1.0 + self._half[0, index] * percent / 100.0
        self._zero[index] = self._half[1, index] * floor
        self._noise[index] = 0.7 * self._digit[index] + 0.1 * floor
        self._range[index] = limit

    def hold(self, *, on: bool) -> None:
        """Press the key that keeps the display as it is, or press it again."""
        self.held = on

    def kill_clamp(self, *, on: bool) -> None:
        """Let the clamp's battery die, or put in a new one.

        A dead clamp gives a quiet zero: no current and no noise of one.

        Raises
        ------
        UsageError
            If no channel is read through a clamp.
        """
        if not self._clamped.any():
            raise UsageError(
                "has no channel that reads a current.",
                subject=self.key,
                remedy="Connect one with --probe, or choose another meter.",
            )
        self._clamp_dead = on

    def true(self, means: NDArray[np.float64]) -> NDArray[np.float64]:
        """Give what is at the meter's inputs, shape (n, channels), units of the channels.

        Parameters
        ----------
        means : ndarray, shape (n, 5), volts and amperes
            As :meth:`show` takes them.
        """
        there = pick(means, self.points)
        if self._clamp_dead:
            there[:, self._clamped] = 0.0
        return there

    def show(self, means: NDArray[np.float64]) -> Shown:
        """Give what the meter shows.

        Parameters
        ----------
        means : ndarray, shape (n, 5), volts and amperes
            The physical values, averaged over the meter's integration time, columns as in a
            step's ``Points``.

        Returns
        -------
        Shown
            The noise is drawn row by row: however the rows are cut, they come out the same.
            While the display is held, the last row before over and over.
        """
        true = self.true(means)
        noise = self._rng.standard_normal(true.shape) * self._noise
        if self._clamp_dead:
            noise[:, self._clamped] = 0.0
        value = true * self._gain + self._zero + noise
        if self.held:
            held = value[:1] if self._last is None else self._last
            value = np.repeat(held, len(value), axis=0)
        if len(value):
            self._last = value[-1:]
        overload = np.abs(value) > self._range
        raw = (value + self._offset) / self._scale
        digit = self._digit / np.abs(self._scale)
        # Adding zero turns -0.0, which no meter shows, into 0.0.
        raw = np.round(raw / digit) * digit + 0.0
        return Shown(np.where(overload, np.nan, raw), overload, value * self._scale < 0.0)

    def channel_values(self, shown: Shown) -> NDArray[np.float64]:
        """Give the shown values scaled and zeroed as a reader of the profile does."""
        values: NDArray[np.float64] = shown.raw * self._scale - self._offset
        return values
