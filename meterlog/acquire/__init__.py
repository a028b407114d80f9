"""Acquire: clock, bus, one reader thread for each instrument, and finding instruments."""

from meterlog.acquire.acquisition import Acquisition
from meterlog.acquire.bus import Bus, Item, Sink
from meterlog.acquire.choice import MeterChoice
from meterlog.acquire.clock import Clock
from meterlog.acquire.discovery import Discovery, PortProgress, ask_ports
from meterlog.acquire.port_answer import Fit, LiveValue, Outcome, PortAnswer
from meterlog.acquire.reader_state import ReaderState
from meterlog.acquire.zeroing import ZeroBounds, ZeroTaking, bounds_when_asked

__all__ = [
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
    "ZeroBounds",
    "ZeroTaking",
    "ask_ports",
    "bounds_when_asked",
]
