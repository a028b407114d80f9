"""Acquire: clock, bus, and one reader thread for each instrument."""

from meterlog.acquire.acquisition import Acquisition
from meterlog.acquire.bus import Bus, Item, Sink
from meterlog.acquire.choice import MeterChoice
from meterlog.acquire.clock import Clock
from meterlog.acquire.reader_state import ReaderState

__all__ = [
    "Acquisition",
    "Bus",
    "Clock",
    "Item",
    "MeterChoice",
    "ReaderState",
    "Sink",
]
