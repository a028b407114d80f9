"""Wanted: what is looked for."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from meterlog.model.errors import UsageError
from meterlog.work.library.folded import folded
from meterlog.work.library.hit import Hit, Kind, Verdicts

_LEAST_LETTERS = 2


@dataclass(frozen=True, slots=True)
class Wanted:
    """What is looked for; as it is made it fits everything.

    Attributes
    ----------
    words : str
        Each must be there, anywhere and in any order; accents and case do not matter.
    since, until : str
        Local dates, ``2026-11-29``, both included; empty for any. Where one is given, what has no
        date does not fit.
    verdict : Verdicts or None
    kind : Kind or None
    """

    words: str = ""
    since: str = ""
    until: str = ""
    verdict: Verdicts | None = None
    kind: Kind | None = None

    def terms(self) -> tuple[str, ...]:
        """Give the words as they are compared, each once."""
        # Bytes that are no text come from a command line; nothing that is known holds any.
        plain = self.words.encode("utf-8", "replace").decode()
        return tuple(dict.fromkeys(folded(plain).split()))

    def fits(self, hit: Hit) -> bool:
        """Tell whether all but the words fits."""
        day = hit.started[:10]
        return (
            (self.kind is None or hit.kind is self.kind)
            and (self.verdict is None or hit.verdict is self.verdict)
            and (not (self.since or self.until) or bool(day))
            and (not self.since or day >= self.since)
            and (not self.until or day <= self.until)
        )


def wanted_date(text: str, *, last: bool = False) -> str:
    """Read a date as somebody typed it: year, year-month, year-month-day or day.month.year.

    Parameters
    ----------
    text : str
        Empty for any.
    last : bool
        Give the last day of what is meant, not the first.

    Returns
    -------
    str
        ``2026-11-29``, or empty.

    Raises
    ------
    UsageError
        If it is no date.
    """
    plain = text.strip()
    if not plain:
        return ""
    parts = plain.split("-") if "-" in plain else plain.rstrip(".").split(".")[::-1]
    try:
        return _day(parts, last=last).isoformat()
    except ValueError as error:
        raise UsageError(
            "is no date.",
            subject=text,
            remedy="Give year-month-day, such as 2026-11-29, or only year-month or the year.",
        ) from error


def _day(parts: list[str], *, last: bool) -> date:
    numbers = [int(part) for part in parts]
    if len(parts[0]) != 4 or len(numbers) > 3:
        raise ValueError(parts)
    year = numbers[0]
    if len(numbers) == 3:
        return date(year, numbers[1], numbers[2])
    month = numbers[1] if len(numbers) == 2 else (12 if last else 1)
    first = date(year, month, 1)
    if not last:
        return first
    after = date(year + month // 12, month % 12 + 1, 1) if year < date.max.year else date.max
    return date.fromordinal(after.toordinal() - 1) if after != date.max else after


def wanted_verdict(text: str) -> Verdicts:
    """Read a verdict as somebody typed it: any beginning of its words that is no other's.

    Raises
    ------
    UsageError
        If it is none, or may be several.
    """
    plain = folded(text).replace("-", " ").replace("'", "")
    fit = [one for one in Verdicts if one.value.replace("'", "").startswith(plain)]
    if plain and len(fit) == 1:
        return fit[0]
    names = ", ".join(one.value.replace("'", "").replace(" ", "-") for one in Verdicts)
    raise UsageError("is no verdict.", subject=text, remedy=f"There are: {names}.")
