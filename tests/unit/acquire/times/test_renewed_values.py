"""Meters that answer with the last value that they measured by themselves."""

from dataclasses import replace

import numpy as np
import pytest

from meterlog.acquire.choice import MeterChoice
from meterlog.acquire.times.stamping import Sending, Stamper, sending
from meterlog.instruments import Readings
from meterlog.profile import load_meter

MS = 1_000_000


def test_a_value_that_the_meter_renews_by_itself_is_half_an_interval_old_on_average():
    renewed = Sending(0.2, 0.1, unasked=False, renewed=True)
    readings = Readings(np.zeros((1, 1)), np.zeros((1, 1), np.uint8))
    (stamped,) = Stamper(renewed).take(readings, 300 * MS, 290 * MS)
    assert stamped.t_ns.tolist() == [150 * MS]


@pytest.mark.parametrize(
    ("name", "query", "renewed"),
    [("bench-scpi", "READ?", False), ("bench-scpi", "fetch?", True), ("panel-meter", "", True)],
)
def test_who_renews_by_himself_is_told_from_the_profile(name, query, renewed):
    profile = load_meter(name)
    profile = replace(profile, scpi=replace(profile.scpi, query=query))
    assert sending(MeterChoice(profile, "-", name, profile.channels)).renewed is renewed
