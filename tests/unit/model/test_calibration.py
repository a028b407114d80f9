"""Calibration: overdue is said, in time is in time, nothing stated is not a date."""

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.model import About, Identity, Instrument, Limits, Origin
from meterlog.model.calibration import calibration_words, measured_on, overdue_words
from meterlog.model.iso_date import iso_date
from meterlog.model.job import Job

DAY = date(2026, 11, 29)


def meter(due, **more):
    return Instrument("volts", "volts", "-", (), Identity("", "M 1", "7", "", due), **more)


@pytest.mark.parametrize(
    ("due", "words"),
    [
        ("2026-11-28", "calibration was due 2026-11-28, 1 day before it measured: overdue."),
        ("2025-11-29", "calibration was due 2025-11-29, 365 days before it measured: overdue."),
        ("29.11.2026", "its calibration is stated as due '29.11.2026', which is no date."),
    ],
)
def test_overdue_is_said_with_the_meter_and_the_days(due, words):
    (said,) = overdue_words([meter("2027-01-01"), meter(due), meter("")], DAY)
    assert said == f"volts (M 1 serial 7): {words}"
    assert calibration_words(meter(due), DAY) == said


def test_on_the_day_itself_it_is_in_time():
    assert overdue_words([meter("2026-11-29")], DAY) == ()
    assert calibration_words(meter("2026-11-29"), DAY) == (
        "volts (M 1 serial 7): calibration due 2026-11-29."
    )


def test_nothing_stated_is_said_as_such_but_is_not_overdue():
    assert overdue_words([meter("")], DAY) == ()
    assert calibration_words(meter(""), DAY).endswith("when its calibration is due is not stated.")
    bare = replace(meter(""), identity=Identity())
    assert calibration_words(bare, DAY).startswith("volts: ")


def test_a_virtual_meter_has_no_calibration():
    assert overdue_words([meter("2020-01-01", simulated=True)], DAY) == ()
    assert "simulated" in calibration_words(meter("2020-01-01", simulated=True), DAY)


@given(st.dates(), st.dates())
def test_overdue_is_exactly_what_is_before_the_day(due, day):
    assert bool(overdue_words([meter(due.isoformat())], day)) == (due < day)


@pytest.mark.parametrize(
    "text",
    ["", "20261129", "2026-W48-7", "2026-02-30", " 2026-11-29", "2026-11-29T00:00", "٢٠٢٦-11-29"],
)
def test_other_forms_are_no_date(text):
    assert iso_date(text) is None


@pytest.mark.parametrize(("hours", "day"), [(0, 29), (2, 30), (-23, 28)])
def test_the_day_is_that_of_the_place(hours, day):
    start = datetime(2026, 11, 29, 22, 30, tzinfo=UTC)
    offset = int(timedelta(hours=hours).total_seconds())
    about = About("id", start, offset, 0, "p", Origin.MEASURED, (), Limits(), Job())
    assert measured_on(about) == date(2026, 11, day)
