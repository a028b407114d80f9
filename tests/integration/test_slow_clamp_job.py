"""A dead spot through a slow meter at a clamp and a fast one at the voltages, on real ports.

The bench is a process of its own, simulated; it says what really happened by the host's clock.
"""

import os
import threading
import time

import calm
import numpy as np
import pytest

from meterlog.model import FindingKind, Role, Verdict
from meterlog.profile import load_limits
from meterlog.recording import Recording
from meterlog.work import Run, SensorWords, Wiring, choose_meters, review_folder
from meterlog.work.bench_process import BenchProcess

pytestmark = [
    pytest.mark.skipif(not hasattr(os, "openpty"), reason="needs pseudo terminals"),
]

ROLES = (
    "motor-feed=line-logger.feed",
    "motor-return=line-logger.return",
    "motor-current=bench-scpi.volts",
)
SENSOR = SensorWords(clamps=["motor-current=10mV/A"], accuracies=["motor-current=1.5+0.1"])
EDGE_S = 0.3
"""How far apart two readings of the clamp may be at most."""
SECONDS = 9.8
"""The second dead segment ends with the tap at 9 s."""


@pytest.fixture(scope="module")
def job(tmp_path_factory, room_of_workers):
    """Record; give the live review when all had come, the folder, and the run."""

    def make():
        return recorded_in(tmp_path_factory.mktemp("job") / "recording")

    return calm.calmest(make, 0.05, room_of_workers, tries=5, on_time=clamp_kept_its_pace)


def recorded_in(folder):
    begun, run = threading.Event(), None

    def told(kind, value, when_ns):
        if begun.wait(20.0) and run.is_running:
            run.mark(kind, value, max(when_ns - run.about.zero_ns, 0))

    options = ["--probe", "bench-scpi.volts=clamp-10mv-per-a"]
    with BenchProcess(["line-logger", "bench-scpi"], "dead-spot", 1, told, options) as bench:
        meters = [f"{name}@{address}" for name, address in bench.addresses().items()]
        choices = choose_meters(Wiring(meters, ROLES, sensors=SENSOR))
        run = Run(choices, load_limits("linear-12v"), folder)
        run.start()
        begun.set()
        run.take_zero(Role.MOTOR_CURRENT, 1.2)  # the bench is off for its first two seconds
        end = time.monotonic() + SECONDS
        while time.monotonic() < end:
            run.review()  # as a window does; looking must not disturb
            time.sleep(0.05)
        run.stop()
    time.sleep(0.3)  # a live review is made afresh four times a second
    return run.review(), folder


def told_of(review):
    """Everything said of spans and steps, but for the stretch that had not ended."""
    said = [(f.kind, f.verdict, f.start_ns, f.statement) for f in review.findings]
    return [one for one in said if one[0] in (FindingKind.DEAD, FindingKind.STEP_CURRENT)][:-1]


def clamp_times_of(recording):
    """Give when the clamp was read, nanoseconds."""
    (clamp,) = [one for one in recording.about.instruments if one.column(Role.MOTOR_CURRENT) == 0]
    return np.concatenate([block.t_ns for block in recording.blocks(clamp.key)])


def clamp_kept_its_pace(job):
    """Tell whether the bench, a process of its own, was not held up by other work."""
    times_ns = clamp_times_of(Recording.open(job[1]))
    return bool(np.diff(times_ns).max() < EDGE_S * 1e9)


def test_the_motor_is_named_and_neither_feed_nor_ground(job):
    recording, review = review_folder(job[1])
    lost = [kind for kind in FindingKind if kind.value.endswith(("-lost", "dead", "no-current"))]
    gone = [f for f in review.findings if f.kind in lost]
    assert [(f.kind, f.verdict, f.speed) for f in gone] == [
        (FindingKind.DEAD, Verdict.FAIL, 1),
        (FindingKind.DEAD, Verdict.FAIL, 2),
    ]
    assert all("after a tap" in f.statement for f in gone)
    # The bench: dead from 2.0 s to the tap at 3.6 s, and up to the tap at 9.0 s.
    read_ns = clamp_times_of(recording)
    for finding, end_s in zip(gone, (3.6, 9.0), strict=True):
        # Nobody knows better than two readings tell that follow one another there.
        near = np.searchsorted(read_ns, [[finding.start_ns], [finding.end_ns]]) + np.arange(-2, 3)
        apart_ns = np.diff(read_ns[near], axis=1)
        assert np.abs(apart_ns - finding.edge_ns).min() <= 1_000
        assert apart_ns[1, 1] - 1_000 <= finding.edge_ns < EDGE_S * 1e9
        assert abs(finding.end_ns / 1e9 - end_s) < finding.edge_ns / 1e9 + 0.12


def test_live_and_afterwards_tell_the_same(job):
    live, folder = job
    _, after = review_folder(folder)
    assert len(told_of(live)) >= 2
    assert told_of(live) == told_of(after)
    assert live.doubts == after.doubts
    assert live.shortest_visible_dropout_s == after.shortest_visible_dropout_s
