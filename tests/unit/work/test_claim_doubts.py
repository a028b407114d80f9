"""What a reviewer would hold against a recording is said; what is in order is not."""

from datetime import UTC, datetime
from types import SimpleNamespace

import pytest

from meterlog.model import Job
from meterlog.model.job_card import PartIdentity
from meterlog.recording import UNDATED
from meterlog.work.claim_doubts import order_doubts, part_doubts

EARLY, LATE = datetime(2026, 5, 4, 9, tzinfo=UTC), datetime(2026, 5, 5, 9, tzinfo=UTC)


def begun(when, part=""):
    return SimpleNamespace(about=SimpleNamespace(started_utc=when, job=Job(part=part)))


@pytest.mark.parametrize(
    ("before", "after"), [(EARLY, LATE), (EARLY, EARLY), (UNDATED, EARLY), (LATE, UNDATED)]
)
def test_the_usual_order_and_what_has_no_date_say_nothing(before, after):
    assert order_doubts(begun(before), begun(after)) == ()


def test_a_recording_before_that_was_begun_later_is_told():
    (told,) = order_doubts(begun(LATE), begun(EARLY))
    assert "2026-05-05T09:00:00+00:00, after the recording" in told
    assert "the wrong way round" in told


@pytest.mark.parametrize(
    ("serial", "said"),
    [("", "fan, serial 9"), ("S-9", ""), ("S-9", " "), ("S-9", "FM-20 no. s9"), ("--", "fan")],
)
def test_serial_numbers_that_agree_or_are_not_said_say_nothing(serial, said):
    assert part_doubts(PartIdentity(serial=serial), begun(EARLY, said)) == ()


def test_another_part_than_the_card_says_is_told():
    (told,) = part_doubts(PartIdentity(serial="S-9"), begun(EARLY, "FM-20, serial 8"))
    assert "serial number S-9" in told
    assert "'FM-20, serial 8'" in told
