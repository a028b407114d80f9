"""LibraryWork: the library's long work: looking through folders, and judging, one at a time."""

from __future__ import annotations

import time
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path

from meterlog.window.long_work import LongWork
from meterlog.window.words import say
from meterlog.work.library import Library, Refreshed
from meterlog.work.library.apart import judge_apart, read_apart

_JUDGED_LOT = 200
"""So many are judged until the folders are looked through again."""
_READ_HERE = 20
"""More that are new or changed are read in another process."""


class LibraryWork:
    """Nothing here waits; :meth:`tick` fetches what is done.

    Parameters
    ----------
    index : Path or None
        File of the index; None: the usual one.

    Attributes
    ----------
    library : Library
    gone : mapping of Path to str
        Folders that can't be looked into, and why.
    unsealed : tuple of Path
        What was cut off.
    trouble : str
    looked_s : float
        When the folders were looked through, by the monotonic clock.
    """

    def __init__(self, index: Path | None) -> None:
        self.library = Library(index)
        self.gone: Mapping[Path, str] = {}
        self.unsealed: tuple[Path, ...] = ()
        self.trouble = ""
        self.looked_s = float("-inf")
        self._looking: LongWork[Refreshed] = LongWork("library")
        self._judging: LongWork[int] = LongWork("judging")
        self._forgetting: list[Path] = []
        self._roots: tuple[Path, ...] = ()
        self._looked_into: tuple[Path, ...] = ()
        self._again = False
        self._to_judge = 0
        self._most_to_judge = 0
        self._usual = Path()
        self._halted = False
        self._made = 0

    @property
    def busy(self) -> bool:
        """True while something is under way."""
        return self._looking.busy or self._judging.busy

    @property
    def stopping(self) -> bool:
        """True once it was asked to stop."""
        return self._looking.cancelling or self._judging.cancelling

    @property
    def words(self) -> str:
        """What goes on, for the strip; empty for nothing that takes long."""
        if self._judging.busy:
            return say(
                "Judging {to_judge} without a verdict, the newest first", to_judge=self._to_judge
            )
        return say("Reading what is new in the folders") if self._looking.part > 0.0 else ""

    @property
    def part(self) -> float:
        """The part of it that is done, 0 to 1."""
        if not self._judging.busy:
            return self._looking.part
        done = self._judging.part * min(self._to_judge, _JUDGED_LOT)
        return 1.0 - (self._to_judge - done) / max(self._most_to_judge, 1)

    @property
    def offered(self) -> int:
        """How many could be judged, where somebody stopped that."""
        return self._to_judge if self._halted and not self._judging.busy else 0

    def look(self, roots: Sequence[Path], usual: Path) -> None:
        """Look through folders; where that goes on already, once more afterwards.

        Parameters
        ----------
        roots : sequence of Path
        usual : Path
            One of them, which need not be there before something is recorded.
        """
        self._roots = tuple(roots)
        self._usual = usual
        self.looked_s = time.monotonic()
        if self._judging.busy or not self._begin():
            self._again = True

    def forget(self, root: Path) -> None:
        """Drop from the index what is known of a folder."""
        self._forgetting.append(root)
        self.gone = {one: why for one, why in self.gone.items() if one != root}
        self.unsealed = tuple(one for one in self.unsealed if not one.is_relative_to(root))
        self.look([one for one in self._roots if one != root], self._usual)

    def cancel(self) -> None:
        """Stop what goes on; judging begins only when it is asked for."""
        self._halted = self._halted or self._judging.busy
        self._looking.cancel()
        self._judging.cancel()

    def go_on_judging(self) -> None:
        """Judge again after it was stopped."""
        self._halted = False

    def tick(self, *, may_judge: bool) -> bool:
        """Fetch what is done and begin what is due; True where something new is known.

        Parameters
        ----------
        may_judge : bool
            Nothing that goes first is under way, such as a recording.
        """
        news = self._fetch()
        if self._judging.busy and not may_judge:
            self._judging.cancel()
        if self.busy:
            return news
        made_anew = self.library.times_made != self._made and bool(self._roots)
        if self._again or made_anew:
            self._begin()
        elif may_judge and self._to_judge and not self._halted:
            roots = tuple(root for root in self._roots if root not in self.gone)
            self._judging.begin(
                lambda tell: judge_apart(self.library.path, roots, _JUDGED_LOT, tell)
            )
        return news

    def close(self) -> None:
        """Stop; what has been read and judged is kept."""
        self._again = False
        self._looking.cancel()
        self._judging.cancel()
        self._looking.wait()
        self._judging.wait()
        self.library.close()

    def _begin(self) -> bool:
        roots, forgotten, usual = self._roots, tuple(self._forgetting), self._usual

        def work(tell: Callable[[float], None]) -> Refreshed:
            for root in forgotten:
                self.library.forget(root)
            there = [root for root in roots if root != usual or root.is_dir()]
            looked = self.library.refresh(there, lambda _: tell(0.0), _READ_HERE)
            if looked.left:
                read_apart(self.library.path, there, tell)
                looked = self.library.refresh(there, lambda _: tell(1.0), _READ_HERE)
            return looked

        begun = self._looking.begin(work)
        if begun:
            self._again, self._looked_into = False, roots
            del self._forgetting[: len(forgotten)]
        return begun

    def _fetch(self) -> bool:
        looked, judged = self._looking.fetch(), self._judging.fetch()
        if looked is not None:
            found, self.trouble = looked
            self._made = self.library.times_made
            self._looking.part = 0.0
            # Of other folders than are looked into now; a look into these follows.
            if found is not None and self._looked_into == self._roots:
                self.gone, self.unsealed = dict(found.gone), found.unsealed
                self._to_judge = found.to_judge
                more = self._to_judge and self._most_to_judge
                self._most_to_judge = max(more, self._to_judge)
            self.looked_s = time.monotonic()
        if judged is not None:
            many, trouble = judged
            self.trouble = trouble or self.trouble
            self._halted = self._halted or bool(trouble)
            # One look more tells what is left, also after a recording broke it off.
            self._again = self._again or many != 0
            self._to_judge = 0
        return looked is not None or judged is not None
