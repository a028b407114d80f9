"""What silence, loss and return of an instrument are called, for a technician."""

from __future__ import annotations

from meterlog.acquire.talk import OpenPort
from meterlog.model import link_text
from meterlog.model.errors import LinkNotFound, MeterlogError
from meterlog.profile import MeterProfile


def silent_words(since: str, gap_s: float, profile: MeterProfile) -> str:
    """Say that nothing comes any more, and what is likely.

    Parameters
    ----------
    since : str
        Such as ``silent since 12.300 s``.
    gap_s : float, seconds
        Without a reading so far.
    profile : MeterProfile
        Knows whether the meter switches itself off.
    """
    words = f"{since}: no reading for {gap_s:.1f} s"
    if profile.power_off_s <= 0.0:
        return words
    cure = f": {profile.power_off_cure.rstrip('.')}" if profile.power_off_cure else ""
    after = _duration(profile.power_off_s)
    return f"{words} {link_text.SWITCHED_OFF} it does after {after}{cure})"


def open_again_words(port: OpenPort, before: str) -> str:
    """Say that the port is open again, and where, if that is elsewhere now."""
    if port.url == before:
        return link_text.OPEN_AGAIN
    return f"{link_text.OPEN_AGAIN}: it is {port.url} now"


def says_more_than_away(trouble: MeterlogError) -> bool:
    """Tell whether a port that can't be opened again is more than merely not there."""
    return not isinstance(trouble, LinkNotFound) or ";" in trouble.message


def _duration(seconds: float) -> str:
    return f"{seconds / 60.0:g} min" if seconds >= 60.0 else f"{seconds:g} s"
