"""Accuracy and Range: what the maker says about a meter's readings."""

from __future__ import annotations

from dataclasses import dataclass, replace


@dataclass(frozen=True, slots=True)
class Accuracy:
    """The maker's accuracy statement: ±(percent of reading + digits x resolution + floor).

    Attributes
    ----------
    percent_of_reading : float, percent
    digits : float, counts of the last digit
    resolution : float, unit of the channel per count
    floor : float, unit of the channel
        A fixed part, such as a clamp's zero uncertainty.
    basis : str
        Where the figures come from (data sheet and page, or "typical, from memory").
    per_kelvin : float, fraction of the whole statement per kelvin
        Temperature coefficient: what is added for each kelvin outside ``low_c`` to ``high_c``;
        0.1 where the data sheet says "0.1 x (specified accuracy) per °C".
    low_c, high_c : float, °C
        The temperatures between which the statement holds as it is.
    """

    percent_of_reading: float
    digits: float
    resolution: float
    floor: float = 0.0
    basis: str = ""
    per_kelvin: float = 0.0
    low_c: float = 18.0
    high_c: float = 28.0

    def half_width(self, value: float, ambient_c: float | None = None) -> float:
        """Give the half-width of the accuracy interval at ``value``, in the channel's unit.

        Parameters
        ----------
        value : float, unit of the channel
        ambient_c : float or None, °C
            None: taken to be within the statement's own temperatures.

        Source
        ------
        The form ±(% of reading + digits) of hand-held meters; used as the half-width of a
        rectangular distribution as in JCGM 100:2008, 4.3.7. The temperature coefficient as a
        share of the statement: common practice of data sheets, no source.
        """
        stated = (
            abs(value) * self.percent_of_reading / 100.0
            + self.digits * self.resolution
            + self.floor
        )
        if ambient_c is None:
            return stated
        outside = max(self.low_c - ambient_c, ambient_c - self.high_c, 0.0)
        return stated * (1.0 + self.per_kelvin * outside)

    def scaled(self, factor: float, basis: str) -> Accuracy:
        """Give the statement after every reading has been multiplied by ``factor``.

        Parameters
        ----------
        factor : float
            The sign does not matter.
        basis : str
            Added to the words that say where the figures come from; empty for nothing.
        """
        return replace(
            self,
            resolution=self.resolution * abs(factor),
            floor=self.floor * abs(factor),
            basis="; ".join(words for words in (self.basis, basis) if words),
        )


@dataclass(frozen=True, slots=True)
class Range:
    """One measuring range of a meter.

    Attributes
    ----------
    top : float, unit of the channel
        The largest value it shows.
    accuracy : Accuracy
        Within this range.
    """

    top: float
    accuracy: Accuracy

    def scaled(self, factor: float, basis: str) -> Range:
        """Give the range after every reading has been multiplied by ``factor``."""
        return Range(self.top * abs(factor), self.accuracy.scaled(factor, basis))
