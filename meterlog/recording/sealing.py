"""Sealing: makes a finished recording a BagIt bag, so that any later change can be told."""

from __future__ import annotations

import hashlib
import os
import time
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from pathlib import Path

import meterlog
from meterlog.model import EventKind
from meterlog.model.errors import EvidenceError, RecordingUnreadable
from meterlog.profile.full_path import full_path
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
from meterlog.recording.system_lock import NO_LOCK, free_lock, take_lock
from meterlog.recording.writer_lock import is_being_written

_PATIENCE_S = 0.5
_PAUSE_S = 0.01


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
        If it is sealed already, is being recorded or sealed, or the disk does not take the seal.
    RecordingUnreadable
        If it is no recording.

    Source
    ------
    RFC 8493, The BagIt File Packaging Format (V1.0), section 2.
    """
    _refuse_sealed(folder)
    if not layout.holds_recording(folder):
        Recording.open(folder)  # says what is missing; no lock is made in what is no recording
    try:
        with _alone(folder):
            _refuse_sealed(folder)  # by another program, meanwhile
            # Read under the lock: what still recorded a moment ago has ended by now.
            _write_tags(folder, Recording.open(folder), recovered=recovered)
        sync_folder(folder)
    except OSError as error:
        raise EvidenceError(
            f"can't be sealed: {error.strerror}.",
            subject=str(folder),
            remedy="The readings are safe as they are; free some space and seal it again.",
        ) from error


def _refuse_sealed(folder: Path) -> None:
    if layout.is_sealed(folder):
        raise EvidenceError(
            "is sealed already.", subject=str(folder), remedy="Check it with: meterlog verify"
        )


@contextmanager
def _alone(folder: Path) -> Iterator[None]:
    """Hold the recording's own lock: who records there, or seals it as well, is told apart."""
    path = folder / layout.LOCK
    end = time.monotonic() + _PATIENCE_S
    while (descriptor := _locked(path)) is None:
        _refuse_sealed(folder)
        if time.monotonic() > end:
            raise EvidenceError(
                "is being recorded or sealed by a running program.",
                subject=str(folder),
                remedy="Stop that recording first; it seals itself.",
            )
        time.sleep(_PAUSE_S)
    try:
        yield
    finally:
        free_lock(path, descriptor)


def _locked(path: Path) -> int | None:
    try:
        return take_lock(path, 0o644)
    except OSError as error:
        if error.errno not in NO_LOCK or not os.path.lexists(path):
            raise
        raise EvidenceError(
            f"can't be used as a lock: {error.strerror}.",
            subject=str(path),
            remedy="It keeps a recording from being sealed while it is written. If no program, of "
            "another user perhaps, is recording there, take it away and try again.",
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
    here = full_path(folder)
    found = []
    for place in spill_places():
        for one in _places(place):
            try:
                begun = kept_continuation(one)
            except (RecordingUnreadable, OSError):
                continue
            if begun is None:
                continue
            before = full_path(begun.folder)
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
