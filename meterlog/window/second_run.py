"""SecondRun: another recording laid over the one on show, both from the same command on."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from meterlog.evidence.across_motor import AcrossMotor
from meterlog.evidence.pixel_columns import Points
from meterlog.evidence.trace_store import TraceLine, TraceStore
from meterlog.model import Block, Event, EventKind, Quantity, Role, standing
from meterlog.window.long_recording import traces_of
from meterlog.window.origin_words import origin_words

if TYPE_CHECKING:
    from meterlog.model import About
    from meterlog.recording import Recording
    from meterlog.window.shown import Shown

_LOOKS = 4096
"""Columns in which the first rise of a live run is looked for."""


@dataclass(frozen=True, slots=True)
class SecondRun:
    """A recording ready to be drawn over another one.

    Attributes
    ----------
    folder : Path
    about : About
    traces : TraceStore
    events : tuple of Event
        As amended, in time order, without the marks that were withdrawn.
    across : TraceLine or None
        The voltage across the motor, where its feed and its return were read.
    rise_ns : int or None, nanoseconds since its own zero
        When its current first reached the limits' open-circuit current; None where it never did.
    shift_ns : int
        So much later than by its own clock it is drawn.
    sign : float
        -1 where its clamp was the other way round.
    """

    folder: Path
    about: About
    traces: TraceStore
    events: tuple[Event, ...]
    across: TraceLine | None = None
    rise_ns: int | None = None
    shift_ns: int = 0
    sign: float = 1.0

    @classmethod
    def load(cls, folder: Path, progress: Callable[[float], None] | None = None) -> SecondRun:
        """Read a recording, its events and limits as amended; for a thread of its own.

        Parameters
        ----------
        folder : Path
        progress : callable or None
            Called with the part done, 0 to 1.

        Raises
        ------
        RecordingUnreadable
            If there is no recording or it is damaged beyond use.
        EvidenceError
            If the file of its edits can't be read.
        """
        # Not needed to open a window.
        from meterlog.recording import Recording
        from meterlog.work.amended import Amending, amend

        recording = Recording.open(folder)
        amend(recording, Amending())
        return cls.of(recording, progress)

    @classmethod
    def of(cls, recording: Recording, progress: Callable[[float], None] | None = None) -> SecondRun:
        """Read an open recording; see :meth:`load`."""
        about = recording.about
        across = AcrossMotor(about.instruments)
        rise_ns: int | None = None
        rows = max(sum(recording.rows(one.key) for one in about.instruments), 1)
        done = 0
        for instrument in across.in_order:
            amps = instrument.column(Role.MOTOR_CURRENT)
            for block in recording.blocks(instrument.key):
                across.take(block)
                if rise_ns is None and amps is not None:
                    rise_ns = _rise(block, amps, about.limits.open_current_a)
                done += len(block)
                if progress is not None:
                    progress(done / rows)
        events = recording.standing
        # All has been read: what is damaged is known.
        traces = traces_of(recording, lambda _: None)
        return cls(recording.folder, about, traces, events, across.line, rise_ns)

    @property
    def mark(self) -> str:
        """Words that must stand wherever it is drawn, such as SIMULATED; empty for none."""
        return origin_words(self.about)

    @property
    def end_ns(self) -> int:
        """When it ends, on the axis it is laid on."""
        return self.traces.end_ns + self.shift_ns

    def start_ns(self, speed: int | None = None) -> int | None:
        """Give when a speed was commanded for the first time, by its own clock.

        Parameters
        ----------
        speed : int or None
            None: the first command other than off, else the first rise of the current.
        """
        found = command_times(self.events, speed)
        if found:
            return found[0]
        return self.rise_ns if speed is None else None

    def speeds(self) -> tuple[int, ...]:
        """Give the speeds that were commanded, off left out, in order."""
        return tuple(sorted({one.speed for one in self.events if _commands(one)}))

    def laid(self, own_ns: int, on_ns: int) -> SecondRun:
        """Give the same run with its instant ``own_ns`` at ``on_ns`` of the axis."""
        return replace(self, shift_ns=on_ns - own_ns)

    def laid_on(self, shown: Shown, speed: int | None = None) -> SecondRun | None:
        """Give the same run laid on another one.

        Parameters
        ----------
        shown : Shown
            What it is drawn behind, growing or not.
        speed : int or None
            This speed of both begins together, the newest time that the other one ran it; None:
            their first commands other than off, where one has none its first rise of current.

        Returns
        -------
        SecondRun or None
            None where one of the two has no such start (yet).
        """
        own_ns = self.start_ns(speed)
        commands = command_times(standing(shown.events), speed)
        if commands:
            on_ns: int | None = commands[0] if speed is None else commands[-1]
        else:
            on_ns = _first_rise(shown) if speed is None else None
        return None if own_ns is None or on_ns is None else self.laid(own_ns, on_ns)

    def line(self, what: Quantity | Role) -> TraceLine | None:
        """Give the line that shows a role; or the one that tells most of a quantity.

        Of the current that of the motor; of the voltage that across the motor, else its feed,
        else the battery.
        """
        if isinstance(what, Role):
            return self.traces.line(what)
        if what is Quantity.CURRENT:
            roles: tuple[Role, ...] = (Role.MOTOR_CURRENT,)
        elif self.across is not None:
            return self.across
        else:
            roles = (Role.MOTOR_FEED, Role.BATTERY)
        found = (self.traces.line(role) for role in roles)
        best = next((line for line in found if line is not None), None)
        return best or next(iter(self.traces.of(what)), None)

    def curve(
        self, what: Quantity | Role, start_ns: int, end_ns: int, columns: int
    ) -> Points | None:
        """Give what ``columns`` pixels show of a stretch of the axis, no peak lost.

        Parameters
        ----------
        what : Quantity or Role
            See :meth:`line`.
        start_ns, end_ns : int, nanoseconds
            Of the axis it is laid on.
        columns : int
            Device pixels.

        Returns
        -------
        tuple of t_ns and values, each of shape (m,), or None
            Times of the axis; volts or amperes, NaN where nothing was read. None without such a
            line.
        """
        line = self.line(what)
        if line is None:
            return None
        t_ns, values = line.shown(start_ns - self.shift_ns, end_ns - self.shift_ns, columns)
        turned = self.sign < 0.0 and line.role is Role.MOTOR_CURRENT
        return t_ns + self.shift_ns, -values if turned else values


def command_times(events: Sequence[Event], speed: int | None) -> list[int]:
    """Give when a speed was commanded, nanoseconds; None: any but off."""
    return [one.t_ns for one in events if _commands(one) and speed in {None, one.speed}]


def _commands(event: Event) -> bool:
    return event.kind is EventKind.SPEED and event.value.isdecimal() and event.speed > 0


def _rise(block: Block, column: int, open_a: float) -> int | None:
    """Give the time of the first reading in a Block at which current flowed."""
    flows = np.flatnonzero(np.abs(block.values[:, column]) >= open_a)
    return int(block.t_ns[flows[0]]) if flows.size else None


def _first_rise(shown: Shown) -> int | None:
    line = shown.traces.line(Role.MOTOR_CURRENT)
    if line is None:
        return None
    t_ns, values = line.shown(0, max(shown.traces.end_ns, 1), _LOOKS)
    flows = np.flatnonzero(np.abs(values) >= shown.about.limits.open_current_a)
    return int(t_ns[flows[0]]) if flows.size else None
