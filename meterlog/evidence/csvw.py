"""Csvw: the metadata of a table, by which programs read it without a word from anybody."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence

import meterlog
from meterlog.evidence.cell_text import defused
from meterlog.evidence.table_column import Column, Kind, names
from meterlog.evidence.table_form import TableForm

_UNIT_CODES = {"V": "VLT", "A": "AMP", "s": "SEC", "1": "C62"}
_DEFUSED = (
    "A text that a spreadsheet could run as a formula has an apostrophe in front: take it away from"
    " every text that goes on with = + - @ (also in full width), tab or line end after one or more"
    " apostrophes."
)
_INSTANT = {"base": "dateTimeStamp", "format": "yyyy-MM-ddTHH:mm:ss.SSSSSSSSSX"}
_YES_NO = {"base": "boolean", "format": "yes|no"}


def csvw_metadata(
    file: str,
    about: tuple[str, str],
    columns: Sequence[Column],
    form: TableForm,
    recording_id: str,
    more: Mapping[str, object] | None = None,
) -> bytes:
    """Give the metadata of one table.

    Parameters
    ----------
    file : str
        Name of the table; the metadata belong beside it, under ``-metadata.json`` added to it.
    about : tuple of (str, str)
        What the table is, and what one line of it is.
    columns : sequence of Column
    form : TableForm
    recording_id : str
        Of what recording.
    more : mapping or None
        Common properties besides.

    Returns
    -------
    bytes
        JSON, UTF-8.

    Source
    ------
    W3C Recommendations of 17 December 2015, "Metadata Vocabulary for Tabular Data" and "Model for
    Tabular Data and Metadata on the Web" (5.3 for the name, 6.4.2 for the formats of numbers).
    Units: UN/ECE Recommendation 20, common codes, as ``schema:unitCode``; the ampere squared
    second has only its symbol.
    """
    content = {
        "@context": ["http://www.w3.org/ns/csvw", {"@language": "en"}],
        "url": file,
        "dc:title": about[0],
        "dc:description": f"{about[1]} {_DEFUSED}",
        "dc:source": recording_id,
        "dc:creator": f"meterlog {meterlog.__version__}",
        **(more or {}),
        "dialect": {
            "delimiter": form.delimiter,
            "encoding": "utf-8",
            "header": True,
            "headerRowCount": 1,
            "lineTerminators": ["\r\n"],
            "quoteChar": '"',
            "doubleQuote": True,
            "commentPrefix": None,
            "skipBlankRows": False,
            "trim": False,
        },
        "tableSchema": {
            "columns": [
                _column(column, name, form)
                for column, name in zip(columns, names(columns), strict=True)
            ]
        },
    }
    return (json.dumps(content, indent=1, ensure_ascii=False) + "\n").encode(
        "utf-8", "backslashreplace"
    )


def _column(column: Column, name: str, form: TableForm) -> dict[str, object]:
    told: dict[str, object] = {
        "name": name,
        "titles": defused(column.head),
        "dc:description": column.words,
        "datatype": _datatype(column.kind, form),
        "null": "",
        "required": False,
    }
    if column.kind in {Kind.WORDS, Kind.WHOLES}:
        told["separator"] = " "
    if column.unit in _UNIT_CODES:
        told["schema:unitCode"] = _UNIT_CODES[column.unit]
    if column.unit:
        told["schema:unitText"] = column.unit
    return told


def _datatype(kind: Kind, form: TableForm) -> object:
    comma = {"base": "decimal", "format": {"decimalChar": ","}}
    return {
        Kind.TEXT: "string",
        Kind.WORDS: "string",
        Kind.NUMBER: comma if form.decimal_comma else "double",
        # xsd:decimal has no infinity.
        Kind.DEGREES: "string" if form.decimal_comma else "double",
        Kind.WHOLE: "integer",
        Kind.WHOLES: "integer",
        Kind.YES_NO: _YES_NO,
        Kind.INSTANT: _INSTANT,
    }[kind]
