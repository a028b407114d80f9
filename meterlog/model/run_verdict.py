"""RunVerdict: what the whole recording says, in words, and in order of weight."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Outcome(StrEnum):
    """What the run comes to."""

    IN_ORDER = "in order"
    FAULT = "fault found"
    SUSPICION = "suspicion"
    CANT_TELL = "can't tell"


class Sureness(StrEnum):
    """How sure a statement is, in the words used for it everywhere."""

    PROVEN = "proven"
    """Beyond the stated uncertainty, no doubt stands against it, seen more than once or long."""
    LIKELY = "likely"
    POSSIBLE = "possible"


@dataclass(frozen=True, slots=True)
class Ranked:
    """One thing found, however many findings tell of it.

    Attributes
    ----------
    what : str
        What is wrong, one sentence.
    part : str
        Which part of the circuit, such as ``motor``, ``feed``, ``ground side``, ``controller``,
        ``measuring``.
    sureness : Sureness
    probability : float or None
        That what it rests on is beyond its limit: of the finding that tells it most surely; None
        where that has none, or where only its cause is in question.
    rests_on : tuple of str
        What it rests on, each a clause with times and figures.
    against : tuple of str
        What speaks against it.
    next_measurement : str
        What to measure next, where and what to expect.
    """

    what: str
    part: str
    sureness: Sureness
    probability: float | None
    rests_on: tuple[str, ...]
    against: tuple[str, ...]
    next_measurement: str


@dataclass(frozen=True, slots=True)
class RunVerdict:
    """The judgement of a run.

    Attributes
    ----------
    outcome : Outcome
    paragraph : str
        Plain words, for somebody who reads nothing else.
    ranked : tuple of Ranked
        The gravest and surest first.
    unseen : tuple of str
        What this set-up could not have seen.
    shorter : tuple of str
        The paragraph, ever shorter, for where there is no room for it: what speaks against the
        verdict is in all of them.
    """

    outcome: Outcome
    paragraph: str
    ranked: tuple[Ranked, ...]
    unseen: tuple[str, ...]
    shorter: tuple[str, ...] = ()
