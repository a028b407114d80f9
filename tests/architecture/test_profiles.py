"""Every profile that is shipped can be used as it is."""

import json
import tomllib

import pytest
from jsonschema import Draft202012Validator

from meterlog.instruments import (
    AsciiLineDecoder,
    BlockDecoder,
    LcdFrameDecoder,
    ModbusDecoder,
    ScpiAnswerDecoder,
)
from meterlog.profile import (
    DIALECTS,
    load_limits,
    load_meter,
    meter_faults,
    names,
    shipped_folder,
)

DECODERS = {
    "ascii-lines": lambda meter: AsciiLineDecoder(meter.lines, meter.channels),
    "lcd-frames": lambda meter: LcdFrameDecoder(meter.channels),
    "modbus-rtu": lambda meter: ModbusDecoder(meter.modbus, meter.channels),
    "scpi": lambda meter: ScpiAnswerDecoder(meter.channels),
    "scpi-blocks": lambda meter: BlockDecoder(meter.blocks, meter.channels),
}
SHIPPED = tuple(sorted(path.stem for path in (shipped_folder() / "meters").glob("*.toml")))


def shipped_text(name: str) -> str:
    return (shipped_folder() / "meters" / f"{name}.toml").read_text(encoding="utf-8")


def test_there_are_limits_and_a_meter_for_every_dialect():
    assert {load_meter(name).dialect for name in SHIPPED} == set(DIALECTS)
    assert "linear-12v" in names("limits")


@pytest.mark.parametrize("name", SHIPPED)
def test_a_shipped_meter_has_no_fault_and_its_dialect_can_read_it(name):
    assert meter_faults(shipped_text(name), name) == []
    meter = load_meter(name)
    if meter.dialect != "typed":
        assert len(DECODERS[meter.dialect](meter).feed(b"")) == 0


@pytest.mark.parametrize("name", SHIPPED)
def test_a_shipped_meter_tells_the_user_how_to_change_it(name):
    comment = "".join(line for line in shipped_text(name).splitlines() if line.startswith("#"))
    assert len(comment) > 100


@pytest.mark.parametrize("name", SHIPPED)
def test_ranges_differ_by_the_worth_of_their_last_digit(name):
    # By that a display's range is known.
    for channel in load_meter(name).channels:
        steps = [one.accuracy.resolution for one in channel.ranges]
        assert steps == sorted(set(steps))
        counts = load_meter(name).counts
        if counts:
            assert all(
                one.top / one.accuracy.resolution == pytest.approx(counts, rel=0.02)
                for one in channel.ranges
            )


@pytest.mark.parametrize("name", SHIPPED)
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


def test_the_folder_holds_nothing_but_toml_that_parses_and_the_schemas():
    files = [path for path in shipped_folder().rglob("*") if path.is_file()]
    assert files
    for path in files:
        text = path.read_text(encoding="utf-8")
        if path.suffix == ".json":
            Draft202012Validator.check_schema(json.loads(text))
            assert path.name in {"meter.schema.json", "circuit.schema.json"}
        else:
            assert path.suffix == ".toml"
            tomllib.loads(text)
