"""Verify: tells whether a sealed recording is as it was sealed, and if not, which file differs."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from pathlib import Path

from meterlog.evidence.check_progress import CheckProgress, Tell, nobody
from meterlog.model.errors import EvidenceError, RecordingError
from meterlog.profile.files_below import files_below
from meterlog.profile.plain_file import read_plain
from meterlog.recording import Recording, layout
from meterlog.recording.bag import DECLARATION, payload, read_manifest, sha256_of

_OXUM = re.compile(r"^Payload-Oxum: (\d{1,18})\.(\d{1,18})$", re.MULTILINE)


@dataclass(frozen=True, slots=True)
class Verification:
    """The outcome of a check.

    Attributes
    ----------
    problems : tuple of str
        One text for each thing that is not as it was sealed; each names the file, and within
        readings the batch and its rows.
    remarks : tuple of str
        Damage that was there before a recovered recording was sealed: known, and no change since;
        events that were recorded before their lines were chained.
    files : int
        Files whose checksum was compared.
    recording_id : str
        Empty when it could not be read.
    """

    problems: tuple[str, ...]
    remarks: tuple[str, ...] = ()
    files: int = 0
    recording_id: str = ""

    @property
    def intact(self) -> bool:
        """True if there is no problem."""
        return not self.problems


@dataclass(slots=True)
class _Found:
    """What has been found so far."""

    folder: Path
    problems: list[str] = field(default_factory=list)
    remarks: list[str] = field(default_factory=list)
    changed: set[str] = field(default_factory=set)
    files: int = 0
    progress: CheckProgress = field(default_factory=lambda: CheckProgress(nobody))


def verify_folder(folder: Path, tell: Tell = nobody) -> Verification:
    """Check a recording against its seal, and every batch and frame against its own checksum.

    Parameters
    ----------
    folder : Path
    tell : callable
        Called with the part done, 0 to 1, many times a second; what it raises ends the check.

    Returns
    -------
    Verification

    Raises
    ------
    RecordingUnreadable
        If the folder holds no recording at all, or folders lie too deep in it.
    EvidenceError
        If a file can't be read.

    Source
    ------
    RFC 8493 sections 2 and 3: a bag is complete when every listed file is there and no other file
    lies in the payload, valid when all checksums match.
    """
    found = _Found(folder, progress=CheckProgress(tell))
    try:
        if layout.is_sealed(folder):
            _check_bag(found)
        elif layout.has_held_recording(folder):
            found.problems.append(f"{layout.BAGIT}: is missing; the recording is not sealed.")
        recording_id = _check_inside(found)
    except OSError as error:
        raise EvidenceError(
            f"can't be read: {error.strerror}.",
            subject=str(error.filename or folder),
            remedy="Check that the disk is there and that you may read it.",
        ) from error
    return Verification(tuple(found.problems), tuple(found.remarks), found.files, recording_id)


def _check_bag(found: _Found) -> None:
    if read_plain(found.folder / layout.BAGIT) != DECLARATION:
        found.problems.append(f"{layout.BAGIT}: is not as a seal writes it.")
    there = payload(found.folder)
    found.progress.expect(found.folder / name for name in there)
    tags = _check_manifest(found, layout.TAG_MANIFEST)
    for name in (layout.BAGIT, layout.BAG_INFO, layout.MANIFEST):
        if name not in tags:
            found.problems.append(f"{layout.TAG_MANIFEST}: does not list {name}.")
    listed = _check_manifest(found, layout.MANIFEST)
    for name in there:
        if name not in listed:
            found.problems.append(f"{name}: is not listed in the seal; it was added later.")
            found.changed.add(name)
    for name in _no_files(found.folder):
        found.problems.append(
            f"{name}: is not in the seal, which covers files: it is a pipe, a device or a link "
            "that leads to no file."
        )
    _check_oxum(found, there)


def _no_files(folder: Path) -> list[str]:
    """Give what lies in the payload and is neither file nor folder, a link followed."""
    return sorted(
        path.relative_to(folder).as_posix()
        for path in files_below(folder / layout.PAYLOAD)
        if not path.is_file()
    )


def _check_manifest(found: _Found, manifest: str) -> set[str]:
    if not (found.folder / manifest).is_file():
        found.problems.append(f"{manifest}: is missing.")
        return set()
    digests, damaged = read_manifest(read_plain(found.folder / manifest))
    found.problems += (f"{manifest}: line {number} is damaged." for number in damaged)
    for name, digest in digests.items():
        _check_digest(found, name, digest, manifest)
    return set(digests)


def _check_digest(found: _Found, name: str, digest: str, manifest: str) -> None:
    if not (found.folder / name).is_file():
        found.problems.append(f"{name}: is missing; {manifest} lists it.")
        return
    found.files += 1
    if found.progress.sha256_of(found.folder / name) != digest:
        found.problems.append(f"{name}: differs from what was sealed (SHA-256 in {manifest}).")
        found.changed.add(name)


def _check_oxum(found: _Found, there: tuple[str, ...]) -> None:
    info = found.folder / layout.BAG_INFO
    text = read_plain(info).decode("utf-8", "replace") if info.is_file() else ""
    stated = _OXUM.search(text)
    size = sum((found.folder / name).stat().st_size for name in there)
    if stated is None:
        found.problems.append(f"{layout.BAG_INFO}: does not state the payload's size.")
    elif (int(stated[1]), int(stated[2])) != (size, len(there)):
        found.problems.append(
            f"{layout.BAG_INFO}: states {stated[1]} bytes in {stated[2]} files, but there are "
            f"{size} bytes in {len(there)} files."
        )


def _check_inside(found: _Found) -> str:
    try:
        recording = Recording.open(found.folder)
        damage = found.progress.read(recording)
    except RecordingError as error:
        if not found.problems:
            raise
        found.problems.append(str(error))
        return ""
    for text in damage:
        if recording.state == "recovered" and not _rests_on(text) & found.changed:
            found.remarks.append(f"{text} It was so when the recording was sealed.")
        else:
            found.problems.append(text)
    if not recording.chained and recording.events:
        found.remarks.append(
            f"{layout.EVENTS}: was recorded before its lines were chained; only the seal tells "
            "whether one was changed."
        )
    return recording.about.recording_id


def _rests_on(text: str) -> set[str]:
    """Give the files by which one text of damage was found."""
    name = text.partition(":")[0]
    return {name, layout.ABOUT} if name == layout.EVENTS else {name}


def seal_digest(folder: Path) -> str:
    """Give the SHA-256 of the seal of a recording: written down elsewhere, it can't be made anew.

    Parameters
    ----------
    folder : Path
        Of a sealed recording.

    Returns
    -------
    str
        64 hexadecimal digits; empty when there is no seal.

    Source
    ------
    FIPS 180-4, over the bytes of ``manifest-sha256.txt`` (RFC 8493, 2.1.3).
    """
    manifest = folder / "manifest-sha256.txt"
    return sha256_of(manifest) if manifest.is_file() else ""
