"""Samples in binary blocks against published bytes.

Sources: IEEE 488.2-1992, 8.7.9 and 8.7.10 (blocks; clauses from memory); SCPI-1999, FORMat[:DATA]
and FORMat:BORDer. The blocks of 16, 32 and 64 bits in both byte orders are the vectors of the
open-source project j123b567/scpi-parser, libscpi/test/test_parser.c. The bits of 1.0, 12.5, -0.1,
9.9E37 and 9.91E37 follow from IEEE 754 and were recomputed by Python's struct.
"""

import struct

import pytest

from meterlog.instruments import BlockDecoder
from meterlog.model import Channel, Flag, Quantity
from meterlog.profile import BlockLayout

ONE = (Channel("volts", Quantity.VOLTAGE),)


def values(block: str, number: str, byte_order: str) -> list[float]:
    head, _, payload = block.partition(" ")
    decoder = BlockDecoder(BlockLayout(number, byte_order), ONE)
    readings = decoder.feed(head.encode() + bytes.fromhex(payload) + b"\n")
    assert decoder.refused == 0
    return readings.values[:, 0].tolist()


@pytest.mark.parametrize(
    ("block", "byte_order"),
    [("#16 FFFB 4849 3034", "normal"), ("#16 FBFF 4948 3430", "swapped")],
)
def test_whole_numbers_of_16_bits(block, byte_order):
    assert values(block, "int16", byte_order) == [-5.0, 0x4849, 0x3034]


@pytest.mark.parametrize(
    ("block", "byte_order"),
    [("#18 3F414243 40414243", "normal"), ("#18 4342413F 43424140", "swapped")],
)
def test_numbers_of_32_bits(block, byte_order):
    # 3F414243h: exponent 126 - 127, fraction 414243h: (1 + 0x414243 / 2^23) / 2.
    want = [(1 + 0x414243 / 2**23) / 2, (1 + 0x414243 / 2**23) * 2]
    assert values(block, "real32", byte_order) == want


@pytest.mark.parametrize(
    ("block", "byte_order"),
    [
        ("#216 42D16766D3168C40 43118B54F26EBC1C", "normal"),
        ("#216 408C16D36667D142 1CBC6EF2548B1143", "swapped"),
    ],
)
def test_numbers_of_64_bits(block, byte_order):
    bits = (0x42D16766D3168C40, 0x43118B54F26EBC1C)
    want = [
        (1 + (one & (2**52 - 1)) / 2**52) * 2.0 ** (((one >> 52) & 0x7FF) - 1023) for one in bits
    ]
    assert values(block, "real64", byte_order) == want


@pytest.mark.parametrize(
    ("bits", "number"),
    [("3F800000", 1.0), ("41480000", 12.5), ("BDCCCCCD", -0.1)],
)
def test_well_known_bits_of_32(bits, number):
    assert values(f"#14 {bits}", "real32", "normal") == [pytest.approx(number, rel=1e-7)]


@pytest.mark.parametrize(
    ("bits", "flag"),
    [
        ("7E94F56A", Flag.OVERLOAD),  # 9.9E37
        ("FE94F56A", Flag.OVERLOAD),
        ("7F800000", Flag.OVERLOAD),  # infinity
        ("7E951BEE", Flag.NO_DATA),  # 9.91E37
        ("7FC00000", Flag.NO_DATA),  # not a number
        ("7F800001", Flag.NO_DATA),  # a signalling one
    ],
)
def test_sentinels_of_32_bits_are_flagged(bits, flag):
    decoder = BlockDecoder(BlockLayout("real32", "normal"), ONE)
    readings = decoder.feed(b"#18" + bytes.fromhex(bits) + struct.pack(">f", 2.0) + b"\n")
    assert readings.flags[:, 0].tolist() == [int(flag), 0]
    assert str(readings.values[0, 0]) == "nan"
    assert readings.values[1, 0] == 2.0
