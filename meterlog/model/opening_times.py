"""OpeningTimes: when a blade fuse opens, by kind and multiple of its rating.

The form and the kinds are those of ISO 8820-3 (blade fuse-links, types C, E and F). The figures are
not taken from the standard's own text: rows marked ``C`` were compared with public notes that quote
data sheets made to it, rows marked ``M`` are from memory. Whoever stakes money on a row compares it
with the standard or the maker's sheet first. Every row is a window, not an instant: a sound fuse
may open anywhere between its two times, and at its rating it does not open at all.
"""

from __future__ import annotations

from dataclasses import dataclass

from meterlog.model.errors import ProfileError

NEVER_S = 360_000.0
"""A hundred hours: so long a fuse carries its lowest row without opening."""


@dataclass(frozen=True, slots=True)
class OpeningRow:
    """One row of a table of opening times.

    Attributes
    ----------
    percent : float, percent of the rating
    after_s : float or None, seconds
        A sound fuse does not open earlier; None where the table says nothing.
    by_s : float or None, seconds
        It has opened by then; None where it need not open at all.
    mark : str
        ``C``: compared with published data sheets; ``M``: from memory.
    basis : str
    """

    percent: float
    after_s: float | None
    by_s: float | None
    mark: str
    basis: str


@dataclass(frozen=True, slots=True)
class OpeningTable:
    """The rows of one kind of fuse within a range of ratings.

    Attributes
    ----------
    kind : str
    least_a, most_a : float, amperes
        Ratings for which it holds, both included.
    rows : tuple of OpeningRow
        By rising percent.
    """

    kind: str
    least_a: float
    most_a: float
    rows: tuple[OpeningRow, ...]

    @property
    def checked(self) -> bool:
        """True where every row was compared with something published."""
        return all(row.mark == "C" for row in self.rows)


_SHEET = "data sheet of a 32 V fuse made to ISO 8820-3"
_USUAL = "the usual table of such fuses, from memory"
_TEN = "data sheet of a 10 A fuse made to ISO 8820-3; for other ratings from memory"


def _row(
    percent: float, after_s: float | None, by_s: float | None, mark: str, basis: str
) -> OpeningRow:
    return OpeningRow(percent, after_s, by_s, mark, basis)


_TABLES = (
    OpeningTable(
        "blade-medium",
        1.0,
        2.0,
        (
            _row(110.0, NEVER_S, None, "M", _USUAL + ", low confidence"),
            _row(135.0, 0.35, 600.0, "M", _USUAL + ", low confidence"),
            _row(200.0, 0.1, 5.0, "M", _USUAL + ", low confidence"),
            _row(350.0, 0.02, 0.5, "M", _USUAL + ", low confidence"),
            _row(600.0, None, 0.1, "M", _USUAL + ", low confidence"),
        ),
    ),
    OpeningTable(
        "blade-medium",
        3.0,
        30.0,
        (
            _row(110.0, NEVER_S, None, "M", _USUAL),
            _row(135.0, 0.75, 600.0, "M", _USUAL),
            _row(160.0, 0.25, 50.0, "C", _TEN),
            _row(200.0, 0.15, 5.0, "C", _TEN),
            _row(350.0, 0.04, 0.5, "M", _USUAL + "; others say not before 0.08 s"),
            _row(600.0, 0.02, 0.1, "M", _USUAL),
        ),
    ),
    OpeningTable(
        "blade-medium",
        35.0,
        40.0,
        (
            _row(100.0, NEVER_S, None, "C", _SHEET),
            _row(135.0, 0.75, 600.0, "C", _SHEET),
            _row(200.0, 0.15, 5.0, "C", _SHEET),
            _row(350.0, 0.08, 0.5, "C", _SHEET),
            _row(600.0, None, 0.15, "C", _SHEET),
        ),
    ),
    OpeningTable(
        "blade-miniature",
        2.0,
        30.0,
        (
            _row(110.0, NEVER_S, None, "M", _USUAL),
            _row(135.0, 0.75, 600.0, "M", _USUAL),
            _row(160.0, 0.25, 50.0, "M", _USUAL),
            _row(200.0, 0.15, 5.0, "M", _USUAL),
            _row(350.0, 0.04, 0.5, "M", _USUAL + "; others say 0.08 to 0.25 s"),
            _row(600.0, 0.02, 0.1, "M", _USUAL + "; others say not before 0.03 s"),
        ),
    ),
    OpeningTable(
        "blade-large",
        20.0,
        80.0,
        (
            _row(100.0, NEVER_S, None, "C", _SHEET),
            _row(135.0, 60.0, 1800.0, "C", _SHEET),
            _row(200.0, 2.0, 50.0, "C", _SHEET + "; others say by 60 s, from memory"),
            _row(350.0, 0.2, 7.0, "C", _SHEET),
            _row(600.0, 0.04, 1.0, "C", _SHEET),
        ),
    ),
)

FUSE_KINDS = tuple(dict.fromkeys(table.kind for table in _TABLES))
"""Kinds of fuses of which opening times are known."""


def opening_table(kind: str, rating_a: float) -> OpeningTable:
    """Give the table of opening times of a fuse.

    Parameters
    ----------
    kind : str
        One of :data:`FUSE_KINDS`.
    rating_a : float, amperes

    Raises
    ------
    ProfileError
        If there is none for that kind, or none for that rating; names those there are.
    """
    of_kind = [table for table in _TABLES if table.kind == kind]
    if not of_kind:
        raise ProfileError(
            f"no opening times are known of fuses of the kind {kind!r}",
            remedy=f"Expected one of: {', '.join(FUSE_KINDS)}.",
        )
    for table in of_kind:
        if table.least_a <= rating_a <= table.most_a:
            return table
    known = ", ".join(f"{table.least_a:g} to {table.most_a:g} A" for table in of_kind)
    raise ProfileError(
        f"no opening times are known of {kind} fuses of {rating_a:g} A",
        remedy=f"Known are {known}.",
    )
