"""WatchedFolders: where else than in the usual folder recordings are looked for."""

from __future__ import annotations

import contextlib
import json
import os
import secrets
from collections.abc import Sequence
from pathlib import Path

from meterlog.model.errors import DiskFailed
from meterlog.profile import settings_folder
from meterlog.profile.plain_file import open_plain

_FILE = "watched-folders.json"
_MOST_BYTES = 1_000_000


class WatchedFolders:
    """A list in the user's settings, such as of a share or a stick.

    Parameters
    ----------
    settings : Path or None
        None: the user's settings folder.
    """

    def __init__(self, settings: Path | None = None) -> None:
        self._path = (settings_folder() if settings is None else settings) / _FILE

    def load(self) -> tuple[Path, ...]:
        """Give the folders; none where the list can't be read: they can be chosen anew."""
        try:
            with open_plain(self._path) as stream:
                found = json.loads(stream.read(_MOST_BYTES))
            names = found["folders"]
            return tuple(Path(name) for name in names if isinstance(name, str) and name)
        except (OSError, ValueError, TypeError, KeyError, RecursionError):
            return ()

    def keep(self, folders: Sequence[Path]) -> None:
        """Keep the folders, each once.

        Raises
        ------
        DiskFailed
            If they can't be kept.
        """
        names = [str(one) for one in dict.fromkeys(folders)]
        aside = self._path.with_name(f".{_FILE}.{secrets.token_hex(4)}")
        try:
            self._path.parent.mkdir(parents=True, exist_ok=True)
            aside.write_text(json.dumps({"folders": names}, indent=1) + "\n", "utf-8")
            os.replace(aside, self._path)  # noqa: PTH105 - as the rest of it
        except (OSError, UnicodeError) as error:
            with contextlib.suppress(OSError):
                aside.unlink(missing_ok=True)
            why = error.strerror if isinstance(error, OSError) else "its name is no text"
            raise DiskFailed(
                f"can't be written: {why}.",
                subject=str(self._path),
                remedy="The folder is looked into this time, and forgotten afterwards.",
            ) from error
