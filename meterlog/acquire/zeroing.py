"""Zeroing: a zero is taken while a recording runs, from readings that are recorded too."""

from __future__ import annotations

import threading
from dataclasses import dataclass, replace
from datetime import timedelta

import numpy as np
from numpy.typing import NDArray

from meterlog.acquire.clock import Clock
from meterlog.acquire.scaling import Scaling
from meterlog.model import UNUSABLE, Block, Channel, Event, EventKind, Flag, Quantity, Zero
from meterlog.model.zero_text import zero_text

FEWEST = 3
"""A scatter needs a few readings; a slow hand-held meter gives three in a second or two."""
MOST_OFFSET_A = 2.0
"""A clamp's zero wanders by some tenths of an ampere, by one where it gives 1 mV/A; the smallest
fan draws 2 A on low: more than this is a current. Common practice, no source."""
MOST_OFFSET_V = 0.2
"""Leads put together read millivolts. Common practice, no source."""
MOST_SHARE = 0.05
"""Of the meter's widest range: no working sensor is off by more. Common practice, no source."""
MOST_SCATTER = 0.25
"""Of the largest offset allowed, at least: a running fan's current ripples by more than an empty
clamp's noise, and starts and stops by far more. Common practice, no source."""
MOST_STEPS = 5.0
"""Or this many steps of the meter's last digit, where those are coarse."""


@dataclass(frozen=True, slots=True)
class ZeroBounds:
    """What may still be a zero, in the channel's unit.

    Attributes
    ----------
    offset : float
        Largest size of the mean.
    scatter : float
        Largest standard deviation of one reading.
    why : str
        What a larger mean likely is.
    """

    offset: float
    scatter: float
    why: str = "a current is flowing"

    @classmethod
    def of(cls, channel: Channel) -> ZeroBounds:
        """Give the bounds of a channel behind its sensor."""
        current = channel.quantity is Quantity.CURRENT
        most = MOST_OFFSET_A if current else MOST_OFFSET_V
        # Of the range that shows a zero: behind a clamp the widest range's digit is amperes.
        stated = channel.accuracy_at(0.0)
        step = stated.resolution if stated else 0.0
        scatter = max(MOST_SCATTER * most, MOST_STEPS * step)
        if channel.ranges:
            most = min(most, max(MOST_SHARE * channel.ranges[-1].top, MOST_STEPS * step))
        why = "a current is flowing" if current else "the leads are on something"
        return cls(most, scatter, why)


class ZeroTaking:
    """One zero being taken. The reader feeds it; whoever asked for it looks at it.

    Parameters
    ----------
    key : str
        Of the instrument.
    column : int
    channel : Channel
    seconds : float, seconds
        So long readings are gathered.
    bounds : ZeroBounds or None
        None: those of the channel.

    Attributes
    ----------
    zero : Zero or None
        Once it is taken; its offset is in all, not beside an earlier one.
    refused : str
        Why none was taken; empty otherwise.
    """

    def __init__(
        self,
        key: str,
        column: int,
        channel: Channel,
        seconds: float,
        bounds: ZeroBounds | None = None,
    ) -> None:
        self.key = key
        self.column = column
        self.channel = channel
        self.seconds = seconds
        self.bounds = bounds or ZeroBounds.of(channel)
        self.zero: Zero | None = None
        self.refused = ""
        self._done = threading.Event()

    @property
    def done(self) -> bool:
        """True once it was taken or refused."""
        return self._done.is_set()

    def wait(self, seconds: float) -> bool:
        """Wait until it is done, at most so long; tell whether it is."""
        return self._done.wait(seconds)

    def give_up(self, why: str) -> None:
        """Say that none was taken; does nothing once it is done."""
        if not self.done:
            self.refused = why
            self._done.set()

    def take(self, zero: Zero) -> None:
        """Say what was taken."""
        self.zero = zero
        self._done.set()

    def __str__(self) -> str:
        """Say how it went, in one sentence."""
        name = self.channel.role.value
        unit = self.channel.unit
        if self.zero is not None:
            zero = self.zero
            return (
                f"Zero of {name}: {zero.offset:.4g} {unit} are subtracted from now on (scatter"
                f" {zero.scatter:.2g} {unit}, {zero.count} readings)."
            )
        if self.done:
            return f"No zero of {name} was taken: {self.refused}"
        return f"Taking the zero of {name}: leave the clamp empty and shut for {self.seconds:g} s."


