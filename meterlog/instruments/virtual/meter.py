"""MeterModel: what a meter of a given profile shows of a physical value."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.instruments.virtual.probe import pick, place
from meterlog.instruments.virtual.scenario import dice
from meterlog.model import Channel, Quantity
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


def resolution(channel: Channel) -> float:
    """Give the last digit's worth, in the channel's unit; 1 mV or 1 mA where it isn't stated."""
    accuracy = channel.accuracy
    return accuracy.resolution if accuracy is not None and accuracy.resolution > 0 else 1e-3


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

    Raises
    ------
    UsageError
        If the probes do not fit.
    """

    def __init__(
        self, profile: MeterProfile, name: str, seed: int, probes: Mapping[str, str] | None = None
    ) -> None:
        self.profile = profile
        self.points = place(profile.channels, probes or {})
        channels = profile.channels
        self.interval_s = channels[0].interval_s
        self.integration_s = min(channels[0].integration_s, self.interval_s)
        self._rng = dice(f"{name}/{profile.name}", seed, 3)
        self._scale = np.array([channel.scale for channel in channels])
        self._offset = np.array([channel.offset for channel in channels])
        self._digit = np.array([resolution(channel) for channel in channels])
        floors = np.array([c.accuracy.floor if c.accuracy else 0.0 for c in channels])
        percents = np.array(
            [c.accuracy.percent_of_reading if c.accuracy else 0.0 for c in channels]
        )
        half = 0.5 * self._rng.uniform(-1.0, 1.0, (2, len(channels)))
        self._gain = 1.0 + half[0] * percents / 100.0
        self._zero = half[1] * floors
        self._noise = 0.7 * self._digit + 0.1 * floors
        self._range = np.array([RANGES[channel.quantity] for channel in channels])

    def set_range(self, quantity: Quantity, top: float) -> None:
        """Set the range of all channels of ``quantity``: overload is above 1.2 times ``top``."""
        for index, channel in enumerate(self.profile.channels):
            if channel.quantity is quantity:
                self._range[index] = 1.2 * top

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
        """
        true = pick(means, self.points)
        noise = self._rng.standard_normal(true.shape) * self._noise
        value = true * self._gain + self._zero + noise
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
