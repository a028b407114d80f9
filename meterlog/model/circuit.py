"""Circuit: what stands between battery and fan, as a circuit profile describes it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from typing import TypeVar


class ElementKind(StrEnum):
    """What an element is. The value is what stands in profiles.

    The order of the terminals and the figures of each kind are those of
    :data:`~meterlog.model.element_kinds.KINDS`.
    """

    BATTERY = "battery"
    FUSE = "fuse"
    WIRE = "wire"
    CONNECTION = "connection"
    """One pin with its socket; the pins of one plug share ``plug``."""
    GROUND = "ground"
    """A joint to the body or the battery negative lead."""
    RESISTOR = "resistor"
    COIL = "coil"
    CONTACT = "contact"
    SWITCH = "switch"
    MOTOR = "motor"
    TRANSISTOR = "transistor"
    REGULATOR = "regulator"
    CHOPPER = "chopper"
    HEAD = "head"
    """The control head's output that asks for a speed."""


class FaultMode(StrEnum):
    """In which way an element fails. The value is what stands in profiles."""

    OPEN = "open"
    RESISTIVE = "resistive"
    """Conducts, by more ohms than it should; the severity is those ohms."""
    SHORTED = "shorted"
    """Conducts always: a welded contact, a transistor burnt through."""
    SEIZED = "seized"
    DRAGGING = "dragging"
    """Friction; the severity is how many times the current without load it takes."""
    FLAT = "flat"
    """A battery with little charge; the severity is its voltage without load."""
    NO_DRIVE = "no-drive"
    """The head asks for nothing, whatever is chosen."""
    STUCK_DRIVE = "stuck-drive"
    """The head asks for the same all the time; the severity is its volts."""


@dataclass(frozen=True, slots=True)
class ElementFault:
    """One way in which one element fails.

    Attributes
    ----------
    mode : FaultMode
    odds : float
        How often, against the other faults of the circuit; any positive scale.
    basis : str
        Where the odds come from: ``common practice, no source``, ``from memory`` or a source.
    least, most : float or None
        Bounds of the severity in the unit of the mode; None where the mode has none.
    comes_and_goes : float
        Which part of such faults is there only at times, 0 to 1.
    answers_tap : float
        How probably a tap on the unit brings the fan back for a while, 0 to 1.
    stiff : float
        How probably the wheel does not spin freely by hand, 0 to 1.
    why : str
        What to look for that may have caused it, before a part is ordered.
    """

    mode: FaultMode
    odds: float
    basis: str
    least: float | None = None
    most: float | None = None
    comes_and_goes: float = 0.0
    answers_tap: float = 0.02
    stiff: float = 0.02
    why: str = ""


@dataclass(frozen=True, slots=True)
class Element:
    """One element between named nodes.

    Attributes
    ----------
    name : str
        Unique in the circuit, such as ``main-fuse``.
    kind : ElementKind
    nodes : tuple of str
        One a terminal, in the kind's order.
    unit : str
        Key of the replaceable unit it is part of.
    figures : mapping of str to float
        Its healthy figures, such as ``ohm``; all that the kind needs.
    tolerance : mapping of str to float
        Half-width of about 95 % of healthy ones, as a part of the figure.
    closed_keys : tuple of str
        Switches: positions of the key in which it is closed; empty: the key does not matter.
    closed_speeds : tuple of int
        Switches: speeds at which it is closed; empty: the speed does not matter.
    relay : str
        Of a coil and its contact: the same word.
    plug : str
        The plug that opens it when it is unplugged; empty: none.
    speeds : mapping of int to float
        Heads: volts asked for at each speed (of the output, or with a sense terminal of that).
    faults : tuple of ElementFault
    label : str
        In words, such as ``main fuse``.
    basis : str
        Where the figures come from.
    """

    name: str
    kind: ElementKind
    nodes: tuple[str, ...]
    unit: str
    figures: Mapping[str, float]
    tolerance: Mapping[str, float] = field(default_factory=dict)
    closed_keys: tuple[str, ...] = ()
    closed_speeds: tuple[int, ...] = ()
    relay: str = ""
    plug: str = ""
    speeds: Mapping[int, float] = field(default_factory=dict)
    faults: tuple[ElementFault, ...] = ()
    label: str = ""
    basis: str = ""


@dataclass(frozen=True, slots=True)
class Node:
    """A point of the circuit.

    Attributes
    ----------
    name : str
        The first node of a circuit is the battery negative post, to which all voltages refer.
    label : str
    at : tuple of float
        Column and row in the drawing, of the profile's own grid; rows run downwards.
    """

    name: str
    label: str
    at: tuple[float, float]


