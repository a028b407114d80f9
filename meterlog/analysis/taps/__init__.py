"""Taps: the tap test in the form in which it is accepted, with its probability by chance."""

from meterlog.analysis.taps.chance import chance_of, returns_of
from meterlog.analysis.taps.gone_stretches import gone_stretches
from meterlog.analysis.taps.moved import moves_that_stopped
from meterlog.analysis.taps.watch import TapWatch

__all__ = ["TapWatch", "chance_of", "gone_stretches", "moves_that_stopped", "returns_of"]
