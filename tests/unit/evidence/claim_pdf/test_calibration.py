"""Whether a meter was in date when it was used: said, not hidden."""

from dataclasses import replace

import pytest

from meterlog.evidence.claim_pdf.calibration import calibration_lines, calibration_state
from meterlog.model import Identity
from meterlog.recording import UNDATED


def _about(recording, due, **facts):
    meters = tuple(
        replace(one, identity=Identity("Invented", "M1", "5", calibration_due=due))
        for one in recording.about.instruments[:1]
    )
    return replace(recording.about, instruments=meters, **facts)


@pytest.mark.parametrize(
    ("due", "state"),
    [
        ("2026-05-03", "OVERDUE"),
        ("2026-05-04", "in date"),
        ("2027-01-01", "in date"),
        ("", "not stated"),
        ("next spring", "can't be told"),
    ],
)
def test_the_day_of_the_recording_counts(recording, due, state):
    about = _about(recording, due)
    assert calibration_state(about.instruments[0], about) == state


def test_the_day_is_that_of_the_place(recording):
    # 23:30 UTC is the next day two hours east of it.
    late = recording.about.started_utc.replace(hour=23, minute=30)
    about = _about(recording, "2026-05-04", started_utc=late)
    assert calibration_state(about.instruments[0], about) == "OVERDUE"


def test_without_a_date_it_can_not_be_told(recording):
    about = _about(recording, "2020-01-01", started_utc=UNDATED)
    assert calibration_state(about.instruments[0], about) == "can't be told"


def test_each_meter_is_named_once_the_overdue_first(claim):
    content = claim()
    (side,) = content.sides
    side.recording.about = replace(
        side.recording.about,
        instruments=tuple(
            replace(one, identity=Identity("Invented", name, "5", calibration_due=due))
            for one, (name, due) in zip(
                side.recording.about.instruments, (("A", ""), ("B", "2025-01-01")), strict=True
            )
        ),
    )
    twice = replace(content, sides=(side, replace(side, name="after")))
    lines = calibration_lines(twice)
    assert len(lines) == 2
    assert lines[0].startswith("Invented B serial 5: calibration OVERDUE: it was due 2025-01-01")
    assert lines[1] == "Invented A serial 5: when its calibration is due is not stated."


def test_the_virtual_bench_has_no_calibration(claim):
    (side,) = claim().sides
    meters = tuple(replace(one, simulated=True) for one in side.recording.about.instruments)
    side.recording.about = replace(side.recording.about, instruments=meters)
    assert calibration_lines(replace(claim(), sides=(side,))) == []
