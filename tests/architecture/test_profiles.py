"""Every profile that is shipped can be used as it is."""

import tomllib

import pytest

from meterlog.profile import load_limits, load_meter, names, shipped_folder


def test_there_are_meters_and_limits():
    assert {"line-logger", "bench-scpi"} <= set(names("meters"))
    assert "linear-12v" in names("limits")


@pytest.mark.parametrize("name", names("meters"))
def test_a_shipped_meter_loads_and_says_where_its_accuracy_is_from(name):
    meter = load_meter(name)
    assert meter.name == name
    assert meter.title
    for channel in meter.channels:
        assert channel.interval_s > 0.0
        if channel.accuracy is not None:
            assert channel.accuracy.basis


@pytest.mark.parametrize("name", names("limits"))
def test_shipped_limits_load_and_say_where_they_are_from(name):
    limits = load_limits(name)
    assert limits.basis
    assert limits.open_current_a < limits.locked_current_a
    assert limits.driven_v <= limits.supply_present_v <= limits.nominal_v


@pytest.mark.parametrize("name", names("limits"))
def test_currents_rise_from_speed_to_speed(name):
    speeds = load_limits(name).speeds
    highest = [speeds[step].max_a for step in sorted(speeds)]
    assert highest == sorted(highest)


def test_the_folder_holds_nothing_but_toml_that_parses():
    files = [path for path in shipped_folder().rglob("*") if path.is_file()]
    assert files
    for path in files:
        assert path.suffix == ".toml"
        tomllib.loads(path.read_text(encoding="utf-8"))
