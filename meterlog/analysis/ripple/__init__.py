"""Ripple: what a fast current shows of the motor's turning, its bars and its brushes."""

from meterlog.analysis.ripple.watch import RippleWatch

__all__ = ["RippleWatch"]
