"""CircuitMarks: what is marked in the drawing of a circuit: expected, found, suspected, next."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from meterlog.model import (
    Circuit,
    CircuitCheck,
    CircuitReading,
    CircuitState,
    CircuitVerdict,
    Expectation,
    ProbePoint,
)
from meterlog.model.circuit_words import unit_of

SUSPECTED = 0.05
"""Units below this probability are not marked: the eye is to find those that matter."""
_LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"
"""Without I and O, which look like figures."""
DOUBTED, FITS, ODD = "?", "\N{CHECK MARK}", "\N{BALLOT X}"
DRAWING_KEY = (
    "Round: voltage against the battery negative post; square: straight across two points; long:"
    f" current. {FITS} as in a circuit in order, {ODD} not, {DOUBTED} contradicts the others."
    " Without a sign: what a circuit in order gives. Outlined, with percent: suspected. Relays at"
    " rest."
)
"""What stands below the drawing, wherever it is shown."""


@dataclass(frozen=True, slots=True)
class PointMark:
    """What stands at one test point.

    Attributes
    ----------
    letter : str
        By which the point is found in the drawing and in lists.
    unit : str
        ``V`` or ``A``.
    healthy : tuple of float or None
        From what to what a circuit in order gives there.
    found, found_u : float or None
        The newest reading in this state, and its expanded uncertainty.
    fits : bool or None
        None where nothing was found, or it could not be judged.
    doubted : bool
        The reading contradicts the others.
    """

    letter: str
    unit: str
    healthy: tuple[float, float] | None = None
    found: float | None = None
    found_u: float | None = None
    fits: bool | None = None
    doubted: bool = False

    @property
    def sign(self) -> str:
        """A tick, a cross, a question mark; empty where nothing was found."""
        if self.found is None:
            return ""
        if self.doubted or self.fits is None:
            return DOUBTED
        return FITS if self.fits else ODD

    @property
    def expected_words(self) -> str:
        """What a circuit in order gives, such as ``11.9 … 12.7 V``; empty where not known."""
        if self.healthy is None:
            return ""
        low, high = (_short(value) for value in self.healthy)
        return f"{low} {self.unit}" if low == high else f"{low} … {high} {self.unit}"

    @property
    def found_words(self) -> str:
        """What was found, such as ``✓ 12.31 ± 0.08 V``; empty where nothing was."""
        if self.found is None:
            return ""
        places = 3 if abs(self.found) < 1.0 else 2
        value = f"{self.found:.{places}f}".replace("-", "\N{MINUS SIGN}")
        if self.found_u is None:
            return f"{self.sign} {value} {self.unit}"
        fine = self.found_u < 0.5 * 10.0**-places
        around = f"{self.found_u:.1g}" if fine else f"{self.found_u:.{places}f}"
        return f"{self.sign} {value} ± {around} {self.unit}"


@dataclass(frozen=True, slots=True)
class CircuitMarks:
    """All marks of one drawing.

    Attributes
    ----------
    state : CircuitState
        In which it is drawn.
    points : mapping of str to PointMark
        Of every test point.
    units : mapping of str to float
        Probability of the units that are suspected.
    likeliest : mapping of str to str
        Of each of them: the element beside which its percent stands.
    next_point : str
        Proposed; empty for none.
    chosen : str
        The point that the next reading belongs to; empty for none.
    """

    state: CircuitState = field(default_factory=CircuitState)
    points: Mapping[str, PointMark] = field(default_factory=dict)
    units: Mapping[str, float] = field(default_factory=dict)
    likeliest: Mapping[str, str] = field(default_factory=dict)
    next_point: str = ""
    chosen: str = ""


def point_letters(circuit: Circuit) -> dict[str, str]:
    """Give the letter of each test point, in the order of the profile."""
    return {point.name: _letter(at) for at, point in enumerate(circuit.points)}


def _letter(at: int) -> str:
    turn, place = divmod(at, len(_LETTERS))
    return (_LETTERS[turn - 1] if turn else "") + _LETTERS[place]


def marks_of(
    circuit: Circuit,
    check: CircuitCheck,
    verdict: CircuitVerdict | None,
    state: CircuitState,
    expected: Iterable[Expectation] = (),
    chosen: str = "",
) -> CircuitMarks:
    """Put together what is marked in the drawing of a check.

    Parameters
    ----------
    circuit : Circuit
    check : CircuitCheck
    verdict : CircuitVerdict or None
        None while it is being worked out.
    state : CircuitState
        Only readings taken in this state stand at their points.
    expected : iterable of Expectation
        What a circuit in order gives, of any states.
    chosen : str
        Test point.
    """
    letters = point_letters(circuit)
    newest = {one.point: one for one in check.readings if one.state == state}
    judged = () if verdict is None else verdict.expectations
    beside = {one.point: one for one in (*expected, *judged) if one.state == state}
    doubted = {one.id for one in verdict.doubted} if verdict else set()
    points = {
        point.name: _mark(
            circuit, point, letters[point.name], newest.get(point.name),
            beside.get(point.name), doubted,
        )
        for point in circuit.points
    }  # fmt: skip
    units, likeliest = _suspected(circuit, verdict)
    proposed = verdict.next_test if verdict else None
    next_point = proposed.point if proposed else ""
    return CircuitMarks(state, points, units, likeliest, next_point, chosen)


def _mark(  # one point with all that is known of it
    circuit: Circuit,
    point: ProbePoint,
    letter: str,
    reading: CircuitReading | None,
    beside: Expectation | None,
    doubted: set[int],
) -> PointMark:
    healthy = None if beside is None else (beside.healthy_low, beside.healthy_high)
    unit = unit_of(circuit, point.name)
    if reading is None:
        return PointMark(letter, unit, healthy)
    around = 2.0 * reading.standard_u
    fits = None
    if healthy is not None:
        fits = healthy[0] - around <= reading.value <= healthy[1] + around
    return PointMark(
        letter, unit, healthy, reading.value, around, fits, doubted=reading.id in doubted
    )


def _suspected(
    circuit: Circuit, verdict: CircuitVerdict | None
) -> tuple[dict[str, float], dict[str, str]]:
    units: dict[str, float] = {}
    likeliest: dict[str, str] = {}
    for suspect in verdict.suspects if verdict else ():
        mine = [one.name for one in circuit.elements if one.unit == suspect.unit]
        if suspect.probability < SUSPECTED or not mine:
            continue
        units[suspect.unit] = suspect.probability
        named = [fault.element.split(" + ")[0] for fault in suspect.faults]
        likeliest[suspect.unit] = next((name for name in named if name in mine), mine[0])
    return units, likeliest


def _short(value: float) -> str:
    places = 2 if abs(value) < 1.0 else 1
    text = f"{value:.{places}f}"
    return text.removeprefix("-") if float(text) == 0.0 else text.replace("-", "\N{MINUS SIGN}")