class Zeroing:
    """The reader's side: gathers what is asked for, and sets it between two blocks.

    Parameters
    ----------
    key : str
        Of the instrument.
    scaling : Scaling
    clock : Clock
    """

    def __init__(self, key: str, scaling: Scaling, clock: Clock) -> None:
        self._key = key
        self._scaling = scaling
        self._clock = clock
        self._asked: ZeroTaking | None = None
        self._until_ns: int | None = None
        self._values: list[NDArray[np.float64]] = []
        self._beyond = False

    def ask(self, taking: ZeroTaking) -> bool:
        """Ask for a zero from any thread; False while another is being taken."""
        if self._asked is not None:
            return False
        self._asked = taking
        return True

    def heard(self, block: Block) -> None:
        """Take the readings just put on the bus; on the reader's thread, as all that follows."""
        taking = self._asked
        if taking is None or self._until_ns is None:
            return
        flags = block.flags[:, taking.column]
        self._beyond |= bool((flags & int(Flag.OVERLOAD)).any())
        settled = (flags & int(UNUSABLE | Flag.RANGE_CHANGED)) == 0
        self._values.append(block.values[settled, taking.column])

    def tick(self) -> Event | None:
        """Look at the time.

        Returns
        -------
        Event or None
            The ``zero`` event, when one was taken just now; the next block has it subtracted.
        """
        taking = self._asked
        if taking is None:
            return None
        now_ns = self._clock.now_ns()
        if self._until_ns is None:
            self._until_ns = now_ns + round(taking.seconds * 1e9)
            self._values, self._beyond = [], False
            return None
        if now_ns < self._until_ns:
            return None
        event = self._decide(taking, now_ns)
        self._asked, self._until_ns = None, None
        return event

    def stop(self) -> None:
        """Give up: the reader ends."""
        if self._asked is not None:
            self._asked.give_up("the recording ended first.")

    def _decide(self, taking: ZeroTaking, now_ns: int) -> Event | None:
        values = np.concatenate([np.empty(0), *self._values])
        offset = self._scaling.offset(taking.column)
        refused = _refusal(values + offset, taking, beyond=self._beyond)
        if refused:
            taking.give_up(refused)
            return None
        # Nine digits: what a sum's last bits say is no measurement.
        mean = float(f"{float(values.mean()) + offset:.9g}")
        zero = Zero(
            mean,
            float(f"{float(values.std(ddof=1)):.9g}"),
            len(values),
            self._clock.started_utc + timedelta(microseconds=now_ns // 1000),
            _range_top(taking.channel, mean),
        )
        self._scaling.set_zero(taking.column, zero.offset)
        text = zero_text(taking.channel.name, taking.channel.unit, zero)
        taking.take(zero)
        return Event(now_ns, EventKind.ZERO, text, self._key)


def _refusal(values: NDArray[np.float64], taking: ZeroTaking, *, beyond: bool) -> str:
    unit, bounds = taking.channel.unit, taking.bounds
    if beyond:
        return "the meter shows an overload. Choose a wider range and take it again."
    if len(values) < FEWEST:
        return (
            f"{len(values)} readings in {taking.seconds:g} s, {FEWEST} are needed. Is the meter"
            " on, and sending?"
        )
    mean, scatter = float(values.mean()), float(values.std(ddof=1))
    if scatter > bounds.scatter:
        return (
            f"the readings move too much (scatter {scatter:.2g} {unit}, at most"
            f" {bounds.scatter:.2g} {unit}): is the fan running, or the clamp being moved? Leave"
            " it empty, shut and still."
        )
    if abs(mean) > bounds.offset:
        return (
            f"{mean:.3g} {unit} is no zero (at most {bounds.offset:.2g} {unit}): {bounds.why}."
            " Take the clamp off the wire and shut it, then take the zero again."
        )
    return ""


def _range_top(channel: Channel, value: float) -> float | None:
    """Give the narrowest range that shows ``value``: where a meter ranges by itself, this one."""
    for one in channel.ranges:
        if abs(value) <= one.top:
            return one.top
    return None


def bounds_when_asked(channel: Channel, speed: int, least_current_a: float) -> ZeroBounds:
    """Give the bounds while ``speed`` above 0 is commanded: a small current is none then."""
    bounds = ZeroBounds.of(channel)
    if not speed or channel.quantity is not Quantity.CURRENT:
        return bounds
    why = f"speed {speed} is commanded, so that the fan may be running"
    return replace(bounds, offset=min(bounds.offset, least_current_a), why=why)
