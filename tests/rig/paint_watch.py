"""PaintWatch: how long a window's thread could not paint, and what ran in the meantime.

A gap is the time between two turns of the window's event loop. Of each the time is taken off in
which the system gave the processor to others: that says nothing about the program. What is left
is what the program itself did: work of this thread, a wait for the interpreter's lock, for a
file, for a thread. A gap in which the program did nothing at all, its loop waiting, is the
machine's, which may itself stand still for a while. So a busy machine does not lengthen a gap; a
slow one does, and the limit with it, see :func:`allowed_s`. A call that holds the interpreter's
lock and only waits is not told apart from a machine that stands still.
"""

import sys
import threading
import time
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from types import CodeType

from PySide6.QtCore import QObject, Qt, QTimer

from tests.rig.pace import pace
from tests.rig.thread_waits import ThreadWaits

LONGEST_S = 0.05
"""What must stand: longer than this the loop may not be blocked."""
_ROOM = 2.0
_TURN_MS = 3
_LOOK_S = 0.02
_FRAMES = 12


@dataclass
class Gap:
    """One time in which the loop did not turn.

    Attributes
    ----------
    wall_s : float, seconds
        Between the two turns.
    waited_s : float, seconds
        Of these, in which threads of this process waited for a processor.
    worked_s : float, seconds of processor time
        Of the window's thread.
    all_worked_s : float, seconds of processor time
        Of all threads of this process.
    in_a_call : bool
        The window's thread was seen in a call, not in its loop.
    ran : str
        What the window's thread, and others, were at; empty where nobody had time to look.
    """

    wall_s: float
    waited_s: float
    worked_s: float
    all_worked_s: float = 0.0
    in_a_call: bool = False
    ran: str = ""

    @property
    def own_s(self) -> float:
        """What the program itself is to blame for."""
        left_s = self.wall_s - self.waited_s
        did = self.in_a_call or self.all_worked_s > left_s / 2.0
        # Its own work is never taken off.
        return max(left_s if did else 0.0, self.worked_s)

    def __str__(self) -> str:
        return (
            f"{self.own_s * 1e3:.0f} ms (of {self.wall_s * 1e3:.0f} ms; this thread worked for"
            f" {self.worked_s * 1e3:.0f} ms)\n{self.ran}"
        )


def allowed_s() -> float:
    """Give how long a gap may be in a test: twice what must stand, in this machine's own time."""
    return LONGEST_S * _ROOM * max(1.0, pace())


def blocking(work: Callable[[], object], times: int = 3, limit_s: float | None = None) -> list[Gap]:
    """Do some work until the loop was free all the time; give the gaps of the last time if never.

    What blocks it does so each time. What the machine does meanwhile, such as starting a process
    while others want the processor, does not.
    """
    late: list[Gap] = []
    limit_s = allowed_s() if limit_s is None else limit_s
    for _ in range(times):
        with PaintWatch() as watch:
            work()
        late = watch.over(limit_s)
        if not late:
            break
    return late


@dataclass
class PaintWatch:
    """Watches the thread it is made in, from :meth:`begin` to :meth:`end`."""

    gaps: list[Gap] = field(default_factory=list)
    turns: int = 0

    def __post_init__(self) -> None:
        self._owner = QObject()
        self._timer = QTimer(self._owner)
        self._timer.setTimerType(Qt.TimerType.PreciseTimer)
        self._timer.setInterval(_TURN_MS)
        self._timer.timeout.connect(self._turn)
        self._thread_id = threading.get_ident()
        self._over = threading.Event()
        self._seen, self._called = "", False
        self._waits = ThreadWaits()
        self._loop: CodeType | None = None
        self._looker: threading.Thread | None = None
        self._looker_id = ""

    def __enter__(self) -> "PaintWatch":
        self.begin()
        return self

    def __exit__(self, *_: object) -> None:
        self.end()

    def begin(self) -> None:
        """Begin to watch; what was seen before is forgotten."""
        self.gaps, self.turns = [], 0
        self._mark()
        if self._looker is None:
            self._over.clear()
            self._looker = threading.Thread(target=self._look, name="paint-watch", daemon=True)
            self._looker.start()
            self._looker_id = str(self._looker.native_id)
        self._timer.start()

    def end(self) -> None:
        """Watch no more; a gap under way counts."""
        if self._looker is None:
            return
        self._timer.stop()
        self._turn(ending=True)
        self._over.set()
        self._looker.join()
        self._looker = None
        self._waits.close()

    @property
    def longest(self) -> Gap:
        """The longest gap by what the program is to blame for."""
        return max(self.gaps, key=lambda gap: gap.own_s, default=Gap(0.0, 0.0, 0.0))

    def over(self, limit_s: float) -> list[Gap]:
        """Give the gaps longer than a limit, the longest first."""
        late = [gap for gap in self.gaps if gap.own_s > limit_s]
        return sorted(late, key=lambda gap: -gap.own_s)

    def _mark(self) -> None:
        self._wall_s = time.perf_counter()
        self._work_s, self._all_s = time.thread_time(), time.process_time()
        self._delays = self._waits.read()
        self._seen, self._called = "", False

    def _turn(self, *, ending: bool = False) -> None:
        """Close the gap since the last turn. The next one begins here and now, so that nothing is
        lost of what holds this thread up while it reads how the gap was.
        """
        turned_s, work_s, all_s = time.perf_counter(), time.thread_time(), time.process_time()
        wall_s, self._wall_s = turned_s - self._wall_s, turned_s
        worked_s, self._work_s = work_s - self._work_s, work_s
        all_worked_s, self._all_s = all_s - self._all_s, all_s
        seen, self._seen = self._seen, ""
        called, self._called = self._called, False
        self.turns += 1
        if not ending:
            self._loop = sys._getframe(1).f_code
        before, self._delays = self._delays, self._waits.read()
        if wall_s >= _LOOK_S:
            now = {one: delay for one, delay in self._delays.items() if one != self._looker_id}
            # The window waits for others, not for the watch.
            waited_s = max((now[one] - before.get(one, 0.0) for one in now), default=0.0)
            # Where no one could look, it was one call that let no other thread run: its thread
            # has not come further since.
            seen = seen or _stacks(self._thread_id, 0)
            self.gaps.append(Gap(wall_s, waited_s, worked_s, all_worked_s, called, seen))

    def _look(self) -> None:
        while not self._over.wait(_LOOK_S / 2):
            late_s = time.perf_counter() - self._wall_s
            if late_s > _LOOK_S * 1.5:
                self._called |= sys._current_frames()[self._thread_id].f_code is not self._loop
                self._seen = _stacks(self._thread_id, threading.get_ident())


def _stacks(first: int, but: int) -> str:
    """Give where each thread but one is, ``first`` ahead; without a look at the source files."""
    names = {one.ident: one.name for one in threading.enumerate()}
    frames = sys._current_frames()
    words = []
    for ident in sorted(frames, key=lambda one: one != first):
        frame, lines = frames[ident], []
        while ident != but and frame is not None and len(lines) < _FRAMES:
            code = frame.f_code
            lines.append(f"    {Path(code.co_filename).name}:{frame.f_lineno} {code.co_name}")
            frame = frame.f_back
        if lines:
            words.append("\n".join([f"  in {names.get(ident, ident)}:", *lines]))
    return "\n".join(words)
