"""Folders that a person names: told apart before any work whether they can be meant."""

from __future__ import annotations

from pathlib import Path

from meterlog.model.errors import UsageError
from meterlog.profile.full_path import full_path, rooted
from meterlog.recording import layout


def recording_at(folder: Path) -> Path:
    """Give ``folder`` back if it is a recording, or what damage has left of one.

    Raises
    ------
    UsageError
        If it is not there or holds nothing of a recording.
    """
    remedy = "Give the folder of one recording."
    if not folder.exists():
        raise UsageError("is not there.", subject=str(folder), remedy=remedy)
    if not folder.is_dir():
        raise UsageError("is no folder.", subject=str(folder), remedy=remedy)
    if not layout.has_held_recording(folder):
        raise UsageError(
            f"holds no recording: there is no {layout.ABOUT}.",
            subject=str(folder),
            remedy=remedy + _recordings_in(folder),
        )
    return folder


def _recordings_in(folder: Path) -> str:
    inside = sorted(one for one in folder.iterdir() if layout.holds_recording(one))
    return f" There is one in it: {inside[-1]}." if inside else ""


def new_folder(folder: Path) -> Path:
    """Give ``folder`` back if it can be written to: absent or empty, and in no recording.

    Raises
    ------
    UsageError
        If it holds something, is no folder, or lies inside a recording, whose seal it would break.
    """
    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        raise UsageError(
            "is there already and is not empty." if folder.is_dir() else "is no folder.",
            subject=str(folder),
            remedy="Choose another folder; nothing is ever written over.",
        )
    return outside_recordings(folder)


def outside_recordings(path: Path) -> Path:
    """Give ``path`` back, of a file or a folder, if something may be put there.

    Raises
    ------
    UsageError
        If it is a recording or a pack, or lies inside one, whose seal it would break. Links are
        followed. If it is relative and the folder one is in has gone.
    """
    full = full_path(rooted(path))
    for place in (full, *full.parents):
        if layout.holds_recording(place):
            raise UsageError(
                f"lies inside the recording {place}." if place != full else "is a recording.",
                subject=str(path),
                remedy="Choose a folder outside it; a recording holds nothing but itself.",
            )
        if layout.is_sealed(place):
            raise UsageError(
                f"lies inside the sealed pack {place}." if place != full else "is a sealed pack.",
                subject=str(path),
                remedy="Choose a folder outside it, or copy the file out of it first.",
            )
    return path
