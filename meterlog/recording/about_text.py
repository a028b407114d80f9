"""AboutText: the head of a recording as a JSON file, and back."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import fields, is_dataclass, replace
from datetime import datetime
from enum import Enum
from types import MappingProxyType
from typing import Any

from meterlog.model import (
    About,
    Accuracy,
    Channel,
    Conditions,
    Controller,
    DecisionRule,
    Fuse,
    Identity,
    Instrument,
    Job,
    Limits,
    Origin,
    Quantity,
    Range,
    Role,
    Sensor,
    SensorKind,
    SpeedLimits,
    Zero,
)
from meterlog.model.errors import RecordingUnreadable
from meterlog.model.speed_step import is_speed_step
from meterlog.recording.checked_text import crc_holds, with_crc
from meterlog.recording.json_object import JsonObject
from meterlog.recording.layout import ABOUT

FORMAT = "meterlog recording 1"
_LATER_LIMITS = ("guard_factor", "brush_v")
"""Numbers that the first versions did not write."""

_LEAST_S, _MOST_S = 1e-9, 1e9
"""Seconds from one reading to the next: nothing that measures is quicker or slower."""


def about_bytes(about: About) -> bytes:
    """Give the content of ``about.json``.

    Parameters
    ----------
    about : About

    Returns
    -------
    bytes
        UTF-8 JSON, indented; the last member ``crc32`` is the checksum of what stands before it.

    Raises
    ------
    ValueError
        If a number in it is not finite.
    """
    values = {"format": FORMAT, **_members(about)}
    return with_crc(json.dumps(values, ensure_ascii=False, indent=2, allow_nan=False))


def _members(thing: object) -> dict[str, object]:
    assert is_dataclass(thing)  # noqa: S101 - for the type checker
    return {field.name: _plain(getattr(thing, field.name)) for field in fields(thing)}


def _plain(value: object) -> object:
    if isinstance(value, Enum):
        return value.value
    if isinstance(value, datetime):
        return value.isoformat()
    if is_dataclass(value):
        return _members(value)
    if isinstance(value, Mapping):
        return {str(key): _plain(item) for key, item in value.items()}
    if isinstance(value, tuple):
        return [_plain(item) for item in value]
    return value


def parse_about(content: bytes, subject: str) -> tuple[About, tuple[str, ...]]:
    """Read the content of ``about.json``.

    Parameters
    ----------
    content : bytes
    subject : str
        The file, for messages.

    Returns
    -------
    about : About
    damage : tuple of str
        Not empty if the text does not match its checksum.

    Raises
    ------
    RecordingUnreadable
        If it is no JSON, or a key is missing or of the wrong type; names file and key.
        Keys that this version does not know are passed over.
    """
    try:
        values = json.loads(content.decode("utf-8"))
    except (ValueError, RecursionError) as error:
        raise RecordingUnreadable(
            f"is not valid JSON: {error}.",
            subject=subject,
            remedy="Without it nobody knows what the columns are; use a copy of the folder.",
        ) from error
    about = _about(JsonObject(values, subject))
    if crc_holds(content):
        return about, ()
    return about, (f"{ABOUT}: does not match its checksum; job, channels or limits may be wrong.",)


def _about(top: JsonObject) -> About:
    return About(
        recording_id=top.text("recording_id"),
        started_utc=_instant(top, "started_utc"),
        local_offset_s=top.whole("local_offset_s"),
        zero_ns=top.whole("zero_ns"),
        program=top.text("program"),
        origin=top.word("origin", Origin),
        instruments=tuple(_instrument(item) for item in top.objects("instruments")),
        limits=_limits(top.object("limits")),
        job=_job(top.object("job")),
    )


def _job(table: JsonObject) -> Job:
    # Any: the type checker can't tell which fields these are.
    words: dict[str, Any] = {
        field.name: table.text(field.name) for field in fields(Job) if field.type == "str"
    }
    if not table.has("measured_under"):  # not written by the first versions
        return Job(**words)
    return Job(**words, measured_under=_conditions(table.object("measured_under")))


def _conditions(table: JsonObject) -> Conditions:
    stated = [field for field in fields(Conditions) if table.has(field.name)]
    words: dict[str, Any] = {
        field.name: table.text(field.name) for field in stated if field.type == "str"
    }
    numbers: dict[str, Any] = {
        field.name: table.optional_number(field.name) for field in stated if field.type != "str"
    }
    return Conditions(**words, **numbers)


def _instant(top: JsonObject, key: str) -> datetime:
    text = top.text(key)
    try:
        instant = datetime.fromisoformat(text)
    except ValueError as error:
        raise _wrong(top, key, text) from error
    if instant.tzinfo is None:
        raise _wrong(top, key, text)
    return instant


def _wrong(top: JsonObject, key: str, text: str) -> RecordingUnreadable:
    return top.error(f"is {text!r}, not an instant with its UTC offset (RFC 3339)", key)


def _texts(table: JsonObject, kind: type) -> dict[str, str]:
    return {field.name: table.text(field.name) for field in fields(kind)}


def _instrument(table: JsonObject) -> Instrument:
    return Instrument(
        key=table.text("key"),
        profile=table.text("profile"),
        url=table.text("url"),
        channels=tuple(_channel(item) for item in table.objects("channels")),
        identity=Identity(**_texts(table.object("identity"), Identity)),
        simulated=table.flag("simulated"),
        # What follows was not written by the first versions.
        typed=table.flag("typed") if table.has("typed") else False,
        usb_serial=table.text("usb_serial") if table.has("usb_serial") else "",
        time_u_s=table.optional_least_nought("time_u_s") if table.has("time_u_s") else None,
        skew_s=table.number("skew_s") if table.has("skew_s") else 0.0,
        skew_u_s=table.least_nought("skew_u_s") if table.has("skew_u_s") else 0.0,
    )


def _channel(table: JsonObject) -> Channel:
    return Channel(
        name=table.text("name"),
        quantity=table.word("quantity", Quantity),
        role=table.word("role", Role),
        scale=table.number("scale"),
        offset=table.number("offset"),
        interval_s=_time_s(table, "interval_s", _LEAST_S),
        integration_s=_time_s(table, "integration_s", 0.0),
        accuracy=_accuracy(table),
        ranges=tuple(_range(item) for item in _later(table, "ranges")),
        sensor=_sensor(table.object("sensor")) if table.has("sensor") else Sensor(),
        zero=_zero(table),
    )


def _time_s(table: JsonObject, key: str, least: float) -> float:
    """Read a length of time that a meter can have: what is judged divides by it."""
    value = table.number(key)
    if not least <= value <= _MOST_S:
        raise table.error(f"is {value:g}, not {least:g} to {_MOST_S:g} seconds", key)
    return value


def _later(table: JsonObject, key: str) -> tuple[JsonObject, ...]:
    """Give a list of objects that the first versions did not write."""
    return table.objects(key) if table.has(key) else ()


def _accuracy(channel: JsonObject) -> Accuracy | None:
    if channel.get("accuracy") is None:
        return None
    table = channel.object("accuracy")
    later = {key: table.number(key) for key in ("low_c", "high_c") if table.has(key)}
    if table.has("per_kelvin"):
        later["per_kelvin"] = table.least_nought("per_kelvin")
    return Accuracy(
        percent_of_reading=table.least_nought("percent_of_reading"),
        digits=table.least_nought("digits"),
        resolution=table.least_nought("resolution"),
        floor=table.least_nought("floor"),
        basis=table.text("basis"),
        **later,
    )


def _range(table: JsonObject) -> Range:
    accuracy = _accuracy(table)
    if accuracy is None:
        raise table.error("is null", "accuracy")
    return Range(table.number("top"), accuracy)


def _sensor(table: JsonObject) -> Sensor:
    return Sensor(
        kind=table.word("kind", SensorKind),
        ratio=table.number("ratio"),
        turns=table.whole("turns"),
        inverted=table.flag("inverted"),
        words=table.text("words"),
        own_percent=table.optional_least_nought("own_percent")
        if table.has("own_percent")
        else None,
        own_floor=table.optional_least_nought("own_floor") if table.has("own_floor") else None,
        own_top=table.optional_least_nought("own_top") if table.has("own_top") else None,
    )


def _zero(channel: JsonObject) -> Zero | None:
    if not channel.has("zero") or channel.get("zero") is None:
        return None
    table = channel.object("zero")
    taken = None if table.get("taken_utc") is None else _instant(table, "taken_utc")
    return Zero(
        offset=table.number("offset"),
        scatter=table.least_nought("scatter"),
        count=table.whole("count"),
        taken_utc=taken,
        range_top=table.optional_number("range_top"),
    )


def _limits(table: JsonObject) -> Limits:
    numbers: dict[str, Any] = {
        field.name: table.number(field.name)
        for field in fields(Limits)
        if field.type == "float" and (field.name not in _LATER_LIMITS or table.has(field.name))
    }
    limits = Limits(
        name=table.text("name"),
        speeds=_speeds(table.object("speeds")),
        basis=table.text("basis"),
        text=table.text("text"),
        **numbers,
    )
    return _with_later_limits(limits, table) if table.has("decision") else limits


def _with_later_limits(limits: Limits, table: JsonObject) -> Limits:
    controller = table.object("controller")
    return replace(
        limits,
        decision=table.word("decision", DecisionRule),
        reference_v=table.optional_number("reference_v"),
        at_reference=table.flag("at_reference"),
        fuse=None if table.get("fuse") is None else _fuse(table.object("fuse")),
        controller=Controller(controller.text("kind"), controller.optional_number("max_heat_w")),
        max_feed_drop_v=table.optional_number("max_feed_drop_v"),
        max_ground_drop_v=table.optional_number("max_ground_drop_v"),
    )


def _fuse(table: JsonObject) -> Fuse:
    return Fuse(table.number("rating_a"), table.text("kind"), table.number("max_load_percent"))


def _speeds(table: JsonObject) -> Mapping[int, SpeedLimits]:
    speeds = {}
    for key in table.keys():  # noqa: SIM118 - no mapping, a method that gives the names
        if not is_speed_step(key):
            raise table.error("is no speed step", key)
        limits = table.object(key)
        speeds[int(key)] = SpeedLimits(
            limits.optional_number("min_a"), limits.optional_number("max_a")
        )
    return MappingProxyType(speeds)
