"""What differs from the first run is said before the second one, with what it may do."""

from dataclasses import replace

import pytest

from meterlog.analysis.compare import condition_warnings
from meterlog.model import Conditions
from meterlog.model.condition_fields import CONDITION_FIELDS, condition_text, with_condition
from meterlog.model.errors import UsageError

FIRST = Conditions(
    engine="off", filter="used", air="face", intake="fresh", housing="closed", place="vehicle",
    windows="open", control="manual", ambient_c=20.0, running_min=5.0, battery_v=12.4,
)  # fmt: skip


def test_the_same_conditions_and_what_nobody_stated_at_first_say_nothing():
    assert condition_warnings(FIRST, FIRST) == ()
    assert condition_warnings(Conditions(), FIRST) == ()
    assert condition_warnings(Conditions(), Conditions()) == ()


def test_what_forbids_comes_first_and_what_is_not_stated_last():
    now = replace(FIRST, windows="closed", housing="open", filter="", battery_v=13.9)
    said = condition_warnings(FIRST, now)
    assert [one.partition(":")[0] for one in said] == [
        "NOT COMPARABLE", "Differs", "Differs", "Not stated",
    ]  # fmt: skip
    assert "fan housing was 'closed', now 'open'" in said[0]
    assert "15 to 25 %" in said[0]
    assert "up to 5 %" in said[1]
    assert "battery had 12.4 V, now 13.9 V" in said[2]
    assert said[3] == "Not stated: cabin filter was 'used'; say what it is now."


@pytest.mark.parametrize("name", [one.name for one in CONDITION_FIELDS])
def test_each_condition_that_is_no_longer_stated_is_asked_for(name):
    empty = getattr(Conditions(), name)
    said = condition_warnings(FIRST, replace(FIRST, **{name: empty}))
    assert len(said) == 1
    assert said[0].startswith("Not stated: ")


def test_a_motor_voltage_that_is_read_takes_the_supply_out():
    now = replace(FIRST, engine="running", battery_v=13.9)
    without = condition_warnings(FIRST, now)
    read = condition_warnings(FIRST, now, voltage_known=True)
    assert without[0].startswith("NOT COMPARABLE: engine")
    assert [one.partition(":")[0] for one in read] == ["Differs", "Differs"]
    assert all("taken out" in one for one in read)


def test_small_differences_of_what_is_measured_say_nothing():
    now = replace(FIRST, ambient_c=23.0, running_min=6.0, battery_v=12.5)
    assert condition_warnings(FIRST, now) == ()
    colder = condition_warnings(FIRST, replace(FIRST, ambient_c=-10.0))
    assert colder == (
        "Differs: ambient was '20 °C', now '-10 °C': the air's density alone makes +11 % of"
        " current at the new one.",
    )


@pytest.mark.parametrize("field", CONDITION_FIELDS, ids=lambda one: one.name)
def test_what_was_entered_is_given_back(field):
    for text in field.choices or ("12.5", "0"):
        stated = with_condition(Conditions(), field, f"  {text} ")
        assert condition_text(stated, field) == text
        assert with_condition(stated, field, "") == Conditions()


@pytest.mark.parametrize("text", ["x", "nan", "inf", "-1", "61", "1e9"])
def test_a_battery_voltage_that_can_not_be_is_refused(text):
    field = next(one for one in CONDITION_FIELDS if one.name == "battery_v")
    with pytest.raises(UsageError, match="from 0 to 60, in V"):
        with_condition(Conditions(), field, text)
    assert with_condition(Conditions(), field, "12,5").battery_v == 12.5
