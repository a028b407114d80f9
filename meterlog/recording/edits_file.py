"""EditsFile: the edits in what had been exported, kept in the recording made of it."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from meterlog.model.errors import RecordingUnreadable
from meterlog.profile.plain_file import open_plain
from meterlog.recording import layout

_MOST_BYTES = 1 << 20


def keep_edits(folder: Path, edits: Sequence[str]) -> None:
    """Write them down, one a line; nothing where there are none.

    Raises
    ------
    OSError
        If the disk does not take it.
    """
    lines = [" ".join(one.split()) for one in edits]
    if lines:
        text = "".join(f"{one}\n" for one in lines)
        (folder / layout.EDITS).write_bytes(text.encode("utf-8", "backslashreplace"))


def kept_edits(folder: Path) -> tuple[str, ...]:
    """Give them back; none where there is no such file.

    Raises
    ------
    RecordingUnreadable
        If it can't be read, or is longer than any list of edits.
    """
    path = folder / layout.EDITS
    try:
        if not path.is_file():
            return ()
        with open_plain(path) as stream:
            content = stream.read(_MOST_BYTES + 1)
    except OSError as error:
        raise RecordingUnreadable(
            f"can't be read: {error.strerror}.", subject=str(path), remedy="Check the disk."
        ) from error
    if len(content) > _MOST_BYTES:
        raise RecordingUnreadable(
            "is too long for a list of edits.", subject=str(path), remedy="Import the tables again."
        )
    return tuple(one for one in content.decode("utf-8", "replace").split("\n") if one.strip())
