"""Errors about a trace, always with file, line and column."""

from __future__ import annotations

import difflib
from collections.abc import Sequence
from itertools import islice
from pathlib import Path

from meterlog.model.errors import TraceError

_LONGEST = 60
_MOST_NAMES = 20
_ANOTHER = "Give another file, or have it exported again by the program it came from."


def shown(text: str) -> str:
    """Give ``text`` in quotes for a message, cut where it is long, nothing invisible in it."""
    return repr(text if len(text) <= _LONGEST else f"{text[:_LONGEST]}...")


def trace_error(
    path: Path, message: str, remedy: str = "", *, line: int | None = None, column: str = ""
) -> TraceError:
    """Give an error about a place in a trace or events file.

    Parameters
    ----------
    path : Path
    message, remedy : str
    line : int or None
        Counted from 1.
    column : str
        Empty for none.

    Returns
    -------
    TraceError
    """
    place = "" if line is None else f"line {line}, "
    place += f"column {shown(column)}, " if column else ""
    subject = f"{path}, {place}".rstrip(", ")
    return TraceError(message, subject=subject, remedy=remedy or _ANOTHER)


def suggestion(word: str, known: Sequence[str]) -> str:
    """Give "Did you mean ...?" and the known words (the first of very many), for a remedy."""
    # A header may have a million names: nobody reads them, and comparing them takes minutes.
    names = [str(name) for name in islice(known, 1000)]
    near = difflib.get_close_matches(word.lower()[:200], [name.lower() for name in names], 1)
    first = next((name for name in names if near and name.lower() == near[0]), "")
    hint = f"Did you mean {shown(first)}? " if first else ""
    listed = [name if len(name) <= _LONGEST else f"{name[:_LONGEST]}..." for name in names]
    more = f" and {len(known) - _MOST_NAMES} more" if len(known) > _MOST_NAMES else ""
    return f"{hint}There are: {', '.join(listed[:_MOST_NAMES]) or 'none'}{more}."
