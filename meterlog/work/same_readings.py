"""SameReadings: whether two recordings hold the very same readings, whatever they are called."""

from __future__ import annotations

import hashlib

import numpy as np

from meterlog.recording import Recording


def same_readings(one: Recording, other: Recording) -> bool:
    """Tell whether every reading of one is that of the other, to the last digit.

    No meter gives the same noise twice: such recordings are one run, imported twice. Times are not
    looked at, as whoever imports a table says when it begins.

    Parameters
    ----------
    one, other : Recording
        Only where both have as many rows, instrument by instrument, are the readings read.

    Returns
    -------
    bool
        False where there are no readings.
    """
    rows = [_rows(recording) for recording in (one, other)]
    return rows[0] == rows[1] and sum(rows[0]) > 0 and _digest(one) == _digest(other)


def _rows(recording: Recording) -> list[int]:
    return [recording.rows(instrument.key) for instrument in recording.about.instruments]


def _digest(recording: Recording) -> str:
    """Give the SHA-256 of all values, row by row, however they were cut into blocks."""
    found = hashlib.sha256()
    for instrument in recording.about.instruments:
        found.update(f"{len(instrument.channels)}\n".encode())
        for block in recording.blocks(instrument.key):
            values = np.ascontiguousarray(block.values, dtype="<f8") + 0.0
            values[np.isnan(values)] = np.nan
            found.update(values.tobytes())
    return found.hexdigest()
