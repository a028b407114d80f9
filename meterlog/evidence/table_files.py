"""TableFiles: a table and its metadata as the two files of an export."""

from __future__ import annotations

from collections.abc import Mapping

from meterlog.evidence.cell_text import csv_lines
from meterlog.evidence.csvw import csvw_metadata
from meterlog.evidence.table_column import Table, heads
from meterlog.evidence.table_form import TableForm
from meterlog.recording import METADATA_ENDING


def table_files(
    name: str,
    table: Table,
    form: TableForm,
    recording_id: str,
    more: Mapping[str, object] | None = None,
) -> dict[str, bytes]:
    """Give the files of one table.

    Parameters
    ----------
    name : str
        Of its file.
    table : Table
    form : TableForm
    recording_id : str
    more : mapping or None
        Common properties of the metadata besides.

    Returns
    -------
    dict of str to bytes
        The table and ``<name>-metadata.json``.
    """
    about = (table.title, table.words)
    return {
        name: csv_lines([heads(table.columns), *table.rows], form),
        name + METADATA_ENDING: csvw_metadata(name, about, table.columns, form, recording_id, more),
    }
