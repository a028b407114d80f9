"""Reading distance: how high digits must be to be read from across the vehicle."""

from __future__ import annotations

import math

from PySide6.QtGui import QScreen

ARC_MINUTES = 22.0
DISTANCE_MM = 3000.0
FULL_SCREEN_MM = 40.0
"""Height of the digits at full screen: twice what :func:`cap_height_mm` asks for at 3 m, for eyes
that look from the side, past a steering wheel (common practice, no source)."""
_MM_PER_INCH = 25.4
_SANE = (50.0, 600.0)
"""Dots per inch; a screen that says otherwise does not know its size."""


def cap_height_mm(distance_mm: float = DISTANCE_MM, arc_minutes: float = ARC_MINUTES) -> float:
    """Give the height of a capital or digit that is read well at a distance.

    Parameters
    ----------
    distance_mm : float, mm
        From the eye to the screen.
    arc_minutes : float
        16 is the least, 20 to 22 is preferred.

    Source
    ------
    ISO 9241-303:2011, character height: 2 D tan(alpha / 2).
    """
    return 2.0 * distance_mm * math.tan(math.radians(arc_minutes / 60.0) / 2.0)


def pixels_per_mm(screen: QScreen | None) -> float:
    """Give how many (device independent) pixels a millimetre of a screen has."""
    dots = 96.0
    if screen is not None:
        told = (screen.physicalDotsPerInchY(), screen.logicalDotsPerInchY())
        dots = next((one for one in told if _SANE[0] <= one <= _SANE[1]), dots)
    return dots / _MM_PER_INCH
