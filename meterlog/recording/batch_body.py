"""BatchBody: the rows of one record batch, checked against its checksum."""

from __future__ import annotations

from typing import BinaryIO

import numpy as np

from meterlog.model import Block
from meterlog.recording.batch_crc import batch_crc
from meterlog.recording.flag_runs import from_runs
from meterlog.recording.stream_index import BatchPlace


def checked_batch(stream: BinaryIO, place: BatchPlace, source: str, width: int) -> Block | None:
    """Read one batch.

    Parameters
    ----------
    stream : binary file
    place : BatchPlace
    source : str
        Key of the instrument.
    width : int
        Its channels.

    Returns
    -------
    Block or None
        None if it does not match its checksum.

    Raises
    ------
    OSError
        If the file can't be read.
    """
    stream.seek(place.offset + place.body)
    body = stream.read(place.size - place.body)
    if len(body) < place.size - place.body:
        return None
    rows = place.rows
    t_ns = np.frombuffer(body, "<i8", rows)
    flat = np.frombuffer(body, "<f8", rows * width, 8 * rows)
    runs = []
    for (at, size), (values_at, count) in zip(
        place.buffers[1 + width :: 2], place.buffers[2 + width :: 2], strict=True
    ):
        ends = np.frombuffer(body, "<i4", size // 4, at)
        runs.append((ends, np.frombuffer(body, np.uint8, count, values_at)))
    if batch_crc(place.first_row, t_ns, [flat], runs) != place.crc:
        return None
    flags = np.empty((rows, width), np.uint8, order="F")
    if not all(from_runs(run, flags[:, k]) for k, run in enumerate(runs)):
        return None
    return Block(source, t_ns, flat.reshape((rows, width), order="F"), flags)
