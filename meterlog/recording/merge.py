"""Merge: several instruments' Blocks and the events as one row of things in time."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Literal

import numpy as np

from meterlog.model import Block, Event


class _Head:
    """The Block of one source that comes next, and what is left of it."""

    def __init__(self, blocks: Iterator[Block]) -> None:
        self._blocks = blocks
        self.block: Block | None = None
        self.advance()

    def advance(self) -> None:
        """Go to the next Block that has rows."""
        self.block = next((block for block in self._blocks if len(block)), None)

    def before(self, t_ns: int, side: str) -> Block | None:
        """Cut off the rows before ``t_ns`` (with ``side`` right: up to and including it)."""
        if self.block is None:
            return None
        # A file may hold times that run back, which no search finds: whoever ends here goes whole,
        # or nothing would ever go on.
        whole = side == "right" and int(self.block.t_ns[-1]) <= t_ns
        end: Literal["left", "right"] = "left" if side == "left" else "right"
        cut = len(self.block) if whole else int(np.searchsorted(self.block.t_ns, t_ns, end))
        if cut == 0:
            return None
        part = self.block.rows(0, cut)
        if cut == len(self.block):
            self.advance()
        else:
            self.block = self.block.rows(cut, len(self.block))
        return part


def merge(sources: Sequence[Iterator[Block]], events: Sequence[Event]) -> Iterator[Block | Event]:
    """Give Blocks and events merged by time.

    No source runs ahead of another by more than one of its Blocks, so whoever pairs them needs
    to hold little.

    Parameters
    ----------
    sources : sequence of iterator of Block
        One a source, each with times that never fall.
    events : sequence of Event
        In time order.

    Yields
    ------
    Block or Event
        Each event after all rows before its time and before all rows at or after it. Blocks are
        cut where that needs it.
    """
    heads = [_Head(blocks) for blocks in sources]
    for event in events:
        yield from _rows(heads, event.t_ns)
        yield event
    yield from _rows(heads, None)


def _rows(heads: list[_Head], until_ns: int | None) -> Iterator[Block]:
    while True:
        ends = [int(head.block.t_ns[-1]) for head in heads if head.block is not None]
        if not ends:
            return
        end, side = min(ends), "right"
        if until_ns is not None and end >= until_ns:
            end, side = until_ns, "left"
        for head in heads:
            part = head.before(end, side)
            if part is not None:
                yield part
        if side == "left":
            return
