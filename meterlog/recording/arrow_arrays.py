"""Arrow arrays of Python's own values, made without pandas.

``pyarrow.array``, ``scalar`` and all that takes plain values load pandas to see whether they are
its: a quarter of a second and 30 MB, in every command that writes a table.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence

import numpy as np
import pyarrow as pa
from numpy.typing import NDArray

_Rows = Sequence[Mapping[str, object]]
_TEXT, _REAL, _WHOLE, _YES = pa.string(), pa.float64(), pa.int64(), pa.bool_()


def text_array(values: Iterable[str | None]) -> pa.StringArray:
    """Give texts; None is null.

    Raises
    ------
    UnicodeEncodeError
        If one holds half a character.
    OverflowError
        If they are longer than 2 GiB together.
    """
    words = list(values)
    coded = [b"" if word is None else word.encode() for word in words]
    ends = np.zeros(len(coded) + 1, np.int64)
    np.cumsum([len(one) for one in coded], out=ends[1:])
    if ends[-1] > np.iinfo(np.int32).max:
        raise OverflowError(f"{ends[-1]} bytes of text are too many for one column")
    places = ends.astype(np.int32)
    buffers = [_there(words), pa.py_buffer(places), pa.py_buffer(b"".join(coded))]
    return pa.Array.from_buffers(_TEXT, len(words), buffers)


def truth_array(values: Iterable[bool | None]) -> pa.BooleanArray:
    """Give truths; None is null."""
    said = list(values)
    return pa.Array.from_buffers(_YES, len(said), [_there(said), _bits(map(bool, said))])


def real_array(values: Iterable[float | None]) -> pa.DoubleArray:
    """Give real numbers; None is null, NaN is NaN."""
    said = list(values)
    numbers = np.array([np.nan if one is None else one for one in said], np.float64)
    return pa.Array.from_buffers(_REAL, len(said), [_there(said), pa.py_buffer(numbers)])


def whole_array(values: Iterable[int | None]) -> pa.Int64Array:
    """Give whole numbers; None is null."""
    said = list(values)
    numbers = np.array([0 if one is None else one for one in said], np.int64)
    return pa.Array.from_buffers(_WHOLE, len(said), [_there(said), pa.py_buffer(numbers)])


def table_of(rows: _Rows, schema: pa.Schema) -> pa.Table:
    """Give rows as a table.

    Parameters
    ----------
    rows : sequence of mapping
        By the names of the columns; what is not there is null.
    schema : pyarrow.Schema
        Of texts, reals, whole numbers, truths, and lists of these.
    """
    columns = [_column([row.get(field.name) for row in rows], field.type) for field in schema]
    return pa.Table.from_arrays(columns, schema=schema)


# object: the columns of a table have no types that could be checked.
_MAKERS: dict[pa.DataType, Callable[[Iterable[object]], pa.Array]] = {
    _TEXT: text_array,  # type: ignore[dict-item]
    _REAL: real_array,  # type: ignore[dict-item]
    _WHOLE: whole_array,  # type: ignore[dict-item]
    _YES: truth_array,  # type: ignore[dict-item]
}


def _column(values: Sequence[object], kind: pa.DataType) -> pa.Array:
    if not pa.types.is_list(kind):
        return _MAKERS[kind](values)
    lists: list[Sequence[object]] = [() if one is None else list(one) for one in values]  # type: ignore[call-overload]
    ends = np.zeros(len(lists) + 1, np.int32)
    np.cumsum([len(one) for one in lists], out=ends[1:])
    inside = _column([one for some in lists for one in some], kind.value_type)
    buffers = [_there(values), pa.py_buffer(ends)]
    return pa.Array.from_buffers(kind, len(lists), buffers, children=[inside])


def _there(values: Sequence[object]) -> pa.Buffer | None:
    """Give the bits that tell nulls from values; None where there is no null."""
    if None not in values:
        return None
    return _bits(one is not None for one in values)


def _bits(values: Iterable[bool]) -> pa.Buffer:
    truths: NDArray[np.bool_] = np.fromiter(values, np.bool_)
    return pa.py_buffer(np.packbits(truths, bitorder="little"))
