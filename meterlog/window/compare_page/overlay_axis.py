"""OverlayAxis: where recordings lie over each other: the whole run, or speed after speed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from meterlog.work.compare import Stretch

_LEAST_NS = 1_000_000


@dataclass(frozen=True, slots=True)
class Piece:
    """A stretch of the axis at whose start every recording gets the same command.

    Attributes
    ----------
    start_ns, end_ns : int, nanoseconds of the axis
    speed : int or None
        None: the whole run.
    own_ns : tuple of (int, int), nanoseconds since each recording's zero
        What of each recording lies here.
    """

    start_ns: int
    end_ns: int
    speed: int | None
    own_ns: tuple[tuple[int, int], ...]


@dataclass(frozen=True, slots=True)
class OverlayAxis:
    """All pieces, from 0 on without a gap.

    Attributes
    ----------
    pieces : tuple of Piece
    """

    pieces: tuple[Piece, ...] = ()

    @property
    def end_ns(self) -> int:
        """Where the last piece ends."""
        return self.pieces[-1].end_ns if self.pieces else _LEAST_NS

    @property
    def by_step(self) -> bool:
        """Tell whether the pieces are speeds."""
        return any(one.speed is not None for one in self.pieces)

    def piece(self, speed: int | None) -> Piece | None:
        """Give the piece of a speed, or None."""
        return next((one for one in self.pieces if one.speed == speed), None)

    def at(self, t_ns: int) -> Piece | None:
        """Give the piece in which an instant of the axis lies, or None."""
        return next((one for one in self.pieces if one.start_ns <= t_ns < one.end_ns), None)


def axis_of(stretches: Sequence[Stretch], *, by_step: bool) -> OverlayAxis:
    """Lay stretches one behind the other.

    Parameters
    ----------
    stretches : sequence of Stretch
        The whole run, then each speed.
    by_step : bool
        The speeds, each as long as the longest of the recordings ran it; False: the whole run.
        Where no speed is compared that is shown in any case.
    """
    speeds = [one for one in stretches if one.speed is not None]
    chosen = speeds if by_step and speeds else [one for one in stretches if one.speed is None]
    pieces: list[Piece] = []
    at = 0
    for one in chosen:
        long = max(_LEAST_NS, *(end - start for start, end in one.ends_ns))
        pieces.append(Piece(at, at + long, one.speed, one.ends_ns))
        at += long
    return OverlayAxis(tuple(pieces))
