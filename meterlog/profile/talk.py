"""How each dialect is spoken: what is sent to a meter, and how what it says is laid out."""

from __future__ import annotations

from dataclasses import dataclass

LONGEST_BLOCK = 64 * 2**20
"""Bytes; a block that says it is longer is junk: its header is text like any other."""


@dataclass(frozen=True, slots=True)
class ScpiTalk:
    """What to send to a SCPI meter (IEEE 488.2, SCPI-1999).

    Attributes
    ----------
    setup : tuple of str
        Configuration lines, sent once after ``*IDN?`` and ``*CLS``.
    query : str
        ``READ?``, ``FETC?`` or another that answers one value per channel, comma separated; for
        the dialect ``scpi-blocks`` one block.
    arm : str
        Sent once before the first query, such as ``INIT``; empty for none.
    poll_s : float, seconds
        From one query to the next; 0 asks again as soon as an answer is there.
    answer_s : float, seconds
        How long to wait for an answer.
    ask_errors : bool
        Drain ``SYST:ERR?`` after the configuration and after a missing answer.
    """

    setup: tuple[str, ...] = ()
    query: str = "READ?"
    arm: str = ""
    poll_s: float = 0.0
    answer_s: float = 2.0
    ask_errors: bool = True


@dataclass(frozen=True, slots=True)
class BlockLayout:
    """What is in a block of binary samples (IEEE 488.2 arbitrary block data).

    The rows follow each other; within a row the channels stand in the profile's order.

    Attributes
    ----------
    number : str
        ``real32``, ``real64`` (IEEE 754) or ``int16`` (two's complement).
    byte_order : str
        ``normal`` (most significant byte first) or ``swapped``, as ``FORMat:BORDer`` says it.
    sample_s : float, seconds
        From one row to the next, by the instrument's own sample clock; 0 when it has none.
    rows : int
        Rows of a block of indefinite length, whose end a serial line can't show; 0 when unknown:
        then such a block ends with a line end and a pause.
    overload : tuple of float
        Raw numbers that mean overload, besides those of SCPI.
    """

    number: str = "real32"
    byte_order: str = "normal"
    sample_s: float = 0.0
    rows: int = 0
    overload: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class LineFormat:
    """How one line of a free-running logger reads.

    Attributes
    ----------
    delimiter : str
        One character between fields; a blank stands for any run of blanks and tabs.
    columns : tuple of str
        What each field is: a channel's name, ``time`` for the device's own time, or ``-`` to skip.
    time_unit_s : float, seconds per unit of the time column
    comment : str
        Lines that begin with this are skipped; empty for none.
    header_lines : int
        Lines skipped after opening.
    decimal : str
        ``.`` or ``,``.
    overload_texts : tuple of str
        Field texts that mean overload, such as ``OL``.
    """

    delimiter: str = ","
    columns: tuple[str, ...] = ()
    time_unit_s: float = 1.0
    comment: str = "#"
    header_lines: int = 0
    decimal: str = "."
    overload_texts: tuple[str, ...] = ("OL", "OVLD", "0L")


@dataclass(frozen=True, slots=True)
class Register:
    """Where a channel stands in a Modbus device.

    Attributes
    ----------
    address : int
        As on the wire, from 0: the number in the manual less 1 (and less 30000 or 40000).
    number : str
        ``int16``, ``uint16``, ``int32``, ``uint32`` or ``float32``.
    overload : tuple of float
        Raw numbers that mean overload.
    """

    address: int
    number: str = "int16"
    overload: tuple[float, ...] = ()

    @property
    def words(self) -> int:
        """Registers it takes: 1 or 2."""
        return 1 if self.number.endswith("16") else 2


@dataclass(frozen=True, slots=True)
class ModbusTalk:
    """How a Modbus RTU device is asked.

    Attributes
    ----------
    device : int
        Its address on the line, 1 to 247.
    function : int
        3 (holding registers) or 4 (input registers).
    word_order : str
        ``high-first`` or ``low-first``: which register of a 32-bit number comes first. The
        standard does not say.
    registers : tuple of Register
        One a channel, in the profile's order.
    poll_s : float, seconds
        From one question to the next; 0 asks again as soon as an answer is there.
    answer_s : float, seconds
        How long to wait for an answer.
    """

    device: int = 1
    function: int = 4
    word_order: str = "high-first"
    registers: tuple[Register, ...] = ()
    poll_s: float = 0.0
    answer_s: float = 0.5


@dataclass(frozen=True, slots=True)
class Recognition:
    """How it is told that this profile is the right one for the instrument that answers.

    Attributes
    ----------
    maker, model : str
        Regular expressions that the fields of ``*IDN?`` must contain; empty for any.
    usb : tuple of str
        USB vendor and product numbers, such as ``1a2b:3c4d``.
    """

    maker: str = ""
    model: str = ""
    usb: tuple[str, ...] = ()
