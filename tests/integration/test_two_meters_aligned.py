"""Meters of different dialects and rates on one fan: one time axis, held against the bench's truth.

The bench (a process of its own, simulated) says when it switched the fan by the host's monotonic
clock; the recording knows its own zero by the same clock.
"""

import json
import os
import time
from dataclasses import replace
from pathlib import Path

import calm
import numpy as np
import pytest

from meterlog import cli
from meterlog.acquire import MeterChoice
from meterlog.analysis.switching import switchings
from meterlog.model import EventKind, Limits, Role
from meterlog.profile import load_meter
from meterlog.recording import Recording
from meterlog.work import Run, review_folder
from meterlog.work.bench_process import BenchProcess

pytestmark = [
    pytest.mark.skipif(not hasattr(os, "openpty"), reason="needs pseudo terminals"),
]

HAND = "hand-meter-fixed"
ROLES = {
    "line-logger": {"current": Role.MOTOR_CURRENT},
    "bench-scpi": {"volts": Role.MOTOR_RETURN},
    HAND: {"amps": Role.MOTOR_CURRENT},
}
SHOWN = {"line-logger": 2, "bench-scpi": 0, HAND: 0}


@pytest.fixture(scope="module", autouse=True)
def own_profiles(tmp_path_factory):
    """Give the hand-held meter one range less: changing it, it would be blind at the very edge."""
    place = tmp_path_factory.mktemp("profiles")
    text = Path(load_meter("hand-meter-amps").source).read_text()
    before, *ranges = text.split("[[channels.ranges]]")
    (place / "meters").mkdir()
    file = place / "meters" / f"{HAND}.toml"
    file.write_text("[[channels.ranges]]".join([before, *ranges[1:]]))
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("METERLOG_PROFILES", str(place))
        yield


def choice(name, address):
    profile = load_meter(name)
    roles = ROLES[name]
    channels = tuple(replace(one, role=roles.get(one.name, Role.OTHER)) for one in profile.channels)
    return MeterChoice(profile, address, name, channels)


def record(choices, folder, seconds):
    run = Run(choices, Limits(), folder)
    run.start()
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        time.sleep(0.05)
    run.stop()
    return Recording.open(folder)


@pytest.fixture(scope="module")
def recorded(tmp_path_factory, room_of_workers):
    """Record three meters while the fan is switched on and off; keep when it really was."""

    def make():
        return recorded_in(tmp_path_factory.mktemp("aligned"))

    return calm.calmest(make, 0.05, room_of_workers)


def recorded_in(place):
    happened = []
    options = ["--no-script", "--probe", "bench-scpi.volts=motor-return"]
    for turn in range(4):
        # Off the beat of all meters.
        options += ["--at", f"{1.9 + 3.137 * turn:.3f}", "speed 4"]
        options += ["--at", f"{3.4 + 3.137 * turn:.3f}", "speed 0"]
    told = lambda kind, value, when_ns: happened.append((kind, value, when_ns))  # noqa: E731
    with BenchProcess(list(ROLES), "healthy-new", 3, told, options) as bench:
        choices = [choice(name, address) for name, address in bench.addresses().items()]
        recording = record(choices, place / "first", 14.0)
    zero_ns = recording.about.zero_ns
    truth = {
        value: np.array([t - zero_ns for kind, speed, t in happened if speed == value])
        for value in ("4", "0")
    }
    # The fan is off to begin with.
    return recording, {True: truth["4"], False: truth["0"][-4:]}


def error_s(recorded, key):
    """Give how much later than the truth a meter shows each switching.

    The current where it stops, the voltage where it begins to be driven: see meterlog skew.
    """
    recording, truth = recorded
    column = SHOWN[key]
    channel = next(i for i in recording.about.instruments if i.key == key).channels[column]
    blocks = list(recording.blocks(key))
    t_ns = np.concatenate([block.t_ns for block in blocks])
    values = np.concatenate([block.values[:, column] for block in blocks])
    (role,) = ROLES[key].values()
    found = switchings(t_ns, values, role, channel.interval_s)
    on = role is Role.MOTOR_RETURN
    times = np.array([one.t_ns for one in found if one.on is on])
    assert len(times) == 4
    return (times - truth[on]) / 1e9


@pytest.mark.parametrize("name", list(ROLES))
def test_each_meter_shows_the_switching_within_half_its_interval_of_the_truth(recorded, name):
    limit_s = max(load_meter(name).interval_s / 2.0, 0.015)
    assert np.abs(error_s(recorded, name)).max() < limit_s


@pytest.mark.parametrize(
    ("fast", "slow"),
    [
        ("line-logger", "bench-scpi"),
        ("line-logger", HAND),
        ("bench-scpi", HAND),
    ],
)
def test_two_meters_are_aligned_to_better_than_half_the_slower_ones_interval(recorded, fast, slow):
    apart_s = error_s(recorded, slow) - error_s(recorded, fast)
    assert np.abs(apart_s).max() < load_meter(slow).interval_s / 2.0
    assert abs(apart_s.mean()) < load_meter(slow).interval_s / 4.0


def test_the_recording_says_how_well_the_times_agree(recorded):
    recording, _ = recorded
    _, review = review_folder(recording.folder)
    agree = [note for note in review.notes if "agree to ±" in note]
    assert len(agree) == 3
    told = [event for event in recording.events if event.kind is EventKind.TIMING]
    assert {event.source for event in told} == set(ROLES)
    assert all("standard uncertainty" in event.value for event in told)
    assert recording.rows("line-logger") > 600


def test_a_skew_is_measured_kept_and_subtracted_in_the_next_recording(
    recorded, tmp_path, monkeypatch, capsys
):
    recording, _ = recorded
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "settings"))
    command = ["skew", str(recording.folder), "--meters", "line-logger", HAND]
    assert cli.main([*command, "--keep", "--json"]) == 0
    said = json.loads(capsys.readouterr().out)
    assert [step["to"] for step in said["steps"]] == ["off"] * 4
    assert abs(said["second_later_s"]) < 0.2
    assert 0.02 < said["standard_uncertainty_s"] < 0.12
    # As if it had been much more, so that it can be told in the times.
    kept = tmp_path / "settings" / "meterlog" / "skews.json"
    entries = json.loads(kept.read_text())
    (entry,) = entries.values()
    assert entry["later_s"] == pytest.approx(said["second_later_s"])
    entry["later_s"] = 0.5
    kept.write_text(json.dumps(entries))
    with BenchProcess(["line-logger", HAND], "healthy-new", 3) as bench:
        choices = [choice(name, address) for name, address in bench.addresses().items()]
        second = record(choices, tmp_path / "second", 2.0)
    logger, hand = second.about.instruments
    assert (logger.skew_s, hand.skew_s) == (0.0, 0.5)
    assert hand.skew_u_s == pytest.approx(said["standard_uncertainty_s"])
    (note,) = [one for one in review_folder(second.folder)[1].notes if "agree to ±" in one]
    assert f"{HAND} was 500.0 ms later than line-logger, which is subtracted" in note
    last = {key: max(int(b.t_ns[-1]) for b in second.blocks(key)) for key in ("line-logger",)}
    arrived = [raw.t_ns for raw in second.raw(HAND) if raw.data]
    stamps = np.concatenate([block.t_ns for block in second.blocks(HAND)])
    assert arrived[-1] - stamps[-1] > 600_000_000  # 500 ms, and half of 300 ms of averaging
    assert last["line-logger"] > stamps[-1]
