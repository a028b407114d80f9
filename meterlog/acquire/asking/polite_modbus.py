"""What a Modbus device is asked that changes nothing in it: its registers, and who it is."""

from __future__ import annotations

import time
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace

from meterlog.acquire.asking.port_answer import Fit, live_values
from meterlog.instruments import Link, ModbusDecoder, ModbusRequests, Readings
from meterlog.instruments.modbus_dialogue import ModbusDialogue, silent_interval_s
from meterlog.model import Identity
from meterlog.profile import MeterProfile

ANSWER_S = 0.6
_REST_S = 0.02


@dataclass(frozen=True, slots=True)
class DeviceAnswer:
    """What a Modbus device answered.

    Attributes
    ----------
    fits : list of (MeterProfile, Fit)
    identity : Identity
        Empty where the device does not say.
    refusals : tuple of str
        What it answered instead of registers, in the standard's words.
    """

    fits: list[tuple[MeterProfile, Fit]]
    identity: Identity = field(default_factory=Identity)
    refusals: tuple[str, ...] = ()


def modbus_answer(link: Link, profiles: Sequence[MeterProfile]) -> DeviceAnswer:
    """Read the registers of the first profile whose registers are answered.

    Only functions 03, 04 and 43 are sent, which read. Profiles that read the same registers of the
    same device are told by one reading and given together.

    Raises
    ------
    LinkLost
        If the port went away.
    """
    refusals: dict[str, None] = {}
    for frames, same in _by_frames(profiles):
        first = same[0]
        heard = [(p, ModbusDecoder(p.modbus, p.channels)) for p in same]
        rows = _read(link, first, frames, [decoder for _, decoder in heard])
        if not rows:
            continue
        told = {remark.text: None for remark in rows[0].remarks}
        refusals.update(told)
        if told:
            continue
        fits = [
            (profile, _fit(profile, readings))
            for (profile, _), readings in zip(heard, rows, strict=True)
        ]
        talk = replace(first.modbus, answer_s=min(first.modbus.answer_s, ANSWER_S))
        identity = ModbusDialogue(link, talk, _rest_s(first)).identify()
        return DeviceAnswer(fits, identity or Identity())
    return DeviceAnswer([], Identity(), tuple(refusals))


def _by_frames(
    profiles: Sequence[MeterProfile],
) -> Iterator[tuple[tuple[bytes, ...], list[MeterProfile]]]:
    groups: dict[tuple[bytes, ...], list[MeterProfile]] = {}
    for profile in profiles:
        groups.setdefault(ModbusRequests(profile.modbus).frames, []).append(profile)
    yield from groups.items()


def _read(
    link: Link,
    profile: MeterProfile,
    frames: tuple[bytes, ...],
    decoders: list[ModbusDecoder],
) -> list[Readings]:
    """Send the frames in turn; give each decoder's readings, or nothing if one stays unanswered."""
    answer_s = min(profile.modbus.answer_s, ANSWER_S)
    rows: list[Readings] = []
    for index, frame in enumerate(frames):
        time.sleep(_rest_s(profile))
        link.drop_input()
        for decoder in decoders:
            decoder.expect(index)
        link.write(frame)
        until = time.monotonic() + answer_s
        before = decoders[0].complete_answers
        while decoders[0].complete_answers == before:
            left = until - time.monotonic()
            if left <= 0.0:
                return []
            data = link.read(left)
            rows = [decoder.feed(data) for decoder in decoders]
    return rows if rows and len(rows[0]) else []


def _rest_s(profile: MeterProfile) -> float:
    return max(_REST_S, silent_interval_s(profile.link.baud))


def _fit(profile: MeterProfile, readings: Readings) -> Fit:
    talk = profile.modbus
    why = f"device {talk.device} answers function {talk.function:02d}"
    return Fit(profile.name, profile.title, why, live_values(profile.channels, readings))
