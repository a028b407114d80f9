"""Plausible: which speeds, bar counts and ripples a cabin fan's motor has, and what rates show."""

from __future__ import annotations

LOWEST_RATE_HZ = 5_000.0
"""Below this rate nothing is said of the ripple."""
LEAST_RIPPLE_HZ = 100.0
"""8 bars at 750 turns a minute. Common practice, no source: low speed 1000 to 1600 a minute."""
LOWEST_RPM, HIGHEST_RPM = 300.0, 5_000.0
"""Common practice, no source: high speed is 3000 to 4500 turns a minute."""
MOST_RIPPLE_HZ = 4_500.0 / 60.0 * 2.0 * 23.0
"""23 bars under two brushes at 4500 turns a minute: 3450 Hz."""
SAMPLES_PER_RIPPLE = 10.0
"""So many readings a ripple are comfortable. Common practice, no source."""
SAMPLES_PER_BAR = 5.0
"""With fewer readings than this to a bar, nothing is said of single bars."""
NEEDED_RATE_HZ = SAMPLES_PER_RIPPLE * MOST_RIPPLE_HZ
LEAST_TURNS = 20.0
"""Turns that are averaged at least before bars are told apart. Common practice, no source."""


def may_be_image(ripple_hz: float, rate_hz: float) -> bool:
    """Tell whether a line at ``ripple_hz`` may be the image of a faster, still plausible ripple.

    Source
    ------
    Aliasing: a line at f and one at rate - f give the same samples (sampling theorem; any textbook
    of signal processing).
    """
    return rate_hz - ripple_hz <= MOST_RIPPLE_HZ
