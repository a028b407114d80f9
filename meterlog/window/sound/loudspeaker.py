"""Loudspeaker: the way from samples to the computer's sound, or why there is none."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Protocol

import numpy as np
from numpy.typing import NDArray

from meterlog.window.words import say

if TYPE_CHECKING:
    from PySide6.QtCore import QObject

AHEAD_S = 0.05
"""So much sound is made ahead: it is the delay between a reading and its tone."""
Samples = Callable[[int], NDArray[np.float64]]


class Speaker(Protocol):
    """What plays samples."""

    def close(self) -> None:
        """Fall silent for good."""


class NoSound(Exception):
    """There is no way to make a sound; the text says why and what to do."""


def pcm(samples: NDArray[np.float64]) -> bytes:
    """Give samples between -1 and 1 as 16-bit little-endian PCM."""
    return (np.clip(samples, -1.0, 1.0) * 32_767).astype("<i2").tobytes()


def open_loudspeaker(samples: Samples, parent: QObject) -> Speaker:
    """Begin to play what ``samples`` gives.

    Parameters
    ----------
    samples : callable
        Gives so many next samples; called in the thread of ``parent``.
    parent : QObject

    Raises
    ------
    NoSound
        If QtMultimedia is not installed or there is no device for sound.
    """
    try:
        from meterlog.window.sound.qt_loudspeaker import QtLoudspeaker
    except ImportError as error:
        raise NoSound(
            say(
                "no sound: {error}; install Qt's multimedia part with"
                ' "pip install meterlog[sound]", on Linux also the system\'s libpulse0',
                error=error,
            )
        ) from error
    return QtLoudspeaker(samples, parent)
