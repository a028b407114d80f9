"""Sealing: makes a finished recording a BagIt bag, so that any later change can be told."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path

import meterlog
from meterlog.model import EventKind
from meterlog.model.errors import EvidenceError, RecordingUnreadable
from meterlog.recording import layout
from meterlog.recording.append_file import sync_file, sync_folder, write_aside
from meterlog.recording.bag import (
    DECLARATION,
    info_bytes,
    manifest_bytes,
    oxum,
    payload,
    sha256_of,
)
from meterlog.recording.continuation import kept_continuation
from meterlog.recording.recording import RECOVERED, Recording
from meterlog.recording.spill_places import spill_places
from meterlog.recording.writer_lock import is_being_written


def seal(folder: Path, recovered: bool = False) -> None:  # noqa: FBT001, FBT002
    """Seal a closed recording: checksums of every file, in the form of a BagIt 1.0 bag.

    Nothing under ``data/`` is touched; a torn end stays as it is, and readers stop there.

    Parameters
    ----------
    folder : Path
    recovered : bool
        The program that recorded it died; the bag says so.

    Raises
    ------
    EvidenceError
        If it is sealed already, is being recorded, or the disk does not take the seal.
    RecordingUnreadable
        If it is no recording.

    Source
    ------
    RFC 8493, The BagIt File Packaging Format (V1.0), section 2.
    """
    if layout.is_sealed(folder):
        raise EvidenceError(
            "is sealed already.", subject=str(folder), remedy="Check it with: meterlog verify"
        )
    if is_being_written(folder):
        raise EvidenceError(
            "is being recorded by a running program.",
            subject=str(folder),
            remedy="Stop that recording first; it seals itself.",
        )
    recording = Recording.open(folder)
    try:
        _write_tags(folder, recording, recovered=recovered)
        (folder / layout.LOCK).unlink(missing_ok=True)
        sync_folder(folder)
    except OSError as error:
        raise EvidenceError(
            f"can't be sealed: {error.strerror}.",
            subject=str(folder),
            remedy="The readings are safe as they are; free some space and seal it again.",
        ) from error


def _write_tags(folder: Path, recording: Recording, *, recovered: bool) -> None:
    names = payload(folder)
    # A program that died has left bytes that the system has taken and the disk may not have: no
    # seal may say of them what a power cut could still take back.
    for name in names:
        sync_file(folder / name)
    sync_folder(folder / layout.PAYLOAD)
    digests = {name: sha256_of(folder / name) for name in names}
    write_aside(folder / layout.MANIFEST, manifest_bytes(digests))
    write_aside(folder / layout.BAG_INFO, _info(folder, names, recording, recovered=recovered))
    tags = {
        layout.BAG_INFO: sha256_of(folder / layout.BAG_INFO),
        layout.BAGIT: hashlib.sha256(DECLARATION).hexdigest(),
        layout.MANIFEST: sha256_of(folder / layout.MANIFEST),
    }
    write_aside(folder / layout.TAG_MANIFEST, manifest_bytes(tags))
    # The last of all: a seal that was broken off leaves an unsealed recording.
    write_aside(folder / layout.BAGIT, DECLARATION)


def _info(folder: Path, names: tuple[str, ...], recording: Recording, *, recovered: bool) -> bytes:
    size = sum((folder / name).stat().st_size for name in names)
    lines = {
        "Bag-Software-Agent": f"meterlog {meterlog.__version__}",
        "Bagging-Date": datetime.now(UTC).date().isoformat(),
        "External-Identifier": recording.about.recording_id,
        "Payload-Oxum": oxum(size, len(names)),
        "Meterlog-Origin": recording.about.origin.value,
        "Meterlog-Outcome": _outcome(recording),
    }
    if recovered:
        lines[RECOVERED] = "true"
    return info_bytes(lines)


def _outcome(recording: Recording) -> str:
    ends = [event.value for event in recording.events if event.kind is EventKind.END]
    return ends[-1] if ends and ends[-1].strip() else "broken off"


def find_unsealed(folder: Path) -> tuple[Path, ...]:
    """Give the recordings that were never sealed and that nobody is recording now.

    Parameters
    ----------
    folder : Path
        A recording, or the folder that recordings are kept in.

    Returns
    -------
    tuple of Path
        Sorted by name; empty when the folder is absent. Folders that can't be looked into are
        passed over. Among them are those that went on elsewhere for recordings that were here
        (:mod:`~meterlog.recording.moving_recorder`).
    """
    found = {place for place in _places(folder) if _is_left(place)}
    found |= {place for place in went_on_elsewhere(folder) if _is_left(place)}
    return tuple(sorted(found))


def went_on_elsewhere(folder: Path) -> tuple[Path, ...]:
    """Give the recordings in the spill places that go on with ``folder``, or with one in it.

    Parameters
    ----------
    folder : Path
        A recording, or the folder that recordings are kept in; need not be there any more.
    """
    here = folder.resolve()
    found = []
    for place in spill_places():
        for one in _places(place):
            try:
                begun = kept_continuation(one)
            except (RecordingUnreadable, OSError):
                continue
            if begun is None:
                continue
            before = begun.folder.resolve()
            if here in {before, before.parent}:
                found.append(one)
    return tuple(found)


def _places(folder: Path) -> Iterator[Path]:
    yield folder
    try:
        yield from (place for place in folder.iterdir() if place.is_dir())
    except OSError:
        return


def _is_left(place: Path) -> bool:
    try:
        return (
            layout.holds_recording(place)
            and not layout.is_sealed(place)
            and not is_being_written(place)
        )
    except OSError:
        return False
