"""Tone: a sound whose pitch follows a reading, made sample by sample. No Qt, no device."""

from __future__ import annotations

import math
import threading

import numpy as np
from numpy.typing import NDArray

from meterlog.window.sound.cues import Cue, cue_samples

RATE = 48_000
"""Samples per second."""
LOW_HZ, OCTAVES = 300.0, 2.0
"""Pitch of next to nothing, and how far it rises up to the full value: the same ratio of readings
is the same interval everywhere, as the ear hears it."""
FADE_S = 0.008
"""The tone swells and fades within this time: no click, and far below what an ear tells apart."""
_FADE = FADE_S * RATE
_MOST = 1.25
"""A reading so many times the full one still raises the pitch."""
_WIDEST_HZ = LOW_HZ * (math.exp2(OCTAVES * _MOST) - 1.0)
_TONE_SHARE = 0.5
"""Loudness of the tone beside that of a cue."""


class Tone:
    """Makes samples. Values come from the window's thread, samples go to that of the sound.

    Parameters
    ----------
    full : float
        The reading of the highest pitch.
    least : float
        Below this size there is silence: nothing flows.
    """

    def __init__(self, full: float = 20.0, least: float = 0.3) -> None:
        self._lock = threading.Lock()
        self._full, self._least = full, least
        self._value = math.nan
        self._volume = 0.5
        self._phase = 0.0
        self._level = 0.0
        self._hertz = LOW_HZ
        self._cue = np.empty(0)

    def scale(self, full: float, least: float) -> None:
        """Take other ends of the scale."""
        with self._lock:
            self._full, self._least = full, least

    def follow(self, value: float) -> None:
        """Take the newest reading; NaN where there is none: then the tone is silent."""
        with self._lock:
            self._value = value

    def set_volume(self, volume: float) -> None:
        """Take a loudness, 0 to 1."""
        with self._lock:
            self._volume = min(max(volume, 0.0), 1.0)

    def play(self, cue: Cue) -> None:
        """Play a cue over the tone, in the place of one that is being played."""
        samples = cue_samples(cue, RATE)
        with self._lock:
            self._cue = samples

    def pitch(self, value: float) -> float:
        """Give the pitch of a reading in Hz; 0 for silence."""
        if not math.isfinite(value) or abs(value) < self._least:
            return 0.0
        part = min(abs(value) / self._full, _MOST)
        return LOW_HZ * math.exp2(OCTAVES * part)

    def samples(self, count: int) -> NDArray[np.float64]:
        """Give the next samples, between -1 and 1, shape (count,)."""
        with self._lock:
            wanted = self.pitch(self._value)
            cue, self._cue = self._cue[:count], self._cue[count:]
            # While a cue sounds the tone makes room for it.
            aim = 0.0 if not wanted or len(cue) else _TONE_SHARE
            volume = self._volume
        if not count:
            return np.empty(0)
        level = _towards(self._level, aim, _TONE_SHARE / _FADE, count)
        hertz = _towards(self._hertz, wanted or self._hertz, _WIDEST_HZ / _FADE, count)
        phase = self._phase + np.cumsum(hertz) * (2.0 * math.pi / RATE)
        self._level, self._hertz = float(level[-1]), float(hertz[-1])
        self._phase = float(phase[-1] % (2.0 * math.pi))
        sound = np.sin(phase) * level
        sound[: len(cue)] += cue
        # By its square: an ear hears half the way as half as loud, roughly.
        made: NDArray[np.float64] = sound * volume**2
        return made


def _towards(now: float, aim: float, step: float, count: int) -> NDArray[np.float64]:
    """Go from ``now`` to ``aim`` by at most ``step`` a sample; shape (count,)."""
    reach = np.arange(1, count + 1) * step
    made: NDArray[np.float64] = np.clip(aim, now - reach, now + reach)
    return made
