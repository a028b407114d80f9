"""A circuit whose fan would not run with nothing wrong is no circuit to look for faults in."""

import pytest

from meterlog.circuit.in_order import check_in_order
from meterlog.model.errors import ProfileError
from meterlog.profile import circuit_profile, names, profile_file

TEXT = profile_file("circuits", "low-side-linear-12v").read_text(encoding="utf-8")


@pytest.mark.parametrize("name", names("circuits"))
def test_every_shipped_circuit_runs(name):
    text = profile_file("circuits", name).read_text(encoding="utf-8")
    check_in_order(circuit_profile(name, text, name), name)


def test_a_battery_that_gives_nothing_is_named_as_a_fan_that_stands():
    text = TEXT.replace("charging_v = 14.1\nohm = 0.012", "charging_v = 14.1\nohm = 1e6", 1)
    assert text != TEXT
    with pytest.raises(ProfileError, match="would stand or crawl: the motor generates"):
        check_in_order(circuit_profile("c", text, "c.toml"), "c.toml")


def test_a_wire_across_the_battery_is_named_as_a_short_circuit():
    wire = """[[elements]]
name = "slip-of-the-pen"
kind = "wire"
nodes = ["battery-plus", "battery-minus"]
unit = "battery"
label = "a wire too many"
ohm = 0.01
"""
    text = TEXT.replace("[[elements]]", wire + "\n[[elements]]", 1)
    with pytest.raises(ProfileError, match=r"would give .* A: a short circuit"):
        check_in_order(circuit_profile("c", text, "c.toml"), "c.toml")
