"""TableColumn: what one column of an exported table is."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field
from enum import StrEnum
from urllib.parse import quote

from meterlog.evidence.cell_text import Cell

Rows = list[Sequence[Cell]]

_HEAD_UNIT = re.compile(r" \([^()]*\)$")


class Kind(StrEnum):
    """What stands in the cells of a column."""

    TEXT = "text"
    WORDS = "words"
    """Several texts without blanks, a blank between them."""
    NUMBER = "number"
    DEGREES = "degrees"
    """A number, or INF for infinitely many."""
    WHOLE = "whole"
    WHOLES = "wholes"
    """Several whole numbers, a blank between them."""
    YES_NO = "yes-no"
    INSTANT = "instant"
    """RFC 3339, UTC, nine digits of fraction."""


@dataclass(frozen=True, slots=True)
class Column:
    """One column.

    Attributes
    ----------
    head : str
        What stands in the header line, before it is defused; with the unit in brackets for V and A.
    kind : Kind
    words : str
        What it means, in one sentence.
    unit : str
        Symbol of the unit of all its numbers; ``1`` for a ratio or probability; empty where it has
        none, or where another column says it row by row.
    """

    head: str
    kind: Kind
    words: str
    unit: str = ""

    @property
    def stem(self) -> str:
        """Its name as a variable name of RFC 6570, section 2.3, without unit."""
        plain = re.sub(r"[- ]", "_", _HEAD_UNIT.sub("", self.head).strip()).lstrip("_")
        # Letters, digits and _ stay; all others as their UTF-8 bytes.
        return re.sub(r"[.~-]", "_", quote(plain, safe="")) or "column"


@dataclass(frozen=True, slots=True)
class Table:
    """A table with its rows, small enough to be held.

    Attributes
    ----------
    title, words : str
        What it is, and what one line of it is.
    columns : tuple of Column
    rows : list of sequence of cells
    """

    title: str
    words: str
    columns: tuple[Column, ...]
    rows: Rows = field(default_factory=list)


def heads(columns: Sequence[Column]) -> tuple[str, ...]:
    """Give the header line."""
    return tuple(column.head for column in columns)


def names(columns: Sequence[Column]) -> tuple[str, ...]:
    """Give a variable name to each column, no two alike."""
    given: list[str] = []
    for column in columns:
        name, count = column.stem, 1
        while name in given:
            count += 1
            name = f"{column.stem}_{count}"
        given.append(name)
    return tuple(given)
