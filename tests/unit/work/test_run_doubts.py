"""What a reviewer would hold against a recording is said; what is in order is not."""

from datetime import UTC, datetime
from types import SimpleNamespace

import pytest

from meterlog.model import Job
from meterlog.model.job_card import JobCard, PartIdentity
from meterlog.recording import UNDATED
from meterlog.work.run_doubts import day_doubts, job_doubts, order_doubts, part_doubts

EARLY, LATE = datetime(2026, 5, 4, 9, tzinfo=UTC), datetime(2026, 5, 5, 9, tzinfo=UTC)


def begun(when, part="", **job):
    return SimpleNamespace(started_utc=when, job=Job(part=part, **job))


@pytest.mark.parametrize(
    ("before", "after"), [(EARLY, LATE), (UNDATED, UNDATED), (UNDATED, EARLY), (LATE, UNDATED)]
)
def test_the_usual_order_and_what_has_no_date_say_nothing(before, after):
    assert order_doubts(begun(before), begun(after)) == ()


def test_two_that_were_begun_in_the_same_second_are_told():
    (told,) = order_doubts(begun(EARLY), begun(EARLY.replace(microsecond=400_000)))
    assert "in the same second as the recording that is called after the repair" in told


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


@pytest.mark.parametrize(
    ("card", "said"),
    [
        ("", "Kestrel van"),
        ("Kestrel van", ""),
        ("Kestrel van, 2019", "2019 Kestrel van (invented)"),
        ("Löwe", "löwe hatch 1.4"),
        ("Kestrel Estate 2.0", "Kestrel Estate 2.0 diesel"),
    ],
)
def test_a_vehicle_written_otherwise_is_no_other_one(card, said):
    assert job_doubts(JobCard(vehicle=card), begun(EARLY, vehicle=said)) == ()


def test_another_vehicle_and_another_work_order_are_told():
    card = JobCard(work_order="9999", vehicle="Kestrel Estate 2.0 (invented)")
    other = begun(EARLY, work_order="DEMO-0001", vehicle="Brindlemoor 240 panel van (invented)")
    order, vehicle = job_doubts(card, other)
    assert order == (
        "The job card has the work order '9999'; the recording was made for 'DEMO-0001'."
    )
    assert "'Brindlemoor 240 panel van (invented)'" in vehicle
    assert job_doubts(JobCard(work_order="WO-4711"), begun(EARLY, work_order="4711")) == ()


@pytest.mark.parametrize(
    ("name", "failed", "repaired", "when"),
    [
        ("before", "2026-05-04", "2026-05-04", EARLY),
        ("before", "2026-05-05", "2026-05-03", EARLY),  # a day to either side: elsewhere it is one
        ("after", "2026-05-01", "2026-05-05", EARLY),
        ("after", "", "", EARLY),
        ("before", "last week", "in May", EARLY),
        ("before", "2026-06-01", "2026-05-01", UNDATED),
    ],
)
def test_days_that_go_together_or_are_not_said_say_nothing(name, failed, repaired, when):
    card = JobCard(failed_on=failed, repaired_on=repaired)
    assert day_doubts(card, name, begun(when)) == ()


@pytest.mark.parametrize(
    ("name", "failed", "repaired", "said"),
    [
        ("before", "", "2026-05-02", "the run before the repair is of 2026-05-04"),
        ("after", "", "2026-05-06", "the run after the repair is of 2026-05-04"),
        (
            "before",
            "2026-05-06",
            "2026-05-07",
            "the failure on 2026-05-06; the run is of 2026-05-04, befo",
        ),
        ("after", "2026-05-06", "", "the failure on 2026-05-06; the run is of 2026-05-04, befo"),
    ],
)
def test_a_run_made_on_a_day_on_which_it_cannot_have_been_made_is_told(
    name, failed, repaired, said
):
    (told,) = day_doubts(JobCard(failed_on=failed, repaired_on=repaired), name, begun(EARLY))
    assert said in told
