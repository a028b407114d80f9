"""KeptChoice: which table of baselines was chosen, in one JSON file of the settings folder."""

from __future__ import annotations

from pathlib import Path

from meterlog.profile import settings_folder
from meterlog.window.kept_file import keep, read_kept

_FILE = "good-ones.json"
BY_ITSELF = None
"""Take the newest table that is found."""
NO_TABLE = ""
"""Take none."""


class KeptChoice:
    """One choice for all pages. Where the file fails, the table is the one found by itself.

    Parameters
    ----------
    folder : Path or None
        None: the user's settings folder. It need not exist.
    """

    def __init__(self, folder: Path | None = None) -> None:
        self._path = (settings_folder() if folder is None else folder) / _FILE

    def load(self) -> str | None:
        """Give the path that was chosen, or :data:`BY_ITSELF`, or :data:`NO_TABLE`."""
        try:
            found = read_kept(self._path).get("table")
        except (OSError, ValueError):
            return BY_ITSELF
        return found if isinstance(found, str) else BY_ITSELF

    def keep(self, choice: str | None) -> bool:
        """Keep it in the place of the one before; False when the disk does not take it."""
        return keep(self._path, {"table": choice})
