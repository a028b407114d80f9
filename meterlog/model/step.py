"""Step: the figures of one stretch at one commanded speed."""

from __future__ import annotations

from dataclasses import dataclass

from meterlog.model.budget import Budget


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
        Motor current over all usable readings of the step, start-up and faults included. All with
        the sign they were read with: where the clamp is the other way round the largest current is
        ``min_a``.
    steady_n : int
    steady_mean_v, steady_mean_a, steady_sd_a : float or None
        The same over the readings outside the inrush window and outside dead or lost spans:
        what the motor draws when it runs.
    steady_max_a : float or None, amperes
        The largest of them by its size. That of ``max_a`` may be the start-up of the next step,
        which comes before its command where the hand was late.
    steady_expanded_a : float or None, amperes
        Expanded uncertainty (about 95 %) of ``steady_mean_a``.
    steady_coverage : float or None
        The coverage factor it was made with: 2, and more where readings are few.
    steady_lag1_a : float or None
        Lag-1 autocorrelation of the steady current.
    steady_volts_n : int
        Readings behind ``steady_mean_v``.
    steady_sd_v, steady_lag1_v : float or None
        Of the motor voltage.
    steady_correlation : float or None
        Between the readings of steady current and motor voltage that were taken at one instant;
        None where none were.
    steady_feed_v, steady_back_v, steady_battery_v, steady_command_v : float or None, volts
        Means of the single voltages, where they were read.
    edge_ns : int, nanoseconds
        So well is the start known: 0 for a recorded command.
    found : bool
        True where no command was recorded and the change was found in the current.
    proposed_speed : int or None
        For such a step: its rank by order of current, 0 for off; to be confirmed.
    current, voltage, power, ratio : Budget or None
        Steady motor current, motor voltage, their product (W) and quotient (ohm), each with what
        its uncertainty is made of; current and ratio by size, without sign.
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
    steady_lag1_a: float | None = None
    steady_volts_n: int = 0
    steady_sd_v: float | None = None
    steady_lag1_v: float | None = None
    steady_correlation: float | None = None
    steady_feed_v: float | None = None
    steady_back_v: float | None = None
    steady_battery_v: float | None = None
    steady_command_v: float | None = None
    edge_ns: int = 0
    found: bool = False
    proposed_speed: int | None = None
    steady_max_a: float | None = None
    current: Budget | None = None
    voltage: Budget | None = None
    power: Budget | None = None
    ratio: Budget | None = None
