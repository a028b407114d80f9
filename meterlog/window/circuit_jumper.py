"""CircuitJumper: a fused jumper, put in by its two ends one after the other."""

from __future__ import annotations

from dataclasses import replace

from meterlog.model import CircuitState, PointKind, ProbePoint
from meterlog.model.errors import UsageError
from meterlog.window.words import say


class CircuitJumper:
    """Which end of a jumper was chosen, if any.

    Attributes
    ----------
    start : str
        Node of the end that was chosen first; empty while none waits for its other end.
    """

    def __init__(self) -> None:
        self.start = ""

    def drop(self) -> None:
        """Forget the end that was chosen."""
        self.start = ""

    def end(self, point: ProbePoint | None, state: CircuitState) -> CircuitState | None:
        """Choose an end: the first, or the other one.

        Returns
        -------
        CircuitState or None
            With the jumper in, or out where it was in; None after the first end, and where both
            are the same.

        Raises
        ------
        UsageError
            Nothing can be clipped on there.
        """
        if point is None or point.kind is not PointKind.VOLTAGE:
            raise UsageError(
                say("no jumper goes there."),
                subject=point.label if point is not None else say("no point"),
                remedy=say("It goes from node to node: choose a round test point."),
            )
        node = point.nodes[0]
        if not self.start:
            self.start = node
            return None
        first, self.start = self.start, ""
        if first == node:
            return None
        ends = (min(first, node), max(first, node))
        return replace(state, jumpers=state.jumpers ^ {ends})
