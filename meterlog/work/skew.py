"""The skew of two meters of one recording, by the steps that both show."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.skew import Skew, compared, measure_skew
from meterlog.analysis.switching import ROLES, switchings
from meterlog.model import UNUSABLE, Instrument, Role
from meterlog.model.errors import UsageError
from meterlog.recording import Recording


@dataclass(frozen=True, slots=True)
class SkewFound:
    """What a recording says about the times of two of its meters.

    Attributes
    ----------
    first, second : Instrument
    roles : tuple of two Role
        Of the channels compared.
    skew : Skew
        Of the times as they stand in the recording.
    """

    first: Instrument
    second: Instrument
    roles: tuple[Role, Role]
    skew: Skew

    @property
    def whole_s(self) -> float:
        """How much later the second meter's times are, nothing subtracted, seconds."""
        return self.skew.later_s + self.second.skew_s - self.first.skew_s


def skew_of(
    recording: Recording,
    meters: tuple[str, str] | None = None,
    progress: Callable[[float], None] | None = None,
) -> SkewFound:
    """Measure how much later one meter's times are than another's.

    Parameters
    ----------
    recording : Recording
    meters : tuple of two str or None
        Keys of the instruments; None: the only two there are.
    progress : callable or None
        Called with the part done, 0 to 1.

    Returns
    -------
    SkewFound

    Raises
    ------
    UsageError
        If it can't be told which two are meant, or one has no channel that shows the switching.
    RecordingUnreadable
        If the readings can't be read.
    """
    first, second = _chosen(recording, meters)
    places = _places(first, second)
    found = []
    for instrument, column in zip((first, second), places, strict=True):
        t_ns, values = _column(recording, instrument.key, column, progress)
        channel = instrument.channels[column]
        found.append(switchings(t_ns, values, channel.role, channel.interval_s))
    channels = (first.channels[places[0]], second.channels[places[1]])
    skew = measure_skew(found[0], found[1], compared(*channels))
    return SkewFound(first, second, (channels[0].role, channels[1].role), skew)


def _chosen(recording: Recording, meters: tuple[str, str] | None) -> tuple[Instrument, Instrument]:
    instruments = recording.about.instruments
    known = {instrument.key: instrument for instrument in instruments}
    if meters is None:
        if len(instruments) == 2:
            return instruments[0], instruments[1]
        raise UsageError(
            f"holds {len(instruments)} meters, not two.",
            subject=str(recording.folder),
            remedy="Say which two with --meters A B." if len(instruments) > 2 else "Record two.",
        )
    for key in meters:
        if key not in known:
            raise UsageError(
                "is no meter of this recording.", subject=key, remedy=f"There are: {_list(known)}."
            )
    if meters[0] == meters[1]:
        raise UsageError("is the same meter twice.", subject=meters[0], remedy="Name two.")
    return known[meters[0]], known[meters[1]]


def _list(known: dict[str, Instrument]) -> str:
    return ", ".join(known)


def _places(first: Instrument, second: Instrument) -> tuple[int, int]:
    """Give the column of each that shows the switching best: of one role in both, if there is."""
    ours, theirs = _columns(first), _columns(second)
    for role in ROLES:
        if role in ours and role in theirs:
            return ours[role], theirs[role]
    return next(iter(ours.values())), next(iter(theirs.values()))


def _columns(instrument: Instrument) -> dict[Role, int]:
    roles = [channel.role for channel in instrument.channels]
    columns = {role: roles.index(role) for role in ROLES if role in roles}
    if not columns:
        raise UsageError(
            "has no channel that shows the fan being switched.",
            subject=instrument.key,
            remedy=f"Needed is one of: {', '.join(role.value for role in ROLES)}.",
        )
    return columns


def _column(
    recording: Recording, key: str, column: int, progress: Callable[[float], None] | None
) -> tuple[NDArray[np.int64], NDArray[np.float64]]:
    times, values = [np.empty(0, np.int64)], [np.empty(0)]
    end_ns = max(recording.end_ns, 1)
    for block in recording.blocks(key):
        bad = (block.flags[:, column] & int(UNUSABLE)) != 0
        times.append(np.array(block.t_ns))
        values.append(np.where(bad, np.nan, block.values[:, column]))
        if progress is not None and len(block):
            progress(min(int(block.t_ns[-1]) / end_ns, 1.0))
    return np.concatenate(times), np.concatenate(values)
