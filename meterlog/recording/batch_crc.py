"""BatchCrc: the checksum of one record batch, over what it says and not over how it is packed."""

from __future__ import annotations

import struct
import zlib
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray


def batch_crc(
    first_row: int,
    t_ns: NDArray[np.int64],
    values: Sequence[NDArray[np.float64]],
    flags: Sequence[tuple[NDArray[np.int32], NDArray[np.uint8]]],
) -> int:
    """Give the CRC-32 of a record batch.

    Any flipped bit that changes a row's number, the count of rows, a time, a value or a flag
    changes it; a flipped bit in the packing either leaves all those as they are or makes the
    packing unreadable.

    Parameters
    ----------
    first_row : int
        Number of the batch's first row within its file, from 0.
    t_ns : ndarray, int64, shape (n,)
    values : sequence of ndarray, float64, shape (n,) or, for columns that lie one behind the
        other in memory, shape (n x columns,)
        In channel order.
    flags : sequence of (ndarray int32, ndarray uint8), both of shape (runs,)
        Run ends and run values of each channel, in channel order.

    Returns
    -------
    int
        CRC-32 (``zlib.crc32``) over, one behind the other and little endian: ``first_row`` int64;
        n int64; the bytes of ``t_ns``; the bytes of each value column; and for each flag column
        the count of runs int64, the run ends int32 each, the run values uint8 each.

    Source
    ------
    CRC-32 as in ISO/IEC/IEEE 8802-3 (Ethernet), RFC 1952 section 8.
    """
    crc = zlib.crc32(struct.pack("<qq", first_row, len(t_ns)))
    crc = zlib.crc32(t_ns.data, crc)
    for column in values:
        crc = zlib.crc32(column.data, crc)
    for ends, runs in flags:
        crc = zlib.crc32(struct.pack("<q", len(ends)), crc)
        crc = zlib.crc32(runs.data, zlib.crc32(ends.data, crc))
    return crc
