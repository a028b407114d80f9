"""Instruments: bytes in, readings out. Links, decoders, the list of ports."""

from meterlog.instruments.ascii_lines import AsciiLineDecoder
from meterlog.instruments.block_stream import BlockDecoder
from meterlog.instruments.lcd_frames import LcdFrameDecoder
from meterlog.instruments.link import LineCounts, Link
from meterlog.instruments.links import open_link
from meterlog.instruments.modbus_answers import ModbusDecoder
from meterlog.instruments.modbus_frames import ModbusRequests
from meterlog.instruments.port_memory import PortMemory, remember, whereabouts
from meterlog.instruments.ports import PortInfo, list_ports
from meterlog.instruments.readings import Decoder, Readings, Remark
from meterlog.instruments.scpi_answers import ScpiAnswerDecoder
from meterlog.instruments.scpi_dialogue import ScpiDialogue
from meterlog.instruments.scpi_text import parse_error, parse_identity, parse_number

__all__ = [
    "AsciiLineDecoder",
    "BlockDecoder",
    "Decoder",
    "LcdFrameDecoder",
    "LineCounts",
    "Link",
    "ModbusDecoder",
    "ModbusRequests",
    "PortInfo",
    "PortMemory",
    "Readings",
    "Remark",
    "ScpiAnswerDecoder",
    "ScpiDialogue",
    "list_ports",
    "open_link",
    "parse_error",
    "parse_identity",
    "parse_number",
    "remember",
    "whereabouts",
]
