"""Usuals: thousands of recordings held against one table of baselines, none of them reviewed anew.

What a run draws stands in the index of the library beside its verdict.
"""

from __future__ import annotations

import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from pathlib import Path

from meterlog.model.errors import EvidenceError
from meterlog.work.baseline_tables import table_at
from meterlog.work.drawn import Drawn, drawn_from
from meterlog.work.library.hit import Hit, Kind, Usual
from meterlog.work.library.library import Library
from meterlog.work.screening.against import number_of
from meterlog.work.screening.baselines import Baseline, all_baselines
from meterlog.work.screening.held import Held, held_against, usual_of

_LOT = 50
_REST_S = 0.001
"""After each run the others have a turn: a window paints meanwhile."""

_Kind = tuple[str, str, float]
"""Part number, origin, nominal voltage."""


@dataclass(frozen=True, slots=True)
class TableSign:
    """By what it shows that a table is another one.

    Attributes
    ----------
    path : Path
        Of the file.
    changed_ns, size : int
    """

    path: Path
    changed_ns: int
    size: int

    @property
    def made(self) -> datetime:
        """When it was written; UTC."""
        return datetime.fromtimestamp(self.changed_ns / 1e9, UTC)

    @classmethod
    def of(cls, place: Path) -> TableSign:
        """Look at a table of baselines, or at that in a screening's folder.

        Raises
        ------
        EvidenceError
            If there is none, or it can't be looked at.
        """
        path = table_at(place).absolute()
        try:
            found = path.stat()
        except OSError as error:
            gone = isinstance(error, FileNotFoundError)
            raise EvidenceError(
                "is not there." if gone else f"can't be read: {error.strerror or error}.",
                subject=str(path),
                remedy="Plug in or connect its disk, or choose another table of baselines.",
            ) from error
        return cls(path, found.st_mtime_ns, found.st_size)


@dataclass(frozen=True, slots=True)
class HeldOrNot:
    """One recording and what there is to hold it against.

    Attributes
    ----------
    held : Held or None
        None where there is no baseline for it.
    number : str
        Its part number; empty where nobody says it.
    volts : tuple of float, volts
        Other nominal voltages, for which there are baselines of the number.
    """

    held: Held | None
    number: str
    volts: tuple[float, ...]


class Usuals:
    """One table of baselines, read once. Any thread may call any method.

    Parameters
    ----------
    place : Path
        The table, or the folder of a screening.

    Attributes
    ----------
    sign : TableSign

    Raises
    ------
    EvidenceError
        If the table can't be read, is none, or another version of the program wrote it.
    """

    def __init__(self, place: Path) -> None:
        self.sign = TableSign.of(place)
        self._good: dict[_Kind, list[Baseline]] = {}
        for one in all_baselines(place):
            kind = (one.part_number, one.origin, one.nominal_v)
            self._good.setdefault(kind, []).append(one)
        self._known: dict[tuple[str, str, str], Usual] = {}

    @property
    def numbers(self) -> tuple[str, ...]:
        """Part numbers of which it holds baselines."""
        return tuple(sorted({number for number, _, _ in self._good}))

    def judge(
        self, library: Library, hits: Sequence[Hit], progress: Callable[[float], None]
    ) -> int:
        """Hold against it what is judged and was not held before; gives how many that were.

        Parameters
        ----------
        library : Library
        hits : sequence of Hit
        progress : callable
            Called with the part done, 0 to 1; what it raises ends the work.

        Raises
        ------
        DiskFailed
            If the index can't be kept.
        """
        new = list({_key(one): one for one in hits if self._is_due(one)}.values())
        for start in range(0, len(new), _LOT):
            lot = new[start : start + _LOT]
            texts = library.drawn([one.key for one in lot])
            for place, hit in enumerate(lot, start):
                progress(place / len(new))
                self._known[_key(hit)] = self._usual(hit, texts.get(hit.key, ""))
                time.sleep(_REST_S)
        return len(new)

    def marked(self, hits: Sequence[Hit], only: Usual | None = None) -> tuple[Hit, ...]:
        """Give hits with what is known of them so far.

        Parameters
        ----------
        hits : sequence of Hit
        only : Usual or None
            Leave out all that are not this; None: nothing.
        """
        told = [replace(one, usual=self._known.get(_key(one))) for one in hits]
        return tuple(one for one in told if only is None or one.usual is only)

    def held(self, library: Library, hit: Hit) -> HeldOrNot:
        """Give all that is told of one recording.

        Raises
        ------
        DiskFailed
            If the index can't be kept.
        """
        number = number_of(hit.part, hit.number)
        drawn = _drawn(hit, library.drawn([hit.key]).get(hit.key, "")) if hit.key else None
        if drawn is None:
            return HeldOrNot(None, number, ())
        good = self._of(number, drawn)
        if good:
            return HeldOrNot(held_against(drawn, good, number), number, ())
        kinds = (kind for kind in self._good if kind[:2] == (number, drawn.origin))
        return HeldOrNot(None, number, tuple(sorted(volts for _, _, volts in kinds)))

    def _is_due(self, hit: Hit) -> bool:
        judged = hit.kind is Kind.RUN and bool(hit.key) and hit.sentence != ""
        return judged and _key(hit) not in self._known

    def _usual(self, hit: Hit, text: str) -> Usual:
        drawn = _drawn(hit, text)
        if drawn is None:
            return Usual.NOT_COMPARABLE
        number = number_of(hit.part, hit.number)
        return usual_of(drawn, self._of(number, drawn), number)

    def _of(self, number: str, drawn: Drawn) -> list[Baseline]:
        return self._good.get((number, drawn.origin, drawn.nominal_v), []) if number else []


def _key(hit: Hit) -> tuple[str, str, str]:
    return hit.key, hit.part, hit.number


def _drawn(hit: Hit, text: str) -> Drawn | None:
    """Read what a run draws, under the name of this copy of it."""
    drawn = drawn_from(text)
    return None if drawn is None else replace(drawn, run=replace(drawn.run, name=hit.folder.name))
