"""meterlog: prove which part of a cabin-fan circuit is bad, and that the new part is good."""

__version__ = "0.1.0"
