"""Wiring: which meter hangs on which port, and which channel plays which role in the circuit."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from types import MappingProxyType

from meterlog.acquire import MeterChoice
from meterlog.model import Channel, Role, Zero
from meterlog.model.errors import UsageError
from meterlog.profile import MeterProfile, load_meter
from meterlog.work.sensing import sensed
from meterlog.work.sensor_words import SensorWords, nearest, role_named, sensors
from meterlog.work.zeros import KeptZeros, ZeroKey, adapter_serial


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
        Amperes or volts per unit the meter reads, for what is no clamp, shunt or divider.
    zeros : mapping of Role to float, unit of the role
        Read with nothing connected; subtracted.
    sensors : SensorWords
        Clamps, shunts, dividers, turns, polarity.
    kept_zeros : collection of Role
        For these the zero kept from an earlier recording is used.
    """

    meters: Sequence[str]
    roles: Sequence[str] = ()
    scales: Mapping[Role, float] = field(default_factory=lambda: MappingProxyType({}))
    zeros: Mapping[Role, float] = field(default_factory=lambda: MappingProxyType({}))
    sensors: SensorWords = field(default_factory=SensorWords)
    kept_zeros: Collection[Role] = ()


@dataclass(frozen=True, slots=True)
class Place:
    """Where a channel is: the profile's name and the port of its meter."""

    profile: str
    url: str


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
    raise UsageError("no such channel.", subject=words, remedy=nearest(words, places))


def _zeroed(channel: Channel, role: Role, place: Place, wiring: Wiring, kept: KeptZeros) -> Channel:
    """Give the channel with the zero that was typed, or kept from an earlier recording."""
    if role in wiring.zeros:
        offset = wiring.zeros[role]
        return replace(channel, offset=offset, zero=Zero(offset))
    if role not in wiring.kept_zeros:
        return channel
    zero = kept.find(ZeroKey.of(place.profile, adapter_serial(place.url), channel))
    if zero is None:
        raise UsageError(
            "no zero is kept for this meter, channel and sensor.",
            subject=role.value,
            remedy=f"Take one: --take-zero {role.value}, with the clamp empty and shut.",
        )
    return replace(channel, offset=zero.offset, zero=zero)


def choose_meters(wiring: Wiring, kept: KeptZeros | None = None) -> tuple[MeterChoice, ...]:
    """Turn what the user says into meters that can be opened.

    Parameters
    ----------
    wiring : Wiring
    kept : KeptZeros or None
        None: those in the user's settings folder.

    Returns
    -------
    tuple of MeterChoice
        In the order given; their keys are the profiles' names, with ``-2``, ``-3`` added where a
        profile is used more than once.

    Raises
    ------
    UsageError
        If a role or channel is unknown, a role is given twice, a channel gets two roles, a role
        needs a voltage and the channel reads a current (or the other way round), what is said
        about its sensor contradicts itself, or a sensor or zero is given for a role that no
        channel plays, or no zero is kept that was asked for.
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
    said = sensors(wiring.sensors, wiring.scales)
    store = kept or KeptZeros()
    taken: dict[tuple[int, int], Role] = {}
    for words in wiring.roles:
        role, place = _assignment(words, places)
        _check_free(words, role, place, taken)
        taken[place] = role
        meter, column = place
        choice = choices[meter]
        channels = list(choice.channels)
        channels[column] = _zeroed(
            sensed(channels[column], role, said.get(role)),
            role,
            Place(choice.profile.name, choice.url),
            wiring,
            store,
        )
        choices[meter] = replace(choice, channels=tuple(channels))
    _refuse_absent((*said, *wiring.zeros, *wiring.kept_zeros), taken.values())
    return tuple(choices)


def _refuse_absent(named: Iterable[Role], played: Collection[Role]) -> None:
    for role in named:
        if role not in played:
            raise UsageError(
                "has a sensor, scale or zero, but no channel plays this role.",
                subject=role.value,
                remedy=f"Add --assign {role.value}=PROFILE.CHANNEL.",
            )


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
