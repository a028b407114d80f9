"""FanCircuit: supply, wiring, motor and controller as one circuit, stepped through time."""

from __future__ import annotations

from dataclasses import dataclass

from numpy.random import Generator

from meterlog.instruments.virtual.commutator import Commutator, CommutatorFigures
from meterlog.instruments.virtual.controller import Controller, ControllerFigures
from meterlog.instruments.virtual.loose_contact import LooseContact, LooseContactFigures
from meterlog.instruments.virtual.motor import Motor, MotorFigures
from meterlog.instruments.virtual.wiring import Wiring
from meterlog.model import SpanKind

Points = tuple[float, float, float, float, float]
"""What could be measured at one instant: battery, motor feed and motor return, volts to battery
negative; motor current, amperes; controller ground, volts."""
_SOUND = CommutatorFigures()


@dataclass(frozen=True, slots=True)
class CircuitFigures:
    """A whole fan circuit and what is wrong with it.

    Attributes
    ----------
    wiring : Wiring
    motor : MotorFigures
    controller : ControllerFigures
    commutator : CommutatorFigures
    rest_angle_rad : float, radians
        Where the shaft rests at the start.
    brush, feed, ground : LooseContactFigures or None
        Contacts that come and go; None where they hold.
    """

    wiring: Wiring
    motor: MotorFigures
    controller: ControllerFigures
    commutator: CommutatorFigures = _SOUND
    rest_angle_rad: float = 0.26
    brush: LooseContactFigures | None = None
    feed: LooseContactFigures | None = None
    ground: LooseContactFigures | None = None


def _contact(figures: LooseContactFigures | None, rng: Generator) -> LooseContact | None:
    return None if figures is None else LooseContact(figures, rng)


class FanCircuit:
    """The circuit in motion.

    Parameters
    ----------
    figures : CircuitFigures
    rng : numpy Generator
        Decides when loose contacts open and how far a tap turns the shaft.
    step_s : float, seconds
        Length of one step.
    """

    def __init__(self, figures: CircuitFigures, rng: Generator, step_s: float) -> None:
        self.figures = figures
        self.motor = Motor(figures.motor, figures.rest_angle_rad)
        self.controller = Controller(figures.controller)
        self.condition = SpanKind.OFF
        self._step_s = step_s
        self._loop_ohm = figures.wiring.loop_ohm
        self._commutator = Commutator(figures.commutator, rng)
        self._brush = _contact(figures.brush, rng)
        self._feed = _contact(figures.feed, rng)
        self._ground = _contact(figures.ground, rng)

    def command(self, speed: int) -> None:
        """Set the commanded speed; ValueError if there is none such."""
        self.controller.command(speed)

    def tap(self) -> None:
        """Hit the motor's housing: whatever is loose feels it."""
        for contact in (self._brush, self._feed, self._ground):
            if contact is not None:
                contact.tap()
        motor = self.motor
        if motor.speed_rad_s <= 0.0 and self._commutator.is_open(motor.angle_rad):
            motor.angle_rad = self._commutator.tap(motor.angle_rad)

    def step(self) -> Points:
        """Go on by one step and give what could be measured at its end."""
        asked = self.controller.speed > 0
        feed_open = self._opens(self._feed, asked=asked)
        ground_open = self._opens(self._ground, asked=asked)
        motor_open = self._opens(self._brush, asked=asked) or self._commutator.is_open(
            self.motor.angle_rad
        )
        if asked and not (feed_open or ground_open or motor_open):
            return self._closed()
        self.motor.coast(self._step_s)
        if not asked:
            self.condition = SpanKind.OFF
        elif feed_open:
            self.condition = SpanKind.FEED_LOST
        elif ground_open:
            self.condition = SpanKind.GROUND_LOST
        else:
            self.condition = SpanKind.DEAD
        return self._open(asked=asked, motor_open=motor_open)

    def _opens(self, contact: LooseContact | None, *, asked: bool) -> bool:
        if contact is None:
            return False
        return contact.go_on(self._step_s, carrying=asked and self.motor.current_a > 0.0)

    def _closed(self) -> Points:
        wiring = self.figures.wiring
        motor = self.motor
        across_v = self.controller.drive(motor, wiring.supply_v, self._loop_ohm, self._step_s)
        held = motor.speed_rad_s <= 0.0
        self.condition = SpanKind.LOCKED if held else SpanKind.RUNNING
        current = motor.current_a
        battery_v = wiring.supply_v - current * wiring.source_ohm
        feed_v = battery_v - current * wiring.feed_ohm
        return (battery_v, feed_v, feed_v - across_v, current, current * wiring.ground_ohm)

    def _open(self, *, asked: bool, motor_open: bool) -> Points:
        supply_v = self.figures.wiring.supply_v
        emf_v = self.motor.emf_v
        drop_v = self.controller.release(self._step_s)
        if self.condition is SpanKind.FEED_LOST:
            return (supply_v, drop_v + emf_v, drop_v, 0.0, 0.0)
        if self.condition is SpanKind.DEAD:
            return (supply_v, supply_v, drop_v, 0.0, 0.0)
        # Nothing pulls the return down. With the motor open, the controller's own sensing
        # resistor across the motor brings it up to the feed.
        return_v = supply_v if motor_open else supply_v - emf_v
        self.controller.drop_v = return_v
        feed_there = self._feed is None or not self._feed.is_open
        if not feed_there:
            return (supply_v, emf_v, 0.0, 0.0, 0.0)
        ground_v = return_v if asked else 0.0
        return (supply_v, supply_v, return_v, 0.0, ground_v)
