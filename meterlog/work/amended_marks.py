"""Amended marks: the events of a recording with some of the technician's relabelled or moved."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from meterlog.model import Event, EventKind
from meterlog.model.amendment import Amendment, AmendmentKind
from meterlog.model.errors import UsageError

MOVABLE = (EventKind.SPEED, EventKind.TAP, EventKind.WIGGLE, EventKind.NOTE)
"""What a technician marks by hand, and may have marked early or late."""
_NS = 1_000_000_000
_NEAR_NS = _NS // 2
_SAME_NS = _NS // 2_000
"""Times are shown to the millisecond: one that was read off is this close."""
_DIGITS = 9


@dataclass(frozen=True, slots=True)
class _Mark:
    """One event as it was recorded and as it is now."""

    recorded: Event
    now: Event


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
        self._end_ns = end_ns

    @property
    def events(self) -> tuple[Event, ...]:
        """All events as they are now, in time order."""
        ends = EventKind.END
        return tuple(
            sorted((one.now for one in self._marks), key=lambda e: (e.t_ns, e.kind is ends))
        )

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
        if step:
            if not (amendment.new.isascii() and amendment.new.isdecimal()) or (
                len(amendment.new) > _DIGITS
            ):
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
        for place, mark in enumerate(self._marks):
            if mark.recorded.kind != kind or mark.recorded.t_ns != amendment.t_ns:
                continue
            now = mark.now.value if step else seconds_text(mark.now.t_ns)
            if now == amendment.old and mark.recorded.kind in MOVABLE:
                return place
        at = "no time" if amendment.t_ns is None else f"{seconds_text(amendment.t_ns)} s"
        raise UsageError(
            f"the recording holds no {kind} at {at} that was {amendment.old}.",
            remedy="Make the edit anew by what is there.",
        )

    def _refuse_place(self, mark: _Mark, new_ns: int) -> None:
        kind = mark.now.kind
        subject = f"{kind} to {seconds_text(new_ns)} s"
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
                    f"would pass the command at {seconds_text(other.now.t_ns)} s.",
                    subject=subject,
                    remedy="The order of commands stays: relabel the steps instead.",
                )

    def _of(self, kind: EventKind) -> list[_Mark]:
        return [one for one in self._marks if one.now.kind is kind]

    def _at(self, kind: EventKind, t_ns: int) -> _Mark:
        """Find the mark of a kind that is now at ``t_ns`` or nearest to it."""
        what = "step begins" if kind is EventKind.SPEED else f"{kind} is marked"
        subject = f"{seconds_text(t_ns)} s"
        marks = sorted(self._of(kind), key=lambda one: abs(one.now.t_ns - t_ns))
        near = [one for one in marks if abs(one.now.t_ns - t_ns) <= _NEAR_NS]
        exact = [one for one in near if abs(one.now.t_ns - t_ns) <= _SAME_NS]
        found = exact or near
        if len(found) == 1:
            return found[0]
        if found:
            raise UsageError(
                f"more than one {what} there: {_list(found)}.",
                subject=subject,
                remedy="Give the time of one of them in full.",
            )
        known = f"There are: {_list(marks)}." if marks else ""
        if not marks and kind is EventKind.SPEED:
            known = (
                "No speed was recorded; steps found in the current are taken for commands by"
                " review --accept-steps."
            )
        raise UsageError(
            f"no {what} there.",
            subject=subject,
            remedy=known or f"No {kind} was marked in this recording.",
        )


def _list(marks: Sequence[_Mark]) -> str:
    most = 20
    in_order = sorted(marks[:most], key=lambda one: one.now.t_ns)
    said = [
        f"{seconds_text(one.now.t_ns)} s{f' ({one.now.value[:30]})' if one.now.value else ''}"
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
