"""Columns: what stands in the table of findings and in that of baselines, with units and words."""

from __future__ import annotations

import pyarrow as pa

FORMAT = "2"
"""Of the table of findings; another one is made anew. 2: with what may pass."""

BASELINE_FORMAT = "2"
"""Of the table of baselines, which is made of the other one; 2: with the names of limits."""

RECORDING, SPEED, FINDING = "recording", "speed", "finding"
"""Kinds of rows: one for each recording, one for each speed it ran at, one for each finding."""

_TEXT, _NUMBER, _WHOLE, _YES = pa.string(), pa.float64(), pa.int64(), pa.bool_()

_FINDINGS: tuple[tuple[str, pa.DataType, str, str], ...] = (
    ("row", _TEXT, "", "recording, speed or finding; the first of each recording is 'recording'"),
    ("number", _WHOLE, "", "place of the row within its recording, from 0"),
    ("folder", _TEXT, "", "where the recording lies, links followed"),
    ("key", _TEXT, "", "changes with its seal, its files, its edits and its job's card"),
    ("asked", _TEXT, "", "changes with what was asked of the screening and with the program"),
    ("state", _TEXT, "", "sealed, recovered, changed, not sealed, being recorded or can't be read"),
    ("reason", _TEXT, "", "why it was not judged, or what is wrong with it; empty for nothing"),
    ("passing", _YES, "", "why it was not judged may pass: it is tried again each time"),
    ("recording_id", _TEXT, "", "of the recording's own; a copy has the same"),
    ("started_utc", _TEXT, "", "RFC 3339; empty where no date is known"),
    ("origin", _TEXT, "", "measured, simulated, imported or typed"),
    ("mark", _TEXT, "", "SIMULATED, TYPED BY HAND and the like; empty for measured readings"),
    ("edits", _WHOLE, "", "edits on top of the recording, and before it was imported"),
    ("part", _TEXT, "", "as it was stated"),
    ("part_number", _TEXT, "", "by the job's card, else out of 'part'; empty where not stated"),
    ("motor", _TEXT, "", "tells motors of one number apart; empty where nothing does"),
    ("limits", _TEXT, "", "name of the limits it was judged by"),
    ("nominal_v", _NUMBER, "V", "nominal voltage by those limits"),
    ("outcome", _TEXT, "", "in order, fault found, suspicion or can't tell; empty: not judged"),
    ("worst", _TEXT, "", "kind of the gravest finding that failed"),
    ("sentence", _TEXT, "", "the verdict in words"),
    ("doubts", _WHOLE, "", "doubts about the meters' readings"),
    ("not_good", _TEXT, "", "why it stands in no baseline; empty where it may"),
    ("speed", _WHOLE, "", "commanded speed, of rows that belong to one"),
    ("steady_n", _WHOLE, "", "steady readings behind 'current_a'"),
    ("current_a", _NUMBER, "A", "steady motor current, by size, as measured"),
    ("current_u_a", _NUMBER, "A", "its combined standard uncertainty"),
    ("motor_v", _NUMBER, "V", "motor voltage meanwhile"),
    ("motor_u_v", _NUMBER, "V", "its combined standard uncertainty"),
    ("exponent", _NUMBER, "", "p in I ~ V^p at this place"),
    ("exponent_u", _NUMBER, "", "its standard uncertainty"),
    ("compared_at_v", _NUMBER, "V", "motor voltage at which the limits compare currents"),
    ("kind", _TEXT, "", "of the finding, such as dead or step-current"),
    ("verdict", _TEXT, "", "pass, fail or can't tell"),
    ("start_s", _NUMBER, "s", "since the recording's zero"),
    ("end_s", _NUMBER, "s", "since the recording's zero"),
    ("edge_s", _NUMBER, "s", "the larger uncertainty of both ends"),
    ("value", _NUMBER, "as 'unit' says", ""),
    ("unit", _TEXT, "", "of value, expanded_u and limit"),
    ("expanded_u", _NUMBER, "as 'unit' says", "expanded uncertainty of value, about 95 %"),
    ("limit", _NUMBER, "as 'unit' says", "the limit that decided"),
    ("probability", _NUMBER, "", "that the true value is within the limit"),
    ("statement", _TEXT, "", "the finding in one sentence"),
)

# Parquet calls what a list holds its element.
_LIST_TEXT = pa.list_(pa.field("element", _TEXT))
_LIST_NUMBER = pa.list_(pa.field("element", _NUMBER))
_BASELINES: tuple[tuple[str, pa.DataType, str, str], ...] = (
    ("part_number", _TEXT, "", "of the motors"),
    ("origin", _TEXT, "", "measured or simulated: the two are never in one baseline"),
    ("nominal_v", _NUMBER, "V", "nominal voltage"),
    ("speed", _WHOLE, "", "commanded speed"),
    ("n", _WHOLE, "", "motors; each counts once, with its newest good run"),
    ("reference_v", _NUMBER, "V", "motor voltage to which all currents were brought"),
    ("mean_a", _NUMBER, "A", "mean of the motors' steady currents there"),
    ("spread_a", _NUMBER, "A", "standard deviation between motors (n - 1); null below two"),
    ("expanded_u_a", _NUMBER, "A", "expanded uncertainty of the mean, about 95 %"),
    ("coverage", _NUMBER, "", "coverage factor of expanded_u_a"),
    ("low_a", _NUMBER, "A", "90 % of good motors lie above, see high_a; null below three"),
    ("high_a", _NUMBER, "A", "and below it, with 95 % confidence (ISO 16269-6, normal)"),
    ("motors", _LIST_TEXT, "", "which motors"),
    ("folders", _LIST_TEXT, "", "their recordings"),
    ("recording_ids", _LIST_TEXT, "", "likewise"),
    ("started_utc", _LIST_TEXT, "", "when those were made; RFC 3339, empty where not known"),
    ("currents_a", _LIST_NUMBER, "A", "their currents at reference_v"),
    ("currents_u_a", _LIST_NUMBER, "A", "combined standard uncertainties of those"),
    ("motor_v", _LIST_NUMBER, "V", "motor voltages as measured"),
    ("limits", _LIST_TEXT, "", "names of the limits they were judged by"),
)


def _schema(
    columns: tuple[tuple[str, pa.DataType, str, str], ...], what: str, form: str
) -> pa.Schema:
    fields = [
        pa.field(name, kind, metadata={"unit": unit, "description": words})
        for name, kind, unit, words in columns
    ]
    return pa.schema(fields, metadata={"meterlog": what, "format": form})


FINDINGS = _schema(_FINDINGS, "findings of many recordings", FORMAT)
"""Schema of the table of findings; each column's metadata holds its unit and what it is."""

BASELINES = _schema(_BASELINES, "what good motors of a part number draw", BASELINE_FORMAT)
"""Schema of the table of baselines."""
