"""Words: the frozen types that every layer gives and takes, and the errors."""

from meterlog.model.about import UNDATED, About, Origin
from meterlog.model.accuracy import Accuracy, Range
from meterlog.model.block import FLAG_WORDS, UNUSABLE, Block, Flag, join
from meterlog.model.budget import Budget, Shape, Source
from meterlog.model.channel import Channel, Quantity, Role
from meterlog.model.circuit import (
    Circuit,
    Element,
    ElementFault,
    ElementKind,
    FaultMode,
    FaultPair,
    Node,
    Place,
    PointKind,
    ProbePoint,
    Section,
    Unit,
)
from meterlog.model.circuit_check import (
    CircuitCheck,
    CircuitReading,
    CircuitSign,
    CircuitState,
    CircuitVerdict,
    DoubtedReading,
    Expectation,
    PossibleResult,
    ProposedTest,
    SectionDrop,
    Sign,
    Suspect,
    SuspectFault,
)
from meterlog.model.comparison import (
    ComparedRun,
    Comparison,
    ConditionCheck,
    FigureDifference,
    Overlay,
    StepDifference,
)
from meterlog.model.conditions import Conditions
from meterlog.model.doubt import Doubt, DoubtKind
from meterlog.model.event import LEADS, Event, EventKind
from meterlog.model.finding import Finding, FindingKind, Verdict
from meterlog.model.inferred import Inferred, InferredKind, PulsedFeed, Rhythm, RhythmKind
from meterlog.model.instant import nanoseconds_of
from meterlog.model.instrument import IMPORTED, Identity, Instrument, channel_of, share_times
from meterlog.model.job import Job
from meterlog.model.limits import Controller, DecisionRule, Fuse, Limits, SpeedLimits
from meterlog.model.motor_fit import ControllerHeat, MotorFit, MotorPoint
from meterlog.model.raw import RawBytes
from meterlog.model.review import CatchChance, Review
from meterlog.model.ripple import BarFlaw, RippleView
from meterlog.model.run_verdict import Outcome, Ranked, RunVerdict, Sureness
from meterlog.model.sensor import Sensor, SensorKind, Zero
from meterlog.model.span import Span, SpanKind
from meterlog.model.startup import FuseCheck, OpeningMargin, StartUp
from meterlog.model.step import Step
from meterlog.model.tap_evidence import Tap, TapCheck, TapEvidence
from meterlog.model.withdrawal import (
    WITHDRAWABLE,
    standing,
    withdrawal,
    withdrawn_marks,
    withdrawn_words,
)

__all__ = [
    "FLAG_WORDS",
    "IMPORTED",
    "LEADS",
    "UNDATED",
    "UNUSABLE",
    "WITHDRAWABLE",
    "About",
    "Accuracy",
    "BarFlaw",
    "Block",
    "Budget",
    "CatchChance",
    "Channel",
    "Circuit",
    "CircuitCheck",
    "CircuitReading",
    "CircuitSign",
    "CircuitState",
    "CircuitVerdict",
    "ComparedRun",
    "Comparison",
    "ConditionCheck",
    "Conditions",
    "Controller",
    "ControllerHeat",
    "DecisionRule",
    "Doubt",
    "DoubtKind",
    "DoubtedReading",
    "Element",
    "ElementFault",
    "ElementKind",
    "Event",
    "EventKind",
    "Expectation",
    "FaultMode",
    "FaultPair",
    "FigureDifference",
    "Finding",
    "FindingKind",
    "Flag",
    "Fuse",
    "FuseCheck",
    "Identity",
    "Inferred",
    "InferredKind",
    "Instrument",
    "Job",
    "Limits",
    "MotorFit",
    "MotorPoint",
    "Node",
    "OpeningMargin",
    "Origin",
    "Outcome",
    "Overlay",
    "Place",
    "PointKind",
    "PossibleResult",
    "ProbePoint",
    "ProposedTest",
    "PulsedFeed",
    "Quantity",
    "Range",
    "Ranked",
    "RawBytes",
    "Review",
    "Rhythm",
    "RhythmKind",
    "RippleView",
    "Role",
    "RunVerdict",
    "Section",
    "SectionDrop",
    "Sensor",
    "SensorKind",
    "Shape",
    "Sign",
    "Source",
    "Span",
    "SpanKind",
    "SpeedLimits",
    "StartUp",
    "Step",
    "StepDifference",
    "Sureness",
    "Suspect",
    "SuspectFault",
    "Tap",
    "TapCheck",
    "TapEvidence",
    "Unit",
    "Verdict",
    "Zero",
    "channel_of",
    "join",
    "nanoseconds_of",
    "share_times",
    "standing",
    "withdrawal",
    "withdrawn_marks",
    "withdrawn_words",
]
