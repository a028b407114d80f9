"""Rounding: a value written to the place that its uncertainty reaches."""

from __future__ import annotations

import math

_FINER = 6


def places_for(uncertainty: float) -> int:
    """Give how many decimals show ``uncertainty`` with two significant digits, 0 to 9."""
    if uncertainty <= 0.0 or not math.isfinite(uncertainty):
        return 3
    places = 1 - math.floor(math.log10(uncertainty))
    if round(uncertainty, places) >= 10.0 ** (2 - places):  # 0.0996 becomes 0.10
        places -= 1
    return min(max(places, 0), 9)


def with_uncertainty(value: float, uncertainty: float | None, unit: str) -> str:
    """Write ``value ± uncertainty unit``.

    Parameters
    ----------
    value : float, in ``unit``
    uncertainty : float or None, in ``unit``
        Shown with two significant digits, the value to the same place. None: the value alone,
        with three decimals.
    unit : str

    Source
    ------
    JCGM 100:2008, 7.2.6. Two digits lower an uncertainty by less than the 5 % from which on EA-4/02
    M:2022, 6.3, wants it rounded up.
    """
    if uncertainty is None:
        return f"{value:.3f} {unit}"
    if math.isfinite(uncertainty) and uncertainty >= 99.5:
        tens = 1 - math.floor(math.log10(round(uncertainty)))
        return f"{round(value, tens) + 0.0:.0f} ± {round(uncertainty, tens):.0f} {unit}"
    places = places_for(uncertainty)
    # In two turns: a value half-way between two shown ones must not fall to one or the other by the
    # last bit of a mean, which depends on how the readings came in.
    shown = round(round(value, places + _FINER), places) + 0.0  # no negative zero
    return f"{shown:.{places}f} ± {uncertainty:.{places}f} {unit}"
