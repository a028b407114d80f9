"""Asking: which meter is at which port, found without changing anything in what is there."""

from meterlog.acquire.asking.discovery import Discovery, PortProgress, ask_ports
from meterlog.acquire.asking.port_answer import Fit, LiveValue, Outcome, PortAnswer

__all__ = [
    "Discovery",
    "Fit",
    "LiveValue",
    "Outcome",
    "PortAnswer",
    "PortProgress",
    "ask_ports",
]
