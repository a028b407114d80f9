"""How well an instrument's times are known before a single reading has come."""

from __future__ import annotations

import math

from meterlog.acquire.times.stamping import Sending

ADAPTER_S = 0.016
"""A USB serial adapter hands over what it has after so long. Typical, from memory."""
COMPUTER_S = 0.002
"""A computer's own hesitation where there is no adapter. Our own figure."""


def time_uncertainty_s(sending: Sending) -> float | None:
    """Give the standard uncertainty of an instrument's times against this computer's clock.

    Three parts, each only bounded, so rectangular about nothing with these half-widths:

    - between the end of a measurement and its sending lies an unknown part of an interval: half
      an interval (half a sample for a sample clock);
    - where the integration time is not stated, its middle lies anywhere in the interval: again
      half of one;
    - port and computer: :data:`ADAPTER_S` on a serial wire, else :data:`COMPUTER_S`.

    Times on the wire and a stated integration time are corrected for and add nothing. A skew that
    was measured (``Instrument.skew_u_s``) says more than all this, between the two it was
    measured with.

    Returns
    -------
    float or None, seconds
        None for readings that are typed: nobody knows how fast the hand is.

    Source
    ------
    JCGM 100:2008, 4.3.7 (rectangular: a / sqrt(3)) and 5.1.2 (sum of squares). The half-widths
    are our own.
    """
    if sending.typed:
        return None
    half_s = sending.interval_s / 2.0
    halves = [sending.sample_s / 2.0 if sending.sample_s else half_s]
    if not sending.integration_s and not sending.sample_s:
        halves.append(half_s)
    halves.append(ADAPTER_S if sending.byte_s else COMPUTER_S)
    return math.sqrt(sum(half * half for half in halves) / 3.0)
