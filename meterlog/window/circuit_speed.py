"""CircuitSpeed: one speed for the circuit that is checked and the recording in progress."""

from __future__ import annotations

from meterlog.model import CircuitState, EventKind
from meterlog.window.circuit_state_row import CircuitStateRow
from meterlog.window.sentences import sentence
from meterlog.window.session import Session
from meterlog.window.words import say


class CircuitSpeed:
    """Whichever way the speed is set, the recording gets the mark and the row shows the speed.

    Parameters
    ----------
    session : Session
    row : CircuitStateRow
        Shows the circuit's state.
    """

    def __init__(self, session: Session, row: CircuitStateRow) -> None:
        self._session, self._row = session, row
        self._told: int | None = None
        row.speed_asked.connect(self.command)

    def command(self, speed: int) -> None:
        """Set a speed, by a key or a click."""
        if self._marked(speed):
            self.show(speed)
        else:
            self._row.set_state(self._row.state)  # a button that was clicked goes back

    def take(self, state: CircuitState) -> None:
        """Set a whole state; a mark only where its speed is not the one recorded already."""
        shown = self._session.shown
        known = shown is not None and shown.speed() == state.speed
        if known or self._marked(state.speed):
            self._row.set_state(state)

    def _marked(self, speed: int) -> bool:
        """Put a mark where something is recorded; False, said by the session, if it can't be."""
        if not self._session.recording:
            return True
        mark = self._session.mark(EventKind.SPEED, str(speed))
        if mark is not None:
            self._told = speed
        return mark is not None

    def show(self, speed: int) -> None:
        """Show a commanded speed; that the circuit does not have it is said."""
        circuit = self._row.circuit
        if circuit is not None and not self._row.set_speed(speed):
            title, most = sentence(circuit.title), max(circuit.speeds)
            self._session.trouble = say(
                "The circuit {title} has speeds 0 to {most} only.", title=title, most=most
            )

    def begin(self) -> None:
        """Take the speed recorded last for a circuit that has just been chosen."""
        shown = self._session.shown
        speed = shown.speed() if self._session.run is not None and shown is not None else None
        if speed is not None:
            self._told = speed
            self.show(speed)

    def forget(self) -> None:
        """Know of no recorded speed any more: another run is followed."""
        self._told = None

    def follow(self) -> None:
        """Show the speed recorded last where it is another than before."""
        shown = self._session.shown
        speed = None if shown is None else shown.speed()
        if speed is not None and speed != self._told:
            self._told = speed
            if speed != self._row.state.speed:
                self._row.set_speed(speed)
