"""The checks of circuits that a recording holds."""

from __future__ import annotations

from meterlog.circuit import Isolation
from meterlog.evidence.circuit_files import JudgedCheck
from meterlog.model import Circuit, CircuitCheck, EventKind
from meterlog.model.circuit_entries import Chosen, Entry, check_of, parse_entry
from meterlog.model.errors import MeterlogError
from meterlog.profile import circuit_profile, load_circuit
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
    chosen: Chosen | None = None
    entries: list[Entry] = []

    def close() -> None:
        if chosen is not None:
            text = kept_circuit(recording.folder, chosen.file)
            check = check_of(chosen.circuit, entries, text)
            if check.readings or check.signs:
                checks.append(check)

    for event in recording.events:
        if event.kind is not EventKind.CIRCUIT:
            continue
        entry = parse_entry(event.value)
        if entry is None:
            damage.append(f"circuit check: an entry at {event.t_ns / 1e9:.1f} s is not understood.")
        elif isinstance(entry, Chosen):
            close()
            chosen, entries = entry, []
        else:
            entries.append(entry)
    close()
    return tuple(checks), tuple(damage)


def circuit_of(check: CircuitCheck) -> Circuit:
    """Give the circuit of a check: as it was kept with it, else the one of this name.

    Raises
    ------
    ProfileError
        If neither can be used.
    """
    if check.text:
        return circuit_profile(check.circuit, check.text, check.circuit)
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
    """
    known = circuit.name, circuit.text, told_at
    if not circuit.text or known not in _KEPT:
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
