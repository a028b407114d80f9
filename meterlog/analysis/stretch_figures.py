"""StretchFigures: what each channel read between two instants of one's own choice, with U."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np

from meterlog.analysis.budgets import Scatter, budget
from meterlog.analysis.budgets.reading_lines import lacking_of, reading_lines
from meterlog.analysis.budgets.scatter import scatter_lines
from meterlog.analysis.moments import Moments
from meterlog.analysis.stated_channel import StatedChannel
from meterlog.model import Block, Budget, Event, Instrument, Role


@dataclass(frozen=True, slots=True)
class StretchFigure:
    """One channel over the stretch. Without a usable reading all but the first five is None.

    Attributes
    ----------
    source : str
        Instrument and channel.
    role : Role
    unit : str
    n : int
        Usable readings.
    left_out : int
        Readings flagged as unusable (overload, no data).
    mean : Budget or None
        With its expanded uncertainty.
    median, sd, low, high : float or None, in ``unit``
        ``median`` is None beyond :data:`~meterlog.analysis.moments.MEDIAN_LIMIT` readings; ``sd``
        below two.
    """

    source: str
    role: Role
    unit: str
    n: int
    left_out: int
    mean: Budget | None = None
    median: float | None = None
    sd: float | None = None
    low: float | None = None
    high: float | None = None


@dataclass(slots=True)
class _Channel:
    home: StatedChannel
    moments: Moments = field(default_factory=Moments)
    left_out: int = 0
    first_ns: int = 0
    last_ns: int = 0


class StretchFigures:
    """Takes the readings of a stretch in pieces of any size; the figures are the same.

    Parameters
    ----------
    instruments : sequence of Instrument
    ambient_c : float or None, °C
    """

    def __init__(self, instruments: Sequence[Instrument], ambient_c: float | None = None) -> None:
        self._ambient_c = ambient_c
        self._channels = [
            _Channel(StatedChannel(instrument, column))
            for instrument in instruments
            for column in range(len(instrument.channels))
        ]

    def take_event(self, event: Event) -> None:
        """Take the next event from the beginning of the recording on: ranges and zeros."""
        for one in self._channels:
            one.home.take(event)

    def take(self, block: Block) -> None:
        """Take readings; those outside the stretch must have been left out."""
        for one in self._channels:
            if one.home.key != block.source or not len(block):
                continue
            values = block.values[:, one.home.column]
            usable = np.isfinite(values)
            count = int(usable.sum())
            one.left_out += len(block) - count
            if not count:
                continue
            if not one.moments.n:
                one.first_ns = int(block.t_ns[usable][0])
            one.last_ns = int(block.t_ns[usable][-1])
            one.moments.add(values[usable])

    def figures(self) -> tuple[StretchFigure, ...]:
        """Give the figures of all channels, in their order.

        Source
        ------
        Mean and scatter: JCGM 100:2008, 4.2; with the effective number of readings by their
        autocorrelation as for the steps (:mod:`meterlog.analysis.budgets`).
        """
        return tuple(self._figure(one) for one in self._channels)

    def _figure(self, one: _Channel) -> StretchFigure:
        channel, moments = one.home.channel, one.moments
        name = f"{one.home.key}.{channel.name}"
        plain = StretchFigure(name, channel.role, channel.unit, moments.n, one.left_out)
        mean = moments.mean
        if mean is None:
            return plain
        scatter = Scatter(moments.n, moments.sd, moments.lag1)
        stated = one.home.at(mean, one.first_ns, one.last_ns)
        tag = f"{one.first_ns} to {one.last_ns}"
        (own,) = scatter_lines([(scatter, channel.unit)], None, f"stretch {name} {tag}")
        lines = reading_lines(one.home, stated, mean, tag, self._ambient_c)
        lacking = "; ".join(lacking_of(one.home, stated, mean, self._ambient_c))
        return StretchFigure(
            source=name,
            role=channel.role,
            unit=channel.unit,
            n=moments.n,
            left_out=one.left_out,
            mean=budget(f"mean of {name}", mean, channel.unit, [*lines, *own], lacking),
            median=moments.median,
            sd=moments.sd,
            low=moments.low,
            high=moments.high,
        )
