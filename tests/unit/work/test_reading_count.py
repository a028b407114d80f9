"""What counts as a reading: not a row that only says that nothing came."""

import numpy as np

from meterlog.model import Block, Channel, Flag, Instrument, Quantity, Role
from meterlog.work.reading_count import ReadingCount


def meter(key):
    channel = Channel("feed", Quantity.VOLTAGE, Role.MOTOR_FEED, interval_s=0.1)
    return Instrument(key, key, "invented", (channel,))


def block(flags):
    flags = np.array(flags, dtype=np.uint8)
    values = np.where(flags & (Flag.NO_DATA | Flag.OVERLOAD), np.nan, 12.0)
    return Block("meter", np.arange(len(flags), dtype=np.int64), values, flags)


def test_a_row_counts_if_any_channel_gave_something():
    count = ReadingCount()
    count.take(block([[0, 0], [Flag.NO_DATA, 0], [Flag.OVERLOAD, Flag.NO_DATA]]))
    count.take(block([[Flag.NO_DATA, Flag.NO_DATA], [Flag.NO_DATA | Flag.ZEROED, Flag.NO_DATA]]))
    count.take(block([[Flag.TYPED, 0]]))
    assert count.of([meter("meter"), meter("silent")]) == {"meter": 4, "silent": 0}