class PointKind(StrEnum):
    """What is measured at a test point."""

    VOLTAGE = "voltage"
    """Of one node against the battery negative post."""
    DROP = "drop"
    """Straight across two nodes, the first less the second."""
    CURRENT = "current"
    """Through one element, with a clamp."""


@dataclass(frozen=True, slots=True)
class Place:
    """Where test points lie together.

    Attributes
    ----------
    name, label : str
    minutes : float
        To get there the first time: covers, glove box.
    cautions : tuple of str
        Keys of cautions (:mod:`meterlog.circuit.cautions`).
    """

    name: str
    label: str
    minutes: float
    cautions: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class ProbePoint:
    """Where a meter can be put.

    Attributes
    ----------
    name : str
        What is typed, such as ``motor-feed``.
    kind : PointKind
    nodes : tuple of str
        One for a voltage, two for a drop; empty for a current.
    element : str
        For a current: the element through which it flows.
    label : str
    place : str
        Key of the place.
    reach : str
        How to get at it, in a sentence.
    minutes : float
        For one reading there, once the place is open.
    cautions : tuple of str
        Beyond those of the place.
    """

    name: str
    kind: PointKind
    nodes: tuple[str, ...]
    element: str
    label: str
    place: str
    reach: str
    minutes: float
    cautions: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Unit:
    """What is replaced or repaired as one.

    Attributes
    ----------
    name, label : str
    confirm : str
        What confirms that it is bad before parts are ordered.
    repair : str
        What is done about it, such as ``clean and tighten the joint``.
    """

    name: str
    label: str
    confirm: str
    repair: str = ""


@dataclass(frozen=True, slots=True)
class Section:
    """A stretch of the circuit whose voltage drop has a limit under load.

    Attributes
    ----------
    name, label : str
    nodes : tuple of str
        From the one nearer to the battery positive post (ground side: from the one nearer to the
        motor) to the other.
    side : str
        ``feed`` or ``ground``.
    limit_v : float, volts
    basis : str
        Where the limit comes from.
    """

    name: str
    label: str
    nodes: tuple[str, str]
    side: str
    limit_v: float
    basis: str


@dataclass(frozen=True, slots=True)
class FaultPair:
    """Two faults that are often found together, the one having made the other.

    Attributes
    ----------
    faults : tuple of (element, mode)
        Cause first.
    odds : float
        On the scale of the single faults.
    basis, words : str
    """

    faults: tuple[tuple[str, FaultMode], tuple[str, FaultMode]]
    odds: float
    basis: str
    words: str = ""


@dataclass(frozen=True, slots=True)
class Circuit:
    """A circuit profile.

    Attributes
    ----------
    name, title : str
    nominal_v : float, volts
    speeds : tuple of int
        All that can be chosen, 0 first.
    nodes : tuple of Node
        The battery negative post first.
    elements : tuple of Element
    units : tuple of Unit
    places : tuple of Place
    points : tuple of ProbePoint
    sections : tuple of Section
    pairs : tuple of FaultPair
    no_fault_odds : float
        That nothing electrical is wrong (nothing found, or the fault is not there now).
    basis : str
    text : str
        The profile itself, kept with a check.
    """

    name: str
    title: str
    nominal_v: float
    speeds: tuple[int, ...]
    nodes: tuple[Node, ...]
    elements: tuple[Element, ...]
    units: tuple[Unit, ...]
    places: tuple[Place, ...]
    points: tuple[ProbePoint, ...]
    sections: tuple[Section, ...]
    pairs: tuple[FaultPair, ...] = ()
    no_fault_odds: float = 0.5
    basis: str = ""
    text: str = field(default="", repr=False)

    def element(self, name: str) -> Element:
        """Give the element of this name; KeyError if there is none."""
        return _named(self.elements, name)

    def point(self, name: str) -> ProbePoint:
        """Give the test point of this name; KeyError if there is none."""
        return _named(self.points, name)

    def unit(self, name: str) -> Unit:
        """Give the unit of this name; KeyError if there is none."""
        return _named(self.units, name)

    def place(self, name: str) -> Place:
        """Give the place of this name; KeyError if there is none."""
        return _named(self.places, name)

    @property
    def plugs(self) -> tuple[str, ...]:
        """All plugs, in the order of the elements."""
        return tuple(dict.fromkeys(e.plug for e in self.elements if e.plug))

    @property
    def fuses(self) -> tuple[str, ...]:
        """Names of all fuses, in the order of the elements."""
        return tuple(e.name for e in self.elements if e.kind is ElementKind.FUSE)


_Named = TypeVar("_Named", Element, ProbePoint, Unit, Place)


def _named(items: tuple[_Named, ...], name: str) -> _Named:
    for item in items:
        if item.name == name:
            return item
    raise KeyError(name)
