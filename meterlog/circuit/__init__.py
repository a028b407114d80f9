"""Circuit: which part of the fan's circuit is bad, from readings at its test points."""

from meterlog.circuit.isolation import Isolation, circuit_verdict

__all__ = ["Isolation", "circuit_verdict"]
