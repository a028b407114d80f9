"""CircuitLog: a check of a circuit in progress; every entry is on the disk before it counts.

Entries go as ``circuit`` events into the recording that is running, beside the traces that their
readings were taken from; without one, into a recording without meters that the log begins itself.
"""

from __future__ import annotations

import math
import uuid
from collections.abc import Callable, Collection
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

from meterlog import __version__
from meterlog.acquire import Clock
from meterlog.model import (
    About,
    Circuit,
    CircuitCheck,
    CircuitReading,
    CircuitSign,
    CircuitState,
    Event,
    EventKind,
    Job,
    Limits,
    Origin,
    Sign,
)
from meterlog.model.circuit_check import SIGN_VALUES
from meterlog.model.circuit_entries import (
    Chosen,
    Entry,
    Opened,
    Reach,
    Undone,
    check_of,
    entry_text,
    text_digest,
)
from meterlog.model.errors import DiskFailed, MeterlogError, UsageError
from meterlog.recording import Recorder, keep_circuit, seal
from meterlog.work.run import Run

_SUBJECT = "the circuit check"


class CircuitLog:
    """What has been entered, and where it is kept.

    Parameters
    ----------
    new_folder : callable
        Gives a folder that does not exist yet; called when the first entry is made while no
        recording runs.
    job : Job
    origin : Origin
        Both for a recording that the log begins itself; ``job`` may be set until then.

    Attributes
    ----------
    circuit : Circuit or None
    check : CircuitCheck or None
        What counts now: without what was undone.
    """

    def __init__(
        self,
        new_folder: Callable[[], Path],
        job: Job | None = None,
        origin: Origin = Origin.TYPED,
    ) -> None:
        self.circuit: Circuit | None = None
        self.check: CircuitCheck | None = None
        self._new_folder = new_folder
        self.job = job or Job()
        self._origin = origin
        self._entries: list[Entry] = []
        self._order: list[int | Reach] = []
        self._undone: list[int | Reach] = []
        self._run: Run | None = None
        self._own: _OwnRecording | None = None
        self._written: Path | None = None

    @property
    def folder(self) -> Path | None:
        """Where the entries go; None before the first one without a running recording."""
        if self._run is not None:
            return self._run.folder
        return self._own.folder if self._own is not None else None

    @property
    def can_undo(self) -> bool:
        """True while there is a reading, a sign or a can't reach to take back."""
        return bool(self._order)

    @property
    def can_redo(self) -> bool:
        """True while there is something to put in again."""
        return bool(self._undone)

    def choose(self, circuit: Circuit) -> None:
        """Begin a new check, of ``circuit``. What was entered before stays where it was kept."""
        self.circuit = circuit
        self._entries = []
        self._order, self._undone = [], []
        self._written = None
        self._put_together()

    def follow(self, run: Run | None) -> None:
        """Keep entries in ``run`` from now on; None: in a recording of the log's own.

        What was entered before goes into the new one as well, so that each holds the whole check.

        Raises
        ------
        DiskFailed
            If the log's own recording could not be closed and sealed.
        """
        if run is self._run:
            return
        own, self._own, self._run, self._written = self._own, None, run, None
        if own is not None:
            own.close()

    def read(  # noqa: PLR0913  # one reading with all that is known of it
        self,
        point: str,
        value: float,
        state: CircuitState,
        standard_u: float,
        *,
        shared_u: float = 0.0,
        meter_ohm: float = 10e6,
        complaint: bool | None = None,
        source: str = "typed",
        basis: str = "",
    ) -> CircuitReading:
        """Enter a reading.

        Parameters
        ----------
        point : str
            A test point of the circuit.
        value, standard_u, shared_u, meter_ohm, complaint, source, basis
            As in :class:`~meterlog.model.circuit_check.CircuitReading`.
        state : CircuitState

        Returns
        -------
        CircuitReading
            As kept.

        Raises
        ------
        UsageError
            If no circuit was chosen, it has no such point, or a number is none that can be.
        DiskFailed
            If it could not be kept; it does not count then.
        """
        circuit = self._chosen()
        known = [one.name for one in circuit.points]
        _one_of(known, point, "is no test point of this circuit.")
        errors = (standard_u, shared_u)
        if not (math.isfinite(value) and all(0.0 <= one < math.inf for one in errors)):
            raise UsageError(
                "is no reading.", subject=f"{point} {value:g}", remedy="Expected a finite number."
            )
        if not meter_ohm > 0.0:
            raise UsageError(
                "is no input resistance.", subject=f"{meter_ohm:g} ohm", remedy="Expected above 0."
            )
        reading = CircuitReading(
            id=self._next_id(),
            state=state,
            point=point,
            value=float(value),
            standard_u=float(standard_u),
            shared_u=float(shared_u),
            meter_ohm=float(meter_ohm),
            complaint=complaint,
            source=source,
            basis=basis,
            t_utc=_now(),
        )
        self._enter(reading)
        self._order.append(reading.id)
        self._undone.clear()
        return reading

    def sign(self, sign: Sign, value: str, state: CircuitState) -> CircuitSign:
        """Enter what was seen, heard or felt.

        Raises
        ------
        UsageError
            If no circuit was chosen, or the sign has no such value.
        DiskFailed
            If it could not be kept; it does not count then.
        """
        self._chosen()
        _one_of(SIGN_VALUES[sign], value, f"is no answer to '{sign.value}'.")
        seen = CircuitSign(self._next_id(), state, sign, value, _now())
        self._enter(seen)
        self._order.append(seen.id)
        self._undone.clear()
        return seen

    def reach(self, name: str, *, reached: bool) -> None:
        """Say that a place or a test point can or can't be reached. Raises as :meth:`sign`."""
        circuit = self._chosen()
        places = [one.name for one in circuit.places]
        known = [*places, *(one.name for one in circuit.points)]
        _one_of(known, name, "is no place or test point of this circuit.")
        if reached is (self.check is None or name not in self.check.no_reach):
            return  # so it is already
        self._enter(Reach(name, reached))
        self._order.append(Reach(name, reached))
        self._undone.clear()

    def opened(self, place: str) -> None:
        """Say that a place was laid open. Raises as :meth:`sign`."""
        known = [one.name for one in self._chosen().places]
        _one_of(known, place, "is no place of this circuit.")
        self._enter(Opened(place))

    def undo(self) -> int | str | None:
        """Take back the newest reading, sign or can't reach; it stays on the disk as it was.

        Returns
        -------
        int, str or None
            The id of a reading or sign, the name of a place or test point; None where there is
            nothing to take back.
        """
        return self._turn(self._order, self._undone, undone=True)

    def redo(self) -> int | str | None:
        """Put in again what was taken back last; None where nothing was."""
        return self._turn(self._undone, self._order, undone=False)

    def _turn(
        self, source: list[int | Reach], to: list[int | Reach], *, undone: bool
    ) -> int | str | None:
        if not source:
            return None
        newest = source[-1]
        if isinstance(newest, Reach):
            self._enter(Reach(newest.name, newest.reached is not undone))
        else:
            self._enter(Undone(newest, undone=undone))
        to.append(source.pop())
        return newest.name if isinstance(newest, Reach) else newest

    def close(self) -> Path | None:
        """Seal the log's own recording, if it began one.

        Returns
        -------
        Path or None
            Its folder.

        Raises
        ------
        DiskFailed
            If not all could be kept.
        """
        own, self._own, self._written = self._own, None, None
        return own.close() if own is not None else None

    def _chosen(self) -> Circuit:
        if self.circuit is None:
            raise UsageError("no circuit was chosen.", subject=_SUBJECT, remedy="Choose one first.")
        return self.circuit

    def _next_id(self) -> int:
        return 1 + max([0, *self._ids()])

    def _ids(self) -> list[int]:
        return [
            entry.id for entry in self._entries if isinstance(entry, CircuitReading | CircuitSign)
        ]

    def _enter(self, entry: Entry) -> None:
        """Keep an entry, then let it count."""
        circuit = self._chosen()
        self._keep_head(circuit)
        self._keep(entry)
        self._entries.append(entry)
        self._put_together()

    def _keep_head(self, circuit: Circuit) -> None:
        """Keep which circuit it is, and what was entered elsewhere before, once a folder."""
        if self._run is None and self._own is None:
            self._own = _OwnRecording(self._new_folder(), self.job, self._origin)
        folder = self.folder
        if folder is None or folder == self._written:
            return
        file = keep_circuit(folder, circuit.name, circuit.text)
        self._keep(Chosen(circuit.name, file, text_digest(circuit.text)))
        for entry in self._entries:
            self._keep(entry)
        self._written = folder

    def _keep(self, entry: Entry) -> None:
        if self._run is not None:
            self._run.mark(EventKind.CIRCUIT, entry_text(entry))
        elif self._own is not None:
            try:
                self._own.keep(entry_text(entry))
            except DiskFailed:
                # It takes nothing more: the next entry begins another, with all that counts.
                broken, self._own, self._written = self._own, None, None
                broken.leave()
                raise

    def _put_together(self) -> None:
        if self.circuit is not None:
            made = check_of(self.circuit.name, self._entries, self.circuit.text)
            self.check = replace(made, text=self.circuit.text)


