"""TimingText: what a ``timing`` event says of an instrument's times, and back."""

from __future__ import annotations

import re
from dataclasses import dataclass

_UNCERTAINTY = re.compile(r"standard uncertainty ([0-9.]+(?:e-?[0-9]+)?) s")


@dataclass(frozen=True, slots=True)
class TimingFound:
    """What has been found of an instrument's times so far.

    Attributes
    ----------
    time_u_s : float or None, seconds
        Standard uncertainty of its times against this computer's clock.
    pace_s : float or None, seconds
        Of an instrument without a clock: from one reading to the next.
    ppm, ppm_u : float or None
        Of one with a clock: by how much it runs fast, and the standard uncertainty.
    points : int
        That the line rests on.
    scatter_s : float or None, seconds
        Residual standard deviation of these.
    mended, lost, crowded, jumps : int
        Readings that came late and have their own times; that are missing; that came when their
        time had passed, given to others or written as without data; times the clock was set or
        restarted.
    asked : bool
        Each reading answers a question: nothing can come late unseen.
    """

    time_u_s: float | None = None
    pace_s: float | None = None
    ppm: float | None = None
    ppm_u: float | None = None
    points: int = 0
    scatter_s: float | None = None
    mended: int = 0
    lost: int = 0
    crowded: int = 0
    jumps: int = 0
    asked: bool = False

    def __str__(self) -> str:
        """Say it on one line."""
        parts = [self._clock()]
        if not self.asked:
            parts += [f"came late and mended: {self.mended}", f"missing: {self.lost}"]
        if self.crowded:
            parts.append(f"came too late for their own times: {self.crowded}")
        if self.jumps:
            parts.append(f"its clock was set or restarted: {self.jumps} times")
        if self.time_u_s is not None:
            parts.append(f"standard uncertainty {self.time_u_s:.3g} s")
        return "; ".join(parts)

    def _clock(self) -> str:
        scatter = "" if self.scatter_s is None else f", scatter {self.scatter_s * 1e3:.2g} ms"
        if self.ppm is not None:
            known = "" if self.ppm_u is None else f" +-{2.0 * self.ppm_u:.2g} (k=2)"
            way = "fast" if self.ppm >= 0.0 else "slow"
            return (
                f"its clock runs {abs(self.ppm):.1f}{known} ppm {way},"
                f" from {self.points} points{scatter}"
            )
        if self.pace_s is not None:
            return f"a reading every {self.pace_s:.6g} s, from {self.points} points{scatter}"
        if self.asked:
            return "each reading was taken between its question and its answer"
        return "times by arrival: no steady pace and no clock of its own"


def span_words(seconds: float) -> str:
    """Write a short time with about two figures and the unit that suits it."""
    if seconds >= 0.0995:
        return f"{seconds:.2g} s" if seconds < 9.95 else f"{seconds:.0f} s"
    return f"{seconds * 1e3:.2g} ms"


def time_u_of(text: str) -> float | None:
    """Give the standard uncertainty, seconds, that a ``timing`` event states; None for none."""
    found = _UNCERTAINTY.search(text)
    return float(found[1]) if found else None
