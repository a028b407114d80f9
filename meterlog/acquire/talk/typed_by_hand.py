"""TypedByHand: the conversation with a person who types what a meter without a plug shows."""

from __future__ import annotations

import queue
from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from meterlog.acquire.choice import MeterChoice
from meterlog.acquire.clock import Clock
from meterlog.acquire.talk.conversation import Heard
from meterlog.instruments import Readings
from meterlog.instruments.readings import no_readings
from meterlog.model import Flag, Identity

ADDRESS = "typed:"
"""What a port must begin with that is none."""


class _Typed(NamedTuple):
    at_ns: int
    values: tuple[float, ...]


class TypedByHand:
    """Takes readings from another thread; there is no link.

    Nobody types at a pace: silence says nothing, and a reading stands for the moment at which it
    was typed and, as the readings of other meters go on beside it, for three of the profile's
    intervals after that (:class:`meterlog.analysis.align.Aligner`). So the profile's
    ``interval_s`` says for how long a typed reading is believed, not how often one comes.

    Parameters
    ----------
    choice : MeterChoice
    clock : Clock
    """

    watched = False
    byte_s = 0.0
    port = None
    refused = 0
    last_refused = b""
    repeated = 0

    def __init__(self, choice: MeterChoice, clock: Clock) -> None:
        self.identity = Identity()
        self.simulated = False
        self._clock = clock
        self._width = len(choice.channels)
        self._typed: queue.SimpleQueue[_Typed] = queue.SimpleQueue()

    def type_in(self, values: Sequence[float]) -> int:
        """Take a reading as of now, from any thread.

        Parameters
        ----------
        values : sequence of float, raw units
            As the meter shows them, one a channel; finite.

        Returns
        -------
        int, nanoseconds since the recording's zero
            The time it is given.
        """
        at_ns = self._clock.now_ns()
        self._typed.put(_Typed(at_ns, tuple(values)))
        return at_ns

    def open(self) -> tuple[str, ...]:
        """Nothing to open."""
        return ()

    def reopen(self) -> tuple[str, ...]:
        """Nothing to open again."""
        return ()

    def begin(self) -> None:
        """Forget what was typed before now."""
        while not self._typed.empty():
            self._typed.get_nowait()

    def hear(self, wait_s: float) -> Heard:
        """Give what was typed, or is typed within ``wait_s``; the bytes are the numbers as text."""
        try:
            typed = self._typed.get(timeout=wait_s)
        except queue.Empty:
            return Heard(b"", self._clock.now_ns(), no_readings(self._width))
        values = np.array([typed.values], order="F")
        flags = np.full(values.shape, int(Flag.TYPED), np.uint8, order="F")
        text = " ".join(repr(value) for value in typed.values)
        return Heard(text.encode() + b"\n", typed.at_ns, Readings(values, flags))

    def close(self) -> None:
        """Nothing to close."""
