"""Script: what is done to the fan, and when."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable
from dataclasses import dataclass

from meterlog.instruments.virtual.trouble import TROUBLE_WORDS
from meterlog.model import LEADS, EventKind
from meterlog.model.errors import UsageError


@dataclass(frozen=True, slots=True)
class Happening:
    """One thing done.

    Attributes
    ----------
    elapsed_s : float, seconds since the scenario's zero
    kind : EventKind
        ``speed``, ``tap``, ``wiggle`` or ``note``.
    value : str
        The speed, the words of a note, or what was moved; empty for a tap.
    """

    elapsed_s: float
    kind: EventKind
    value: str = ""


def speed(elapsed_s: float, step: int) -> Happening:
    """Command a speed."""
    return Happening(elapsed_s, EventKind.SPEED, str(step))


def tap(elapsed_s: float) -> Happening:
    """Hit the motor."""
    return Happening(elapsed_s, EventKind.TAP)


def wiggle(elapsed_s: float, what: str = LEADS) -> Happening:
    """Move something by hand: it changes nothing in a virtual circuit."""
    return Happening(elapsed_s, EventKind.WIGGLE, what)


def note(elapsed_s: float, words: str) -> Happening:
    """Say something."""
    return Happening(elapsed_s, EventKind.NOTE, words)


def script_csv(happenings: Iterable[Happening]) -> str:
    """Give the text of an events file: ``elapsed_s,kind,value``, as RFC 4180 has it."""
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(("elapsed_s", "kind", "value"))
    for happening in happenings:
        writer.writerow((f"{happening.elapsed_s:.4f}", happening.kind.value, happening.value))
    return text.getvalue()


def order(line: str, elapsed_s: float, speeds: int) -> Happening | None:
    """Give what a typed line asks for.

    Parameters
    ----------
    line : str
        ``speed N``, ``tap``, ``note WORDS`` or ``quit``.
    elapsed_s : float, seconds
        Now.
    speeds : int
        The highest speed there is.

    Returns
    -------
    Happening or None
        None for ``quit``.

    Raises
    ------
    UsageError
        If the line is none of these; says which there are.
    """
    word, _, rest = line.strip().partition(" ")
    rest = rest.strip()
    word = word.lower()
    if word == "quit" and not rest:
        return None
    if word == "tap" and not rest:
        return tap(elapsed_s)
    if word == "note":
        return note(elapsed_s, rest)
    if word == "speed" and rest.isdecimal() and int(rest) <= speeds:
        return speed(elapsed_s, int(rest))
    raise UsageError(
        "is no order.",
        subject=repr(line.strip()[:80]),
        remedy=f"There are: speed 0 to speed {speeds}, tap, note WORDS, quit; and to a meter:"
        f" {TROUBLE_WORDS}.",
    )
