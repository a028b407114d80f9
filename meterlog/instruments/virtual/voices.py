"""The one table from a profile's dialect to the voice that speaks it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType

from meterlog.instruments.virtual.meter import MeterModel
from meterlog.instruments.virtual.play import Play
from meterlog.instruments.virtual.voice import Voice
from meterlog.model.errors import UsageError

QUIET_S = 0.05
"""Seconds of the wall for which a meter that talks by itself is silent after opening."""

Maker = Callable[[Play, MeterModel, float], Voice]


def _lines(play: Play, meter: MeterModel, speedup: float) -> Voice:
    from meterlog.instruments.virtual.line_voice import LineVoice

    return LineVoice(play, meter, QUIET_S * speedup)


def _frames(play: Play, meter: MeterModel, speedup: float) -> Voice:
    from meterlog.instruments.virtual.lcd_voice import LcdVoice

    return LcdVoice(play, meter, QUIET_S * speedup)


def _scpi(play: Play, meter: MeterModel, _speedup: float) -> Voice:
    from meterlog.instruments.virtual.scpi_voice import ScpiVoice

    return ScpiVoice(play, meter)


def _blocks(play: Play, meter: MeterModel, _speedup: float) -> Voice:
    from meterlog.instruments.virtual.block_voice import BlockVoice

    return BlockVoice(play, meter)


def _modbus(play: Play, meter: MeterModel, speedup: float) -> Voice:
    # Only here: its library costs a tenth of a second, which the other dialects need not pay.
    from meterlog.instruments.virtual.modbus_voice import ModbusVoice

    return ModbusVoice(play, meter, speedup)


def _typed(_play: Play, meter: MeterModel, _speedup: float) -> Voice:
    raise UsageError(
        "is typed by hand: such a meter has no plug, so there is no port to serve it on.",
        subject=meter.profile.name,
        remedy="Choose a meter of another dialect, such as line-logger.",
    )


VOICES: Mapping[str, Maker] = MappingProxyType(
    {
        "ascii-lines": _lines,
        "lcd-frames": _frames,
        "modbus-rtu": _modbus,
        "scpi": _scpi,
        "scpi-blocks": _blocks,
        "typed": _typed,
    }
)
"""One entry for each of :data:`meterlog.profile.DIALECTS`."""


def voice(play: Play, meter: MeterModel, speedup: float = 1.0) -> Voice:
    """Give the voice of a meter.

    Parameters
    ----------
    play : Play
    meter : MeterModel
    speedup : float
        Scenario seconds per second of the wall.

    Raises
    ------
    UsageError
        If meters of this dialect can't be served on a port.
    """
    return VOICES[meter.profile.dialect](play, meter, speedup)
