"""Speeds that nobody recorded, taken for commands: judged as such, and marked as found."""

from dataclasses import replace
from datetime import UTC, datetime
from types import MappingProxyType

import numpy as np
import pytest

from meterlog.model import (
    About,
    Accuracy,
    Block,
    Channel,
    FindingKind,
    Instrument,
    Limits,
    Origin,
    Quantity,
    Role,
    SpeedLimits,
    Verdict,
)
from meterlog.recording import Recorder, seal
from meterlog.work import review_folder

SECOND = 1_000_000_000


@pytest.fixture
def folder(tmp_path):
    """A fan at 0, 3, 6 and 0 A for 10 s each, read 10 times a second with seeded noise."""
    channel = Channel(
        "amps", Quantity.CURRENT, Role.MOTOR_CURRENT, 0.1, accuracy=Accuracy(1.0, 0, 0.0, 0.01)
    )
    limits = Limits(speeds=MappingProxyType({1: SpeedLimits(2.0, 4.0), 2: SpeedLimits(6.5, 9.0)}))
    about = About(
        "00000000-0000-4000-8000-000000000009", datetime(2030, 1, 2, tzinfo=UTC), 0, 0,
        "meterlog test", Origin.MEASURED, (Instrument("m", "m", "invented", (channel,)),), limits,
    )  # fmt: skip
    amps = np.repeat([0.0, 3.0, 6.0, 0.0], 100) + np.random.default_rng(3).normal(0, 0.01, 400)
    t_ns = np.arange(400, dtype=np.int64) * (SECOND // 10)
    recorder = Recorder.create(tmp_path / "run", about)
    recorder.take(Block("m", t_ns, amps[:, None], np.zeros((400, 1), np.uint8)))
    recorder.close()
    seal(tmp_path / "run")
    return tmp_path / "run"


def verdicts(review):
    return {
        one.speed: one.verdict
        for one in review.findings
        if one.kind is FindingKind.STEP_CURRENT and one.speed is not None
    }


def test_no_limit_of_a_speed_is_applied_to_a_proposal(folder):
    _, review = review_folder(folder)
    assert [(step.speed, step.proposed_speed) for step in review.steps] == [
        (None, 0), (None, 1), (None, 2), (None, 0),
    ]  # fmt: skip
    assert verdicts(review) == {}


def test_accepted_proposals_are_judged_as_speeds_and_still_marked_as_found(folder):
    _, review = review_folder(folder, accept_steps=True)
    assert [(step.speed, step.found) for step in review.steps] == [
        (0, True), (1, True), (2, True), (0, True),
    ]  # fmt: skip
    assert verdicts(review) == {1: Verdict.PASS, 2: Verdict.FAIL}
    assert "accepted as commands" in review.notes[0]


def test_an_accepted_step_knows_its_start_no_better_than_the_change_was_found(folder):
    _, proposed = review_folder(folder)
    _, accepted = review_folder(folder, accept_steps=True)
    for before, after in zip(proposed.steps, accepted.steps, strict=True):
        assert (after.start_ns, after.edge_ns) == (before.start_ns, before.edge_ns)
    assert [step.edge_ns > 0 for step in accepted.steps] == [False, True, True, True]


def test_where_the_limits_know_other_speeds_none_of_theirs_is_applied(folder):
    limits = replace(Limits(), speeds=MappingProxyType({1: SpeedLimits(20.0, 30.0)}))
    _, review = review_folder(folder, limits, accept_steps=True)
    assert Verdict.FAIL not in verdicts(review).values()
