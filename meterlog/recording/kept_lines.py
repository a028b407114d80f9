"""KeptLines: short texts beside the readings, one a line, bounded in size."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from meterlog.model.errors import RecordingUnreadable
from meterlog.profile.plain_file import open_plain

_MOST_BYTES = 1 << 20


def keep_lines(path: Path, lines: Sequence[str]) -> None:
    """Write them down, whatever white space is in one; nothing where there are none.

    Raises
    ------
    OSError
        If the disk does not take it.
    """
    if lines:
        text = "".join(f"{' '.join(one.split())}\n" for one in lines)
        path.write_bytes(text.encode("utf-8", "backslashreplace"))


def kept_lines(path: Path, what: str) -> tuple[str, ...]:
    """Give them back; none where there is no such file.

    Parameters
    ----------
    path : Path
    what : str
        What they are, for the error: "a list of edits".

    Raises
    ------
    RecordingUnreadable
        If it can't be read, or is longer than any such text.
    """
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
            f"is too long for {what}.", subject=str(path), remedy="Import the tables again."
        )
    return tuple(one for one in content.decode("utf-8", "replace").split("\n") if one.strip())
