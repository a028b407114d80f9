"""LateOff: a loss that only missing readings part from the fan being off is the command's.

A relay takes its time and a thumb is late on the key, whether or not the meter reads meanwhile.
What touches off is judged in ``missing.py``; here is what a gap parts from it.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import replace

from meterlog.analysis.coasting_down import innocent
from meterlog.analysis.pieces import Figures, Group, Piece
from meterlog.analysis.settle import rejoin
from meterlog.analysis.timeline import SpeedTimeline
from meterlog.model import Limits, SpanKind


class LateOff:
    """Finds losses beside an off or on command that a gap in the readings hides.

    Parameters
    ----------
    limits : Limits
        Its ``command_lag_s`` is how late a hand may be.
    timeline : SpeedTimeline
    """

    def __init__(self, limits: Limits, timeline: SpeedTimeline) -> None:
        self._limits, self._timeline = limits, timeline
        self._lag_ns = round(limits.command_lag_s * 1e9)

    def excuse(self, pieces: list[Piece], until_ns: int | None) -> int:
        """Make off, in place, of the losses that an off or on command explains.

        Parameters
        ----------
        pieces : list of Piece
            Settled, touching. The last one may still grow, and is left as it is.
        until_ns : int or None, nanoseconds
            Up to here all commands are known; None: all are.

        Returns
        -------
        int
            How many losses were taken for the command.
        """
        count, speed = 0, None
        for change in self._timeline.changes:
            if until_ns is not None and change.t_ns > until_ns:
                break
            if change.speed == 0 and speed != 0:
                count += self._before_off(pieces, change.t_ns, ended=until_ns is None)
            elif speed == 0 and change.speed != 0:
                count += self._after_off(pieces, change.t_ns)
            speed = change.speed
        return count

    def _before_off(self, pieces: list[Piece], t_ns: int, *, ended: bool) -> int:
        last = _at(pieces, t_ns - 1)
        if last < 0 or (pieces[last].end_ns < t_ns and not ended):
            return 0  # what lies between is not settled yet
        first = last + 1
        while first > 0 and pieces[first - 1].group is not Group.FLOWING:
            first -= 1
        end = last + 1
        if end + 1 < len(pieces) and pieces[end].group is Group.UNKNOWN:
            # Cut short right behind the command, by a meter that changes its range.
            end += pieces[end + 1].group is not Group.FLOWING
        return self._made_off(pieces, first, end, t_ns)

    def _after_off(self, pieces: list[Piece], t_ns: int) -> int:
        first = end = _at(pieces, t_ns)
        if first < 0:
            return 0
        while end < len(pieces) and pieces[end].group is not Group.FLOWING:
            end += 1
        if first > 1 and pieces[first - 1].group is Group.UNKNOWN:
            # What was off between a gap and the command was too short for a stretch of its own.
            first -= pieces[first - 2].group is not Group.FLOWING
        # Whether what still goes on outlasts the lag is not known yet.
        return self._made_off(pieces, first, end, t_ns) if end < len(pieces) else 0

    def _made_off(self, pieces: list[Piece], first: int, end: int, t_ns: int) -> int:
        """Make off of the losses among pieces without current beside a command at ``t_ns``."""
        lost = [
            index
            for index in range(first, end)
            if pieces[index].group is Group.GONE and pieces[index].kind is not SpanKind.OFF
        ]
        if not lost or lost[-1] + 1 == len(pieces):
            return 0
        if not all(self._near(pieces[index], t_ns) for index in lost):
            return 0
        if not any(pieces[index].group is Group.UNKNOWN for index in range(first, end)):
            return 0  # judged where it was found
        for index in lost:
            pieces[index] = replace(pieces[index], kind=SpanKind.OFF, figures=Figures())
        rejoin(pieces, first - 1, end + 1)
        return len(lost)

    def _near(self, piece: Piece, t_ns: int) -> bool:
        """Tell whether a piece lies within the lag of a command, and may be its doing."""
        within = t_ns - self._lag_ns < piece.start_ns and piece.end_ns < t_ns + self._lag_ns
        return within and innocent(piece, self._limits)


def _at(pieces: Sequence[Piece], t_ns: int) -> int:
    """Give the piece in which a time lies; -1 before the first."""
    return bisect_right(pieces, t_ns, key=lambda piece: piece.start_ns) - 1
