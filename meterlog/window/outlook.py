"""Outlook: which stretch of the recording is on screen, following the newest or looking back."""

from __future__ import annotations

WIDTHS_S = (2.0, 5.0, 10.0, 20.0, 30.0, 60.0, 120.0, 300.0, 600.0, 1800.0, 3600.0, 14_400.0)


JUMPS = 40


class Outlook:
    """The stretch shown. While following, its end is the newest reading."""

    def __init__(self, width_s: float = 30.0) -> None:
        self.follows = True
        self.width_s = width_s
        self._start_ns = 0

    def stretch(self, end_ns: int) -> tuple[int, int]:
        """Give start and end of the stretch shown, in nanoseconds, ``end_ns`` being the newest."""
        width = round(self.width_s * 1e9)
        if self.follows:
            # In jumps: the axes stand still between them, and so do the peaks of old readings.
            jump = max(width // JUMPS, 1)
            behind = max(end_ns - width, 0)
            self._start_ns = -(-behind // jump) * jump
        return self._start_ns, self._start_ns + width

    def show(self, start_ns: int, end_ns: int) -> None:
        """Look back at a stretch of one's own choice."""
        self.follows = False
        self._start_ns = max(start_ns, -round(0.05 * (end_ns - start_ns)))
        self.width_s = max((end_ns - start_ns) / 1e9, 0.001)

    def show_all(self, end_ns: int) -> None:
        """Look at everything up to ``end_ns``."""
        self.show(0, max(round(end_ns * 1.01), 1_000_000_000))

    def move(self, share: float) -> None:
        """Move by a share of the width, to earlier when negative."""
        self.follows = False
        self._start_ns = max(self._start_ns + round(share * self.width_s * 1e9), 0)

    def zoom(self, steps: int) -> None:
        """Show less (positive) or more (negative); the middle stays unless following."""
        sizes = [size for size in WIDTHS_S if size > self.width_s * 1.001]
        smaller = [size for size in WIDTHS_S if size < self.width_s * 0.999]
        middle = self._start_ns + round(self.width_s * 5e8)
        for _ in range(abs(steps)):
            if steps > 0 and smaller:
                self.width_s = smaller[-1]
            elif steps < 0 and sizes:
                self.width_s = sizes[0]
        if not self.follows:
            self._start_ns = max(middle - round(self.width_s * 5e8), 0)
