"""Speed step: which numbers can be commanded, marked, limited and read back."""

from __future__ import annotations

FASTEST_STEP = 999
"""No controller has as many. A number without end would be a column, a band, a test each."""
_MOST_DIGITS = len(str(FASTEST_STEP))


def is_speed_step(text: str) -> bool:
    """Tell whether a text is a speed step: 0 for off, or up to :data:`FASTEST_STEP`.

    Digits of other scripts are none: what is written must be read back by other programs.
    """
    return text.isascii() and text.isdecimal() and len(text) <= _MOST_DIGITS
