"""Numbers as the window writes them and as they are typed: the one place for decimal signs."""

from __future__ import annotations

import re

from meterlog.window.words import say

_POINT, _COMMA = ".", ","
_WITH_COMMA = str.maketrans(".,", ",\N{NARROW NO-BREAK SPACE}")
"""What stands between thousands: beside a decimal comma no sign that could be taken for a point."""
_TYPED = re.compile(
    r"[+\-\N{MINUS SIGN}]?(?:[0-9]+(?:[.,][0-9]*)?|[.,][0-9]+)(?:[eE][+\-]?[0-9]+)?"
)
_NOTHING = re.compile(r"-0(?:\.0*)?")
_TWO_SIGNS = re.compile(r"[+\-\N{MINUS SIGN}]?[0-9]+(?:[.,'\s\N{NARROW NO-BREAK SPACE}][0-9]+){2,}")
_DECIMAL_COMMA = re.compile(r"(?<![0-9.,])([0-9]*),([0-9]+)(?![0-9.,])")


class _Sign:
    """The decimal sign of this window."""

    decimal = _POINT


def set_decimal_sign(sign: str) -> None:
    """Write numbers with a point or a comma from now on; any other sign is taken for a point."""
    _Sign.decimal = _COMMA if sign == _COMMA else _POINT


def decimal_sign() -> str:
    """Give the decimal sign that numbers are written with."""
    return _Sign.decimal


def number(value: float, form: str = "") -> str:
    """Write a number as text.

    Parameters
    ----------
    value : float
    form : str
        As in :func:`format`, such as ``.2f``.
    """
    text = format(value, form)
    # As the digits have it: what rounds to nothing has no sign.
    return in_numbers(text.removeprefix("-") if _NOTHING.fullmatch(text) else text)


def in_numbers(text: str) -> str:
    """Give the text of one number, or of several without words, with the window's decimal sign."""
    if _Sign.decimal == _POINT:
        return text
    return text.translate(_WITH_COMMA)


def figure_words(words: str) -> str:
    """Give words that may be a figure, such as a limit's, with the window's decimal sign if so."""
    return in_numbers(words) if _TYPED.fullmatch(words) else words


def with_points(words: str) -> str:
    """Give typed words with decimal points for commas, as the engine reads them.

    Only where the window writes commas: elsewhere one could stand between thousands. A number with
    more than one sign stays as it is, so that it is refused.
    """
    if _Sign.decimal == _POINT:
        return words
    return _DECIMAL_COMMA.sub(r"\1.\2", words)


def typed_number(words: str) -> float:
    """Give the number that was typed, with a point or a comma before the decimals.

    Raises
    ------
    UsageError
        If it is no number, or has more than one sign in it, so that one can't know which of them
        stands before the decimals: ``1.234,5``.
    """
    from meterlog.model.errors import UsageError  # brings numpy: not before the first paint

    typed = words.strip()
    if _TWO_SIGNS.fullmatch(typed):
        raise UsageError(
            say("has more than one sign between its digits."),
            subject=typed,
            remedy=say("Leave out the signs between thousands: 1234{sign}5.", sign=_Sign.decimal),
        )
    if not _TYPED.fullmatch(typed):
        raise UsageError(
            say("is no number."),
            subject=typed or say("nothing"),
            remedy=say("Such as 12{sign}5.", sign=_Sign.decimal),
        )
    return float(typed.replace(_COMMA, _POINT).replace("\N{MINUS SIGN}", "-"))
