"""MovedProbe: a voltage jumped, but the current did not: the probe moved, not the circuit.

A motor's current follows its voltage: a tenth more volts, some fifteen per cent more amperes, and
at once even more than that. So a jump of the voltage across the motor under a steady current is the
probe's, however far it jumped: an open probe of a meter of 10 megohms reads anything.

A feed or return alone may move under a steady current where a controller makes up for it; there
only a jump too large for that counts.

Source: V = I R + Ke w (textbook), fan current by about the 1.7th power of the voltage; that voltage
and current must agree, common practice, no source.
"""

from __future__ import annotations

import copy
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from meterlog.analysis.level_walk import LevelWalk
from meterlog.analysis.levels import BIN_NS, LevelPart, Levels
from meterlog.analysis.probe_back import ProbeBack
from meterlog.analysis.probe_held import ProbeHeld
from meterlog.analysis.probe_jumps import Jump, ProbeJumps
from meterlog.analysis.timeline import SpeedChange
from meterlog.model import Role

COMMAND_NS = 3_000_000_000
"""After a command the current's own meter may be the one that is late or on hold."""
OPEN_V = 0.1
"""What an open probe reads at most that reads nothing."""

_Moved = tuple[int, Role, float, float]
_Watched = tuple[ProbeBack, ProbeBack, tuple[ProbeHeld, ProbeHeld]]


@dataclass(frozen=True, slots=True)
class Slip:
    """A probe that read something else from one time to another.

    ``role`` is the probe that moved the further. ``broken``: the current went as it moved, and came
    back.
    """

    start_ns: int
    end_ns: int
    role: Role
    was_v: float
    now_v: float
    amps: float
    ended: bool
    broken: bool = False


class MovedProbes:
    """Looks for stretches in which a probe read something else than before.

    Parameters
    ----------
    levels : Levels
        Of the whole recording, filled by somebody else.
    least_a : float, amperes
        The current flows from here on.
    lag_ns : int, nanoseconds
        A command may be given so long before its mark.
    """

    def __init__(self, levels: Levels, least_a: float, lag_ns: int = COMMAND_NS) -> None:
        self._levels = levels
        self._least_a = least_a
        self._lag_ns = lag_ns
        self._first_ns: int | None = None
        self._begin(frozenset())
        self._back: dict[_Moved, _Watched] = {}

    def _begin(self, read: frozenset[Role]) -> None:
        """Look at all from the beginning: which of feed and return are read at all decides."""
        self._read = read
        self._walk = LevelWalk(self._levels)
        self._jumps = ProbeJumps(self._least_a, [role for role in _SIDES if role in read])

    def slips(self, changes: Sequence[SpeedChange]) -> list[Slip]:
        """Give the slips so far, in order of time.

        Parameters
        ----------
        changes : sequence of SpeedChange
            Commands; a jump beside one moves no probe, but may be where it was put back.

        Returns
        -------
        list of Slip
            Those only whose probe did read the one level rather than the other meanwhile.
        """
        if not len(self._levels):
            return []
        if self._first_ns is None:
            self._first_ns = int(self._levels.part(0, 1).t_ns[0])
        found = self._found()
        found = [replace(jump, sure=not _beside(jump, changes, self._lag_ns)) for jump in found]
        slips = [
            (slip, self._watched(slip))
            for slip in _slips(found, self._first_ns, self._levels.end_ns)
        ]
        self._back = {_moved(slip): watched for slip, watched in slips}
        told = [self._as_read(slip, watched, changes) for slip, watched in slips]
        return [slip for slip in told if slip is not None]

    def _as_read(
        self, slip: Slip, watched: _Watched, changes: Sequence[SpeedChange]
    ) -> Slip | None:
        """Give a slip as far as the readings say what it says; None where they do not.

        Another command moves the voltage, too: then those beside the jump decide.
        """
        touched, put_back, (held, beside) = watched
        early = slip.start_ns == self._first_ns  # its jump is the one at its end
        inside = [one.t_ns for one in changes if slip.start_ns < one.t_ns < slip.end_ns]
        if early and not held.over(slip.start_ns, slip.end_ns).holds:
            if not inside:
                return None
            slip = replace(slip, start_ns=inside[-1])
        slip = self._put_back(self._touched(slip, touched, changes), put_back)
        if early:
            return slip if beside.over(slip.start_ns, slip.end_ns).holds else None
        if held.over(slip.start_ns, slip.end_ns).holds:
            return slip
        until_ns = min([slip.end_ns, *inside])
        return slip if beside.over(slip.start_ns, until_ns).holds else None

    def _found(self) -> list[Jump]:
        while True:
            known = self._read
            for part in self._walk.settled():
                known |= _read_in(part)
                if known and known == self._read:
                    self._jumps.take(part)
            newest = self._walk.newest()
            known |= _read_in(newest)
            if known == self._read:
                break
            self._begin(known)
        if not known:
            return []
        jumps = copy.copy(self._jumps)
        jumps.take(newest)
        return jumps.found()

    def _watched(self, slip: Slip) -> _Watched:
        known = self._back.get(_moved(slip))
        if known is not None:
            return known
        # After one that read nothing any voltage is back, whatever the speed is by then.
        nothing = abs(slip.now_v) <= OPEN_V
        asked = self._levels, slip.role, slip.was_v, slip.now_v
        return (
            ProbeBack(*asked),
            ProbeBack(*asked, from_nothing=nothing),
            (ProbeHeld(*asked, self._least_a), ProbeHeld(*asked, self._least_a)),
        )

    @staticmethod
    def _touched(slip: Slip, back: ProbeBack, changes: Sequence[SpeedChange]) -> Slip:
        """End a slip where its voltage was back for a while under the same command.

        One shorter than the means that it is looked for with shows only where it begins.
        """
        later = [change.t_ns for change in changes if change.t_ns > slip.start_ns]
        until_ns = min([slip.end_ns, *(t_ns - COMMAND_NS for t_ns in later)])
        first_ns = back.over(slip.start_ns, until_ns).first_ns
        return slip if first_ns is None else replace(slip, end_ns=first_ns, ended=True)

    @staticmethod
    def _put_back(slip: Slip, back: ProbeBack) -> Slip:
        """End a slip where its voltage was back for good, whatever the current did just then."""
        since_ns = back.over(slip.start_ns, slip.end_ns).since_ns
        return slip if since_ns is None else replace(slip, end_ns=since_ns, ended=True)


