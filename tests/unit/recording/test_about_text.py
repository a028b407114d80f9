"""about.json: all of it comes back, and what is missing is named."""

import json
import math
import re

import pytest

from meterlog.model.errors import RecordingUnreadable
from meterlog.recording.about_text import about_bytes, parse_about


@pytest.fixture
def about(maker):
    return maker.about(maker.instrument("a"), maker.instrument("b-2", 3))


def test_all_of_it_reads_back_as_it_was(about):
    content = about_bytes(about)
    assert parse_about(content, "f") == (about, ())
    assert "läuft nur" in content.decode()  # people read this file, too


def _without(values, path):
    *way, last = path
    for key in way:
        values = values[key]
    del values[last]


@pytest.mark.parametrize(
    "path",
    [
        ("recording_id",),
        ("instruments",),
        ("instruments", 1, "channels", 0, "scale"),
        ("instruments", 0, "identity", "serial"),
        ("instruments", 0, "channels", 0, "accuracy", "digits"),
        ("limits", "open_current_a"),
        ("limits", "speeds", "1", "max_a"),
        ("job", "complaint"),
    ],
    ids=lambda path: ".".join(map(str, path)),
)
def test_a_missing_key_is_named_with_its_file(about, path):
    values = json.loads(about_bytes(about))
    _without(values, path)
    with pytest.raises(RecordingUnreadable, match="is missing") as caught:
        parse_about(json.dumps(values).encode(), "somewhere/about.json")
    assert "somewhere/about.json" in str(caught.value)
    assert path[-1] in str(caught.value)


@pytest.mark.parametrize(
    ("key", "value"),
    [
        ("started_utc", "yesterday"),
        ("started_utc", "2026-05-04T10:20:30"),
        ("origin", "guessed"),
        ("zero_ns", 1.5),
        ("zero_ns", True),
        ("instruments", {}),
        ("job", []),
    ],
)
def test_a_wrong_value_is_named_with_its_file(about, key, value):
    values = json.loads(about_bytes(about))
    values[key] = value
    with pytest.raises(RecordingUnreadable) as caught:
        parse_about(json.dumps(values).encode(), "somewhere/about.json")
    assert "somewhere/about.json" in str(caught.value)
    assert key in str(caught.value)


def test_keys_of_a_later_version_are_passed_over_and_a_changed_text_is_told(about):
    values = json.loads(about_bytes(about))
    values["invented_later"] = 1
    values["instruments"][0]["invented_later"] = 1
    found, damage = parse_about(json.dumps(values).encode(), "f")
    assert found == about
    assert len(damage) == 1
    assert "data/about.json" in damage[0]


def test_a_text_that_is_no_json_is_refused():
    for content in (b"", b"{", b"\xff", b"[]", b"[" * 5000, b"9" * 5000):
        with pytest.raises(RecordingUnreadable):
            parse_about(content, "f")


@pytest.mark.parametrize("number", ["1e400", "1e308", "-1e13", "NaN", "Infinity", "9" * 400])
def test_a_number_that_nothing_could_have_written_is_refused(about, number):
    text = json.dumps(json.loads(about_bytes(about))).replace(
        '"hysteresis": 0.05', f'"hysteresis": {number}'
    )
    assert number in text
    with pytest.raises(RecordingUnreadable, match=r"limits\.hysteresis"):
        parse_about(text.encode(), "f")


@pytest.mark.parametrize(
    ("key", "value"),
    [("interval_s", 0.0), ("interval_s", 1e-300), ("interval_s", -0.1), ("integration_s", -1.0)],
)
def test_a_pace_that_no_meter_has_is_refused(about, key, value):
    values = json.loads(about_bytes(about))
    values["instruments"][0]["channels"][0][key] = value
    with pytest.raises(RecordingUnreadable, match=rf"channels\[0\]\.{key} is .* seconds"):
        parse_about(json.dumps(values).encode(), "f")


_STATED = {
    "percent_of_reading": 1.0,
    "digits": 3.0,
    "resolution": 0.001,
    "floor": 0.01,
    "basis": "invented",
    "per_kelvin": 0.1,
    "low_c": -18.0,
    "high_c": 28.0,
}

_ZERO = {"offset": 0.1, "scatter": 0.01, "count": 9, "taken_utc": None, "range_top": None}


@pytest.mark.parametrize(
    "key", ["percent_of_reading", "digits", "resolution", "floor", "per_kelvin"]
)
def test_an_accuracy_below_nought_which_would_narrow_u_is_refused(about, key):
    values = json.loads(about_bytes(about))
    channel = values["instruments"][0]["channels"][0]
    channel["accuracy"] = dict(_STATED)
    parse_about(json.dumps(values).encode(), "f")
    channel["accuracy"][key] = -0.5
    with pytest.raises(RecordingUnreadable, match=rf"accuracy\.{key} is -0\.5, less than nought"):
        parse_about(json.dumps(values).encode(), "f")


@pytest.mark.parametrize(
    ("place", "key"),
    [
        ("sensor", "own_percent"),
        ("sensor", "own_floor"),
        ("sensor", "own_top"),
        ("zero", "scatter"),
    ],
)
def test_so_is_what_is_said_of_sensor_and_zero(about, place, key):
    values = json.loads(about_bytes(about))
    channel = values["instruments"][0]["channels"][0]
    channel["zero"] = _ZERO.copy()
    parse_about(json.dumps(values).encode(), "f")
    channel[place][key] = -0.5
    with pytest.raises(RecordingUnreadable, match=rf"{place}\.{key} is -0\.5, less than nought"):
        parse_about(json.dumps(values).encode(), "f")


def test_half_a_character_in_a_name_is_refused(about):
    values = json.loads(about_bytes(about))
    values["instruments"][0]["channels"][0]["name"] = "\ud800"
    with pytest.raises(RecordingUnreadable, match=r"channels\[0\]\.name is no Unicode text"):
        parse_about(json.dumps(values).encode(), "f")


def test_a_limit_that_is_not_finite_is_never_written(maker):
    from dataclasses import replace

    about = maker.about(maker.instrument())
    with pytest.raises(ValueError, match="JSON"):
        about_bytes(replace(about, limits=replace(about.limits, coast_s=math.nan)))


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ('"started_utc": "2026-05-04T10:20:30.123456+00:00"', '"started_utc": ""', "started_utc"),
        ('"1": {', '"' + "1" * 5000 + '": {', "is no speed step"),
        ('"1": {', '"x": {', "limits.speeds.x is no speed step"),
    ],
)
def test_what_is_wrong_is_told_with_what_to_do(maker, old, new, said):
    text = about_bytes(maker.about(maker.instrument())).decode()
    assert old in text
    with pytest.raises(RecordingUnreadable, match=re.escape(said)) as caught:
        parse_about(text.replace(old, new).encode(), "about.json")
    assert caught.value.subject
    assert caught.value.remedy
    assert len(str(caught.value)) < 4000
