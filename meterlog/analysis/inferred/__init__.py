"""What readings tell although no single one shows it: short opens, pulses, blanks, rhythm."""

from meterlog.analysis.inferred.rhythm import rhythm
from meterlog.analysis.inferred.unseen import Unseen, UnseenFound
from meterlog.analysis.inferred.without_pulses import without_pulses

__all__ = ["Unseen", "UnseenFound", "rhythm", "without_pulses"]
