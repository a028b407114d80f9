"""ClaimContent: all that a claim pack says, before it is put into files."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import Enum
from pathlib import Path

from meterlog.evidence.circuit_files import JudgedCheck
from meterlog.model import Comparison, Review
from meterlog.model.card_doubts import doubt_words
from meterlog.model.job_card import JobCard
from meterlog.recording import Recording


class PageSize(Enum):
    """Paper of the PDF."""

    A4 = "a4"
    LETTER = "letter"


@dataclass(frozen=True, slots=True)
class ClaimSide:
    """One recording of a claim, before or after the repair.

    Attributes
    ----------
    name : str
        ``before`` or ``after``; its files lie in a folder of that name.
    recording : Recording
    review : Review
    checks : tuple of JudgedCheck
        Circuit checks that were kept with it.
    lacking : tuple of str
        What could not be read or judged.
    """

    name: str
    recording: Recording
    review: Review
    checks: tuple[JudgedCheck, ...] = ()
    lacking: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class ClaimCircuit:
    """Circuit checks that were kept by themselves, at no run before or after the repair.

    Attributes
    ----------
    name : str
        ``circuit``, ``circuit-2`` and so on; its files lie in a folder of that name.
    recording : Recording
    checks : tuple of JudgedCheck
    lacking : tuple of str
        What could not be read or judged.
    """

    name: str
    recording: Recording
    checks: tuple[JudgedCheck, ...] = ()
    lacking: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class ClaimContent:
    """What a pack says.

    Attributes
    ----------
    card : JobCard
        Already without customer data where ``without_customer``.
    sides : tuple of ClaimSide
        Before, after, or both.
    circuits : tuple of ClaimCircuit
        Checks that stand alone.
    comparison : Comparison or None
        New against old, where there are both.
    missing : tuple of str
        What the job card does not say and a reviewer will ask for.
    doubts : tuple of str
        Where the job card and a recording contradict each other.
    amendments : tuple of str
        Edits made on top of the recordings, oldest first, in words.
    checksums : mapping of str to str
        SHA-256 in hex of every file of the pack, by its name in the bag.
    fingerprint : str
        Of the key that signs the pack; empty where nobody signs.
    photos : tuple of Path
    photo_names : tuple of str
        What each was called on the job card; empty where that is not to be said.
    without_customer : bool
    made_utc : str
        RFC 3339.
    """

    card: JobCard
    sides: tuple[ClaimSide, ...]
    circuits: tuple[ClaimCircuit, ...] = ()
    comparison: Comparison | None = None
    missing: tuple[str, ...] = ()
    doubts: tuple[str, ...] = ()
    amendments: tuple[str, ...] = ()
    checksums: Mapping[str, str] = field(default_factory=dict)
    fingerprint: str = ""
    photos: tuple[Path, ...] = ()
    photo_names: tuple[str, ...] = ()
    without_customer: bool = False
    made_utc: str = ""

    @property
    def doubtful(self) -> tuple[str, ...]:
        """What looks wrong on the job card, alone and beside the recordings."""
        return (*doubt_words(self.card), *self.doubts)

    @property
    def recordings(self) -> tuple[ClaimSide | ClaimCircuit, ...]:
        """All that the pack has recordings of: the sides, then the checks that stand alone."""
        return (*self.sides, *self.circuits)
