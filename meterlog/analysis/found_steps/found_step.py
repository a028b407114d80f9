"""FoundStep: one speed change that was found, not recorded."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class FoundStep:
    """A change of the fan's speed, told by the current.

    Attributes
    ----------
    t_ns, edge_ns : int, nanoseconds since the recording's zero
        When, and within ± what.
    before_a, after_a : float, amperes
        Level of the current on either side, start-up peaks left out; 0 for off.
    n : int
        Readings behind ``after_a``; 0 for off.
    speed_before, speed : int
        Proposed labels: rank by order of current, 0 for off. To be confirmed by a person.
    seen_before_ns, seen_ns : tuple of (int, int), nanoseconds
        From when to when the levels on either side were seen, start-up and what was no level of
        its own left out.
    """

    t_ns: int
    edge_ns: int
    before_a: float
    after_a: float
    n: int
    speed_before: int
    speed: int
    seen_before_ns: tuple[tuple[int, int], ...] = ()
    seen_ns: tuple[tuple[int, int], ...] = ()
