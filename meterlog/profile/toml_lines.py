"""Where a key stands in a TOML text: ``tomllib`` does not say."""

from __future__ import annotations

import re

_HEAD = re.compile(r"^\s*(\[\[?)\s*([^\[\]]+?)\s*\]\]?\s*(?:#.*)?$")
_KEY = re.compile(r"^\s*([A-Za-z0-9_.\"' -]+?)\s*=")
_LONG = re.compile(r'"""|\'\'\'')


def line_of(text: str, place: tuple[str | int, ...]) -> int | None:
    """Give the line of a key, counted from 1.

    Parameters
    ----------
    text : str
        Valid TOML.
    place : tuple of str and int
        Names of tables and keys, and places in lists, from the top.

    Returns
    -------
    int or None
        Of the key itself; of the nearest table around it when the key is missing; None when that
        can't be told either.
    """
    lines = _lines(text)
    for depth in range(len(place), 0, -1):
        line = lines.get(place[:depth])
        if line is not None:
            return line
    return None


def _lines(text: str) -> dict[tuple[str | int, ...], int]:
    lines: dict[tuple[str | int, ...], int] = {}
    counts: dict[tuple[str | int, ...], int] = {}
    table: tuple[str | int, ...] = ()
    inside = False
    for number, line in enumerate(text.splitlines(), 1):
        if not inside:
            head = _HEAD.match(line)
            if head is not None:
                table = _table(_names(head[2]), counts, many=head[1] == "[[")
                lines.setdefault(table, number)
            elif key := _KEY.match(line):
                for depth in range(1, len(_names(key[1])) + 1):
                    lines.setdefault((*table, *_names(key[1])[:depth]), number)
        if len(_LONG.findall(line)) % 2:
            inside = not inside
    return lines


def _names(dotted: str) -> tuple[str, ...]:
    return tuple(part.strip().strip("\"'") for part in dotted.split("."))


def _table(
    names: tuple[str, ...], counts: dict[tuple[str | int, ...], int], *, many: bool
) -> tuple[str | int, ...]:
    """Give the place of a table; a name of an array of tables means its last so far."""
    place: tuple[str | int, ...] = ()
    for index, name in enumerate(names):
        place = (*place, name)
        if many and index == len(names) - 1:
            counts[place] = counts.get(place, -1) + 1
        if place in counts:
            place = (*place, counts[place])
    return place
