"""CircuitFiles: the checks of circuits in a recording, as files of the export."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import dataclass, replace

from meterlog.evidence.cell_text import AS_USUAL
from meterlog.evidence.circuit_csv import circuit_tables
from meterlog.evidence.circuit_json import circuit_to_dict
from meterlog.evidence.circuit_text import circuit_text
from meterlog.evidence.origin_words import origin_words
from meterlog.evidence.seal_state import seal_words
from meterlog.evidence.table_column import Table
from meterlog.evidence.table_files import table_files
from meterlog.evidence.table_form import TableForm
from meterlog.evidence.verify import seal_digest
from meterlog.model import Circuit, CircuitCheck, CircuitVerdict
from meterlog.model.visible_text import steerless
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

    def outcome(self) -> str:
        """Say in a sentence or two what it came to."""
        told = self.verdict.settled_words or "Nothing is told yet; more tests are proposed."
        return f"Circuit check of {self.circuit.title}: {told}"

    def pointer(self) -> str:
        """Say the outcome, and where the rest stands, for whoever reads the export's files."""
        return f"{self.outcome()} On what: circuit.txt."


def circuit_files(
    recording: Recording,
    checks: Sequence[JudgedCheck],
    lacking: Sequence[str] = (),
    form: TableForm = AS_USUAL,
) -> dict[str, bytes]:
    """Give file names and contents; none where nothing was checked.

    Parameters
    ----------
    recording : Recording
    checks : sequence of JudgedCheck
        Oldest first.
    lacking : sequence of str
        What could not be read or judged.
    form : TableForm
        Of the tables.

    Returns
    -------
    dict of str to bytes
        ``circuit.txt``, ``circuit.json``, and ``circuit-readings.csv``, ``circuit-suspects.csv``
        and ``circuit-drops.csv`` where they have rows, each with its metadata.
    """
    if not checks and not lacking:
        return {}
    tables: dict[str, Table] = {}
    for at, one in enumerate(checks, start=1):
        for name, made in circuit_tables(one.circuit, one.check, one.verdict, at).items():
            before = tables[name].rows if name in tables else []
            tables[name] = replace(made, rows=[*before, *made.rows])
    recording_id = recording.about.recording_id
    content = {
        "recording": recording_id,
        "lacking": list(lacking),
        "checks": [one.to_dict() for one in checks],
    }
    told = json.dumps(content, indent=2, ensure_ascii=False, allow_nan=False) + "\n"
    return {
        "circuit.txt": steerless(_text(recording, checks, lacking)).encode(
            "utf-8", "backslashreplace"
        ),
        "circuit.json": told.encode("utf-8", "backslashreplace"),
        **{
            file: written
            for name, table in tables.items()
            for file, written in table_files(name, table, form, recording_id).items()
        },
    }


def _text(recording: Recording, checks: Sequence[JudgedCheck], lacking: Sequence[str]) -> str:
    head = [f"Circuit checks of recording {recording.about.recording_id}"]
    seal = seal_digest(recording.folder)
    if seal:
        head.append(f"Seal {seal}")
    head += [*origin_words(recording), *(f"NOT WHOLE: {line}" for line in lacking)]
    head += seal_words(recording)
    texts = [one.text(whole=True) for one in checks]
    if len(texts) > 1:
        texts = [f"CHECK {at} OF {len(texts)}\n{text}" for at, text in enumerate(texts, start=1)]
    return "\n".join(head) + "\n\n" + "\n".join(texts)
