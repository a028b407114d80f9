"""PackVerification: what a check of a pack found."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum


class SignatureState(Enum):
    """What the signature says."""

    GOOD = "good"
    BAD = "does not fit"
    MISSING = "missing"
    UNSIGNED = "unsigned"


@dataclass(frozen=True, slots=True)
class Signature:
    """Who signed.

    Attributes
    ----------
    state : SignatureState
        ``MISSING`` where the pack says that it was signed, ``UNSIGNED`` where it does not.
    fingerprint : str
        Of the key that is in the signature; empty when there is none that can be read.
    own : bool
        True if it is this user's own key.
    told : bool or None
        True if it is the key that was asked for; None if none was.
    """

    state: SignatureState
    fingerprint: str = ""
    own: bool = False
    told: bool | None = None

    @property
    def words(self) -> str:
        """Say it in a sentence."""
        if self.state is SignatureState.UNSIGNED:
            return "Not signed: the checksums agree with each other, but nothing says who made it."
        if self.state is SignatureState.MISSING:
            return "The signature is missing."
        if self.state is SignatureState.BAD:
            return "The signature does not fit: what is here is not what was signed."
        whose = f"Its lists are signed by the key {self.fingerprint}"
        if self.told is not None:
            asked = "which is the one asked for" if self.told else "which is NOT the one asked for"
            return f"{whose}, {asked}."
        if self.own:
            return f"{whose}, which is your own on this machine."
        return f"{whose}. Compare it with the one its maker gave you by another way."


@dataclass(frozen=True, slots=True)
class ChangedFile:
    """A file that is not as it was packed.

    Attributes
    ----------
    file : str
    rows : tuple of (int, int)
        First and last row, from 1, of each stretch that differs, where it is a table and they
        are known.
    words : str
        The sentence that tells it.
    """

    file: str
    rows: tuple[tuple[int, int], ...]
    words: str


@dataclass(frozen=True, slots=True)
class PackVerification:
    """The outcome of a check.

    Attributes
    ----------
    kind : str
        ``folder``, ``zip`` or ``pdf``.
    problems : tuple of str
        One text for each thing that is not as it was packed; each names the file.
    remarks : tuple of str
        What a reader should know and is no change.
    changed : tuple of ChangedFile
        Those of the problems that are changed files.
    signature : Signature
    files : int
        Files whose checksum was compared.
    container : str
        Says it where all that is in a zip or a PDF is as it was packed, and the file around it is
        not: dates, order, packing. Empty where it is, too, or could not be told.
    pack : str
        SHA-256 of the list of all that was packed: the same in the PDF and the zip of one pack, and
        in no other; empty where the list is missing.
    """

    kind: str
    problems: tuple[str, ...]
    remarks: tuple[str, ...]
    changed: tuple[ChangedFile, ...]
    signature: Signature
    files: int
    container: str = ""
    pack: str = ""

    @property
    def intact(self) -> bool:
        """True if there is no problem: all that was packed is as it was."""
        return not self.problems

    def to_dict(self) -> dict[str, object]:
        """Give it for JSON."""
        return {
            "kind": self.kind,
            "intact": self.intact,
            "problems": list(self.problems),
            "remarks": list(self.remarks),
            "changed": [
                {"file": one.file, "rows": [list(pair) for pair in one.rows]}
                for one in self.changed
            ],
            "signature": {
                "state": self.signature.state.value,
                "fingerprint": self.signature.fingerprint,
                "own": self.signature.own,
                "told": self.signature.told,
            },
            "files": self.files,
            "container": self.container,
            "pack_sha256": self.pack,
        }
