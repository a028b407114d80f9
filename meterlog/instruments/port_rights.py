"""Who may open a port, and what a user has to do who may not."""

from __future__ import annotations

import stat
import sys
from pathlib import Path

_GUESS = "dialout"
"""The group that owns serial ports on most Linux systems; for a port that can't be looked at."""


def rights_cure(device: str) -> str:
    """Give what this user has to do to be allowed to open ``device``, as one sentence or two.

    Parameters
    ----------
    device : str
        Path of its node; need not exist.
    """
    if sys.platform == "win32":
        return "Close what else uses it, or ask whoever administers this computer."
    group = owning_group(device)
    if group is None:
        return (
            f"It belongs to root alone. Ask whoever administers this computer for a rule that "
            f"gives it to the group {_GUESS}; until then `sudo chmod a+rw {device}` holds until "
            "it is unplugged."
        )
    return (
        f"On this system it belongs to the group {group}: run "
        f"`sudo usermod -aG {group} $USER`, then log out and in again."
    )


def owning_group(device: str) -> str | None:
    """Give the group whose members may read and write ``device``.

    Returns
    -------
    str or None
        None when the group may not, or is root's. For a node that can't be looked at the usual
        one.
    """
    import grp

    try:
        found = Path(device).stat()
    except OSError:
        return _GUESS
    may = stat.S_IRGRP | stat.S_IWGRP
    if found.st_gid == 0 or found.st_mode & may != may:
        return None
    try:
        return grp.getgrgid(found.st_gid).gr_name
    except KeyError:
        return str(found.st_gid)
