"""FlagWords: the flags of a row in words."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import pyarrow as pa
from numpy.typing import NDArray

from meterlog.model import FLAG_WORDS
from meterlog.recording.arrow_arrays import number_array, text_array


def flag_words(flags: NDArray[np.uint8], names: Sequence[str]) -> pa.DictionaryArray:
    """Give the flags of many rows in words.

    Parameters
    ----------
    flags : ndarray, uint8, shape (n, channels)
        n at least 1.
    names : sequence of str
        Of the channels.

    Returns
    -------
    pyarrow.DictionaryArray of string, length n
        Such as ``motor-current:overload motor-feed:zeroed``; null where no flag stands.
    """
    # Rows with the same flags stand together: words are made once a run, not once a row.
    changed = np.flatnonzero((flags[1:] != flags[:-1]).any(axis=1)) + 1
    starts = np.concatenate(([0], changed))
    lengths = np.diff(starts, append=len(flags))
    numbers: dict[str, int] = {}
    codes = np.empty(len(starts), np.int32)
    for run, start in enumerate(starts):
        codes[run] = numbers.setdefault(_words(flags[start], names), len(numbers))
    return pa.DictionaryArray.from_arrays(
        number_array(np.repeat(codes, lengths)),
        text_array(text or None for text in numbers),
    )


def _words(row: NDArray[np.uint8], names: Sequence[str]) -> str:
    return " ".join(
        f"{name}:{word}"
        for name, bits in zip(names, row.tolist(), strict=True)
        for flag, word in FLAG_WORDS.items()
        if bits & flag
    )
