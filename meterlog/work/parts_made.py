"""PartsMade: what becomes of a recording that went on elsewhere, once it has ended."""

from __future__ import annotations

import contextlib
import shutil
from collections.abc import Sequence
from pathlib import Path

from meterlog.model.errors import MeterlogError, RecordingUnreadable
from meterlog.profile.files_below import files_below
from meterlog.recording import join_parts, seal
from meterlog.work.wholeness import join_line

_MOST_BYTES = 1 << 28
"""More than this is put together when somebody asks for it, not while he waits for the end."""


class PartsMade:
    """Puts the parts of an ended recording together where that can be done at once.

    Attributes
    ----------
    folder : Path or None
        Where the whole of the recording is; None as long as it is where it was begun.
    words : str
        What was done, to be read behind why the recording moved.
    """

    def __init__(self) -> None:
        self.folder: Path | None = None
        self.words = ""

    def put_together(self, parts: Sequence[Path]) -> None:
        """Seal what can be sealed, and join all parts. Never raises.

        Parameters
        ----------
        parts : sequence of Path
            Oldest first; the last one is sealed. One alone needs nothing.
        """
        if len(parts) < 2:
            return
        self.folder = last = parts[-1]
        for part in parts[:-1]:
            # On a full or vanished disk; as it is, it is found again as one that was cut off.
            with contextlib.suppress(MeterlogError, OSError):
                seal(part)
        later = f"Put together with: {join_line(parts[-2], last)}"
        try:
            size = sum(_bytes(part) for part in parts)
        except (RecordingUnreadable, OSError) as error:
            why = error.strerror if isinstance(error, OSError) else str(error)
            self.words = f" The part before can't be read now ({why}). {later}"
            return
        if size > _MOST_BYTES:
            self.words = f" {later}"
            return
        why = "there is no room"
        for place in (parts[0].parent, last.parent):
            try:
                if shutil.disk_usage(place).free < 2 * size:
                    continue
                out = _fresh(place, parts[0].name)
                self.folder = join_parts(last, out).folder
            except (MeterlogError, OSError) as error:
                why = str(error)
                continue
            self.words = f" The whole of it is in {self.folder}."
            return
        self.words = f" The parts could not be put together: {why}. {later}"


def _bytes(folder: Path) -> int:
    sizes = [path.stat().st_size for path in files_below(folder) if path.is_file()]
    if not sizes:
        raise FileNotFoundError(2, "it is not there")
    return sum(sizes)


def _fresh(place: Path, name: str) -> Path:
    number = 1
    while (place / f"{name}-whole{'' if number == 1 else f'-{number}'}").exists():
        number += 1
    return place / f"{name}-whole{'' if number == 1 else f'-{number}'}"
