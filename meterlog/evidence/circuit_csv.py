"""CircuitCsv: the entries of a check of a circuit, its suspects and drops as rows of tables."""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.evidence.cell_text import Cell
from meterlog.model import Circuit, CircuitCheck, CircuitVerdict
from meterlog.model.circuit_words import label_of, state_words, unit_of

READING_COLUMNS = (
    "check", "circuit", "entry", "utc", "state", "point", "where", "value", "unit",
    "expanded_uncertainty", "in_order_low", "in_order_high", "as_expected", "meter_ohm",
    "complaint_present", "source", "basis", "doubted",
)  # fmt: skip
SUSPECT_COLUMNS = (
    "check", "circuit", "unit", "label", "probability", "probability_without_best", "fault",
)  # fmt: skip
DROP_COLUMNS = (
    "check", "circuit", "section", "label", "side", "state", "drop_v (V)", "expanded_v (V)",
    "limit_v (V)", "verdict", "probability", "current_a (A)", "entries", "statement",
)  # fmt: skip

Rows = list[Sequence[Cell]]
_YES = {True: "yes", False: "no", None: None}


def circuit_tables(
    circuit: Circuit, check: CircuitCheck, verdict: CircuitVerdict, number: int = 1
) -> dict[str, tuple[Sequence[str], Rows]]:
    """Give the tables of one check.

    Parameters
    ----------
    circuit : Circuit
    check : CircuitCheck
    verdict : CircuitVerdict
        Of this check.
    number : int
        Which check of the recording it is: entries are numbered anew in each.

    Returns
    -------
    dict of str to (sequence of str, list)
        By file name: the columns and the rows. No table is empty.
    """
    tables: dict[str, tuple[Sequence[str], Rows]] = {
        "circuit-readings.csv": (READING_COLUMNS, _entries(circuit, check, verdict, number)),
        "circuit-suspects.csv": (
            SUSPECT_COLUMNS,
            [
                (
                    number,
                    circuit.name,
                    one.unit,
                    one.label,
                    one.probability,
                    one.without_best,
                    one.faults[0].words if one.faults else None,
                )
                for one in verdict.suspects
            ],
        ),
        "circuit-drops.csv": (
            DROP_COLUMNS,
            [
                (
                    number,
                    circuit.name,
                    one.section,
                    one.label,
                    one.side,
                    state_words(circuit, one.state),
                    one.drop_v,
                    one.expanded_v,
                    one.limit_v,
                    one.verdict.value,
                    one.probability,
                    one.current_a,
                    " ".join(str(entry) for entry in one.readings),
                    one.words,
                )
                for one in verdict.drops
            ],
        ),
    }
    return {name: table for name, table in tables.items() if table[1]}


def _entries(circuit: Circuit, check: CircuitCheck, verdict: CircuitVerdict, number: int) -> Rows:
    expected = {(one.point, one.state): one for one in verdict.expectations}
    doubted = {one.id: one.words for one in verdict.doubted}
    rows: list[tuple[int, Sequence[Cell]]] = []
    for reading in check.readings:
        one = expected.get((reading.point, reading.state))
        row: Sequence[Cell] = (
            number,
            circuit.name,
            reading.id,
            reading.t_utc or None,
            state_words(circuit, reading.state),
            reading.point,
            label_of(circuit, reading.point),
            reading.value,
            unit_of(circuit, reading.point),
            2.0 * reading.standard_u,
            None if one is None else one.healthy_low,
            None if one is None else one.healthy_high,
            None if one is None else _YES[one.fits],
            reading.meter_ohm,
            _YES[reading.complaint],
            reading.source,
            reading.basis,
            doubted.get(reading.id),
        )
        rows.append((reading.id, row))
    for sign in check.signs:
        blank: Sequence[Cell] = (None,) * 9
        row = (
            number,
            circuit.name,
            sign.id,
            sign.t_utc or None,
            state_words(circuit, sign.state),
            sign.sign.value,
            sign.value,
            *blank,
            None,
            doubted.get(sign.id),
        )
        rows.append((sign.id, row))
    return [row for _, row in sorted(rows, key=lambda pair: pair[0])]
