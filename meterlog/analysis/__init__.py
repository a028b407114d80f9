"""Judgement: pure detectors and figures over arrays. No files, ports, clocks or Qt."""

from meterlog.analysis.detector import SpanDetector
from meterlog.analysis.moments import Moments
from meterlog.analysis.reviewer import Reviewer
from meterlog.analysis.rounding import with_uncertainty
from meterlog.analysis.uncertainty import coverage_factor
from meterlog.analysis.visibility import catch_chance, shortest_visible_s

__all__ = [
    "Moments",
    "Reviewer",
    "SpanDetector",
    "catch_chance",
    "coverage_factor",
    "shortest_visible_s",
    "with_uncertainty",
]
