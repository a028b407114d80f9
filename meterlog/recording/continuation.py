"""Continuation: says of a recording that it goes on with one whose disk failed."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from meterlog.model.errors import RecordingUnreadable
from meterlog.profile.plain_file import read_plain
from meterlog.recording import layout
from meterlog.recording.checked_text import crc_holds, with_crc
from meterlog.recording.json_object import JsonObject

FORMAT = "meterlog continuation 1"
_MOST_BYTES = 1_000_000


@dataclass(frozen=True, slots=True)
class Continuation:
    """Where a recording begins within the whole of it.

    Attributes
    ----------
    folder : Path
        Of the part before, as it was called then; its disk may be called otherwise by now.
    because : str
        What that disk refused.
    rows : mapping of str to int
        Number of this part's first row in the whole, by instrument. All rows before it had been
        put on the disk itself; some behind it may be in the part before as well.
    frames : mapping of str to int
        The same of the frames of raw bytes.
    """

    folder: Path
    because: str
    rows: Mapping[str, int]
    frames: Mapping[str, int]


def continuation_bytes(one: Continuation) -> bytes:
    """Give the content of ``data/continues.json``; the last member ``crc32`` is its checksum."""
    values = {
        "format": FORMAT,
        "folder": str(one.folder),
        "because": one.because,
        "rows": dict(one.rows),
        "frames": dict(one.frames),
    }
    return with_crc(json.dumps(values, ensure_ascii=False, indent=2))


def kept_continuation(folder: Path) -> Continuation | None:
    """Read what the recording in ``folder`` goes on with; None where it stands alone.

    Raises
    ------
    RecordingUnreadable
        If the file is there and can't be read or does not match its checksum.
    """
    path = folder / layout.CONTINUES
    if not path.is_file():
        return None
    try:
        content = read_plain(path, _MOST_BYTES)
        if not crc_holds(content):
            raise _damaged(path)
        top = JsonObject(json.loads(content), str(path))
    except (OSError, ValueError, RecursionError) as error:
        raise _damaged(path) from error
    return Continuation(
        Path(top.text("folder")),
        top.text("because"),
        _counts(top.object("rows")),
        _counts(top.object("frames")),
    )


def _counts(table: JsonObject) -> dict[str, int]:
    return {key: table.whole(key) for key in table.keys()}  # noqa: SIM118 - no mapping


def _damaged(path: Path) -> RecordingUnreadable:
    return RecordingUnreadable(
        "can't be read, so that nobody knows what this recording goes on with.",
        subject=str(path),
        remedy="It can still be reviewed by itself.",
    )
