"""The checks of circuits that a recording holds."""

from __future__ import annotations

from pathlib import Path

from meterlog.circuit import Isolation
from meterlog.circuit.in_order import check_in_order
from meterlog.evidence.circuit_files import JudgedCheck
from meterlog.model import Circuit, CircuitCheck, CircuitReading, CircuitSign, EventKind
from meterlog.model.circuit_entries import Chosen, Entry, check_of, parse_entry, text_digest
from meterlog.model.errors import MeterlogError, ProfileError
from meterlog.profile import circuit_profile, load_circuit, names
from meterlog.recording import Recording, kept_circuit


def circuit_checks(recording: Recording) -> tuple[tuple[CircuitCheck, ...], tuple[str, ...]]:
    """Give every check of a circuit that was entered in a recording.

    Parameters
    ----------
    recording : Recording

    Returns
    -------
    tuple of (tuple of CircuitCheck, tuple of str)
        Those with at least one reading or sign, oldest first, and what could not be read.
    """
    checks: list[CircuitCheck] = []
    damage: list[str] = []
    one = _EntriesOfOne(None, 0)
    for event in recording.events:
        if event.kind is not EventKind.CIRCUIT:
            continue
        entry = parse_entry(event.value)
        if entry is None:
            when = f"{event.t_ns / 1e9:.1f} s"
            damage.append(f"circuit check: the entry at {when} is not understood and left out.")
        elif isinstance(entry, Chosen):
            one.close(recording.folder, checks, damage)
            one = _EntriesOfOne(entry, event.t_ns)
        else:
            if one.ends_before(entry):
                one.close(recording.folder, checks, damage)
                one = _EntriesOfOne(None, event.t_ns)
            one.take(entry, event.t_ns)
    one.close(recording.folder, checks, damage)
    return tuple(checks), tuple(damage)


class _EntriesOfOne:
    """The entries of one check; ``chosen`` None: the line that said of which circuit is lost."""

    def __init__(self, chosen: Chosen | None, t_ns: int) -> None:
        self._chosen = chosen
        self._t_ns = t_ns
        self._entries: list[Entry] = []
        self._newest = 0

    def ends_before(self, entry: Entry) -> bool:
        """Tell whether ``entry`` is of a later check: ids only ever count up within one."""
        return isinstance(entry, CircuitReading | CircuitSign) and entry.id <= self._newest

    def take(self, entry: Entry, t_ns: int) -> None:
        if not self._entries and self._chosen is None:
            self._t_ns = t_ns
        self._entries.append(entry)
        if isinstance(entry, CircuitReading | CircuitSign):
            self._newest = entry.id

    def close(self, folder: Path, checks: list[CircuitCheck], damage: list[str]) -> None:
        """Put the check together, and say what is lacking."""
        if self._chosen is None:
            if self._entries:
                many = len(self._entries)
                damage.append(
                    f"circuit check: {many} {'entry' if many == 1 else 'entries'} from "
                    f"{self._t_ns / 1e9:.1f} s on can't be judged: the line that said of which "
                    "circuit is damaged or missing."
                )
            return
        name, file = self._chosen.circuit, self._chosen.file
        text, problem = kept_circuit(folder, file), "can't be read"
        if text and self._chosen.sha256 not in {"", text_digest(text)}:
            text, problem = "", "is not what it was then"
        check = check_of(name, self._entries, text)
        if not check.readings and not check.signs:
            return
        checks.append(check)
        if not check.text:
            damage.append(
                f"circuit check of {name}: the profile that was kept with it {problem} "
                f"({file or 'no file'}): only the one of that name as it now is can stand in."
            )


def circuit_of(check: CircuitCheck) -> Circuit:
    """Give the circuit of a check: as it was kept with it, else the one of this name.

    Raises
    ------
    ProfileError
        If neither can be used. A recording names no files: only profiles that have a name.
    """
    if check.text:
        return circuit_profile(check.circuit, check.text, check.circuit)
    if check.circuit not in names("circuits"):
        raise ProfileError(
            "there is no circuit profile of this name, and none was kept that can be read.",
            subject=check.circuit,
            remedy="Put the profile among your own under this name.",
        )
    return load_circuit(check.circuit)


def isolation_of(circuit: Circuit, told_at: float = 0.95) -> Isolation:
    """Give the isolation of a circuit; the newest few are kept, as their tables take a second.

    Parameters
    ----------
    circuit : Circuit
    told_at : float
        The probability above which a unit is told.

    Raises
    ------
    UsageError
        If ``told_at`` is out of range.
    ProfileError
        If its fan would not run with nothing wrong.
    """
    known = circuit.name, circuit.text, told_at
    if not circuit.text or known not in _KEPT:
        check_in_order(circuit, circuit.name)
        _KEPT[known] = Isolation(circuit, told_at=told_at)
        while len(_KEPT) > _MOST_KEPT:
            del _KEPT[next(iter(_KEPT))]
    return _KEPT[known]


_KEPT: dict[tuple[str, str, float], Isolation] = {}
_MOST_KEPT = 4


def judged_check(check: CircuitCheck, told_at: float = 0.95) -> JudgedCheck:
    """Judge a check by its own circuit.

    Parameters
    ----------
    check : CircuitCheck
    told_at : float
        The probability above which a unit is told.

    Raises
    ------
    ProfileError
        If its circuit can't be used.
    UsageError
        If a reading does not belong to it.
    """
    circuit = circuit_of(check)
    return JudgedCheck(circuit, check, isolation_of(circuit, told_at).verdict(check))


def judged_checks(
    recording: Recording, told_at: float = 0.95
) -> tuple[tuple[JudgedCheck, ...], tuple[str, ...]]:
    """Judge every check that a recording holds.

    Parameters
    ----------
    recording : Recording
    told_at : float
        The probability above which a unit is told.

    Returns
    -------
    tuple of (tuple of JudgedCheck, tuple of str)
        Oldest first, and what could not be read or judged.
    """
    checks, damage = circuit_checks(recording)
    judged: list[JudgedCheck] = []
    lacking = list(damage)
    for check in checks:
        try:
            judged.append(judged_check(check, told_at))
        except MeterlogError as error:
            lacking.append(f"circuit check of {check.circuit}: {error}")
    return tuple(judged), tuple(lacking)
