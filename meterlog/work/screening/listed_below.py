"""ListedBelow: all files in a folder, on a disk or in a store, and what a listing says of each."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

from meterlog.profile.files_below import DEEPEST, entries_below, too_deep

if TYPE_CHECKING:
    from fsspec import AbstractFileSystem


def listed_below(files: AbstractFileSystem, path: str, *, local: bool) -> dict[str, dict[str, Any]]:
    """Give what is no folder below ``path``, by its name within it.

    Parameters
    ----------
    files : AbstractFileSystem
    path : str
        Within it.
    local : bool
        Its paths are those of this computer.

    Raises
    ------
    RecordingUnreadable
        If folders lie too deep in it.
    OSError
        If one can't be looked into, or is not there; of a store also what its library raises.
    """
    if local:
        top = Path(path)
        return {
            Path(one.path).relative_to(top).as_posix(): files.info(one)
            for one in entries_below(top)
        }
    # With folders, as one that lies too deep may be all that a look down to there shows of it.
    found = files.find(path, maxdepth=DEEPEST + 1, withdirs=True, detail=True)
    below: dict[str, dict[str, Any]] = {}
    for address, one in found.items():
        name = str(address).removeprefix(path).strip("/")
        if one.get("type") != "directory":
            below[name] = one
        elif name.count("/") >= DEEPEST:
            raise too_deep(path, name.split("/"))
    return below
