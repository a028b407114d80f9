"""Unsynced: what was taken since the disk last kept everything, in case it has to go elsewhere.

A slow disk takes seconds for a sync. Readings that come one by one are ten small objects each in
that time, among which what stays for the day would come to lie scattered: so they are put together.
"""

from __future__ import annotations

from array import array
from collections import Counter, deque
from collections.abc import Iterator
from itertools import pairwise

from meterlog.model import Block, RawBytes, join

TOGETHER = 32
"""So many of one instrument, small ones, become one."""
_SMALL_ROWS = 64
_SMALL_BYTES = 4_096


class _Rows:
    """Some Blocks that follow one another.

    Attributes
    ----------
    last : int
        How many items had been taken with the last of them.
    """

    def __init__(self, block: Block, last: int) -> None:
        self.last = last
        self._blocks = [block]
        self._open = len(block) <= _SMALL_ROWS

    def add(self, block: Block, last: int) -> bool:
        """Take one more; False where it is to begin a new lot."""
        alike = block.values.shape[1] == self._blocks[0].values.shape[1]
        if not self._open or not alike or len(block) > _SMALL_ROWS:
            return False
        self._blocks.append(block)
        self.last = last
        if len(self._blocks) >= TOGETHER:
            self._blocks = [join(self._blocks)]
            self._open = False
        return True

    def __len__(self) -> int:
        return sum(map(len, self._blocks))

    def items(self) -> Iterator[Block]:
        return iter(self._blocks)


class _Frames:
    """Some lots of bytes that follow one another; attributes as above."""

    def __init__(self, raw: RawBytes, last: int) -> None:
        self.last = last
        self._first = raw
        self._more_ns = array("q")
        self._ends = array("q", [0])
        self._more = bytearray()

    def add(self, raw: RawBytes, last: int) -> bool:
        """Take one more; False where it is to begin a new lot."""
        size = len(self._first.data) + len(self._more) + len(raw.data)
        if len(self) >= TOGETHER or size > _SMALL_BYTES:
            return False
        self._more_ns.append(raw.t_ns)
        self._more += raw.data
        self._ends.append(len(self._more))
        self.last = last
        return True

    def __len__(self) -> int:
        return 1 + len(self._more_ns)

    def items(self) -> Iterator[RawBytes]:
        yield self._first
        for t_ns, (start, end) in zip(self._more_ns, pairwise(self._ends), strict=True):
            yield RawBytes(self._first.source, t_ns, bytes(self._more[start:end]))


class Unsynced:
    """Blocks and bytes, those of each instrument in their order, to be let go from the front."""

    def __init__(self) -> None:
        self._taken = 0
        self._rows: dict[str, deque[_Rows]] = {}
        self._frames: dict[str, deque[_Frames]] = {}

    def add(self, item: Block | RawBytes) -> None:
        """Keep one more."""
        self._taken += 1
        if isinstance(item, Block):
            rows = self._rows.setdefault(item.source, deque())
            if not rows or not rows[-1].add(item, self._taken):
                rows.append(_Rows(item, self._taken))
            return
        frames = self._frames.setdefault(item.source, deque())
        if not frames or not frames[-1].add(item, self._taken):
            frames.append(_Frames(item, self._taken))

    def let_go(self, safe: int) -> tuple[Counter[str], Counter[str]]:
        """Let go of what lies wholly among the first ``safe`` items; the rest of a lot stays.

        Returns
        -------
        rows, frames : Counter of str
            How many went, of each instrument.
        """
        return _let_go(self._rows, safe), _let_go(self._frames, safe)

    def items(self) -> Iterator[Block | RawBytes]:
        """Give all that is kept, the bytes of each instrument before its Blocks."""
        for source in [*self._frames, *(one for one in self._rows if one not in self._frames)]:
            for frames in self._frames.get(source, ()):
                yield from frames.items()
            for rows in self._rows.get(source, ()):
                yield from rows.items()

    def taken_anew(self) -> None:
        """Count from now on as one does who has taken :meth:`items` and nothing before."""
        self._taken = 0
        kept, self._rows, self._frames = list(self.items()), {}, {}
        for item in kept:
            self.add(item)

    def last_ns(self) -> int:
        """Give the latest time of a reading, nanoseconds since the zero; 0 without one."""
        lots = [lots[-1] for lots in self._rows.values() if lots]
        ends = [int(block.t_ns[-1]) for rows in lots for block in rows.items() if len(block)]
        return max(ends, default=0)


def _let_go(lines: dict[str, deque[_Rows]] | dict[str, deque[_Frames]], safe: int) -> Counter[str]:
    gone: Counter[str] = Counter()
    for source, lots in lines.items():
        while lots and lots[0].last <= safe:
            gone[source] += len(lots.popleft())
    return gone
