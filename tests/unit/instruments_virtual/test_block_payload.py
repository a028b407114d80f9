"""Blocks against the byte vectors of other programs' tests.

The samples of both byte orders are those of a SCPI parser library's own tests (libscpi,
test_parser.c): int16 -5, 0x4849, 0x3034, and two 32-bit numbers with the bits 3F414243 40414243.
"""

import struct

import numpy as np
import pytest

from meterlog.instruments.virtual.block_payload import asked_format, block, numbers
from meterlog.instruments.virtual.meter import Shown
from meterlog.profile import BlockLayout

INTS = np.array([[-5.0, 0x4849, 0x3034]])
FLOATS = np.array([struct.unpack(">2f", bytes.fromhex("3F41424340414243"))])
DOUBLES = np.array([struct.unpack(">2d", bytes.fromhex("42D16766D3168C4043118B54F26EBC1C"))])


@pytest.mark.parametrize(
    ("values", "number", "order", "wanted"),
    [
        (INTS, "int16", "normal", b"#16" + bytes.fromhex("FFFB48493034")),
        (INTS, "int16", "swapped", b"#16" + bytes.fromhex("FBFF49483430")),
        (FLOATS, "real32", "normal", b"#18" + bytes.fromhex("3F41424340414243")),
        (FLOATS, "real32", "swapped", b"#18" + bytes.fromhex("4342413F43424140")),
        (DOUBLES, "real64", "normal", b"#216" + bytes.fromhex("42D16766D3168C4043118B54F26EBC1C")),
        (DOUBLES, "real64", "swapped", b"#216" + bytes.fromhex("408C16D36667D1421CBC6EF2548B1143")),
    ],
)
def test_a_block_is_that_of_the_published_vector(values, number, order, wanted):
    assert block(values, number, order, endless=False) == wanted


def test_a_block_of_indefinite_length_has_no_length():
    assert block(INTS, "int16", "normal", endless=True) == b"#0" + bytes.fromhex("FFFB48493034")


def shown(*values):
    raw = np.array([values], float)
    return Shown(np.where(np.abs(raw) > 40_000, np.nan, raw), np.abs(raw) > 40_000, raw < 0)


def test_overload_is_the_profiles_number_or_that_of_scpi():
    both = shown(1.0, 50_000.0, -50_000.0)
    assert numbers(both, "real32", ()).tolist() == [[1.0, 9.9e37, -9.9e37]]
    assert numbers(both, "int16", ()).tolist() == [[1.0, 32_767.0, -32_767.0]]
    assert numbers(both, "int16", (32_767.0, -32_768.0)).tolist() == [[1.0, 32_767.0, -32_768.0]]
    assert numbers(both, "real64", (999.0,)).tolist() == [[1.0, 999.0, 999.0]]


def test_what_does_not_fit_into_sixteen_bits_is_overload_too():
    assert numbers(shown(35_000.0), "int16", (-32_768.0,)).tolist() == [[-32_768.0]]


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("REAL,64", "real64"),
        ("real, 32", "real32"),
        ("REAL", "real64"),
        ("INT,16", "int16"),
        ("INT", "int16"),
        ("ASC", "text"),
        ("INT,32", None),
        ("HEX", None),
    ],
)
def test_formats_are_asked_for_as_scpi_has_them(text, wanted):
    assert asked_format(text, BlockLayout(number="real64")) == wanted