class _OwnRecording:
    """A recording without meters, written from the thread of whoever types."""

    def __init__(self, folder: Path, job: Job, origin: Origin) -> None:
        self._clock = Clock.start()
        about = About(
            recording_id=str(uuid.uuid4()),
            started_utc=self._clock.started_utc,
            local_offset_s=self._clock.local_offset_s,
            zero_ns=self._clock.zero_ns,
            program=f"meterlog {__version__}",
            origin=origin,
            instruments=(),
            limits=Limits(),
            job=job,
        )
        self._recorder = Recorder.create(folder, about)
        self.folder = self._recorder.folder

    def keep(self, text: str) -> None:
        self._recorder.take(Event(self._clock.now_ns(), EventKind.CIRCUIT, text))
        if self._recorder.failure is not None:
            raise DiskFailed(
                f"the entry could not be kept: {self._recorder.failure.message}",
                subject=str(self.folder),
                remedy="Make room or choose another disk, and enter it again.",
            )

    def leave(self) -> None:
        """Let go of it after the disk has refused; it stays unsealed, as it is not whole."""
        self._recorder.close("interrupted")

    def close(self) -> Path:
        self._recorder.close()
        try:
            seal(self.folder)
        except (MeterlogError, OSError) as error:
            why = error.message if isinstance(error, MeterlogError) else error.strerror
            raise DiskFailed(
                f"the check could not be sealed: {why}",
                subject=str(self.folder),
                remedy="Its entries are there; seal it again at the next start.",
            ) from error
        return self.folder


def _one_of(known: Collection[str], name: str, problem: str) -> None:
    if name not in known:
        remedy = f"There are: {', '.join(known)}."
        raise UsageError(problem, subject=name or "''", remedy=remedy)


def _now() -> str:
    return datetime.now(UTC).isoformat(timespec="milliseconds")
