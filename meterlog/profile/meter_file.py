"""From a meter profile's TOML text to a MeterProfile."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields
from typing import Any, TypeVar

from meterlog.model import Accuracy, Channel, Quantity, Range
from meterlog.model.errors import ProfileError
from meterlog.profile.contradictions import contradictions
from meterlog.profile.folders import shipped_folder
from meterlog.profile.link_settings import HidBridge, LinkSettings
from meterlog.profile.meter import MeterProfile
from meterlog.profile.schema import faults
from meterlog.profile.talk import (
    BlockLayout,
    LineFormat,
    ModbusTalk,
    Recognition,
    Register,
    ScpiTalk,
)
from meterlog.profile.toml_values import toml_values

SCHEMA = "meter.schema.json"
Kind = TypeVar("Kind")


def meter_profile(name: str, text: str, subject: str) -> MeterProfile:
    """Make a MeterProfile of TOML text.

    Parameters
    ----------
    name : str
        The profile's name.
    text : str
    subject : str
        The file, for messages.

    Returns
    -------
    MeterProfile

    Raises
    ------
    ProfileError
        If it is no TOML, or a key is missing, unknown, of the wrong type or out of range; the
        first thing that is wrong, with file, line, key and what was expected.
    """
    wrong = meter_faults(text, subject)
    if wrong:
        raise wrong[0]
    return _profile(name, toml_values(text), text, subject)


def meter_faults(text: str, subject: str) -> list[ProfileError]:
    """Give everything that is wrong with a meter profile's text; empty when nothing is.

    Parameters
    ----------
    text : str
    subject : str
        The file, for messages.
    """
    try:
        values = toml_values(text)
    except ValueError as error:
        # More than tomllib.TOMLDecodeError: numbers too long and tables too deep for Python.
        return [
            ProfileError(
                f"is not valid TOML: {error}.", subject=subject, remedy="Correct that line."
            )
        ]
    wrong = faults(values, shipped_folder() / SCHEMA, text, subject)
    return wrong or contradictions(_profile("", values, text, subject), values)


def _profile(name: str, top: Mapping[str, Any], text: str, subject: str) -> MeterProfile:
    interval_s = float(top["interval_s"])
    integration_s = float(top.get("integration_s", 0.0))
    link = dict(top.get("link", {}))
    hid = dict(link.pop("hid", {}))
    if "setup" in hid:
        hid["setup"] = bytes.fromhex(hid["setup"])
    registers = tuple(
        _made(Register, one.get("register", {"address": 0})) for one in top["channels"]
    )
    return MeterProfile(
        name=name,
        title=top["title"],
        dialect=top["dialect"],
        channels=tuple(_channel(one, interval_s, integration_s) for one in top["channels"]),
        interval_s=interval_s,
        integration_s=integration_s,
        counts=int(top.get("counts", 0)),
        power_off_s=float(top.get("power_off_s", 0.0)),
        power_off_cure=top.get("power_off_cure", ""),
        link=_made(LinkSettings, {**link, "hid": _made(HidBridge, hid)}),
        scpi=_made(ScpiTalk, top.get("scpi", {})),
        blocks=_made(BlockLayout, top.get("blocks", {})),
        lines=_made(LineFormat, top.get("lines", {})),
        modbus=_made(ModbusTalk, {**top.get("modbus", {}), "registers": registers}),
        recognition=_made(Recognition, top.get("recognition", {})),
        text=text,
        source=subject,
    )


def _made(kind: type[Kind], table: Mapping[str, Any]) -> Kind:
    """Make a dataclass of a table: TOML's lists become tuples, whole numbers what is annotated."""
    values: dict[str, Any] = {}
    for field in fields(kind):  # type: ignore[arg-type]  # every kind given is a dataclass
        if field.name not in table:
            continue
        value = table[field.name]
        if isinstance(value, list):
            value = tuple(float(v) if not isinstance(v, str) else v for v in value)
        elif field.type == "float":
            value = float(value)
        elif field.type in {"int", "int | None"}:
            value = int(value)
        values[field.name] = value
    return kind(**values)


def _accuracy(table: Mapping[str, Any]) -> Accuracy:
    return _made(Accuracy, {"digits": 0, **table})


def _channel(table: Mapping[str, Any], interval_s: float, integration_s: float) -> Channel:
    ranges = sorted(
        (Range(float(one["top"]), _accuracy(one)) for one in table.get("ranges", ())),
        key=lambda one: one.top,
    )
    accuracy = _accuracy(table["accuracy"]) if "accuracy" in table else None
    if accuracy is None and ranges:
        accuracy = ranges[-1].accuracy
    return Channel(
        name=table["name"],
        quantity=Quantity(table["quantity"]),
        scale=float(table.get("scale", 1.0)),
        offset=float(table.get("offset", 0.0)),
        interval_s=interval_s,
        integration_s=float(table.get("integration_s", integration_s)),
        accuracy=accuracy,
        ranges=tuple(ranges),
    )
