"""FoundCuts: found changes as the bounds of steps, in a second review of the same recording."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.found_steps.accepted import accepted_events
from meterlog.analysis.found_steps.found_step import FoundStep
from meterlog.analysis.labels import Stretch
from meterlog.analysis.rows import Rows
from meterlog.analysis.timeline import SpeedTimeline
from meterlog.model import Limits, Step

_EVER = -(2**62)


class FoundCuts:
    """Cuts stretches at found changes, so that the figures of steps are gathered between them.

    What the motor is judged to be doing does not change by it: only the statistics are cut, and
    the steps stay without a commanded speed.

    Parameters
    ----------
    changes : sequence of FoundStep
        In time order, at least one.
    limits : Limits

    Attributes
    ----------
    timeline : SpeedTimeline
        Of the proposed labels: for whoever gathers the steps.
    """

    def __init__(self, changes: Sequence[FoundStep], limits: Limits) -> None:
        self.timeline = SpeedTimeline()
        for event in accepted_events(changes):
            self.timeline.add(event)
        self._edges_ns = {one.t_ns: one.edge_ns for one in changes}
        start_up_ns = round(limits.inrush_window_s * 1e9)
        seen = [*changes[0].seen_before_ns, *(one for c in changes for one in c.seen_ns)]
        moving = [(one.t_ns - one.edge_ns, one.t_ns + one.edge_ns + start_up_ns) for one in changes]
        bounds = {_EVER, *self._edges_ns, *(t for several in (*seen, *moving) for t in several)}
        self._bounds_ns = np.array(sorted(bounds), np.int64)
        self._settled = _within(seen, self._bounds_ns) & ~_within(moving, self._bounds_ns)
        """From each bound to the next."""

    def recut(self, rows: Rows, stretches: Sequence[Stretch]) -> list[Stretch]:
        """Give the stretches cut at the changes, each with its label as speed.

        Steady is what lies where the level was seen and no longer settles from the change: not the
        time for which a change is uncertain, nor a start-up, nor running that was no level.
        """
        cut: list[Stretch] = []
        for stretch in stretches:
            cut += self._cut(rows, stretch)
        return cut

    def _cut(self, rows: Rows, stretch: Stretch) -> list[Stretch]:
        t = rows.t_ns[stretch.start : stretch.stop]
        inside = slice(*np.searchsorted(self._bounds_ns, (int(t[0]), int(t[-1])), side="right"))
        places = {0, len(t), *np.searchsorted(t, self._bounds_ns[inside]).tolist()}
        cut = []
        for a, b in pairwise(sorted(places)):
            now = int(np.searchsorted(self._bounds_ns, int(t[a]), side="right")) - 1
            steady = stretch.steady and bool(self._settled[now])
            label = self.timeline.at(int(t[a]))
            cut.append(Stretch(stretch.start + a, stretch.start + b, label, steady=steady))
        return cut

    def told(self, steps: Sequence[Step]) -> tuple[Step, ...]:
        """Give steps gathered by :attr:`timeline` as found ones: no speed, but a proposed one."""
        return tuple(
            replace(
                step,
                speed=None,
                found=True,
                proposed_speed=step.speed,
                edge_ns=self._edges_ns.get(step.start_ns, 0),
            )
            for step in steps
        )


def _within(windows: Sequence[tuple[int, int]], t_ns: NDArray[np.int64]) -> NDArray[np.bool_]:
    """Tell at which times at least one window has begun and not ended."""
    begun = np.sort(np.array([start for start, _ in windows], np.int64))
    ended = np.sort(np.array([end for _, end in windows], np.int64))
    more: NDArray[np.bool_] = np.searchsorted(begun, t_ns, side="right") > np.searchsorted(
        ended, t_ns, side="right"
    )
    return more
