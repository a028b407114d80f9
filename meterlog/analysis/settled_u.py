"""SettledU: the standard uncertainty of a settled value, by statement and scatter."""

from __future__ import annotations

from dataclasses import dataclass

from meterlog.analysis.budgets import budget
from meterlog.analysis.budgets.reading_lines import lacking_of, reading_lines
from meterlog.analysis.budgets.scatter import scatter_lines
from meterlog.analysis.settled_value import Settled
from meterlog.analysis.stated_channel import StatedChannel
from meterlog.model import Quantity
from meterlog.model.stated_reading import usual_accuracy


@dataclass(frozen=True, slots=True)
class SettledU:
    """How well a settled value is known.

    Attributes
    ----------
    standard_u : float, unit of the channel
    shared_u : float, same unit
        The part that is the gain's: one error with all that the same channel reads.
    basis : str
        What it was made of, in words.
    """

    standard_u: float
    shared_u: float
    basis: str


def settled_u(home: StatedChannel, settled: Settled, ambient_c: float | None = None) -> SettledU:
    """Give the standard uncertainty of a settled value.

    Parameters
    ----------
    home : StatedChannel
        That has followed the events so far.
    settled : Settled
    ambient_c : float or None, °C

    Source
    ------
    As :func:`~meterlog.analysis.budgets.reading_lines.reading_lines`; where the meter's accuracy is
    not stated, that of a usual one (:mod:`meterlog.model.stated_reading`).
    """
    unit, value = home.channel.unit, settled.value
    stated = home.at(value, settled.start_ns, settled.end_ns)
    tag = f"at {settled.end_ns}"
    (own,) = scatter_lines([(settled.scatter, unit)], None, f"settled {home.key} {tag}")
    told = f"mean of {settled.scatter.n} readings"
    if stated.meter is None:
        usual = usual_accuracy(clamp=home.channel.quantity is Quantity.CURRENT)
        whole, gain = usual.standard_u(value)
        scatter = settled.scatter.u
        return SettledU((whole**2 + scatter**2) ** 0.5, gain, f"{told}; {usual.basis}")
    lines = reading_lines(home, stated, value, tag, ambient_c)
    made = budget("settled value", value, unit, [*lines, *own])
    gains = [line for line in lines if ":gain " in line.key]
    gain = sum((line.standard_u * line.sensitivity) ** 2 for line in gains) ** 0.5
    lacking = lacking_of(home, stated, value, ambient_c)
    left_out = f"; not in: {'; '.join(lacking)}" if lacking else ""
    return SettledU(made.combined_u, gain, f"{told}; {stated.meter.basis}{left_out}")
