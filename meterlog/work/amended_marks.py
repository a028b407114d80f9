"""Amended marks: the events of a recording with some of the technician's relabelled or moved."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from meterlog.model import WITHDRAWABLE, Event, EventKind, withdrawn_marks
from meterlog.model.amendment import Amendment, AmendmentKind
from meterlog.model.errors import UsageError
from meterlog.model.speed_step import is_speed_step
from meterlog.model.told_seconds import told_seconds

MOVABLE = WITHDRAWABLE
"""What a technician marks by hand, and may have marked early or late."""
_NS = 1_000_000_000
_NEAR_NS = _NS // 2
_SAME_NS = _NS // 2_000
"""Times are shown to the millisecond: one that was read off is this close."""


@dataclass(frozen=True, slots=True)
class _Mark:
    """One event as it was recorded and as it is now.

    ``entry`` withdrew it while recording; ``out`` tells whether it counts for nothing now.
    """

    recorded: Event
    now: Event
    entry: Event | None = None
    out: bool = False


class AmendedMarks:
    """Events, and what becomes of them edit by edit.

    Parameters
    ----------
    events : sequence of Event
        As they were recorded.
    end_ns : int, nanoseconds
        The recording's end, beyond which nothing can be moved.
    """

    def __init__(self, events: Sequence[Event], end_ns: int) -> None:
        self._marks = [_Mark(event, event) for event in events]
        for mark, entry in withdrawn_marks(events):
            place = next(k for k, one in enumerate(self._marks) if one.recorded is mark)
            self._marks[place] = _Mark(mark, mark, entry, out=True)
        self._end_ns = end_ns

    @property
    def events(self) -> tuple[Event, ...]:
        """All events as they are now, in time order.

        What an edit withdrew is not among them; what was withdrawn while recording is, with the
        entry that did it, unless an edit put it back.
        """
        ends = EventKind.END
        back = [one.entry for one in self._marks if one.entry is not None and not one.out]
        now = (
            one.now
            for one in self._marks
            if one.recorded not in back and not (one.out and one.entry is None)
        )
        return tuple(sorted(now, key=lambda e: (e.t_ns, e.kind is ends)))

    @property
    def standing(self) -> tuple[Event, ...]:
        """The technician's marks that count now, in time order."""
        now = (one.now for one in self._marks if not one.out and one.now.kind in MOVABLE)
        return tuple(sorted(now, key=lambda event: event.t_ns))

    @property
    def withdrawn(self) -> tuple[Event, ...]:
        """The technician's marks that count for nothing now, in time order."""
        now = (one.now for one in self._marks if one.out)
        return tuple(sorted(now, key=lambda event: event.t_ns))

    def copy(self) -> AmendedMarks:
        """Give another one with the same edits made."""
        return self._of_marks(list(self._marks), self._end_ns)

    @classmethod
    def _of_marks(cls, marks: list[_Mark], end_ns: int) -> AmendedMarks:
        made = cls((), end_ns)
        made._marks = marks
        return made

    @property
    def speeds(self) -> set[int]:
        """The speeds that are commanded now."""
        return {
            int(one.now.value) for one in self._of(EventKind.SPEED) if one.now.value.isdecimal()
        }

    def relabelled(self, t_ns: int, speed: str, who: str, why: str) -> Amendment:
        """Give the edit that a step's speed becomes ``speed``; nothing is changed yet.

        Parameters
        ----------
        t_ns : int
            When the step begins now; half a second off is near enough where there is no other.
        speed : str
        who, why : str

        Raises
        ------
        UsageError
            If no step begins there, or more than one.
        """
        mark = self._at(EventKind.SPEED, t_ns)
        return Amendment(
            AmendmentKind.STEP, "", mark.recorded.t_ns, mark.now.value, speed.strip(), who, why
        )

    def moved(self, kind: EventKind, t_ns: int, new_ns: int, who: str, why: str) -> Amendment:
        """Give the edit that a mark moves to ``new_ns``; nothing is changed yet.

        Parameters
        ----------
        kind : EventKind
        t_ns : int
            Where it is now, as with :meth:`relabelled`.
        new_ns : int
        who, why : str

        Raises
        ------
        UsageError
            If no mark of this kind is there, or more than one.
        """
        mark = self._at(kind, t_ns)
        return Amendment(
            AmendmentKind.MARKER, kind.value, mark.recorded.t_ns,
            seconds_text(mark.now.t_ns), seconds_text(new_ns), who, why,
        )  # fmt: skip

    def taken_back(self, kind: EventKind, t_ns: int, who: str, why: str) -> Amendment:
        """Give the edit that a mark counts for nothing; parameters and errors as :meth:`moved`."""
        mark = self._at(kind, t_ns)
        old = seconds_text(mark.now.t_ns)
        return Amendment(AmendmentKind.WITHDRAWN, kind.value, mark.recorded.t_ns, old, "", who, why)

    def put_back(self, kind: EventKind, t_ns: int, who: str, why: str) -> Amendment:
        """Give the edit that a mark counts again; parameters and errors as :meth:`moved`."""
        mark = self._at(kind, t_ns, out=True)
        new = seconds_text(mark.now.t_ns)
        return Amendment(AmendmentKind.WITHDRAWN, kind.value, mark.recorded.t_ns, "", new, who, why)

    def apply(self, amendment: Amendment) -> None:
        """Make an edit of a step or a mark.

        Raises
        ------
        UsageError
            If it does not fit the recording.
        """
        step = amendment.kind is AmendmentKind.STEP
        kind = "speed" if step else amendment.subject
        place = self._place(kind, amendment)
        mark = self._marks[place]
        if amendment.kind is AmendmentKind.WITHDRAWN:
            if amendment.new:
                self._refuse_place(mark, mark.now.t_ns)
            self._marks[place] = replace(mark, out=not amendment.new)
            return
        if step:
            if not is_speed_step(amendment.new):
                raise UsageError(
                    "is no speed.", subject=amendment.new, remedy="Give 0 for off, or 1, 2, 3 ..."
                )
            now = replace(mark.now, value=str(int(amendment.new)))
        else:
            now = replace(mark.now, t_ns=parse_seconds(amendment.new))
            self._refuse_place(mark, now.t_ns)
        self._marks[place] = replace(mark, now=now)

    def _place(self, kind: str, amendment: Amendment) -> int:
        step = amendment.kind is AmendmentKind.STEP
        back = amendment.kind is AmendmentKind.WITHDRAWN and not amendment.old
        for place, mark in enumerate(self._marks):
            if mark.recorded.kind != kind or mark.recorded.t_ns != amendment.t_ns:
                continue
            now = mark.now.value if step else seconds_text(mark.now.t_ns)
            was = amendment.new if back else amendment.old
            if now == was and mark.out is back and mark.recorded.kind in MOVABLE:
                return place
        if back:
            raise UsageError(
                f"no {kind} at {told_seconds(amendment.new)} s was withdrawn.",
                remedy="Make the edit anew by what is there.",
            )
        before = amendment.old if step else told_seconds(amendment.old)
        at = "no time" if amendment.t_ns is None else f"{_told(amendment.t_ns)} s"
        raise UsageError(
            f"the recording holds no {kind} at {at} that was {before}.",
            remedy="Make the edit anew by what is there.",
        )

    def _refuse_place(self, mark: _Mark, new_ns: int) -> None:
        kind = mark.now.kind
        subject = f"{kind} to {_told(new_ns)} s"
        if not 0 <= new_ns <= self._end_ns:
            raise UsageError(
                f"lies outside the recording, which goes from 0 to {self._end_ns / _NS:.3f} s.",
                subject=subject,
                remedy="Give a time within it.",
            )
        low, high = sorted((mark.now.t_ns, new_ns))
        for other in self._of(kind):
            if other is mark:
                continue
            if other.now.t_ns == new_ns:
                raise UsageError(
                    f"there is another {kind} at that very time already.",
                    subject=subject,
                    remedy="Move it beside that one.",
                )
            if kind is EventKind.SPEED and low <= other.now.t_ns <= high:
                raise UsageError(
                    f"would pass the command at {_told(other.now.t_ns)} s.",
                    subject=subject,
                    remedy="The order of commands stays: relabel the steps instead.",
                )

    def _of(self, kind: EventKind, *, out: bool = False) -> list[_Mark]:
        return [one for one in self._marks if one.now.kind is kind and one.out is out]

    def _at(self, kind: EventKind, t_ns: int, *, out: bool = False) -> _Mark:
        """Find the mark of a kind that is now at ``t_ns`` or nearest to it."""
        what = "step begins" if kind is EventKind.SPEED else f"{kind} is marked"
        what = f"{kind} is withdrawn" if out else what
        subject = f"{_told(t_ns)} s"
        marks = sorted(self._of(kind, out=out), key=lambda one: abs(one.now.t_ns - t_ns))
        near = [one for one in marks if abs(one.now.t_ns - t_ns) <= _NEAR_NS]
        exact = [one for one in near if abs(one.now.t_ns - t_ns) <= _SAME_NS]
        found = exact or near
        if len(found) == 1:
            return found[0]
        if found:
            raise UsageError(
                f"more than one {what} there: {_list(found, seconds_text)}.",
                subject=subject,
                remedy="Give the time of one of them in full.",
            )
        known = f"There are: {_list(marks, _told)}." if marks else ""
        done = "is withdrawn" if out else "was marked"
        if not marks and kind is EventKind.SPEED and not out:
            known = (
                "No speed was recorded; steps found in the current are taken for commands by"
                " review --accept-steps."
            )
        raise UsageError(
            f"no {what} there.",
            subject=subject,
            remedy=known or f"No {kind} {done} in this recording.",
        )


def _told(t_ns: int) -> str:
    return told_seconds(Decimal(t_ns) / _NS)


def _list(marks: Sequence[_Mark], told: Callable[[int], str]) -> str:
    most = 20
    in_order = sorted(marks[:most], key=lambda one: one.now.t_ns)
    said = [
        f"{told(one.now.t_ns)} s{f' ({one.now.value[:30]})' if one.now.value else ''}"
        for one in in_order
    ]
    return ", ".join(said) + (" and more" if len(marks) > most else "")


def seconds_text(t_ns: int) -> str:
    """Give a time in seconds, in full: ``12.3``."""
    text = f"{Decimal(t_ns) / _NS:f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def parse_seconds(text: str) -> int:
    """Read a time in seconds.

    Returns
    -------
    int
        Nanoseconds.

    Raises
    ------
    UsageError
        If it is no number.
    """
    try:
        seconds = Decimal(text.strip().replace(",", "."))
        return round(seconds * _NS) if abs(seconds) < _NS else _no_time(text)
    except ArithmeticError:
        return _no_time(text)


def _no_time(text: str) -> int:
    raise UsageError(
        "is no time.", subject=text, remedy="Give seconds from the recording's beginning: 12.3."
    )
