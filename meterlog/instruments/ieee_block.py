"""IEEE 488.2 arbitrary blocks: bytes of a stated length within an answer."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class BlockState(StrEnum):
    """Whether bytes are a block."""

    COMPLETE = "complete"
    INCOMPLETE = "incomplete"
    """More bytes may still make it one."""
    INVALID = "invalid"
    """No bytes that follow can make it one that can be cut out of a stream."""


@dataclass(frozen=True, slots=True)
class BlockHeader:
    """The head of a block: ``#``, one digit n, n digits of length.

    Attributes
    ----------
    state : BlockState
        Of the header alone.
    used : int, bytes
        Length of the header.
    size : int, bytes
        Length of the payload it states.
    """

    state: BlockState
    used: int = 0
    size: int = 0


def block_header(data: bytes) -> BlockHeader:
    """Give the header at the front of ``data``.

    Parameters
    ----------
    data : bytes
        Begins where the block should.

    Returns
    -------
    BlockHeader
        Invalid too for the indefinite form ``#0``: it ends with a line end marked by a wire that
        a serial line has not, so it can't be told from data that hold a line end.

    Source
    ------
    IEEE 488.2-1992, 8.7.9 (definite length) and 8.7.10 (indefinite); clauses from memory.
    """
    if not data:
        return BlockHeader(BlockState.INCOMPLETE)
    if data[:1] != b"#" or not (data[1:2].isdigit() or len(data) == 1) or data[1:2] == b"0":
        return BlockHeader(BlockState.INVALID)
    if len(data) == 1:
        return BlockHeader(BlockState.INCOMPLETE)
    count = int(data[1:2])
    digits = data[2 : 2 + count]
    if digits and not digits.isdigit():
        return BlockHeader(BlockState.INVALID)
    if len(digits) < count:
        return BlockHeader(BlockState.INCOMPLETE)
    return BlockHeader(BlockState.COMPLETE, 2 + count, int(digits))
