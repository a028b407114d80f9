"""CircuitFiles: the checks of circuits in a recording, as files of the export."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import dataclass

from meterlog.evidence.cell_text import Cell, csv_lines
from meterlog.evidence.circuit_csv import circuit_tables
from meterlog.evidence.circuit_json import circuit_to_dict
from meterlog.evidence.circuit_text import circuit_text
from meterlog.evidence.origin_words import origin_words
from meterlog.evidence.verify import seal_digest
from meterlog.model import Circuit, CircuitCheck, CircuitVerdict
from meterlog.recording import Recording

_WIDTH = 100


@dataclass(frozen=True, slots=True)
class JudgedCheck:
    """A check of a circuit with what follows from it.

    Attributes
    ----------
    circuit : Circuit
    check : CircuitCheck
    verdict : CircuitVerdict
    """

    circuit: Circuit
    check: CircuitCheck
    verdict: CircuitVerdict

    def to_dict(self) -> dict[str, object]:
        """Give it as a JSON object."""
        return circuit_to_dict(self.circuit, self.check, self.verdict)

    def text(self, width: int = _WIDTH, *, whole: bool = False) -> str:
        """Give it as lines to be read; ``whole`` as of :func:`~circuit_text.circuit_text`."""
        return circuit_text(self.circuit, self.check, self.verdict, width, whole=whole)

    def pointer(self) -> str:
        """Say in a sentence or two what it came to, for whoever reads the rest of the evidence."""
        told = self.verdict.settled_words or "Nothing is told yet; more tests are proposed."
        return f"Circuit check of {self.circuit.title}: {told} On what: circuit.txt."


def circuit_files(
    recording: Recording, checks: Sequence[JudgedCheck], lacking: Sequence[str] = ()
) -> dict[str, bytes]:
    """Give file names and contents; none where nothing was checked.

    Parameters
    ----------
    recording : Recording
    checks : sequence of JudgedCheck
        Oldest first.
    lacking : sequence of str
        What could not be read or judged.

    Returns
    -------
    dict of str to bytes
        ``circuit.txt``, ``circuit.json``, and ``circuit-readings.csv``, ``circuit-suspects.csv``
        and ``circuit-drops.csv`` where they have rows.
    """
    if not checks and not lacking:
        return {}
    tables: dict[str, tuple[Sequence[str], list[Sequence[Cell]]]] = {}
    for at, one in enumerate(checks, start=1):
        made = circuit_tables(one.circuit, one.check, one.verdict, at)
        for name, (columns, rows) in made.items():
            tables.setdefault(name, (columns, []))[1].extend(rows)
    content = {
        "recording": recording.about.recording_id,
        "lacking": list(lacking),
        "checks": [one.to_dict() for one in checks],
    }
    told = json.dumps(content, indent=2, ensure_ascii=False, allow_nan=False) + "\n"
    return {
        "circuit.txt": _text(recording, checks, lacking).encode("utf-8", "backslashreplace"),
        "circuit.json": told.encode("utf-8", "backslashreplace"),
        **{name: csv_lines([columns, *rows]) for name, (columns, rows) in tables.items()},
    }


def _text(recording: Recording, checks: Sequence[JudgedCheck], lacking: Sequence[str]) -> str:
    head = [f"Circuit checks of recording {recording.about.recording_id}"]
    seal = seal_digest(recording.folder)
    if seal:
        head.append(f"Seal {seal}")
    head += [*origin_words(recording), *(f"NOT WHOLE: {line}" for line in lacking)]
    texts = [one.text(whole=True) for one in checks]
    if len(texts) > 1:
        texts = [f"CHECK {at} OF {len(texts)}\n{text}" for at, text in enumerate(texts, start=1)]
    return "\n".join(head) + "\n\n" + "\n".join(texts)
