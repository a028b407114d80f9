"""PeakWords: the peak of a start, as it is written wherever it is told."""

from __future__ import annotations

from meterlog.analysis.rounding import with_uncertainty
from meterlog.model import StartUp


def why_low(one: StartUp) -> str:
    """Say why the true peak was higher than what was read."""
    if one.peak_over:
        return "the meter showed an overload meanwhile: the true peak is higher than its range goes"
    if one.peak_cut:
        return (
            "the readings stand at this value, as at the end of the range of the meter or the"
            " clamp, or at a limit of the controller: the true peak may be higher"
        )
    if one.peak_past:
        return (
            "this is more than the meter or the clamp is stated for, and mostly too low: the true"
            " peak may be higher"
        )
    return "the readings are too slow or averaged to show the true peak"


def peak_words(one: StartUp) -> str:
    """Write a peak with its uncertainty; to a tenth of an ampere where that is not known."""
    if one.peak_u_a is None:
        return f"{one.peak_a:.1f} A (uncertainty not known)"
    return with_uncertainty(one.peak_a, one.peak_u_a, "A")
