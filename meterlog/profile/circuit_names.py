"""Names within a circuit profile: which are repeated, and which lead nowhere."""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Sequence

from meterlog.profile.toml_lines import Place

Fault = tuple[Place, str, str]
"""Where, what is wrong, and what was expected."""
_MOST_TOLD = 12


def repeated(names: Sequence[str]) -> list[int]:
    """Give the places of names that were there before."""
    return [index for index, name in enumerate(names) if name in names[:index]]


def known_or(name: str, thing: str, known: Iterable[str]) -> tuple[str, str]:
    """Say that a name leads nowhere.

    Parameters
    ----------
    name : str
    thing : str
        What it should name, such as ``node``.
    known : iterable of str
        All that there are.

    Returns
    -------
    tuple of str
        What is wrong, and the nearest names or all of them.
    """
    names = list(known)
    near = difflib.get_close_matches(name, names, 1)
    if near:
        remedy = f"Did you mean {near[0]!r}?"
    elif len(names) <= _MOST_TOLD:
        remedy = f"There are: {', '.join(names) or 'none'}."
    else:
        remedy = f"Expected one of the {len(names)} names under [[{thing}s]]."
    return f"names {name!r}, which is no {thing} of this circuit", remedy
