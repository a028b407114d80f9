"""Part numbers and motors out of free words."""

import pytest

from meterlog.model.errors import UsageError
from meterlog.work.screening.part_numbers import motor_of, number_pattern, part_number


@pytest.mark.parametrize(
    ("part", "number", "motor"),
    [
        ("Fan motor OX-1180, serial 004417 (invented)", "OX-1180", "004417 (INVENTED)"),
        ("FM-20 s/n 12", "FM-20", "12"),
        ("fm-20  SN: 12", "FM-20", "12"),
        ("FM-20 serial no. 7", "FM-20", "7"),
        ("FM-20 S/N4711", "FM-20", "4711"),
        ("FM-20 SN4712", "FM-20", "4712"),
        ("FM-20, Seriennummer 4713", "FM-20", "4713"),
        ("FM-20 ser. no. 7", "FM-20", "7"),
        ("Gebläsemotor, part number FM-20, serial 7", "FM-20", "7"),
        ("P/N: FM-20, S/N: 7", "FM-20", "7"),
        ("SN20-4, serial 3", "SN20-4", "3"),
        ("Blower, part number SN75-220, serial X1", "SN75-220", "X1"),
        ("Blower 12V, part number 64.11", "64.11", ""),
        ("Blower 12V P/N 64.11", "64.11", ""),
        ("S/N 12, P/N FM-20", "FM-20", "12"),
        ("64.119 (part no)", "64.119", ""),
        ("motor FM-20", "FM-20", ""),
        ("FM-20", "FM-20", ""),
        ("", "", ""),
        ("serial 12", "", "12"),
    ],
)
def test_number_and_serial_are_told_apart(part, number, motor):
    assert part_number(part, None) == number
    assert motor_of(part, "", "", number) == motor


def test_a_pattern_finds_what_free_words_do_not_part():
    pattern = number_pattern(r"OX-\d+")
    assert part_number("fan motor OX-1180 004417", pattern) == "OX-1180"
    assert motor_of("OX-1180 004417", "", "", "OX-1180") == "004417"
    assert part_number("x ab12 y", number_pattern("x (ab)")) == "AB"
    assert part_number("nothing", pattern) == ""
    with pytest.raises(UsageError, match="is no regular expression"):
        number_pattern("(")


def test_a_vehicle_stands_for_a_motor_without_serial_and_is_not_shown():
    motor = motor_of("FM-20", "", "Kestrel 12", "FM-20")
    assert motor.startswith("vehicle ")
    assert "Kestrel" not in motor
    assert motor == motor_of("FM-20", "", "kestrel  12", "FM-20")
    assert motor != motor_of("FM-20", "", "Kestrel 13", "FM-20")
    assert motor_of("FM-20", "88", "Kestrel 12", "FM-20") == "88"


def test_a_name_with_a_digit_in_it_is_no_motor_of_its_own():
    part = "Blower 12V, part number 64.11"
    one, other = (motor_of(part, "", vehicle, "64.11") for vehicle in ("Kestrel 1", "Kestrel 2"))
    assert one != other
    assert one.startswith("vehicle ")


@pytest.mark.timeout(60)  # looked for from each blank on, it would take many minutes
def test_a_part_of_a_hundred_thousand_blanks_is_read_at_once():
    part = "FM-20" + " " * 120_000 + "x"
    assert part_number(part, None) == "FM-20 X"
    assert part_number("FM-20 (, ;" + "\t" * 120_000 + "serial 7", None) == "FM-20"
    assert motor_of(part, "", "", "FM-20") == ""
    for word in ("s", "part", "ser.", "p /", "s ", "serial"):
        assert part_number(f"FM-20{f' {word}' * 30_000}{' ' * 30_000}x", None).startswith("FM-20")
