"""Candidates: what could be measured, looked at or tried next, and what it costs in minutes.

All the minutes here are from memory of the trade; those of places and points are the profile's.
The cost of a test does not depend on what was done last, only on which places are open, so that the
same entries propose the same test in whatever order they were made.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from meterlog.circuit.states import (
    between_states,
    disturbed_states,
    fuse_place,
    is_asked,
    motor_place,
    plain_states,
    plug_place,
    seen_states,
)
from meterlog.model import Circuit, CircuitCheck, CircuitState, PointKind, Sign

SET_MIN = 0.2
"""To turn the key or the knob."""
READ_MIN = 0.3
"""To look at the reading until it is steady and to enter it."""
UNPLUG_MIN = 2.0
"""Key off, a plug off, and later on again."""
PULL_MIN = 1.0
"""Key off, a fuse out, and later in again."""
SIGN_MIN = {Sign.FAN: 0.3, Sign.CLICK: 0.2, Sign.WHEEL: 0.5, Sign.TAP: 0.5}
"""To look, to listen, to turn the wheel by hand, to tap."""


@dataclass(frozen=True, slots=True)
class Candidate:
    """One test that could be made.

    Attributes
    ----------
    state : CircuitState
    point : str
        Test point; empty for a sign.
    sign : Sign or None
    minutes : float
    repeat_of : int or None
        The newest reading of the same point in the same state.
    """

    state: CircuitState
    point: str
    sign: Sign | None
    minutes: float
    repeat_of: int | None = None


def opened_places(circuit: Circuit, check: CircuitCheck) -> frozenset[str]:
    """Give the places that are open: those told, and those where something was measured."""
    measured = {circuit.point(one.point).place for one in check.readings}
    by_hand = {motor_place(circuit)} if any(s.sign in _BY_HAND for s in check.signs) else set()
    return check.opened | measured | by_hand


_BY_HAND = (Sign.WHEEL, Sign.TAP)


def plain_candidates(
    circuit: Circuit, check: CircuitCheck, *, stands: frozenset[CircuitState] = frozenset()
) -> tuple[Candidate, ...]:
    """Give the tests that need no plug touched.

    Parameters
    ----------
    circuit : Circuit
    check : CircuitCheck
    stands : frozenset of CircuitState
        In which the fan is known to stand though it is asked for: only then a tap tells anything.
    """
    lists = _Lists(circuit, check)
    found = [one for state in plain_states(circuit) for one in lists.readings(state, 0.0)]
    found += lists.signs(stands)
    return tuple(found)


def between_candidates(circuit: Circuit, check: CircuitCheck) -> tuple[Candidate, ...]:
    """Give the readings at the speeds between lowest and highest."""
    lists = _Lists(circuit, check)
    return tuple(one for state in between_states(circuit) for one in lists.readings(state, 0.0))


def disturbing_candidates(circuit: Circuit, check: CircuitCheck) -> tuple[Candidate, ...]:
    """Give the readings with one plug off or one fuse out, where the place can be reached."""
    lists = _Lists(circuit, check)
    found: list[Candidate] = []
    for state in disturbed_states(circuit):
        places = [(plug_place(circuit, one), UNPLUG_MIN) for one in state.unplugged]
        places += [(fuse_place(circuit, one), PULL_MIN) for one in state.pulled]
        if any(not place or place in check.no_reach for place, _ in places):
            continue
        extra = sum(minutes for _, minutes in places)
        found += lists.readings(state, extra, frozenset(place for place, _ in places))
    return tuple(found)


class _Lists:
    """The lists of one circuit and check."""

    def __init__(self, circuit: Circuit, check: CircuitCheck) -> None:
        self._circuit, self._check = circuit, check
        self._opened = opened_places(circuit, check)
        self._taken = {
            (r.state, r.point): r.id for r in sorted(check.readings, key=lambda one: one.id)
        }
        self._seen = {(one.state, one.sign) for one in check.signs}

    def readings(
        self, state: CircuitState, extra: float, places: frozenset[str] = frozenset()
    ) -> Iterator[Candidate]:
        """Give a reading at each point within reach; ``places`` must be opened for the state."""
        for point in self._circuit.points:
            if point.name in self._check.no_reach or point.place in self._check.no_reach:
                continue
            if point.kind is PointKind.CURRENT and not is_asked(self._circuit, state):
                continue
            minutes = point.minutes + READ_MIN + SET_MIN + extra
            minutes += self._open(places | {point.place})
            yield Candidate(state, point.name, None, minutes, self._taken.get((state, point.name)))

    def signs(self, stands: frozenset[CircuitState]) -> Iterator[Candidate]:
        """Give what can be seen, heard and felt, each once."""
        hand = motor_place(self._circuit)
        reach = bool(hand) and hand not in self._check.no_reach
        for state in seen_states(self._circuit):
            for sign in Sign:
                if (state, sign) in self._seen or not self._makes_sense(sign, state, stands):
                    continue
                if sign in _BY_HAND and not reach:
                    continue
                minutes = SIGN_MIN[sign] + READ_MIN + SET_MIN
                minutes += self._open(frozenset({hand})) if sign in _BY_HAND else 0.0
                yield Candidate(state, "", sign, minutes)

    def _makes_sense(
        self, sign: Sign, state: CircuitState, stands: frozenset[CircuitState]
    ) -> bool:
        if sign is Sign.WHEEL:
            return state.key == "off" and not any(one is Sign.WHEEL for _, one in self._seen)
        if sign is Sign.TAP:
            return state in stands
        if sign is Sign.CLICK:
            return state.key != "off" and state.speed in {0, max(self._circuit.speeds)}
        return True

    def _open(self, places: frozenset[str]) -> float:
        return sum(self._circuit.place(one).minutes for one in sorted(places - self._opened))
