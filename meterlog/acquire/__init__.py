"""Acquire: clock, bus, one reader thread for each instrument, and finding instruments."""

from meterlog.acquire.acquisition import Acquisition
from meterlog.acquire.asking import (
    Discovery,
    Fit,
    LiveValue,
    Outcome,
    PortAnswer,
    PortProgress,
    ask_ports,
)
from meterlog.acquire.bus import NO_HURRY_NS, Bus, Item, Sink
from meterlog.acquire.choice import MeterChoice
from meterlog.acquire.clock import Clock
from meterlog.acquire.reader_state import ReaderState
from meterlog.acquire.sleep_block import SleepBlock
from meterlog.acquire.time_watch import TimeWatch
from meterlog.acquire.zeroing import ZeroTaking, bounds_when_asked

__all__ = [
    "NO_HURRY_NS",
    "Acquisition",
    "Bus",
    "Clock",
    "Discovery",
    "Fit",
    "Item",
    "LiveValue",
    "MeterChoice",
    "Outcome",
    "PortAnswer",
    "PortProgress",
    "ReaderState",
    "Sink",
    "SleepBlock",
    "TimeWatch",
    "ZeroTaking",
    "ask_ports",
    "bounds_when_asked",
]
