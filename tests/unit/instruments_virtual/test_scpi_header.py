import pytest

from meterlog.instruments.virtual.scpi_header import fits, header_pattern, units


@pytest.mark.parametrize(
    "header",
    ["SYST:ERR?", "syst:err?", "SYSTem:ERRor?", ":SYSTEM:ERROR:NEXT?", "SYST:ERR:NEXT?"],
)
def test_short_and_long_forms_in_any_case_are_the_same_command(header):
    assert fits(header_pattern("SYSTem:ERRor[:NEXT]?"), header)


@pytest.mark.parametrize(
    "header", ["SYST:ERR", "SYS:ERR?", "SYSTE:ERR?", "SYST:ERRO?", "ERR?", "SYST?"]
)
def test_other_abbreviations_are_not(header):
    assert not fits(header_pattern("SYSTem:ERRor[:NEXT]?"), header)


def test_a_leading_optional_node_and_numeric_suffixes_may_be_there_or_not():
    pattern = header_pattern("[SENSe:]VOLTage[:DC]:RANGe")
    for header in ("VOLT:RANG", "SENS:VOLT:RANG", "sense1:voltage:dc:range"):
        assert fits(pattern, header)
    assert not fits(pattern, "SENS:CURR:RANG")


def test_common_commands_have_one_form():
    assert fits(header_pattern("*IDN?"), "*idn?")
    assert not fits(header_pattern("*IDN?"), "*IDN")


def test_units_are_split_at_semicolons_outside_quotes():
    assert units(' *CLS ; FUNC "VOLT;X";READ?;; ') == ["*CLS", 'FUNC "VOLT;X"', "READ?"]
    assert units("  ") == []
