"""Wholeness: what a reader must know of a recording that has not ended, or is a part of one."""

from __future__ import annotations

import shlex
from pathlib import Path

from meterlog.model import Review
from meterlog.model.errors import RecordingUnreadable
from meterlog.recording import layout
from meterlog.recording.continuation import kept_continuation
from meterlog.recording.part_file import was_part
from meterlog.recording.writer_lock import is_being_written


def not_ended(folder: Path) -> str:
    """Say that a recording is still being made, or was never sealed; empty if it is sealed."""
    if layout.is_sealed(folder):
        return ""
    if is_being_written(folder):
        return "It is still being recorded: open it again when that has ended."
    return "It was never sealed: the Recordings page seals what was cut off."


def join_line(before: Path, last: Path) -> str:
    """Give the command that puts parts together, to be copied as it stands.

    Parameters
    ----------
    before, last : Path
        Where the first part was, or is now; and the last one.
    """
    whole = last.with_name(f"{last.name}-whole")
    words = ["meterlog", "join", str(last)]
    if not before.exists():
        words += ["--before", str(before)]
    return shlex.join([*words, "--out", str(whole)])


def part_lines(folder: Path) -> tuple[str, ...]:
    """Say of a recording that was not reviewed what :attr:`Review.part_lines` says."""
    return Review(part=one_part(folder)).part_lines


def one_part(folder: Path) -> str:
    """Say that a recording is the last part of one whose disk failed; empty if it is whole.

    Also where it was imported from such a part.
    """
    try:
        went_on, exported = kept_continuation(folder), was_part(folder)
    except RecordingUnreadable as error:
        return str(error)
    if exported:
        return "What it was imported from was one part: what came before is not in it."
    if went_on is None:
        return ""
    return (
        f"It goes on from {went_on.folder}, whose disk failed: what came before is not in it."
        f" Put together with: {join_line(went_on.folder, folder)}"
    )
