"""VIN check digits against published numbers and another published way to compute them.

Source: 49 CFR 565.15(c), tables III and IV. The numbers are examples that explanations of the check
digit print over and over (from memory): two with a digit that fits, of which seventeen ones is the
one that can be reckoned in the head (the weights add up to 89, and 89 = 8 * 11 + 1), and one that
is printed as an example of a wrong one.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.model.vin import check_digit, plain_vin, vin_words

LETTERS = "0123456789ABCDEFGHJKLMNPRSTUVWXYZ"
ROW = "0123456789.ABCDEFGH..JKLMN.P.R..STUVWXYZ"
"""The other way: the value of a character is its place in this row, modulo 10 (the layout of IBM's
EBCDIC columns, from which the table comes)."""
WEIGHTS = "8765432X098765432"

vins = st.text(LETTERS, min_size=17, max_size=17)


def by_the_row(vin):
    total = sum(
        ROW.index(letter) % 10 * "0123456789X".index(weight)
        for letter, weight in zip(vin, WEIGHTS, strict=True)
    )
    return "0123456789X"[total % 11]


@pytest.mark.parametrize("vin", ["1M8GDM9AXKP042788", "11111111111111111", "5GZCZ43D13S812715"])
def test_published_numbers_have_the_check_digit_that_is_computed(vin):
    assert check_digit(vin) == vin[8]
    assert vin_words(vin) == ()
    assert vin_words(f" {vin[:9].lower()}-{vin[9:]} ") == ()


def test_the_example_of_a_wrong_one_is_told():
    (words,) = vin_words("SGZCZ43D13S812715")
    assert "is 1, but by the others it would be X" in words


@given(vins)
def test_both_ways_to_compute_it_agree(vin):
    assert check_digit(vin) == by_the_row(vin)


@given(vins, st.integers(0, 16), st.sampled_from(LETTERS))
def test_one_wrong_character_of_another_value_is_always_noticed(vin, place, letter):
    good = "1" + vin[1:8] + "0" + vin[9:]
    good = good[:8] + check_digit(good) + good[9:]
    assert vin_words(good) == ()
    bad = good[:place] + letter + good[place + 1 :]
    changed = by_the_row(bad) != bad[8]
    same_value = ROW.index(letter) % 10 == ROW.index(good[place]) % 10
    assert changed or bad == good or (place != 8 and same_value)
    if changed:
        assert "check digit" in vin_words(bad)[0]


@pytest.mark.parametrize(
    ("vin", "letter", "meant"),
    [("1M8GDM9AXKPO42788", "O", "0"), ("IM8GDM9AXKP042788", "I", "1"), ("Q" * 17, "Q", "0")],
)
def test_letters_that_no_vin_has_are_told_with_what_is_meant(vin, letter, meant):
    assert vin_words(vin) == (
        f"The VIN has the character {letter}, which no VIN has; {meant} is probably meant.",
    )


def test_other_characters_and_lengths_are_told():
    assert "the character Ä, which no VIN has." in vin_words("1M8GDM9AXKPÄ42788")[0]
    (words,) = vin_words("1M8GDM9AXKP04278")
    assert "has 16 characters" in words
    assert len(vin_words("1M8GDM9AXKP04278O")) == 1
    assert len(vin_words("OI")) == 3


def test_outside_north_america_a_vin_need_have_no_check_digit():
    assert vin_words("YZ9ZZZ1ZZXW000001") == ()  # Z at position 9 can be none
    assert "need not have one" in vin_words("YZ9ZZZ1Z0XW000001")[0]
    assert "probably mistyped" in vin_words("1Z9ZZZ1ZZXW000001")[0]


def test_none_is_no_fault():
    assert vin_words("") == ()
    assert vin_words(" - ") == ()


@given(st.text(max_size=40))
def test_no_text_is_too_odd(text):
    assert all(words.endswith(".") for words in vin_words(text))


@pytest.mark.parametrize("vin", ["", "1" * 16, "1" * 18, "I" * 17])
def test_only_what_has_the_form_has_a_check_digit(vin):
    with pytest.raises(ValueError, match="form of a VIN"):
        check_digit(vin)
    assert plain_vin(vin) == vin
