"""MeterChoice: which meter, at which port, with which channels in which roles."""

from __future__ import annotations

from dataclasses import dataclass

from meterlog.model import Channel
from meterlog.profile import MeterProfile


@dataclass(frozen=True, slots=True)
class MeterChoice:
    """One meter chosen for a recording.

    Attributes
    ----------
    profile : MeterProfile
    url : str
        The port, as :func:`meterlog.instruments.open_link` takes it.
    key : str
        Unique in the recording; becomes ``Block.source``.
    channels : tuple of Channel
        The profile's, in its order, with role, scale and offset set.

    Raises
    ------
    ValueError
        If the channels are not those of the profile.
    """

    profile: MeterProfile
    url: str
    key: str
    channels: tuple[Channel, ...]

    def __post_init__(self) -> None:
        """Refuse channels that do not belong to the profile."""
        wanted = [channel.name for channel in self.profile.channels]
        given = [channel.name for channel in self.channels]
        if given != wanted:
            raise ValueError(f"channels {given} are not those of {self.profile.name}: {wanted}")
