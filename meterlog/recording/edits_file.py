"""EditsFile: the edits in what had been exported, kept in the recording made of it."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from meterlog.recording import layout
from meterlog.recording.kept_lines import keep_lines, kept_lines


def keep_edits(folder: Path, edits: Sequence[str]) -> None:
    """Write them down; nothing where there are none.

    Raises
    ------
    OSError
        If the disk does not take it.
    """
    keep_lines(folder / layout.EDITS, edits)


def kept_edits(folder: Path) -> tuple[str, ...]:
    """Give them back.

    Raises
    ------
    RecordingUnreadable
        If the file can't be read, or is longer than any list of edits.
    """
    return kept_lines(folder / layout.EDITS, "a list of edits")
