"""Circuit check: what was measured at the circuit, and what follows from it."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum

from meterlog.model.finding import Verdict

METER_OHM = 10e6
"""Input resistance of the usual hand meter. Common practice, no source."""
KEYS = ("off", "on", "engine")
"""Positions of the key; ``engine``: the engine runs and charges."""


@dataclass(frozen=True, slots=True)
class CircuitState:
    """What the circuit was set to when something was measured.

    Attributes
    ----------
    key : str
        One of :data:`KEYS`.
    speed : int
        Chosen at the control head.
    unplugged : frozenset of str
        Plugs that are off.
    pulled : frozenset of str
        Fuses that are out.
    jumpers : frozenset of (str, str)
        Nodes joined by a fused jumper, sorted in each pair.
    """

    key: str = "on"
    speed: int = 0
    unplugged: frozenset[str] = frozenset()
    pulled: frozenset[str] = frozenset()
    jumpers: frozenset[tuple[str, str]] = frozenset()


class Sign(StrEnum):
    """What is seen, heard or felt. The value is what is typed."""

    FAN = "fan"
    """``runs``, ``slow``, ``dead`` or ``full`` (runs at full speed whatever is chosen)."""
    TAP = "tap"
    """``starts`` or ``nothing``: what a tap on the motor does while the fan stands."""
    WHEEL = "wheel"
    """``free`` or ``stiff``, by hand, key off."""
    CLICK = "click"
    """``heard`` or ``none``: the relay, as the key (or the speed) is switched on."""


SIGN_VALUES: dict[Sign, tuple[str, ...]] = {
    Sign.FAN: ("runs", "slow", "dead", "full"),
    Sign.TAP: ("starts", "nothing"),
    Sign.WHEEL: ("free", "stiff"),
    Sign.CLICK: ("heard", "none"),
}


@dataclass(frozen=True, slots=True)
class CircuitReading:
    """One reading taken at the circuit.

    Attributes
    ----------
    id : int
        Counts up within a check; what undo and messages name.
    state : CircuitState
    point : str
        Name of the test point.
    value : float, volts or amperes
    standard_u : float, same unit
        Of the meter at this value; without what the circuit itself may vary by.
    shared_u : float, same unit
        The part of ``standard_u`` that is one error with all readings of the same ``source`` (its
        gain); it grows with the value.
    meter_ohm : float, ohms
        Input resistance of the meter; infinite for a clamp.
    complaint : bool or None
        Whether the complaint was there at that moment; None: nobody said.
    source : str
        ``typed``, or the instrument and channel it was read from.
    basis : str
        Where ``standard_u`` comes from.
    t_utc : str
        When, ISO 8601; empty where not known.
    """

    id: int
    state: CircuitState
    point: str
    value: float
    standard_u: float
    shared_u: float = 0.0
    meter_ohm: float = METER_OHM
    complaint: bool | None = None
    source: str = "typed"
    basis: str = ""
    t_utc: str = ""


@dataclass(frozen=True, slots=True)
class CircuitSign:
    """One thing seen, heard or felt.

    Attributes
    ----------
    id : int
    state : CircuitState
    sign : Sign
    value : str
        One of :data:`SIGN_VALUES`.
    t_utc : str
    """

    id: int
    state: CircuitState
    sign: Sign
    value: str
    t_utc: str = ""


@dataclass(frozen=True, slots=True)
class SuspectFault:
    """One fault of a suspected unit.

    Attributes
    ----------
    words : str
        Such as ``main fuse open``, ``motor plug, feed pin: about 0.15 Ω too much``.
    element, mode : str
        Of a pair: those of the cause, joined by `` + ``.
    probability : float
    comes_and_goes : bool
    severity, severity_low, severity_high : float or None
        Median and about 95 %, in ``severity_unit``; None where the mode has none.
    severity_unit : str
    """

    words: str
    element: str
    mode: str
    probability: float
    comes_and_goes: bool = False
    severity: float | None = None
    severity_low: float | None = None
    severity_high: float | None = None
    severity_unit: str = ""


@dataclass(frozen=True, slots=True)
class Suspect:
    """One replaceable unit with its odds.

    Attributes
    ----------
    unit, label : str
    probability : float
        No more than 0.95 before a unit is told.
    without_best : float
        The least its probability falls to when any single reading or sign is left out: no one
        reading may carry the verdict.
    faults : tuple of SuspectFault
        Likeliest first, those above a percent.
    """

    unit: str
    label: str
    probability: float
    without_best: float
    faults: tuple[SuspectFault, ...] = ()


@dataclass(frozen=True, slots=True)
class DoubtedReading:
    """A reading that does not go with the others.

    Attributes
    ----------
    id : int
    point : str
    probability : float
        That it was a slipped probe, a wrong point or a wrong state.
    expected_low, expected_high : float
        What the others let expect there, about 95 %.
    words : str
        What contradicts what, and which to repeat.
    """

    id: int
    point: str
    probability: float
    expected_low: float
    expected_high: float
    words: str


@dataclass(frozen=True, slots=True)
class PossibleResult:
    """One of the things a test may show.

    Attributes
    ----------
    low, high : float or None
        The values it stands for; None: no bound, or a sign.
    value : str
        Of a sign: its value.
    probability : float
    units : tuple of (str, float)
        The suspects after it with their probabilities, likeliest first.
    words : str
    """

    low: float | None
    high: float | None
    value: str
    probability: float
    units: tuple[tuple[str, float], ...]
    words: str


@dataclass(frozen=True, slots=True)
class ProposedTest:
    """What to measure next.

    Attributes
    ----------
    point : str
        Test point; empty for a sign.
    sign : Sign or None
    state : CircuitState
    bits : float
        Expected information on which unit it is.
    minutes : float
        What it costs, with getting there and changing the state.
    healthy_low, healthy_high : float or None
        What a circuit in order gives there, about 95 %.
    outcomes : tuple of PossibleResult
    cautions : tuple of str
        In words.
    words : str
        What to do, in a sentence.
    meaning : str
        What each outcome would mean, in one sentence.
    repeat_of : int or None
        The reading it repeats.
    """

    point: str
    sign: Sign | None
    state: CircuitState
    bits: float
    minutes: float
    healthy_low: float | None
    healthy_high: float | None
    outcomes: tuple[PossibleResult, ...]
    cautions: tuple[str, ...]
    words: str
    meaning: str
    repeat_of: int | None = None


@dataclass(frozen=True, slots=True)
class SectionDrop:
    """The voltage drop of one section under load.

    Attributes
    ----------
    section, label, side : str
    state : CircuitState
    drop_v, expanded_v, limit_v : float, volts
    verdict : Verdict
    probability : float or None
        Of conformity.
    current_a : float or None, amperes
        The load under which it was measured.
    readings : tuple of int
        What it rests on.
    words : str
    """

    section: str
    label: str
    side: str
    state: CircuitState
    drop_v: float
    expanded_v: float
    limit_v: float
    verdict: Verdict
    probability: float | None
    current_a: float | None
    readings: tuple[int, ...]
    words: str


@dataclass(frozen=True, slots=True)
class Expectation:
    """What was expected and found at one test point.

    Attributes
    ----------
    point : str
    state : CircuitState
    healthy_low, healthy_high : float
        What a circuit in order gives, about 95 %.
    found : float or None
    found_u : float or None
        Expanded.
    fits : bool or None
        Found within the healthy band and its U; None where nothing was found.
    """

    point: str
    state: CircuitState
    healthy_low: float
    healthy_high: float
    found: float | None = None
    found_u: float | None = None
    fits: bool | None = None


@dataclass(frozen=True, slots=True)
class CircuitVerdict:
    """Where a circuit check stands.

    Attributes
    ----------
    circuit : str
    suspects : tuple of Suspect
        All units, likeliest first; ``no-fault`` is nothing electrical.
    settled : str
        The unit that is told; empty while none is.
    settled_words : str
        The verdict in a sentence or two, and what confirms it before parts are ordered.
    next_test : ProposedTest or None
        None when nothing that can be reached would tell more.
    doubted : tuple of DoubtedReading
    drops : tuple of SectionDrop
    expectations : tuple of Expectation
        For what has been measured, in order.
    bits_left : float
        Entropy of the suspects.
    notes : tuple of str
    """

    circuit: str
    suspects: tuple[Suspect, ...]
    settled: str
    settled_words: str
    next_test: ProposedTest | None
    doubted: tuple[DoubtedReading, ...] = ()
    drops: tuple[SectionDrop, ...] = ()
    expectations: tuple[Expectation, ...] = ()
    bits_left: float = 0.0
    notes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class CircuitCheck:
    """All that was entered in one check of one circuit.

    Attributes
    ----------
    circuit : str
        Name of the profile.
    text : str
        The profile itself.
    readings : tuple of CircuitReading
    signs : tuple of CircuitSign
    no_reach : frozenset of str
        Places and test points that can't be reached, as the technician said.
    opened : frozenset of str
        Places that are open already.
    """

    circuit: str
    text: str = field(default="", repr=False)
    readings: tuple[CircuitReading, ...] = ()
    signs: tuple[CircuitSign, ...] = ()
    no_reach: frozenset[str] = frozenset()
    opened: frozenset[str] = frozenset()
