"""The window: it arranges and shows; what it shows is computed below it."""

from meterlog.window.application import open_window

__all__ = ["open_window"]
