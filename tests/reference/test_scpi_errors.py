"""Entries of the error queue and identities against the standards' own forms.

Source: SCPI-1999 volume 2, chapter 21.8 (SYSTem:ERRor); codes and texts as printed in the
open-source project j123b567/scpi-parser, libscpi/inc/scpi/error.h. Identity: IEEE 488.2-1992,
10.14. Clause numbers from memory.
"""

import pytest

from meterlog.instruments import parse_error, parse_identity
from meterlog.model import Identity


@pytest.mark.parametrize(
    ("answer", "number", "text"),
    [
        ('0,"No error"', 0, "No error"),
        ('+0,"No error"\r\n', 0, "No error"),
        ('-113,"Undefined header"', -113, "Undefined header"),
        ('-222,"Data out of range;SENS:VOLT:RANG"', -222, "Data out of range;SENS:VOLT:RANG"),
        ('-350,"Queue overflow"', -350, "Queue overflow"),
        ('-410, "Query INTERRUPTED"', -410, "Query INTERRUPTED"),
        ('32767,"device, own"', 32767, "device, own"),
        ('-151,"a ""quoted"" word"', -151, 'a "quoted" word'),
        ("-100,Command error", -100, "Command error"),
        ("0", 0, ""),
    ],
)
def test_an_entry_gives_number_and_text(answer, number, text):
    assert parse_error(answer) == (number, text)


@pytest.mark.parametrize("answer", ["", "No error", '"0"', "+1.2E+01", "1.5,2.5"])
def test_what_is_no_entry_is_refused(answer):
    with pytest.raises(ValueError, match="no entry"):
        parse_error(answer)


@pytest.mark.parametrize(
    ("answer", "identity"),
    [
        ("A,B,0,1.0", Identity("A", "B", "", "1.0")),
        ("MAKER, MODEL 1 ,SN42,FW1.0-2\r\n", Identity("MAKER", "MODEL 1", "SN42", "FW1.0-2")),
        ("MAKER,MODEL,0,0", Identity("MAKER", "MODEL")),
        ("MAKER,MODEL,1", Identity("MAKER", "MODEL", "1")),
        ("M,N,1,a,b", Identity("M", "N", "1", "a,b")),
        ("", Identity()),
        ("\x00M\x07,N,1,2", Identity("M", "N", "1", "2")),
    ],
)
def test_an_identity_has_four_fields_and_fewer_or_more_do_no_harm(answer, identity):
    assert parse_identity(answer) == identity
