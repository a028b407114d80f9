"""SpillPlaces: where a recording goes on when its own disk fails."""

from __future__ import annotations

import os
import tempfile
from pathlib import Path

PLACE = "METERLOG_ELSEWHERE"
"""Environment variable that names a folder to be tried first."""
_NAME = "kept-elsewhere"


def spill_places() -> tuple[Path, ...]:
    """Give the folders to try, best first; none of them need exist.

    The one named by :data:`PLACE`, the user's own data folder, the folder for temporary files:
    the last may be emptied when the computer starts again, but is often another disk.
    """
    from platformdirs import user_data_path

    named = os.environ.get(PLACE)
    own = user_data_path("meterlog", appauthor=False) / _NAME
    user = f"-{os.getuid()}" if hasattr(os, "getuid") else ""
    passing = Path(tempfile.gettempdir()) / f"meterlog-{_NAME}{user}"
    return (*([Path(named)] if named else []), own, passing)


def is_own(place: Path) -> bool:
    """Tell whether a folder is this user's: in a shared one somebody else may have made it."""
    if not hasattr(os, "getuid"):
        return True
    found = place.lstat()
    return found.st_uid == os.getuid() and place.is_dir() and not place.is_symlink()


def fresh_spill(place: Path, name: str) -> Path:
    """Give a folder within ``place`` that does not exist yet, named after the recording's.

    Another program may be given the same one: the recorder tells which of them has it.
    """
    number = 1
    while os.path.lexists(place / f"{name}-goes-on-{number}"):
        number += 1
    return place / f"{name}-goes-on-{number}"
