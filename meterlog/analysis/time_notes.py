"""TimeNotes: how well the times of several meters agree."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import combinations

from meterlog.model import Event, EventKind, Instrument, Role, share_times
from meterlog.model.timing_text import span_words, time_u_of


class TimeNotes:
    """Says what the reader of a review must know about the times of its meters.

    Parameters
    ----------
    instruments : sequence of Instrument
        Those of the recording. Only meters with a role take part.
    """

    def __init__(self, instruments: Sequence[Instrument]) -> None:
        self._instruments = [
            one for one in instruments if any(c.role is not Role.OTHER for c in one.channels)
        ]
        self._found: dict[str, float] = {}

    def take(self, event: Event) -> None:
        """Take an event: a ``timing`` one may know more than was known when it was connected."""
        if event.kind is EventKind.TIMING:
            time_u_s = time_u_of(event.value)
            if time_u_s is not None:
                self._found[event.source] = time_u_s

    def agreement_s(self, first: Instrument, second: Instrument) -> float | None:
        """Give the standard uncertainty of one meter's times against the other's.

        Returns
        -------
        float or None, seconds
            Where the skew between them was measured, that of the skew: it holds all that stays
            the same from one recording to the next. Else the two meters' own, squares summed
            (JCGM 100:2008, 5.1.2). None when one of them is not known. 0 for columns of one
            imported trace: rows have one time.
        """
        if share_times(first, second):
            return 0.0
        measured = math.hypot(first.skew_u_s, second.skew_u_s)
        if measured and self._is_reference(first, second):
            return measured
        ours, theirs = self._time_u_s(first), self._time_u_s(second)
        return None if ours is None or theirs is None else math.hypot(ours, theirs)

    def _is_reference(self, first: Instrument, second: Instrument) -> bool:
        """Tell whether a skew was measured between the two: either may be the reference."""
        reference = self._instruments[0].key
        return all(one.skew_u_s > 0.0 or one.key == reference for one in (first, second))

    def _time_u_s(self, one: Instrument) -> float | None:
        return self._found.get(one.key, one.time_u_s)

    def notes(self) -> list[str]:
        """Give the notes: one for each pair of meters, one for all that are typed."""
        live = [one for one in self._instruments if not one.typed]
        told = [self._note(*pair) for pair in combinations(live, 2)]
        if len(live) < len(self._instruments) and len(self._instruments) > 1:
            told.append(
                "How well the times of readings typed by hand agree with the others is not known:"
                " which of two edges close to each other came first can't be told from them."
            )
        return told

    def _note(self, first: Instrument, second: Instrument) -> str:
        both = f"{first.key} and {second.key}"
        if share_times(first, second):
            return (
                f"{_every(first)} and {_every(second)} are columns of one trace that were read at"
                f" different instants, each with the times that the trace gives it."
            )
        u_s = self.agreement_s(first, second)
        if u_s is None:
            return (
                f"How well the times of {both} agree is not known: which of two edges close to"
                f" each other came first can't be told from them."
            )
        told = (
            f"The times of {both} agree to ±{span_words(2.0 * u_s)} (k=2): an edge of one against"
            f" an edge of the other is known no better than that."
        )
        shift_s = second.skew_s - first.skew_s
        if self._is_reference(first, second) and (first.skew_u_s or second.skew_u_s):
            told += f" Measured by common steps; {_subtracted(first, second, shift_s)}."
        return told


def _every(one: Instrument) -> str:
    names = ", ".join(channel.name for channel in one.channels)
    return f"{names} (a reading every {one.channels[0].interval_s:.3g} s)"


def _subtracted(first: Instrument, second: Instrument, shift_s: float) -> str:
    later, earlier = (second, first) if shift_s >= 0.0 else (first, second)
    return (
        f"{later.key} was {abs(shift_s) * 1e3:.1f} ms later than {earlier.key}, which is subtracted"
    )
