"""Wiring: which meter hangs on which port, and which channel plays which role in the circuit."""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from types import MappingProxyType

from meterlog.acquire import MeterChoice
from meterlog.model import Accuracy, Channel, Role
from meterlog.model.errors import UsageError
from meterlog.profile import MeterProfile, load_meter


@dataclass(frozen=True, slots=True)
class Wiring:
    """What the user says about the meters, as words.

    Attributes
    ----------
    meters : sequence of str
        ``PROFILE@URL``: a profile's name or file, and the port. A URL may itself hold ``@``.
    roles : sequence of str
        ``ROLE=PROFILE.CHANNEL``; ``PROFILE-2.CHANNEL`` for the second meter of one profile, plain
        ``ROLE=CHANNEL`` where only one meter has such a channel.
    scales : mapping of Role to float
        Amperes or volts per unit the meter reads, such as 100 for a clamp of 10 mV/A.
    zeros : mapping of Role to float, unit of the role
        Read with nothing connected; subtracted.
    """

    meters: Sequence[str]
    roles: Sequence[str] = ()
    scales: Mapping[Role, float] = field(default_factory=lambda: MappingProxyType({}))
    zeros: Mapping[Role, float] = field(default_factory=lambda: MappingProxyType({}))


def _nearest(word: str, known: Iterable[str]) -> str:
    names = list(known)
    near = difflib.get_close_matches(word, names, 1)
    hint = f"Did you mean {near[0]!r}? " if near else ""
    return f"{hint}There are: {', '.join(names)}."


def role_named(word: str) -> Role:
    """Give the role called ``word``.

    Raises
    ------
    UsageError
        If there is none; names the nearest and all.
    """
    try:
        return Role(word)
    except ValueError:
        raise UsageError(
            "there is no such role.", subject=word, remedy=_nearest(word, [r.value for r in Role])
        ) from None


def _meter(text: str) -> tuple[MeterProfile, str]:
    name, at, url = text.partition("@")
    if not (name and at and url):
        raise UsageError(
            "does not say which meter is on which port.",
            subject=text,
            remedy="Expected PROFILE@PORT, such as line-logger@/dev/ttyUSB0.",
        )
    return load_meter(name), url


def _keys(profiles: Iterable[MeterProfile]) -> list[str]:
    keys: list[str] = []
    for profile in profiles:
        key, count = profile.name, 1
        while key in keys:
            count += 1
            key = f"{profile.name}-{count}"
        keys.append(key)
    return keys


def _places(choices: Sequence[MeterChoice]) -> dict[str, tuple[int, int]]:
    """Give where each channel is: meter and column, by ``key.channel``."""
    return {
        f"{choice.key}.{channel.name}": (meter, column)
        for meter, choice in enumerate(choices)
        for column, channel in enumerate(choice.channels)
    }


def _place(words: str, places: Mapping[str, tuple[int, int]]) -> tuple[int, int]:
    if words in places:
        return places[words]
    same = [name for name in places if name.rpartition(".")[2] == words]
    if len(same) == 1:
        return places[same[0]]
    if same:
        raise UsageError(
            "more than one meter has a channel of this name.",
            subject=words,
            remedy=f"Say which: {', '.join(same)}.",
        )
    raise UsageError("no such channel.", subject=words, remedy=_nearest(words, places))


def _scaled(accuracy: Accuracy | None, factor: float) -> Accuracy | None:
    if accuracy is None:
        return None
    return replace(
        accuracy,
        resolution=accuracy.resolution * abs(factor),
        floor=accuracy.floor * abs(factor),
        basis=f"{accuracy.basis}; scaled by {factor:g}, the clamp's or divider's own error not in",
    )


def _in_role(channel: Channel, role: Role, wiring: Wiring, words: str) -> Channel:
    scale, zero = wiring.scales.get(role), wiring.zeros.get(role, channel.offset)
    quantity = role.quantity or channel.quantity
    if quantity is not channel.quantity and scale is None:
        raise UsageError(
            f"{role.value} needs a {quantity.value}, but this channel reads a "
            f"{channel.quantity.value}.",
            subject=words,
            remedy="Choose another channel; for a clamp or shunt on a voltage input give its "
            f"scale, such as --scale {role.value}=100 for 10 mV/A.",
        )
    if scale is None:
        return replace(channel, role=role, offset=zero)
    if scale == 0.0:
        raise UsageError("a scale can't be 0.", subject=role.value)
    return replace(
        channel,
        role=role,
        quantity=quantity,
        scale=channel.scale * scale,
        offset=zero,
        accuracy=_scaled(channel.accuracy, scale),
    )


def choose_meters(wiring: Wiring) -> tuple[MeterChoice, ...]:
    """Turn what the user says into meters that can be opened.

    Parameters
    ----------
    wiring : Wiring

    Returns
    -------
    tuple of MeterChoice
        In the order given; their keys are the profiles' names, with ``-2``, ``-3`` added where a
        profile is used more than once.

    Raises
    ------
    UsageError
        If a role or channel is unknown, a role is given twice, a channel gets two roles, a role
        needs a voltage and the channel reads a current (or the other way round), or a scale or
        zero is given for a role that no channel plays.
    ProfileError
        If a meter profile is unknown or wrong.
    """
    found = [_meter(text) for text in wiring.meters]
    keys = _keys(profile for profile, _ in found)
    choices = [
        MeterChoice(profile=profile, url=url, key=key, channels=profile.channels)
        for (profile, url), key in zip(found, keys, strict=True)
    ]
    places = _places(choices)
    taken: dict[tuple[int, int], Role] = {}
    for words in wiring.roles:
        role, place = _assignment(words, places)
        _check_free(words, role, place, taken)
        taken[place] = role
        meter, column = place
        channels = list(choices[meter].channels)
        channels[column] = _in_role(channels[column], role, wiring, words)
        choices[meter] = replace(choices[meter], channels=tuple(channels))
    for role in (*wiring.scales, *wiring.zeros):
        if role not in taken.values():
            raise UsageError(
                "has a scale or a zero, but no channel plays this role.",
                subject=role.value,
                remedy=f"Add --assign {role.value}=PROFILE.CHANNEL.",
            )
    return tuple(choices)


def _assignment(words: str, places: Mapping[str, tuple[int, int]]) -> tuple[Role, tuple[int, int]]:
    name, equals, channel = words.partition("=")
    if not (name and equals and channel):
        raise UsageError(
            "does not say which channel plays which role.",
            subject=words,
            remedy="Expected ROLE=PROFILE.CHANNEL, such as motor-feed=line-logger.feed.",
        )
    return role_named(name), _place(channel, places)


def _check_free(
    words: str, role: Role, place: tuple[int, int], taken: Mapping[tuple[int, int], Role]
) -> None:
    if place in taken:
        raise UsageError(
            f"this channel already plays {taken[place].value}.",
            subject=words,
            remedy="Give each channel one role.",
        )
    if role is not Role.OTHER and role in taken.values():
        raise UsageError(
            f"{role.value} is given twice.", subject=words, remedy="Each role needs one channel."
        )
