"""What a good meter profile says, and where its file belongs."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from meterlog.commands.terminal import table
from meterlog.model import Channel, Quantity
from meterlog.profile import MeterProfile, listed, shipped_folder, user_folder
from meterlog.profile.full_path import full_path

_SAMPLES = {Quantity.VOLTAGE: 12.0, Quantity.CURRENT: 5.0}
"""Where accuracy is shown, in V or A: a cabin fan's supply, and its current at a middle speed."""


@dataclass(frozen=True, slots=True)
class ProfilePlace:
    """Where a profile's file stands, and where it should.

    Attributes
    ----------
    name : str
        By which it is, or would be, found.
    found : bool
        It stands where it is found by its name.
    replaces : bool
        It takes, or would take, the place of a shipped one of the same name.
    target : Path
        Where a profile of one's own belongs.
    """

    name: str
    found: bool
    replaces: bool
    target: Path

    def as_json(self) -> dict[str, object]:
        """Give it for a JSON object."""
        return {
            "name": self.name,
            "found_by_name": self.found,
            "replaces_shipped": self.replaces,
            "belongs_to": str(self.target),
        }

    def __str__(self) -> str:
        """Say it in sentences."""
        instead = " It takes the place of the shipped one of that name." if self.replaces else ""
        if self.found:
            return f"It is found by its name {self.name}.{instead}"
        return (
            f"To be found by the name {self.name}, it belongs here: {self.target}.{instead}\n"
            "Until then give its path instead of a name."
        )


def place_of(file: Path, kind: str = "meters") -> ProfilePlace:
    """Give where a profile of ``kind`` stands and where it should."""
    here = full_path(file)
    found = any(full_path(profile.file) == here for profile in listed(kind))
    shipped = shipped_folder() / kind / f"{file.stem}.toml"
    return ProfilePlace(
        name=file.stem,
        found=found,
        replaces=shipped.is_file() and full_path(shipped) != here,
        target=user_folder() / kind / f"{file.stem}.toml",
    )


def summary(file: Path, profile: MeterProfile) -> str:
    """Give what a profile says, for a person to compare with the data sheet."""
    rows = [
        (
            channel.name,
            channel.unit,
            _accuracy(channel),
            ", ".join(f"{one.top:g}" for one in channel.ranges) or "-",
            channel.accuracy.basis if channel.accuracy is not None else "",
        )
        for channel in profile.channels
    ]
    head = ("channel", "unit", "accuracy", "ranges up to", "where from")
    lines = table(head, rows).splitlines()
    facts = [
        f"{file}: no fault.",
        f"  {profile.title}",
        f"  {_talk(profile)}",
        f"  {_pace(profile)}",
    ]
    return "\n".join((*facts, *(f"    {line}" for line in lines), str(place_of(file))))


def _talk(profile: MeterProfile) -> str:
    if profile.typed:
        return "typed by hand"
    settings = profile.link
    lines = f"DTR {_on(settings.dtr)}, RTS {_on(settings.rts)}"
    return f"{profile.dialect}, {settings.short}, {lines}"


def _on(state: bool) -> str:  # noqa: FBT001 - a word for a state
    return "on" if state else "off"


def _pace(profile: MeterProfile) -> str:
    words = f"one reading every {profile.interval_s:g} s"
    if profile.integration_s:
        words += f", each the mean over {profile.integration_s:g} s"
    if profile.counts:
        words += f", {profile.counts} counts"
    if profile.power_off_s:
        words += f"; switches itself off after {profile.power_off_s:g} s"
    return words


def _accuracy(channel: Channel) -> str:
    sample = _SAMPLES[channel.quantity]
    accuracy = channel.accuracy_at(sample)
    if accuracy is None:
        return "not stated"
    return f"±{accuracy.half_width(sample):.3g} {channel.unit} at {sample:g} {channel.unit}"


def profile_json(profile: MeterProfile) -> dict[str, object]:
    """Give the same as a JSON object."""
    return {
        "title": profile.title,
        "dialect": profile.dialect,
        "line": profile.link.short,
        "interval_s": profile.interval_s,
        "integration_s": profile.integration_s,
        "channels": [_channel_json(channel) for channel in profile.channels],
    }


def _channel_json(channel: Channel) -> dict[str, object]:
    sample = _SAMPLES[channel.quantity]
    accuracy = channel.accuracy_at(sample)
    half_width = None if accuracy is None else accuracy.half_width(sample)
    return {
        "name": channel.name,
        "quantity": channel.quantity.value,
        "unit": channel.unit,
        "accuracy": {"at": sample, "half_width": half_width},
        "ranges": [one.top for one in channel.ranges],
        "basis": "" if accuracy is None else accuracy.basis,
    }
