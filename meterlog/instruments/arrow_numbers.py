"""Arrow's numbers as numpy arrays, without pandas.

``to_numpy`` loads pandas, for a quarter of a second and 30 MB: in the middle of a recording, where
a meter hands over much at a time. DLPack gives the same memory.

Source
------
The Python array API standard 2023.12, ``from_dlpack``.
"""

from __future__ import annotations

from typing import Any

import numpy as np
import pyarrow as pa
from numpy.typing import NDArray

_NAN = pa.Array.from_buffers(pa.float64(), 1, [None, pa.py_buffer(np.array([np.nan]))])


def reals_of(column: pa.Array | pa.ChunkedArray) -> NDArray[np.float64]:
    """Give real numbers, to be looked at only.

    Parameters
    ----------
    column : pyarrow.Array or ChunkedArray of float64, length n

    Returns
    -------
    ndarray, float64, shape (n,)
        Nulls are NaN.
    """
    return _plain(column.fill_null(_NAN[0]) if column.null_count else column)


def wholes_of(column: pa.Array | pa.ChunkedArray) -> NDArray[np.int64]:
    """Give whole numbers, to be looked at only.

    Parameters
    ----------
    column : pyarrow.Array or ChunkedArray of int64, length n

    Returns
    -------
    ndarray, int64, shape (n,)

    Raises
    ------
    ValueError
        If there are nulls.
    """
    return _plain(column)


def truths_of(column: pa.Array | pa.ChunkedArray) -> NDArray[np.bool_]:
    """Give truths, to be looked at only.

    Parameters
    ----------
    column : pyarrow.Array or ChunkedArray of bool, length n

    Returns
    -------
    ndarray, bool, shape (n,)

    Raises
    ------
    ValueError
        If there are nulls.
    """
    # Arrow keeps eight in a byte, which DLPack has no word for.
    return _plain(column.cast(pa.uint8())).view(np.bool_)


def _plain(column: pa.Array | pa.ChunkedArray) -> NDArray[Any]:
    if column.null_count:
        raise ValueError(f"{column.null_count} nulls have no value")
    whole = column.combine_chunks() if isinstance(column, pa.ChunkedArray) else column
    return np.from_dlpack(whole)
