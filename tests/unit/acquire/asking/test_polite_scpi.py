"""Samples read in the wrong form are told from those read in the right one."""

from dataclasses import replace

import numpy as np
import pytest

from meterlog.acquire.asking.polite_scpi import is_plausible
from meterlog.instruments import BlockDecoder
from meterlog.profile import BlockLayout, load_meter

CHANNELS = load_meter("block-daq-float").channels
FORMS = {
    ("int16", "normal"): ">i2",
    ("int16", "swapped"): "<i2",
    ("real32", "normal"): ">f4",
    ("real32", "swapped"): "<f4",
    ("real64", "normal"): ">f8",
    ("real64", "swapped"): "<f8",
}


def channels_for(number):
    scale = 0.001 if number == "int16" else 1.0
    return tuple(replace(channel, scale=scale, offset=0.0) for channel in CHANNELS)


@pytest.mark.parametrize("seed", range(3))
@pytest.mark.parametrize(("number", "order"), FORMS)
def test_the_form_it_was_written_in_is_plausible_and_others_are_not(number, order, seed):
    rng = np.random.default_rng(seed)
    rows = np.array([12.4, 8.1, 4.9]) + rng.normal(0, 0.02, (200, 3))
    raw = rows * 1000 if number == "int16" else rows
    payload = raw.astype(FORMS[number, order]).tobytes()
    block = b"#6%06d" % len(payload) + payload + b"\n"
    plausible = []
    for other, form in FORMS:
        channels = channels_for(other)
        with np.errstate(all="ignore"):
            decoder = BlockDecoder(BlockLayout(number=other, byte_order=form), channels)
            readings = decoder.feed(block)
        if len(readings) and is_plausible(channels, readings):
            plausible.append((other, form))
    assert (number, order) in plausible
    if number == "int16":
        # Read as 64 bits they may look quiet by chance; the other byte order nearly always does.
        assert "real32" not in {kind for kind, _ in plausible}
    else:
        assert plausible == [(number, order)]


def test_a_single_reading_is_judged_by_its_size_only():
    one = BlockDecoder(BlockLayout(), channels_for("real32")).feed(
        b"#212" + np.array([12, 8, 4], ">f4").tobytes() + b"\n"
    )
    assert is_plausible(channels_for("real32"), one)
    assert not is_plausible(channels_for("real32"), replace(one, values=one.values * 1e9))
    assert not is_plausible(channels_for("real32"), replace(one, values=one.values * np.nan))
