"""Step: the figures of one stretch at one commanded speed."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Step:
    """One stretch at one commanded speed, with the statistics of its readings.

    Attributes
    ----------
    speed : int or None
        Commanded speed; None when nobody recorded it.
    start_ns, end_ns : int, nanoseconds since the recording's zero
    n : int
        Usable readings of the motor current in the step (of the voltage, where there is no
        current channel).
    mean_v, sd_v : float or None, volts
        Motor voltage: feed minus return where both are there, else the feed.
    mean_a, sd_a, median_a, min_a, max_a : float or None, amperes
        Motor current over all usable readings of the step, start-up and faults included.
    steady_n : int
    steady_mean_v, steady_mean_a, steady_sd_a : float or None
        The same over the readings outside the inrush window and outside dead or lost spans:
        what the motor draws when it runs.
    steady_expanded_a : float or None, amperes
        Expanded uncertainty (about 95 %) of ``steady_mean_a``.
    steady_coverage : float or None
        The coverage factor it was made with: 2, and more where readings are few.
    """

    speed: int | None
    start_ns: int
    end_ns: int
    n: int = 0
    mean_v: float | None = None
    sd_v: float | None = None
    mean_a: float | None = None
    sd_a: float | None = None
    median_a: float | None = None
    min_a: float | None = None
    max_a: float | None = None
    steady_n: int = 0
    steady_mean_v: float | None = None
    steady_mean_a: float | None = None
    steady_sd_a: float | None = None
    steady_expanded_a: float | None = None
    steady_coverage: float | None = None
