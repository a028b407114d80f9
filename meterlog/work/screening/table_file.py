"""TableFile: a Parquet table that anybody may have made, read piece by piece up to a limit.

A few kilobytes can say one long text a million times. So texts are taken as their tables of words
first, and counted before they are spelt out.
"""

from __future__ import annotations

import errno
from collections.abc import Iterator
from pathlib import Path

import pyarrow as pa
import pyarrow.parquet as pq

from meterlog.profile.plain_file import open_plain

_PIECE = 4096
"""Rows; chosen: small beside any limit, large beside what a call costs."""

UNREADABLE = (OSError, pa.ArrowException, UnicodeDecodeError)
"""What reading what is no table, or a damaged one, ends in; ``strerror`` of an OSError says why."""


def schema_of(path: Path) -> pa.Schema:
    """Give what a table says of itself; nothing else is read.

    Raises
    ------
    OSError, ArrowException, UnicodeDecodeError
        As :data:`UNREADABLE`: it is no Parquet table, or a pipe, a device or a folder.
    """
    with open_plain(path) as stream:
        return pq.read_schema(stream)


def is_of(found: pa.Schema, wanted: pa.Schema) -> bool:
    """Tell whether a table has the columns of another, of the same types in the same order."""
    return bool(found.names == wanted.names and found.types == wanted.types)


def pieces(path: Path, schema: pa.Schema, most: int) -> Iterator[pa.Table]:
    """Give the rows of a table, some thousands at a time.

    Parameters
    ----------
    path : Path
        Its columns are those of ``schema`` (:func:`is_of`).
    schema : Schema
    most : int, bytes
        More than this is not unpacked, whatever its columns say.

    Raises
    ------
    OSError, ArrowException, UnicodeDecodeError
        As :func:`schema_of`; OSError also where it holds more.
    """
    with open_plain(path) as stream:
        head = pq.read_metadata(stream)
        stream.seek(0)
        file = pq.ParquetFile(stream, read_dictionary=_texts(head.schema), metadata=head)
        # Not asked of its columns: at damaged statistics PyArrow 26 ends the process.
        groups = [head.row_group(at) for at in range(head.num_row_groups)]
        _refuse_more(sum(one.total_byte_size for one in groups), path, most)
        read = 0
        # Group by group: words of two groups are two tables, which Arrow does not join in lists.
        for at in range(head.num_row_groups):
            for piece in file.iter_batches(batch_size=_PIECE, row_groups=[at]):
                read += sum(_spelt_out(one) for one in piece.columns)
                _refuse_more(read, path, most)
                whole = pa.Table.from_batches([piece]).cast(schema)
                whole.validate(full=True)  # bytes that are no text, lists beyond their values
                yield whole


def _texts(schema: pq.ParquetSchema) -> list[str]:
    """Name the columns that hold texts, as this file calls them."""
    columns = [schema.column(at) for at in range(len(schema))]
    return [one.path for one in columns if one.physical_type == "BYTE_ARRAY"]


def _spelt_out(column: pa.Array) -> int:
    """Give how many bytes a column takes with its texts spelt out."""
    if pa.types.is_list(column.type):
        return 4 * len(column) + _spelt_out(column.flatten())
    if pa.types.is_dictionary(column.type):
        lengths = pa.compute.binary_length(column.dictionary).take(column.indices)
        return 4 * len(column) + (pa.compute.sum(lengths).as_py() or 0)
    return int(column.nbytes)


def _refuse_more(count: int, path: Path, most: int) -> None:
    if count > most:
        raise OSError(errno.EFBIG, f"it holds more than {most >> 20} MiB unpacked", str(path))
