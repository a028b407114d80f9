"""Calm: a scene in real time is played again where it failed and the machine had stalled in it.

Such a scene asks for lines every 20 ms, say, and for what is made of exactly these. Where other
work kept the sender from sending in time, it was another scene. A fault of the program shows on a
calm machine at the first time, and on one that stalls each time at the last.
"""

import threading
import time
from contextlib import nullcontext

_PACE_S = 0.002
_TRIES = 4


class StallWatch:
    """A thread that wakes every 2 ms, and keeps by how much it was late at worst."""

    def __init__(self):
        self.worst_s = 0.0
        self._over = threading.Event()
        self._before = 0.0
        self._thread = threading.Thread(target=self._watch, name="stall-watch", daemon=True)

    def __enter__(self):
        self._before = time.monotonic()  # a stall before the thread's first line counts, too
        self._thread.start()
        return self

    def __exit__(self, *_):
        self._over.set()
        self._thread.join()

    def _watch(self):
        while not self._over.is_set():
            time.sleep(_PACE_S)
            now = time.monotonic()
            self.worst_s = max(self.worst_s, now - self._before - _PACE_S)
            self._before = now


def play(scene, most_s, told=lambda _: None):
    """Play a scene; again, some times at most, where it failed and the machine stalled for longer.

    What the scene is given is not made again: it must stand being used more than once. ``told`` is
    given the stall of each that failed and is played again, in seconds.
    """
    for _ in range(_TRIES - 1):
        with StallWatch() as watch:
            try:
                return scene()
            except AssertionError:
                if watch.worst_s <= most_s:
                    raise
        told(watch.worst_s)
    return scene()


def calmest(make, most_s, room, tries=3, on_time=lambda _: True):
    """Make something in real time until the machine did not stall in it, or so many times.

    For what several tests look at: none of them can play it again. ``on_time`` is given what was
    made: whether other processes that took part, whose stalls show in it alone, kept their pace.
    Where the workers share a ``room``, all but the first are made beside no test of the others.
    """
    for tried in range(tries):
        with room.alone() if room and tried else nullcontext(), StallWatch() as watch:
            made = make()
        if watch.worst_s <= most_s and on_time(made):
            break
    return made
