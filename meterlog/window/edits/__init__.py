"""Edits: a sealed recording's marks and limits, amended on top of it."""

from meterlog.window.edits.edits_panel import EditsPanel

__all__ = ["EditsPanel"]
