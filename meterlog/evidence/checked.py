"""Checked: whether a recording or a pack is as it was made, in the words of a report."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from meterlog.evidence.check_progress import Tell, nobody
from meterlog.evidence.pack_verify import is_pack, verify_pack
from meterlog.evidence.shown_text import shown
from meterlog.evidence.signed_manifest import fingerprint_typed
from meterlog.evidence.verify import seal_digest, verify_folder
from meterlog.model.errors import UsageError
from meterlog.model.visible_text import one_line
from meterlog.recording import layout

_AROUND = "What is in it is as it was packed."
_ONE_PACK = "The PDF and the zip of one pack say the same there: hold one against the other."
_MOST = 3
"""Files of a folder that are named."""


@dataclass(frozen=True, slots=True)
class Checked:
    """The outcome of a check.

    Attributes
    ----------
    intact : bool
    head : str
        The outcome in one sentence, with the path.
    lines : tuple of str
        What is wrong, who signed, what should be known; the weightiest first.
    facts : mapping of str to object
        The same for JSON.
    """

    intact: bool
    head: str
    lines: tuple[str, ...]
    facts: Mapping[str, object]


def check(path: Path, key: str = "", tell: Tell = nobody) -> Checked:
    """Check a recording's folder or a pack: folder, zip or PDF.

    Parameters
    ----------
    path : Path
    key : str
        Fingerprint, as a person typed it, of the key that must have signed a pack; empty if any
        may.
    tell : callable
        Called with the part of a recording that is checked, 0 to 1. What it raises ends the check.

    Returns
    -------
    Checked

    Raises
    ------
    UsageError
        If there is nothing to check (what lies there and can be is named), the fingerprint is none,
        or one is given for a recording.
    EvidenceError
        If it can't be read, or is a pack that is unsafe to open.
    """
    signer = _key(key)
    if path.exists() and is_pack(path):
        return _pack(path, signer)
    if not (path.is_dir() and layout.has_held_recording(path)):
        raise _nothing(path)
    folder = path
    if signer:
        raise UsageError(
            "is a recording; only packs are signed.",
            subject=str(folder),
            remedy="Leave --key out, or give the pack.",
        )
    return _recording(folder, tell)


def _key(typed: str) -> str:
    if not typed:
        return ""
    try:
        return fingerprint_typed(typed)
    except ValueError as error:
        raise UsageError(
            f"{error}.",
            subject="--key",
            remedy="Give all 40 digits, as they stand on the pack's pages, in double quotes.",
        ) from error


def _nothing(path: Path) -> UsageError:
    """Say that there is nothing to check; a folder's packs and recordings are named, then files."""
    remedy = "Give the folder of one recording, or a pack: its folder, zip or PDF."
    if not path.exists():
        return UsageError("is not there.", subject=str(path), remedy=remedy)
    inside = sorted(path.iterdir()) if path.is_dir() else []
    sure = [one for one in inside if one.is_dir() and _is_either(one)]
    perhaps = [one for one in inside if one.suffix.lower() in {".zip", ".pdf"}]
    if sure:
        remedy += f" In it lies {sure[-1]}."
    elif perhaps:
        remedy += f" Perhaps it is a file in it: {', '.join(one.name for one in perhaps[:_MOST])}."
    return UsageError("is neither a recording nor a pack.", subject=str(path), remedy=remedy)


def _is_either(folder: Path) -> bool:
    return is_pack(folder) or layout.has_held_recording(folder)


def _pack(path: Path, key: str) -> Checked:
    result, called = verify_pack(path, key), one_line(path)
    head = (
        f"{called}: intact. {result.files} files agree with the lists of the pack."
        if result.intact
        else f"{called}: NOT as it was packed."
    )
    around = (f"{result.container} {_AROUND}",) if result.container else ()
    remarks = (f"known: {one}" for one in result.remarks)
    pack: tuple[str, ...] = ()
    if result.intact and result.pack:
        pack = (f"pack: {result.pack}", _ONE_PACK)
    lines = (*result.problems, *around, result.signature.words, *pack, *remarks)
    return Checked(result.intact, head, lines, {"pack": str(path), **result.to_dict()})


def _recording(folder: Path, tell: Tell) -> Checked:
    result, seal, called = verify_folder(folder, tell), seal_digest(folder), one_line(folder)
    facts = {
        "folder": str(folder),
        "intact": result.intact,
        "seal_sha256": seal,
        "problems": list(result.problems),
        "remarks": list(result.remarks),
    }
    # Names in it may be a stranger's.
    problems = tuple(map(shown, result.problems))
    remarks = tuple(f"known: {shown(one)}" for one in result.remarks)
    if not result.intact:
        head = f"{called}: NOT as sealed."
        return Checked(result.intact, head, (*problems, *remarks), facts)
    told = (
        f"seal: {seal}",
        "This finds damage and edits. It can't find somebody who seals anew: write the seal"
        " on the work order when the recording is made, and compare it.",
    )
    head = f"{called}: intact. Every file agrees with the seal."
    return Checked(result.intact, head, (*told, *remarks), facts)
