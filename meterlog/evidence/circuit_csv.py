"""CircuitCsv: the entries of a check of a circuit, its suspects and drops as rows of tables."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

from meterlog.evidence.cell_text import Cell
from meterlog.evidence.table_column import Column, Kind, Rows, Table
from meterlog.evidence.utc_text import nanoseconds_of, utc_text
from meterlog.model import Circuit, CircuitCheck, CircuitVerdict
from meterlog.model.circuit_words import label_of, state_words, unit_of

_CHECK = Column("check", Kind.WHOLE, "Which check of the recording, from 1.")
_CIRCUIT = Column("circuit", Kind.TEXT, "Name of the circuit profile.")
_STATE = Column("state", Kind.TEXT, "State of the circuit: key, command and so on.")

READING_COLUMNS = (
    _CHECK,
    _CIRCUIT,
    Column("entry", Kind.WHOLE, "Number of the entry within its check."),
    Column("utc", Kind.INSTANT, "When it was entered, in UTC."),
    _STATE,
    Column("point", Kind.TEXT, "The test point, or the sign that was seen."),
    Column("where", Kind.TEXT, "The test point in words, or what the sign showed."),
    Column("value", Kind.NUMBER, "What was read, in the unit of the line."),
    Column("unit", Kind.TEXT, "Unit of value, expanded_uncertainty and what is in order."),
    Column("expanded_uncertainty", Kind.NUMBER, "+- for about 95 %, in the unit of the line."),
    Column("in_order_low", Kind.NUMBER, "The least that a circuit in order shows."),
    Column("in_order_high", Kind.NUMBER, "The most that a circuit in order shows."),
    Column("as_expected", Kind.YES_NO, "yes: the value lies between those."),
    Column("meter_ohm", Kind.NUMBER, "Input resistance of the meter.", "ohm"),
    Column("complaint_present", Kind.YES_NO, "yes: the complaint was there just then."),
    Column("source", Kind.TEXT, "Which meter, or typed by hand."),
    Column("basis", Kind.TEXT, "Where its uncertainty is from."),
    Column("doubted", Kind.TEXT, "Why this entry is doubted; empty: it is not."),
)
SUSPECT_COLUMNS = (
    _CHECK,
    _CIRCUIT,
    Column("unit", Kind.TEXT, "The replaceable unit, by its name in the profile."),
    Column("label", Kind.TEXT, "The same in words."),
    Column("probability", Kind.NUMBER, "That this unit is bad.", "1"),
    Column("probability_without_best", Kind.NUMBER, "The least without any one reading.", "1"),
    Column("fault", Kind.TEXT, "The likeliest fault of this unit."),
)
DROP_COLUMNS = (
    _CHECK,
    _CIRCUIT,
    Column("section", Kind.TEXT, "Section of the circuit, by its name in the profile."),
    Column("label", Kind.TEXT, "The same in words."),
    Column("side", Kind.TEXT, "Feed or ground side."),
    _STATE,
    Column("drop_v (V)", Kind.NUMBER, "The voltage drop.", "V"),
    Column("expanded_v (V)", Kind.NUMBER, "+- for about 95 %.", "V"),
    Column("limit_v (V)", Kind.NUMBER, "The drop allowed.", "V"),
    Column("verdict", Kind.TEXT, "pass, fail or can't tell."),
    Column("probability", Kind.NUMBER, "That the true drop is within the limit.", "1"),
    Column("current_a (A)", Kind.NUMBER, "The current that made it.", "A"),
    Column("entries", Kind.WHOLES, "The entries that it is made of."),
    Column("statement", Kind.TEXT, "The same in one sentence."),
)

_YES = {True: "yes", False: "no", None: None}


def circuit_tables(
    circuit: Circuit, check: CircuitCheck, verdict: CircuitVerdict, number: int = 1
) -> dict[str, Table]:
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
    dict of str to Table
        By file name. No table is empty.
    """
    entries = _entries(circuit, check, verdict, number)
    tables = {
        "circuit-readings.csv": Table(
            "Circuit check: readings",
            "One line a reading or a sign that was entered.",
            READING_COLUMNS,
            entries,
        ),
        "circuit-suspects.csv": Table(
            "Circuit check: suspects",
            "One line a replaceable unit that may be bad, the likeliest first.",
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
        "circuit-drops.csv": Table(
            "Circuit check: voltage drops",
            "One line a section of the circuit whose drop was measured.",
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
    return {name: table for name, table in tables.items() if table.rows}


def _utc(text: str) -> str | None:
    """Write an instant as all tables do; what is none stays in ``circuit.json`` and the events."""
    try:
        instant = datetime.fromisoformat(text)
    except ValueError:
        return None
    return None if instant.tzinfo is None else utc_text(nanoseconds_of(instant))


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
            _utc(reading.t_utc),
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
            _utc(sign.t_utc),
            state_words(circuit, sign.state),
            sign.sign.value,
            sign.value,
            *blank,
            None,
            doubted.get(sign.id),
        )
        rows.append((sign.id, row))
    return [row for _, row in sorted(rows, key=lambda pair: pair[0])]
