"""Where recordings go when nobody says otherwise, and what their folders are called."""

from __future__ import annotations

import os
import re
from datetime import datetime
from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent.parent


def recordings_folder() -> Path:
    """Give the folder for recordings.

    Returns
    -------
    Path
        ``recordings`` of the checkout the program runs from; else ``meterlog`` in the user's
        documents, or in the home folder where there are none. It need not exist.
    """
    checkout = _PACKAGE.parent
    if (checkout / "pyproject.toml").is_file() and os.access(checkout / "recordings", os.W_OK):
        return checkout / "recordings"
    documents = Path.home() / "Documents"
    return (documents if documents.is_dir() else Path.home()) / "meterlog"


def fresh_folder(subject: str, parent: Path | None = None) -> Path:
    """Give a folder that does not exist yet, named after local time and ``subject``.

    Parameters
    ----------
    subject : str
        Work order, vehicle or the like; what doesn't fit a file name is left out.
    parent : Path or None
        None: :func:`recordings_folder`.
    """
    words = re.sub(r"[^A-Za-z0-9]+", "-", subject).strip("-")[:40]
    stamp = datetime.now().astimezone().strftime("%Y%m%d-%H%M%S")
    name = f"{stamp}-{words}" if words else stamp
    place = parent or recordings_folder()
    folder, count = place / name, 1
    while folder.exists():
        count += 1
        folder = place / f"{name}-{count}"
    return folder
