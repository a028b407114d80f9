"""Assembly: puts meters on a bench, each at a port of its own."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Mapping, Sequence

from meterlog.instruments.virtual.meter import MeterModel
from meterlog.instruments.virtual.outlet import Outlet
from meterlog.instruments.virtual.play import Play
from meterlog.instruments.virtual.scenario import dice
from meterlog.instruments.virtual.served_meter import ServedMeter
from meterlog.instruments.virtual.trouble import Trouble
from meterlog.instruments.virtual.voice import Voice
from meterlog.instruments.virtual.voices import voice
from meterlog.profile import MeterProfile

Probes = Mapping[str, Mapping[str, str]]


def bench_keys(profiles: Sequence[MeterProfile]) -> tuple[str, ...]:
    """Give each meter its name on the bench: the profile's, then with ``-2``, ``-3`` added."""
    seen: Counter[str] = Counter()
    keys = []
    for profile in profiles:
        seen[profile.name] += 1
        count = seen[profile.name]
        keys.append(profile.name if count == 1 else f"{profile.name}-{count}")
    return tuple(keys)


def specimens(
    profiles: Sequence[MeterProfile], keys: Sequence[str], play: Play, probes: Probes
) -> list[MeterModel]:
    """Give a specimen of each meter.

    Raises
    ------
    UsageError
        If the probes do not fit.
    """
    return [
        MeterModel(profile, play.scenario.name, play.seed, probes[key], key)
        for profile, key in zip(profiles, keys, strict=True)
    ]


def voices(models: Sequence[MeterModel], play: Play, speedup: float) -> list[Voice]:
    """Give each meter its voice.

    Raises
    ------
    UsageError
        If one has a dialect that can't be served on a port.
    """
    return [voice(play, model, speedup) for model in models]


def at_ports(
    models: Sequence[MeterModel],
    spoken: Sequence[Voice],
    play: Play,
    outlet: Callable[[int, str], Outlet],
    planned: Iterable[Trouble] = (),
) -> list[ServedMeter]:
    """Put each meter at a port; when one can't have it, the others are given back.

    Parameters
    ----------
    models : sequence of MeterModel
    spoken : sequence of Voice
    play : Play
    outlet : callable
        Gives the port of a meter; takes its place in the row, from 0, and its name.
    planned : iterable of Trouble
        What is to happen to them.

    Raises
    ------
    LinkError, UsageError
        If the system does not give a port, or something planned is nothing that a meter can have.
    """
    served: list[ServedMeter] = []
    try:
        for index, (model, one) in enumerate(zip(models, spoken, strict=True)):
            rng = dice(f"{play.scenario.name}/{model.key}", play.seed, 5)
            served.append(ServedMeter(model, one, outlet(index, model.key), rng))
        by_key = {meter.key: meter for meter in served}
        for trouble in planned:
            by_key[trouble.meter].check(trouble)
    except BaseException:
        for meter in served:
            meter.outlet.close()
        raise
    return served
