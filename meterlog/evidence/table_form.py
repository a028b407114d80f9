"""TableForm: what stands between the fields of a table and in its numbers."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

import pyarrow as pa

from meterlog.model.errors import UsageError
from meterlog.recording.arrow_arrays import text_array, truth_array

DELIMITERS = {"comma": ",", "semicolon": ";", "tab": "\t"}
DECIMALS = {"point": ".", "comma": ","}


@dataclass(frozen=True, slots=True)
class TableForm:
    """How all tables of one export are written.

    Attributes
    ----------
    delimiter : str
        One of ``,``, ``;`` and tab.
    decimal : str
        ``.`` or ``,``. With a comma, numbers are written without exponent: xsd:decimal is the only
        type that readers of CSV on the Web take with another decimal mark.

    Raises
    ------
    UsageError
        If a comma would be both, or for any other character.
    """

    delimiter: str = ","
    decimal: str = "."

    def __post_init__(self) -> None:
        """Refuse what could not be read back."""
        if self.delimiter not in DELIMITERS.values() or self.decimal not in DECIMALS.values():
            raise UsageError(f"{self.delimiter!r} and {self.decimal!r} are no form of a table.")
        if self.delimiter == self.decimal:
            raise UsageError(
                "A comma can't stand both between fields and in numbers.",
                remedy="Give --delimiter semicolon or tab with --decimal comma.",
            )

    @property
    def delimiter_name(self) -> str:
        """The delimiter in a word."""
        return next(name for name, mark in DELIMITERS.items() if mark == self.delimiter)

    @property
    def decimal_name(self) -> str:
        """The decimal mark in a word."""
        return next(name for name, mark in DECIMALS.items() if mark == self.decimal)

    @property
    def decimal_comma(self) -> bool:
        """True where numbers have a comma."""
        return self.decimal == ","

    def number(self, value: float) -> str:
        """Write a number so that it reads back exactly.

        Parameters
        ----------
        value : float
            Finite.
        """
        return _with_comma(repr(value)) if self.decimal_comma else repr(value)

    def column(self, values: pa.Array) -> pa.Array:
        """Write many numbers; exactly, too.

        Parameters
        ----------
        values : pyarrow.Array of float64
            Nulls are empty cells.

        Returns
        -------
        pyarrow.Array
            As given where Arrow's writer does it by itself; else of string.
        """
        if not self.decimal_comma:
            return values
        # Here, not above: the window starts without Arrow's compute functions.
        import pyarrow.compute as pc

        words = pc.cast(values, pa.string())
        odd = pc.fill_null(pc.match_substring(words, "e"), truth_array([False])[0])
        if pc.any(odd).as_py():
            plain = text_array(_with_comma(text) for text in pc.filter(words, odd).to_pylist())
            words = pc.replace_with_mask(words, odd, plain)
        return pc.replace_substring(words, ".", ",")


def table_form(delimiter: str, decimal: str) -> TableForm:
    """Give the form of two words: a key of ``DELIMITERS``, one of ``DECIMALS``.

    Raises
    ------
    UsageError
        If a comma would stand for both.
    """
    return TableForm(DELIMITERS[delimiter], DECIMALS[decimal])


def _with_comma(text: str) -> str:
    return format(Decimal(text), "f").replace(".", ",")
