"""``meterlog skew`` on recordings made of simulated traces; all figures invented."""

import json
from dataclasses import replace
from datetime import UTC, datetime

import numpy as np
import pytest

from meterlog.model import (
    About,
    Block,
    Channel,
    Event,
    EventKind,
    Flag,
    Identity,
    Instrument,
    Origin,
    Quantity,
    Role,
)
from meterlog.recording import Recorder, seal

AMPS = Channel("amps", Quantity.CURRENT, Role.MOTOR_CURRENT, interval_s=0.02, integration_s=0.02)


@pytest.fixture(autouse=True)
def own_settings(tmp_path, monkeypatch):
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "settings"))
    return tmp_path / "settings" / "meterlog" / "skews.json"


def trace(interval_s, late_s, level=9.0):
    ends = np.arange(interval_s, 30.0, interval_s)
    on = (np.floor((ends - interval_s / 2.0 + 0.3) / 3.0) % 2 == 1) * level
    t_ns = np.rint((ends + late_s) * 1e9).astype(np.int64)
    return t_ns, on


@pytest.fixture
def make(tmp_path):
    """Make a sealed recording of meters with given intervals, lateness and identity."""

    def make(name, *meters):
        instruments = tuple(
            Instrument(
                key,
                key,
                "-",
                (replace(AMPS, role=role, interval_s=interval_s, integration_s=interval_s),),
                Identity(serial=serial),
                **more,
            )
            for key, role, interval_s, serial, more, _ in meters
        )
        about = About(
            name, datetime(2026, 1, 2, tzinfo=UTC), 0, 0, "test", Origin.MEASURED, instruments
        )
        recorder = Recorder.create(tmp_path / name, about)
        for key, _, interval_s, _, _, late_s in meters:
            if late_s is None:
                t_ns, values = trace(interval_s, 0.0, 0.0)
            else:
                t_ns, values = trace(interval_s, late_s)
            flags = np.full((len(values), 1), int(Flag.OK), np.uint8)
            recorder.take(Block(key, t_ns, values[:, None], flags))
        recorder.take(Event(30_000_000_000, EventKind.NOTE, "end"))
        recorder.close("complete")
        seal(tmp_path / name)
        return tmp_path / name

    return make


def meter(key, late_s, interval_s=0.02, serial="7", role=Role.MOTOR_CURRENT, **more):
    return key, role, interval_s, serial, more, late_s


def test_the_skew_is_told_step_by_step_and_as_a_whole(run, make, own_settings):
    folder = make("two", meter("clamp", 0.0), meter("hand", 0.15))
    said = run("skew", folder).out
    assert "clamp (motor-current) and hand (motor-current)" in said
    assert said.count("+150.0 ms") == 5
    assert "150.0 ms later than those of clamp, ±" in said
    assert "same instant" in said
    assert not own_settings.exists()


def test_kept_it_is_in_the_settings_and_can_be_forgotten(run, make, own_settings):
    folder = make("two", meter("clamp", 0.0), meter("hand", 0.15, serial=""))
    said = run("skew", folder, "--keep").out
    assert "hand gave no serial number" in said
    (entry,) = json.loads(own_settings.read_text()).values()
    assert entry["later_s"] == pytest.approx(0.15, abs=0.001)
    assert entry["steps"] == 5
    assert "Forgotten." in run("skew", folder, "--forget").out
    assert json.loads(own_settings.read_text()) == {}


def test_what_was_subtracted_when_it_was_recorded_is_added_again(run, make, own_settings):
    folder = make("two", meter("clamp", 0.0), meter("hand", 0.02, skew_s=0.1, skew_u_s=0.01))
    said = json.loads(run("skew", folder, "--keep", "--json").out)
    assert said["second_later_s"] == pytest.approx(0.02, abs=0.001)
    assert said["subtracted_when_recorded_s"] == 0.1
    assert said["in_all_s"] == pytest.approx(0.12, abs=0.001)
    (entry,) = json.loads(own_settings.read_text()).values()
    assert entry["later_s"] == pytest.approx(0.12, abs=0.001)
    assert said["kept_in"] == str(own_settings)


def test_without_a_common_step_it_is_refused_and_nothing_is_kept(run, make, own_settings):
    folder = make("two", meter("clamp", 0.0), meter("hand", None))
    said = run("skew", folder, "--keep", code=1).out
    assert "No skew: the second meter does not show that the fan was switched off." in said
    assert not own_settings.exists()
    told = json.loads(run("skew", folder, "--json", code=1).out)
    assert (told["second_later_s"], told["standard_uncertainty_s"]) == (None, None)


@pytest.mark.parametrize(
    ("words", "complaint"),
    [
        ((), "Say which two with --meters A B"),
        (("--meters", "clamp", "nobody"), "nobody: is no meter of this recording"),
        (("--meters", "clamp", "clamp"), "is the same meter twice"),
        (("--meters", "clamp", "relay"), "relay: has no channel that shows"),
        (("--keep", "--forget"), "not allowed with"),
    ],
)
def test_what_can_not_be_meant_is_refused(run, make, words, complaint):
    folder = make(
        "three",
        meter("clamp", 0.0),
        meter("hand", 0.1),
        meter("relay", 0.0, role=Role.RELAY_COIL),
    )
    assert complaint in run("skew", folder, *words, code=2).err


def test_two_meters_that_can_not_be_told_apart_are_not_kept(run, make):
    folder = make("two", meter("clamp", 0.0, serial=""), meter("hand", 0.1, serial=""))
    run("skew", folder, "--keep")
    about = (folder / "data" / "about.json").read_text()
    (folder / "data" / "about.json").write_text(
        about.replace('"profile": "hand"', '"profile": "clamp"')
    )
    assert "can't be told apart" in run("skew", folder, "--keep", code=2).err


def test_a_recording_of_one_meter_is_refused_by_its_name(run, make):
    folder = make("one", meter("clamp", 0.0))
    said = run("skew", folder, code=2).err
    assert f"{folder}: holds 1 meters, not two. Record two." in said
