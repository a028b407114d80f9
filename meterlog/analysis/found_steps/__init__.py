"""Found steps: speed changes that nobody recorded, found in the current and proposed."""

from meterlog.analysis.found_steps.accepted import (
    accepted_events,
    accepted_limits,
    accepted_note,
)
from meterlog.analysis.found_steps.change_points import change_points
from meterlog.analysis.found_steps.cuts import FoundCuts
from meterlog.analysis.found_steps.finder import StepFinder
from meterlog.analysis.found_steps.found_step import FoundStep
from meterlog.analysis.found_steps.ranks import propose

__all__ = [
    "FoundCuts",
    "FoundStep",
    "StepFinder",
    "accepted_events",
    "accepted_limits",
    "accepted_note",
    "change_points",
    "propose",
]
