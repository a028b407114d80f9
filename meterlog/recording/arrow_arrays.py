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


def number_array(values: NDArray[np.number], there: NDArray[np.bool_] | None = None) -> pa.Array:
    """Give numbers as they lie in memory, without a copy.

    Parameters
    ----------
    values : ndarray, shape (n,), side by side
    there : ndarray, bool, shape (n,), or None
        False where there is none; None: all are there.
    """
    buffers = [_bits(there), pa.py_buffer(values)]
    return pa.Array.from_buffers(pa.from_numpy_dtype(values.dtype), len(values), buffers)


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
    places = pa.py_buffer(ends.astype(np.int32))
    buffers = [_bits(_there(words)), places, pa.py_buffer(b"".join(coded))]
    return pa.Array.from_buffers(_TEXT, len(words), buffers)


def truth_array(values: Iterable[bool | None]) -> pa.BooleanArray:
    """Give truths; None is null."""
    said = list(values)
    truths = _bits(np.array([bool(one) for one in said], np.bool_))
    return pa.Array.from_buffers(_YES, len(said), [_bits(_there(said)), truths])


def real_array(values: Iterable[float | None]) -> pa.DoubleArray:
    """Give real numbers; None is null, NaN is NaN."""
    said = list(values)
    numbers = [np.nan if one is None else one for one in said]
    return number_array(np.array(numbers, np.float64), _there(said))


def whole_array(values: Iterable[int | None]) -> pa.Int64Array:
    """Give whole numbers; None is null."""
    said = list(values)
    return number_array(
        np.array([0 if one is None else one for one in said], np.int64), _there(said)
    )


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
    buffers = [_bits(_there(values)), pa.py_buffer(ends)]
    return pa.Array.from_buffers(kind, len(lists), buffers, children=[inside])


def _there(values: Sequence[object]) -> NDArray[np.bool_] | None:
    """Tell nulls from values; None where there is no null."""
    return np.array([one is not None for one in values], np.bool_) if None in values else None


def _bits(truths: NDArray[np.bool_] | None) -> pa.Buffer | None:
    return None if truths is None else pa.py_buffer(np.packbits(truths, bitorder="little"))
