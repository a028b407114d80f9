"""StopAsked: a recording ends only when that is asked for twice, by the key or by closing."""

from __future__ import annotations

import time

STOP_AGAIN_S = 2.0


class StopAsked:
    """Notes when it was asked for the first time.

    Attributes
    ----------
    closing : bool
        The window was to be closed: then it closes once all is sealed, whichever asks again.
    """

    def __init__(self) -> None:
        self.closing = False
        self._first_s = float("-inf")

    @property
    def pending(self) -> bool:
        """True as long as to ask once more would stop."""
        return time.monotonic() - self._first_s <= STOP_AGAIN_S

    def again(self, *, closing: bool = False) -> bool:
        """Ask; True where it was asked for just before."""
        if self.pending:
            self.closing |= closing
            self._first_s = float("-inf")
            return True
        self._first_s, self.closing = time.monotonic(), closing
        return False
