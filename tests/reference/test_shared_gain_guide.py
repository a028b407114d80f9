"""Errors that two recordings share, against the guide's example of correlated resistors.

Sources
-------
JCGM 100:2008, 5.2.2, example: ten resistors of 1000 ohm, each compared with one standard of
standard uncertainty 100 mohm: in series 1 ohm, not 0.32 ohm. F.1.2.3: two readings of one
instrument are correlated through it; in their difference what is common cancels.
"""

from datetime import UTC, datetime

import pytest

from meterlog.analysis.budgets import budget, combine
from meterlog.analysis.compare.at_one_voltage import difference
from meterlog.analysis.compare.shared_errors import across_recordings
from meterlog.model import About, Channel, Identity, Instrument, Origin, Quantity, Role, Source


def _about(recording_id, serial):
    meter = Instrument(
        "dmm", "invented", "u", (Channel("amps", Quantity.CURRENT, Role.MOTOR_CURRENT),),
        identity=Identity(serial=serial),
    )  # fmt: skip
    return About(
        recording_id, datetime(2030, 1, 1, tzinfo=UTC), 0, 0, "test", Origin.MEASURED, (meter,)
    )


def _read(value, recording_id, serial="A1", key="dmm:gain amps 1 %"):
    made = budget("r", value, "A", (Source("gain", 0.0001, "1", value, key=key),))
    return across_recordings(made, _about(recording_id, serial))


def test_ten_in_series_are_known_to_one_ohm():
    resistors = [_read(1000.0, f"run {k}") for k in range(10)]
    series = combine("series", 10_000.0, "ohm", [(one, 1.0) for one in resistors])
    assert series.combined_u == pytest.approx(1.0, rel=1e-9)


def test_by_unknown_instruments_they_would_be_known_to_0_32_ohm():
    resistors = [_read(1000.0, f"run {k}", serial="") for k in range(10)]
    series = combine("series", 10_000.0, "ohm", [(one, 1.0) for one in resistors])
    assert series.combined_u == pytest.approx(0.316, abs=1e-3)


def test_in_the_ratio_of_two_readings_of_one_meter_its_gain_goes_out():
    old, new = _read(10.0, "old"), _read(12.0, "new")
    apart, ratio = difference(new, old, "", ())
    assert ratio.combined_u == pytest.approx(0.0, abs=1e-12)
    assert apart.combined_u == pytest.approx(2.0 * 0.0001, rel=1e-9)


def test_of_two_meters_it_stays():
    old, new = _read(10.0, "old", "A1"), _read(12.0, "new", "B2")
    apart, ratio = difference(new, old, "", ())
    assert apart.combined_u == pytest.approx(0.0001 * (10.0**2 + 12.0**2) ** 0.5, rel=1e-9)
    assert ratio.combined_u == pytest.approx(1.2 * 0.0001 * 2.0**0.5, rel=1e-9)


@pytest.mark.parametrize(
    "what", ["dmm.amps:digits 0 1.0", "dmm.amps:zero 0.1 0.01", "readings 0/0"]
)
def test_digits_zero_and_scatter_are_each_recordings_own(what):
    old, new = _read(10.0, "old", key=what), _read(10.0, "new", key=what)
    apart, _ = difference(new, old, "", ())
    assert apart.combined_u == pytest.approx(0.0001 * 10.0 * 2.0**0.5, rel=1e-9)
