"""Finding: which tables of baselines there are, and which one is used. For a thread of its own."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

from meterlog.window.good_ones.kept_choice import BY_ITSELF, NO_TABLE
from meterlog.work.baseline_tables import tables_in, usual_screening


@dataclass(frozen=True, slots=True)
class FoundTables:
    """What was found.

    Attributes
    ----------
    tables : tuple of Path
        The one written last first.
    used : Path or None
        The one that was chosen, or the first found; None for none.
    """

    tables: tuple[Path, ...]
    used: Path | None


def find_tables(
    choice: str | None, roots: Sequence[Path], progress: Callable[[float], None]
) -> FoundTables:
    """Look for tables in folders, and where ``meterlog screen`` writes them as usual.

    Parameters
    ----------
    choice : str or None
        As :class:`~.kept_choice.KeptChoice` gives it.
    roots : sequence of Path
    progress : callable
        Called often; what it raises ends the work.
    """
    tables = tables_in((*roots, usual_screening()), lambda: progress(0.0))
    if choice is BY_ITSELF:
        return FoundTables(tables, tables[0] if tables else None)
    return FoundTables(tables, None if choice == NO_TABLE else Path(choice))
