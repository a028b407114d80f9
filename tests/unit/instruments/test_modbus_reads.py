"""Which registers are asked for together."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.instruments.modbus_reads import MOST_REGISTERS, Read, reads
from meterlog.profile import Register


def registers(*addresses: int, number: str = "int16") -> tuple[Register, ...]:
    return tuple(Register(address, number) for address in addresses)


def test_neighbours_are_read_together_in_whatever_order_they_stand():
    assert reads(registers(10, 8, 9)) == (Read(8, 3),)


def test_a_gap_is_never_read():
    assert reads(registers(8, 10)) == (Read(8, 1), Read(10, 1))


def test_one_register_for_two_channels_is_read_once():
    assert reads(registers(8, 8, 9)) == (Read(8, 2),)


def test_numbers_of_two_words_are_neighbours_two_apart():
    assert reads(registers(0, 2, number="float32")) == (Read(0, 4),)


def test_one_answer_holds_125_registers_at_most_and_a_number_is_not_parted():
    assert reads(registers(*range(126))) == (Read(0, 125), Read(125, 1))
    assert reads(registers(*range(0, 128, 2), number="int32")) == (Read(0, 124), Read(124, 4))


@pytest.mark.parametrize(
    ("read", "words"), [(Read(8, 1), "register 8"), (Read(8, 4), "registers 8 to 11")]
)
def test_a_read_says_what_it_asks_for(read, words):
    assert str(read) == words


@given(
    places=st.lists(
        st.tuples(st.integers(0, 400), st.sampled_from(["int16", "float32"])), min_size=1
    )
)
def test_every_register_is_whole_in_one_read_and_nothing_else_is_read(places):
    wanted = tuple(Register(address, number) for address, number in places)
    found = reads(wanted)
    assert all(1 <= one.count <= MOST_REGISTERS for one in found)
    assert all(any(one.holds(register) for one in found) for register in wanted)
    needed = {
        address
        for register in wanted
        for address in range(register.address, register.address + register.words)
    }
    asked = [address for one in found for address in range(one.start, one.stop)]
    assert set(asked) == needed
