"""Words: the frozen types that every layer gives and takes, and the errors."""

from meterlog.model.about import About, Origin
from meterlog.model.accuracy import Accuracy, Range
from meterlog.model.block import UNUSABLE, Block, Flag, join
from meterlog.model.channel import Channel, Quantity, Role
from meterlog.model.doubt import Doubt, DoubtKind
from meterlog.model.event import Event, EventKind
from meterlog.model.finding import Finding, FindingKind, Verdict
from meterlog.model.instrument import Identity, Instrument
from meterlog.model.job import Job
from meterlog.model.limits import Limits, SpeedLimits
from meterlog.model.raw import RawBytes
from meterlog.model.review import CatchChance, Review
from meterlog.model.sensor import Sensor, SensorKind, Zero
from meterlog.model.span import Span, SpanKind
from meterlog.model.step import Step

__all__ = [
    "UNUSABLE",
    "About",
    "Accuracy",
    "Block",
    "CatchChance",
    "Channel",
    "Doubt",
    "DoubtKind",
    "Event",
    "EventKind",
    "Finding",
    "FindingKind",
    "Flag",
    "Identity",
    "Instrument",
    "Job",
    "Limits",
    "Origin",
    "Quantity",
    "Range",
    "RawBytes",
    "Review",
    "Role",
    "Sensor",
    "SensorKind",
    "Span",
    "SpanKind",
    "SpeedLimits",
    "Step",
    "Verdict",
    "Zero",
    "join",
]
