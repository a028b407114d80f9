"""Instruments: bytes in, readings out. Links, decoders, the list of ports."""

from meterlog.instruments.ascii_lines import AsciiLineDecoder
from meterlog.instruments.link import Link
from meterlog.instruments.ports import PortInfo, list_ports
from meterlog.instruments.readings import Decoder, Readings
from meterlog.instruments.scpi_answers import ScpiAnswerDecoder
from meterlog.instruments.scpi_dialogue import ScpiDialogue
from meterlog.instruments.scpi_text import parse_error, parse_identity, parse_number

__all__ = [
    "AsciiLineDecoder",
    "Decoder",
    "Link",
    "PortInfo",
    "Readings",
    "ScpiAnswerDecoder",
    "ScpiDialogue",
    "list_ports",
    "parse_error",
    "parse_identity",
    "parse_number",
]
