"""MeterProfile: how to talk to one kind of meter, and how good its readings are."""

from __future__ import annotations

from dataclasses import dataclass, field

from meterlog.model import Channel
from meterlog.profile.link_settings import LinkSettings
from meterlog.profile.talk import (
    BlockLayout,
    LineFormat,
    ModbusTalk,
    Recognition,
    ScpiTalk,
)

DIALECTS = ("scpi", "scpi-blocks", "ascii-lines", "lcd-frames", "modbus-rtu", "typed")
"""Ways of talking: SCPI with numbers as text or as binary blocks, lines of text, frames of LCD
segments, Modbus RTU; and none at all: the user types what the meter shows."""


@dataclass(frozen=True, slots=True)
class MeterProfile:
    """One kind of meter, as a profile file describes it.

    Attributes
    ----------
    name : str
        File name without ending.
    title : str
        For people.
    dialect : str
        One of :data:`DIALECTS`.
    channels : tuple of Channel
        In the order of the values in a reading; roles are ``other`` until assigned.
    interval_s : float, seconds
        From one reading to the next.
    integration_s : float, seconds
        Time over which the meter averages for one reading; 0 when unknown or instantaneous.
    counts : int
        Largest number its display shows, such as 6000; 0 when nobody has said.
    power_off_s : float, seconds
        After so long the meter switches itself off; 0 when it does not or nobody has said.
    power_off_cure : str
        How that is prevented, for the user; empty when nobody has said.
    link : LinkSettings
    scpi : ScpiTalk
        Used by ``scpi`` and ``scpi-blocks``.
    blocks : BlockLayout
        Used by ``scpi-blocks``.
    lines : LineFormat
        Used by ``ascii-lines``.
    modbus : ModbusTalk
        Used by ``modbus-rtu``.
    recognition : Recognition
    text : str
        The TOML text as read.
    source : str
        The file it came from.
    """

    name: str
    title: str
    dialect: str
    channels: tuple[Channel, ...]
    interval_s: float
    integration_s: float = 0.0
    counts: int = 0
    power_off_s: float = 0.0
    power_off_cure: str = ""
    link: LinkSettings = field(default_factory=LinkSettings)
    scpi: ScpiTalk = field(default_factory=ScpiTalk)
    blocks: BlockLayout = field(default_factory=BlockLayout)
    lines: LineFormat = field(default_factory=LineFormat)
    modbus: ModbusTalk = field(default_factory=ModbusTalk)
    recognition: Recognition = field(default_factory=Recognition)
    text: str = ""
    source: str = ""

    @property
    def typed(self) -> bool:
        """Whether a person types its readings: it has no port."""
        return self.dialect == "typed"

    @property
    def pause_s(self) -> float:
        """Seconds from one question to the next that the profile asks for; 0 for none."""
        if self.dialect in {"scpi", "scpi-blocks"}:
            return self.scpi.poll_s
        return self.modbus.poll_s if self.dialect == "modbus-rtu" else 0.0
