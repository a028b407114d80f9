"""Settle: a label that does not last is part of its neighbour."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from meterlog.analysis.pieces import Piece


def settle(pieces: Sequence[Piece], dwell_ns: int) -> list[Piece]:
    """Take out labels that do not last.

    Parameters
    ----------
    pieces : sequence of Piece
        Touching, of one episode.
    dwell_ns : int, nanoseconds

    Returns
    -------
    list of Piece
        A piece shorter than ``dwell_ns`` becomes part of the one before; a leading one of the
        one after, unless that is even shorter; its readings count there. Equal neighbours are
        joined.
    """
    settled: list[Piece] = []
    for piece in pieces:
        if not settled:
            settled.append(piece)
        elif piece.alike(settled[-1]):
            settled[-1] = settled[-1].joined(piece)
        elif len(settled) == 1 and _gives_way(settled[0], piece, dwell_ns):
            settled[0] = replace(piece, figures=settled[0].figures.beside(piece.figures)).since(
                settled[0]
            )
        elif piece.length_ns < dwell_ns:
            settled[-1] = settled[-1].joined(piece)
        else:
            settled.append(piece)
    return settled


def _gives_way(first: Piece, then: Piece, dwell_ns: int) -> bool:
    return first.length_ns < dwell_ns and first.length_ns <= then.length_ns


def joined(pieces: Sequence[Piece]) -> list[Piece]:
    """Join neighbours of one label."""
    return settle(pieces, 0)


def rejoin(pieces: list[Piece], first: int, end: int) -> None:
    """Join, in place, neighbours of one label among pieces ``first`` to ``end`` (exclusive)."""
    first, end = max(first, 0), min(end, len(pieces))
    pieces[first:end] = joined(pieces[first:end])
