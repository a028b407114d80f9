"""LastEditor: who made the edits the last time, kept in the settings folder."""

from __future__ import annotations

import getpass
import json
from pathlib import Path

from meterlog.profile import settings_folder

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
            found = json.loads(self._path.read_text("utf-8"))
            if isinstance(found, dict) and isinstance(found.get("who"), str) and found["who"]:
                return str(found["who"])
        except (OSError, ValueError, RecursionError):
            pass
        try:
            return technician or getpass.getuser()
        except (OSError, KeyError, ImportError):
            return ""

    def keep(self, who: str) -> bool:
        """Keep who it is; False when the disk does not take it."""
        try:
            self._path.parent.mkdir(parents=True, exist_ok=True)
            self._path.write_text(json.dumps({"who": who}), "utf-8")
        except OSError:
            return False
        return True
