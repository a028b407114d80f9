"""Times of marks: people read milliseconds, and finer ones only where these tell two apart."""

from decimal import Decimal

import pytest

from meterlog.model.amendment import Amendment, AmendmentKind, amendment_words
from meterlog.model.told_seconds import told_seconds


@pytest.mark.parametrize(
    ("seconds", "beside", "told"),
    [
        ("12.345678901", "", "12.346"),
        (Decimal("12.300000000"), "", "12.3"),
        ("120", "", "120"),
        ("0.0001", "", "0"),
        ("-0.0001", "", "0"),
        ("12.345678901", "12.345600001", "12.345679"),
        ("12.345678901", "12.345678902", "12.345678901"),
        ("12.345678901", "12.345678901", "12.346"),
        ("nothing", "3", "nothing"),
        ("NaN", "", "NaN"),
        ("1e999999999", "", "1e999999999"),
        ("3.0004", "1e999999999", "3"),
    ],
)
def test_a_time_has_as_many_digits_as_tell_something(seconds, beside, told):
    assert told_seconds(seconds, beside) == told


@pytest.mark.parametrize(
    ("kind", "old", "new", "words"),
    [
        (AmendmentKind.WITHDRAWN, "41.234567891", "", "at 41.235 s was withdrawn and counts"),
        (AmendmentKind.WITHDRAWN, "", "41.234567891", "at 41.235 s was put back"),
        (AmendmentKind.MARKER, "41.234567891", "40.9", "was moved from 41.235 s to 40.9 s"),
        (AmendmentKind.MARKER, "4.1234", "4.12345", "moved from 4.1234 s to 4.12345 s"),
    ],
)
def test_an_edit_of_a_mark_is_told_without_nanoseconds(kind, old, new, words):
    edit = Amendment(kind, "tap", 41_234_567_891, old, new, "N. N.", "late hand", "2030-01-02")
    assert words in amendment_words(edit)
    assert (edit.old, edit.new) == (old, new), "what is kept has all digits"
