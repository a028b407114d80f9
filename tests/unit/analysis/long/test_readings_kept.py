"""The median is numpy's own, whether readings are kept one by one or counted."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.analysis.moments import Moments
from meterlog.analysis.readings_kept import FOLD, ReadingsKept


@settings(max_examples=60, deadline=None)
@given(
    seed=st.integers(0, 99),
    digits=st.sampled_from([0, 1, 2, 12]),
    sizes=st.lists(st.integers(1, 9_000), min_size=1, max_size=12),
    asked=st.lists(st.booleans(), min_size=12, max_size=12),
)
def test_median(seed, digits, sizes, asked):
    rng = np.random.default_rng(seed)
    kept, all_of_them = ReadingsKept(), np.empty(0)
    for size, ask in zip(sizes, asked, strict=False):
        more = np.round(rng.normal(0.0, 2.0, size), digits)
        kept.add(more)
        all_of_them = np.concatenate((all_of_them, more))
        if ask:
            other = kept.copy()
            assert kept.median() == np.median(all_of_them)
            other.add(np.full(3, 99.0))
            assert other.median() == np.median(np.append(all_of_them, [99.0] * 3))
    assert kept.median() == np.median(all_of_them)


@pytest.mark.parametrize(("digits", "few"), [(2, True), (12, False)])
def test_few_digits_take_little_memory_when_asked_for_again_and_again(digits, few):
    rng = np.random.default_rng(1)
    moments, all_of_them = Moments(), []
    for _ in range(300):
        moments.add(np.round(rng.normal(5.0, 0.1, 1_000), digits))
        all_of_them.append(moments.median)
    kept = moments._kept
    held = sum(len(part) for part in kept._plain) + len(kept._values)
    assert (held < 2 * FOLD) is few
