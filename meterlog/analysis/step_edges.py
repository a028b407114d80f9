"""step_edge_ns: how well the beginning and the end of a step are known."""

from __future__ import annotations

from meterlog.model import Limits, Step


def step_edge_ns(step: Step, limits: Limits) -> int:
    """Give the larger uncertainty of a step's two edges, in nanoseconds.

    A step begins and ends when a hand pressed a key; one that was found in the current may begin
    where that is known less well.

    Parameters
    ----------
    step : Step
    limits : Limits
        ``command_lag_s`` is how far a command may lie from its mark.
    """
    return max(step.edge_ns, round(limits.command_lag_s * 1e9))
