"""StreamSchema: the columns of one instrument's readings file."""

from __future__ import annotations

import pyarrow as pa

from meterlog.model import Instrument
from meterlog.model.errors import RecordingError

TIME = "t_ns"
FLAGS = ".flags"

RUNS = pa.run_end_encoded(pa.int32(), pa.uint8())


def stream_schema(instrument: Instrument) -> pa.Schema:
    """Give the Arrow schema of an instrument's readings.

    Parameters
    ----------
    instrument : Instrument

    Returns
    -------
    pyarrow.Schema
        ``t_ns`` int64; one float64 column a channel, named as the channel; one run-end-encoded
        uint8 column a channel, named ``<channel>.flags``. No column may hold nulls: a value that
        is not there is NaN with a flag.

    Raises
    ------
    RecordingError
        If two columns would have the same name.
    """
    names = [channel.name for channel in instrument.channels]
    columns = [TIME, *names, *(name + FLAGS for name in names)]
    if len(set(columns)) != len(columns):
        raise RecordingError(
            f"two columns would have the same name: {', '.join(columns)}.",
            subject=instrument.key,
            remedy="Give the channels other names.",
        )
    fields = [pa.field(TIME, pa.int64(), nullable=False)]
    fields += [pa.field(name, pa.float64(), nullable=False) for name in names]
    fields += [pa.field(name + FLAGS, RUNS, nullable=False) for name in names]
    return pa.schema(fields)
