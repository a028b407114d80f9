"""LastEditor: who made the edits the last time, kept in the settings folder."""

from __future__ import annotations

import getpass
from pathlib import Path

from meterlog.profile import settings_folder
from meterlog.window.kept_file import keep, read_kept

_FILE = "last-editor.json"


class LastEditor:
    """A name. Where the file fails, only the convenience is lost.

    Parameters
    ----------
    folder : Path or None
        None: the user's settings folder. It need not exist.
    """

    def __init__(self, folder: Path | None = None) -> None:
        self._path = (settings_folder() if folder is None else folder) / _FILE

    def load(self, technician: str = "") -> str:
        """Give who it was; else the technician of the recording; else who is logged in."""
        try:
            found = read_kept(self._path)
            if isinstance(found.get("who"), str) and found["who"]:
                return str(found["who"])
        except (OSError, ValueError):
            pass
        try:
            return technician or getpass.getuser()
        except (OSError, KeyError, ImportError):
            return ""

    def keep(self, who: str) -> bool:
        """Keep who it is; False when the disk does not take it."""
        return keep(self._path, {"who": who})
