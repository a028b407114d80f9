"""KeptEntries: what is worth keeping from one recording to the next, in one JSON file."""

from __future__ import annotations

import json
import os
import tempfile
from pathlib import Path

from meterlog.profile.folders import settings_folder
from meterlog.profile.plain_file import read_plain

_MOST = 200
"""The oldest go first: a workshop has fewer clamps, and fewer pairs of meters, than this."""


class KeptEntries:
    """A JSON object in a file, written all or nothing.

    A file that can't be read is as one without entries: all that is kept so can be measured again
    within a minute, and a recording holds what it used itself.

    Parameters
    ----------
    name : str
        Of the file.
    folder : Path or None
        None: the user's settings folder. It need not exist.

    Attributes
    ----------
    path : Path
    """

    def __init__(self, name: str, folder: Path | None = None) -> None:
        self.path = (settings_folder() if folder is None else folder) / name

    def read(self) -> dict[str, object]:
        """Give all entries, the oldest first."""
        try:
            found = json.loads(read_plain(self.path))
        except (OSError, ValueError, RecursionError):
            return {}
        return dict(found) if isinstance(found, dict) else {}

    def write(self, entries: dict[str, object]) -> None:
        """Put entries in the place of all that were there; of more than 200 the last ones.

        Raises
        ------
        OSError
            If it can't be written; what was there before is there still.
        """
        newest = dict(list(entries.items())[-_MOST:])
        text = json.dumps(newest, ensure_ascii=False, indent=1, allow_nan=False)
        self.path.parent.mkdir(parents=True, exist_ok=True)
        handle, name = tempfile.mkstemp(dir=self.path.parent, prefix=f".{self.path.name}")
        try:
            with os.fdopen(handle, "w", encoding="utf-8") as stream:
                stream.write(text)
                stream.flush()
                os.fsync(stream.fileno())
            Path(name).replace(self.path)
        except BaseException:
            Path(name).unlink(missing_ok=True)
            raise
