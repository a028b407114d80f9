"""PartFile: says of an imported recording that what had been exported was one part of it."""

from __future__ import annotations

from pathlib import Path

from meterlog.recording import layout
from meterlog.recording.kept_lines import keep_lines, kept_lines


def keep_part(folder: Path, said: str) -> None:
    """Write down what was said of it there; nothing where it was the whole.

    Raises
    ------
    OSError
        If the disk does not take it.
    """
    keep_lines(folder / layout.PART, [said] if said else [])


def was_part(folder: Path) -> bool:
    """Tell whether a recording was imported from one part of another.

    Raises
    ------
    RecordingUnreadable
        If the file can't be read, or is longer than anything that is said of a part.
    """
    return bool(kept_lines(folder / layout.PART, "what is said of a part"))
