"""AmendmentCount: how much of a recording's edits was written, so that edits cut off are told.

The chain of the edits tells a line that is missing between others, never one at the end. So beside
``<recording>.amendments.jsonl`` lies ``<recording>.amendments.count`` with how many bytes there
were, and the SHA-256 of the recording's ``about.json``. It is written anew with each edit;
the edits themselves are not. Where it is missing nothing is told: whoever takes away both, or
writes both anew, is caught only by a pack that was made before.
"""

from __future__ import annotations

import errno
import hashlib
from pathlib import Path

from meterlog.profile.plain_file import read_plain
from meterlog.recording.append_file import write_aside

_DIGITS = 19


def is_there(path: Path) -> bool:
    """Tell whether a file of edits or its count is there; one whose name would be too long is not.

    Raises
    ------
    OSError
        If it can't be told.
    """
    try:
        return path.exists()
    except OSError as error:
        if error.errno == errno.ENAMETOOLONG:
            return False
        raise


def count_path(amendments: Path) -> Path:
    """Give the file of the count that belongs to a file of amendments; it need not exist."""
    return amendments.with_suffix(".count")


def count_more(amendments: Path, before: int, more: int, about: bytes) -> None:
    """Write down how much there is with ``more`` bytes.

    Parameters
    ----------
    amendments : Path
    before, more : int
        Bytes that were found and that were added. Where less was found than there had been, what is
        missing stays missing.
    about : bytes
        The recording's ``about.json``.

    Raises
    ------
    OSError
        If the disk does not take it.
    """
    size = max(before, _counted(amendments, about)) + more
    write_aside(count_path(amendments), f"{size} {_sha256(about)}\n".encode())


def cut_off(amendments: Path, size: int, about: bytes) -> str:
    """Say it where less is there than was written.

    Parameters
    ----------
    amendments : Path
    size : int
        Its bytes as they are now; 0 where there is no such file.
    about : bytes
        As for :func:`count_more`.

    Returns
    -------
    str
        Empty where all is there, no count was kept, or it is of another recording.

    Raises
    ------
    OSError
        If the count can't be read.
    """
    counted = _counted(amendments, about)
    # More is no harm: a program may have died between the two. Changes the chain tells.
    if size >= counted:
        return ""
    return (
        f"{amendments.name}: {counted} bytes were written, {size} are there: edits at its end are"
        " missing."
    )


def _counted(amendments: Path, about: bytes) -> int:
    path = count_path(amendments)
    # What lies there and is no file is an error: nobody can tell what the count was.
    size, _, of = (read_plain(path) if is_there(path) else b"").strip().partition(b" ")
    return (
        int(size) if size.isdigit() and len(size) < _DIGITS and of == _sha256(about).encode() else 0
    )


def _sha256(content: bytes) -> str:
    return hashlib.sha256(content).hexdigest()
