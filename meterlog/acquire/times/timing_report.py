"""TimingReport: says in the recording what is known of an instrument's times."""

from __future__ import annotations

import math

from meterlog.acquire.times.device_time import Kind
from meterlog.acquire.times.stamping import Stamper
from meterlog.model.timing_text import TimingFound

EVERY_NS = 600_000_000_000
"""What is known is told every ten minutes, so that a recording that breaks off has it too."""
LOSS_EVERY_NS = 10_000_000_000
"""Losses are put together for so long."""
SETTLED_NS = 2_500_000_000
"""What seems lost may still come: it is told once nothing has changed for so long."""


class TimingReport:
    """Tells losses once they are sure and the whole every ten minutes.

    Parameters
    ----------
    stamper : Stamper
    time_u_s : float or None, seconds
        As known when the instrument was connected.
    """

    def __init__(self, stamper: Stamper, time_u_s: float | None) -> None:
        self._stamper = stamper
        self._time_u_s = time_u_s
        self._whole_ns = EVERY_NS
        self._loss_ns = 0
        self._told = (0, 0, 0)
        self._seen = (0, 0, 0)
        self._seen_ns = 0
        self._mended_before: int | None = None

    def found(self) -> TimingFound:
        """Give what is known by now."""
        stamper, line = self._stamper, self._stamper.lines
        ppm = ppm_u = pace_s = scatter_s = None
        points = 0
        if line is not None and line[1].points:
            kind, clock = line
            points, scatter_s = clock.points, clock.scatter_s
            if kind is Kind.COUNT:
                pace_s = stamper.pace_s
            else:
                ppm, ppm_u = clock.ppm, clock.ppm_u
        time_u_s = self._time_u_s
        if time_u_s is not None:
            time_u_s = math.hypot(time_u_s, scatter_s or 0.0)
        counts = stamper.counts
        return TimingFound(
            time_u_s=time_u_s,
            pace_s=pace_s,
            ppm=ppm,
            ppm_u=ppm_u,
            points=points,
            scatter_s=scatter_s,
            mended=counts.mended,
            lost=stamper.lost,
            crowded=stamper.crowded,
            jumps=counts.jumps,
            asked=line is None and stamper.asked,
        )

    def was_silent(self) -> None:
        """Note that a silence has just ended: it may turn out that nothing was missing."""
        if self._mended_before is None:
            self._mended_before = self._stamper.counts.mended

    def _after_silence(self) -> list[str]:
        if self._mended_before is None or self._stamper.waits:
            return []
        mended = self._stamper.counts.mended - self._mended_before
        missing = self._stamper.lost > self._told[0]
        self._mended_before = None
        if not mended:
            return []
        rest = "others are missing" if missing else "none of them is missing"
        return [f"{mended} readings came late, and have the times they were taken at; {rest}"]

    def due(self, now_ns: int) -> list[str]:
        """Give what is to be told now; mostly nothing."""
        said = self._after_silence()
        if self._counted() != self._seen:
            self._seen, self._seen_ns = self._counted(), now_ns
        if now_ns >= self._loss_ns and now_ns - self._seen_ns >= SETTLED_NS:
            loss = self._loss()
            if loss:
                self._loss_ns = now_ns + LOSS_EVERY_NS
                said.append(loss)
        if now_ns >= self._whole_ns:
            self._whole_ns = now_ns + EVERY_NS
            said.append(str(self.found()))
        return said

    def last(self) -> list[str]:
        """Give what is to be told at the end."""
        loss = self._loss()
        return [*([loss] if loss else []), str(self.found())]

    def _counted(self) -> tuple[int, int, int]:
        return self._stamper.lost, self._stamper.counts.jumps, self._stamper.crowded

    def _loss(self) -> str:
        stamper = self._stamper
        now = self._counted()
        lost, jumps, crowded = (new - old for new, old in zip(now, self._told, strict=True))
        self._told = now
        said = []
        if lost > 0:
            samples = stamper.lines is not None and stamper.lines[0] is Kind.SAMPLES
            what = "sample" if samples else "reading"
            many = "" if lost == 1 else "s"
            said.append(f"{lost} {what}{many} never came: missing in their place")
        if jumps > 0:
            said.append("its clock was set, restarted or stood still: tied anew")
        if crowded > 0:
            said.append(
                f"{crowded} readings came when their time had passed: their times are only in order"
            )
        return "; ".join(said)