_SIDES = (Role.MOTOR_FEED, Role.MOTOR_RETURN)


def _read_in(part: LevelPart) -> frozenset[Role]:
    """Give which of feed and return were read in some bins."""
    columns = zip(_SIDES, (part.feed, part.back), strict=True)
    return frozenset(role for role, column in columns if np.isfinite(column).any())


def _moved(slip: Slip) -> _Moved:
    return slip.start_ns, slip.role, slip.was_v, slip.now_v


def _beside(jump: Jump, changes: Sequence[SpeedChange], lag_ns: int) -> bool:
    """Tell whether a command may have made a jump: one between the two levels, or near it."""
    first_ns = min(jump.first_ns, jump.at_ns - COMMAND_NS)
    last_ns = max(jump.last_ns, jump.at_ns + lag_ns + BIN_NS)
    return any(first_ns < change.t_ns < last_ns for change in changes)


def _slips(jumps: Sequence[Jump], start_ns: int, end_ns: int) -> list[Slip]:
    """Pair the jumps away with those back; one that never came back lasts to the end."""
    slips: list[Slip] = []
    for role in (Role.MOTOR_FEED, Role.MOTOR_RETURN):
        away: Jump | None = None
        for jump in sorted((j for j in jumps if j.role is role), key=lambda one: one.at_ns):
            if away is not None and away.size * jump.size < 0.0:
                slips.append(_slip(away, jump.at_ns, ended=True))
                away = None
            elif not jump.sure:
                continue
            elif away is None and role is Role.MOTOR_FEED and jump.size > 0.0:
                # An open probe reads less: here it was put back on.
                early = replace(jump, at_ns=start_ns, was_v=jump.now_v, now_v=jump.was_v)
                slips.append(_slip(early, jump.at_ns, ended=True))
            elif away is None:
                away = jump
        if away is not None:
            slips.append(_slip(away, end_ns, ended=False))
    return sorted(slips, key=lambda one: one.start_ns)


def _slip(away: Jump, end_ns: int, *, ended: bool) -> Slip:
    levels = away.was_v, away.now_v, away.amps
    return Slip(away.at_ns, end_ns, away.role, *levels, ended, away.broken)
