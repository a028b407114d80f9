"""SmallFiles: seals and edits read where they lie, whatever somebody has put in their place."""

from __future__ import annotations

import errno
from pathlib import Path
from typing import TYPE_CHECKING

from meterlog.profile.plain_file import MOST_TEXT_BYTES, read_plain

if TYPE_CHECKING:
    from fsspec import AbstractFileSystem


def read_small(files: AbstractFileSystem, path: str, *, local: bool) -> bytes:
    """Read a whole file that has at most :data:`~meterlog.profile.plain_file.MOST_TEXT_BYTES`.

    Parameters
    ----------
    files : AbstractFileSystem
    path : str
        Within it.
    local : bool
        Its paths are those of this computer.

    Raises
    ------
    OSError
        If it can't be read, is a pipe, a device or a folder, or is longer.
    """
    if local:
        return read_plain(Path(path))
    found = files.info(path)
    refuse_odd(str(found.get("type", "file")), path)
    size = found.get("size")
    if size is not None and size > MOST_TEXT_BYTES:
        raise _too_long(path)
    # What is packed may say that it is shorter than it is.
    with files.open(path, "rb") as stream:
        content = bytes(stream.read(MOST_TEXT_BYTES + 1))
    if len(content) > MOST_TEXT_BYTES:
        raise _too_long(path)
    return content


def refuse_odd(kind: str, path: str) -> None:
    """Raise ``OSError`` where a listing says that something is no file; it would be waited for."""
    if kind != "file":
        raise OSError(errno.EINVAL, "it is a pipe, a device or a folder, not a file", path)


def _too_long(path: str) -> OSError:
    return OSError(errno.EFBIG, f"it is longer than {MOST_TEXT_BYTES >> 20} MiB", path)
