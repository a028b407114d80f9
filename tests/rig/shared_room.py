"""SharedRoom: several workers' tests side by side, or one alone."""

from contextlib import contextmanager

try:
    import fcntl
except ImportError:  # Windows
    fcntl = None


class SharedRoom:
    """Lets tests of several processes run side by side, or one alone.

    Who wants to be alone shuts the gate, so that no other begins, and waits for those that run.
    """

    def __init__(self, gate, room):
        self._gate, self._room = gate, room

    def enter(self, *, alone):
        """Wait until it may begin."""
        how = fcntl.LOCK_EX if alone else fcntl.LOCK_SH
        fcntl.flock(self._gate, how)
        fcntl.flock(self._room, how)
        if not alone:
            fcntl.flock(self._gate, fcntl.LOCK_UN)

    def leave(self):
        """Make room; does nothing outside."""
        fcntl.flock(self._room, fcntl.LOCK_UN)
        fcntl.flock(self._gate, fcntl.LOCK_UN)

    @contextmanager
    def alone(self):
        """Be in it alone; for what is made outside of any test."""
        self.enter(alone=True)
        try:
            yield
        finally:
            self.leave()


@contextmanager
def shared_room(folder):
    """Give the room of all who are given the same folder; None without one."""
    if folder is None or fcntl is None:
        yield None
        return
    with (folder / "gate").open("w") as gate, (folder / "room").open("w") as room:
        yield SharedRoom(gate, room)
