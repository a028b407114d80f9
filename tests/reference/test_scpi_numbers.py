"""Numbers of SCPI instruments against the forms of the standards.

Source: IEEE 488.2-1992, 8.7.2 to 8.7.4 (NR1, NR2, NR3) and 7.7.2.1 (NRf); the samples of NR1 and
NR2 are those printed in instrument programming guides that quote these clauses. Sentinels:
SCPI-1999 volume 1, 7.2.1.4 and 7.2.1.5. Clause numbers from memory.
"""

import math
import struct

import pytest

from meterlog.instruments import parse_number
from meterlog.model import Flag


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("146", 146.0),  # NR1
        ("+146", 146.0),
        ("-12345", -12345.0),
        ("12.3", 12.3),  # NR2
        ("+1.2345", 1.2345),
        ("-0.123", -0.123),
        ("+1.2431E+01", 12.431),  # NR3
        ("-1.0E-3", -0.001),
        (".5", 0.5),  # NRf, what a listener must forgive
        ("5.", 5.0),
        ("1e3", 1000.0),
        (" 12.5 \r\n", 12.5),
        ("-0", 0.0),
    ],
)
def test_the_numeric_forms_are_read(text, number):
    assert parse_number(text) == (number, Flag.OK)


@pytest.mark.parametrize(
    "text",
    ["", ".", "+", "1e", "e5", "1.2.3", "12,5", "0x10", "1_000", "1 2", "12V", "--1", "#H1F"],
)
def test_what_is_no_number_is_refused(text):
    with pytest.raises(ValueError, match="no number"):
        parse_number(text)


@pytest.mark.parametrize(
    "text", ["9.9E37", "+9.9E37", "+9.90000000E+37", "9.9e+37", "-9.9E37", "INF", "-INF", "1E400"]
)
def test_infinity_is_overload_and_never_a_number(text):
    number, flag = parse_number(text)
    assert math.isnan(number)
    assert flag is Flag.OVERLOAD


@pytest.mark.parametrize("text", ["9.91E37", "+9.910000E+37", "9.91e+37", "NAN"])
def test_not_a_number_is_no_data(text):
    number, flag = parse_number(text)
    assert math.isnan(number)
    assert flag is Flag.NO_DATA


@pytest.mark.parametrize(
    ("bits", "flag"),
    # IEEE 754 single precision of 9.9E37 and 9.91E37, as a meter that calculates in 32 bits prints.
    [("7E94F56A", Flag.OVERLOAD), ("7E951BEE", Flag.NO_DATA)],
)
def test_sentinels_rounded_to_32_bits_are_still_known(bits, flag):
    (rounded,) = struct.unpack(">f", bytes.fromhex(bits))
    assert parse_number(f"{rounded:.8E}")[1] is flag


@pytest.mark.parametrize("text", ["8.9E37", "-8.9E37", "1E30"])
def test_a_large_number_below_the_sentinels_stays_a_number(text):
    assert parse_number(text) == (float(text), Flag.OK)
