"""Judged: what a recording has been judged to hold, for those who look at the whole of it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Protocol

from meterlog.analysis.labels import Stretch
from meterlog.analysis.rows import Rows
from meterlog.model import (
    Block,
    Conditions,
    Doubt,
    Event,
    Finding,
    Instrument,
    Limits,
    Span,
    Step,
)


@dataclass(frozen=True, slots=True)
class Judged:
    """The spans, steps and findings of a whole recording, and what they were made from.

    Attributes
    ----------
    instruments : tuple of Instrument
    limits : Limits
    conditions : Conditions
    spans : tuple of Span
        In time order, touching.
    steps : tuple of Step
        With their budgets.
    findings : tuple of Finding
        So far: of the spans, then of the steps.
    doubts : tuple of Doubt
    events : tuple of Event
        All of them, in time order.
    """

    instruments: tuple[Instrument, ...]
    limits: Limits
    conditions: Conditions = field(default_factory=Conditions)
    spans: tuple[Span, ...] = ()
    steps: tuple[Step, ...] = ()
    findings: tuple[Finding, ...] = ()
    doubts: tuple[Doubt, ...] = ()
    events: tuple[Event, ...] = ()


class Follower(Protocol):
    """Watches a recording from beginning to end, in bounded memory, however it is cut.

    What it has to say at the end it says in a method of its own, given a :class:`Judged`.
    """

    def take(self, item: Block | Event) -> None:
        """Take the next Block or Event, as it came: unaligned, flags included."""

    def take_rows(self, rows: Rows, stretches: Sequence[Stretch]) -> None:
        """Take rows side by side, each once, in order, with the stretches that cover them.

        Stretch indices count in these rows; rows before the first and after the last stretch are
        there to look back and ahead, and come again.
        """
