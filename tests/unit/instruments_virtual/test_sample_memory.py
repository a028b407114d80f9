import numpy as np

from meterlog.instruments.virtual.meter import Shown
from meterlog.instruments.virtual.sample_memory import SampleMemory


def rows(*numbers):
    raw = np.array(numbers, float).reshape(-1, 1)
    return Shown(raw, raw > 100.0, raw < 0.0)


def test_rows_come_out_in_order_and_once():
    memory = SampleMemory(10)
    memory.add(rows(1, 2, 3))
    memory.add(rows(4, 5))
    assert memory.take(4).raw[:, 0].tolist() == [1, 2, 3, 4]
    memory.add(rows(6))
    assert memory.take(len(memory)).raw[:, 0].tolist() == [5, 6]
    assert len(memory) == 0


def test_a_full_memory_loses_what_comes_and_says_so_once():
    memory = SampleMemory(3)
    assert memory.add(rows(1, 2)) is None
    assert memory.add(rows(3, 4, 5)) == 1
    assert memory.add(rows(6)) is None
    assert memory.lost == 3
    assert memory.take(3).raw[:, 0].tolist() == [1, 2, 3]
    assert memory.lost == 0
    assert memory.add(rows(7, 8, 9)) is None
    assert memory.add(rows(10)) == 0


def test_flags_stay_with_their_rows():
    memory = SampleMemory(10)
    memory.add(rows(1, 200, -3))
    memory.take(1)
    left = memory.take(2)
    assert left.overload[:, 0].tolist() == [True, False]
    assert left.negative[:, 0].tolist() == [False, True]
