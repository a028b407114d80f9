"""TomlValues: what a TOML text says, as plain values, or why it can't be taken."""

from __future__ import annotations

import re
import tomllib
from typing import Any

_DEEPEST = 32
"""Names in one dotted key. The parser's memory grows with the square of them."""
_ENDS = re.compile(r"[=,{}\[\]\n]")
_BLANKS = re.compile(r"\s+")


def toml_values(text: str) -> dict[str, Any]:
    """Parse TOML text.

    Parameters
    ----------
    text : str

    Returns
    -------
    dict

    Raises
    ------
    ValueError
        If it is no TOML, holds a number too long for Python, or a key or tables too deep to be
        meant. The library's own error for the latter is a ``RecursionError``.
    """
    for part in _ENDS.split(text):
        # Two dots side by side, or a sign of prose, are no dotted key.
        if part.count(".") > _DEEPEST and ".." not in _BLANKS.sub("", part):
            raise ValueError(f"a key has more than {_DEEPEST} names")
    try:
        return tomllib.loads(text)
    except RecursionError as error:
        raise ValueError("tables lie too deep in each other") from error
