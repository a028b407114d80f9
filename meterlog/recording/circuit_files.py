"""CircuitFiles: the circuit profiles that a recording's checks were made by, kept in it."""

from __future__ import annotations

import re
from pathlib import Path

from meterlog.model.errors import DiskFailed
from meterlog.profile.full_path import full_path
from meterlog.profile.plain_file import read_plain
from meterlog.recording import layout
from meterlog.recording.append_file import REMEDY, sync_folder, write_aside

_UNFIT = re.compile(r"[^A-Za-z0-9._-]+")


def keep_circuit(folder: Path, name: str, text: str) -> str:
    """Put a circuit profile into a recording that is not sealed yet.

    Parameters
    ----------
    folder : Path
        Of the recording.
    name : str
        The profile's name.
    text : str
        Its TOML.

    Returns
    -------
    str
        Where it lies, within the folder and with ``/``. The same text is never kept twice.

    Raises
    ------
    DiskFailed
        If it can't be written.
    """
    content = text.encode("utf-8", "surrogatepass")
    stem = _UNFIT.sub("-", name).strip("-.") or "circuit"
    count = 1
    try:
        place = folder / layout.CIRCUITS
        place.mkdir(parents=True, exist_ok=True)
        while True:
            file = place / (f"{stem}.toml" if count == 1 else f"{stem}-{count}.toml")
            if not file.exists():
                write_aside(file, content)
                sync_folder(place)
                break
            if read_plain(file) == content:
                break
            count += 1
    except OSError as error:
        raise DiskFailed(
            f"the circuit can't be kept: {error.strerror}.", subject=str(folder), remedy=REMEDY
        ) from error
    return file.relative_to(folder).as_posix()


def kept_circuits(folder: Path) -> tuple[tuple[str, str], ...]:
    """Give name, as entries have it, and text of each circuit profile kept in a recording.

    Parameters
    ----------
    folder : Path
    """
    place = folder / layout.CIRCUITS
    paths = sorted(place.glob("*.toml")) if place.is_dir() else []
    names = [path.relative_to(folder).as_posix() for path in paths]
    texts = [kept_circuit(folder, name) for name in names]
    return tuple((name, text) for name, text in zip(names, texts, strict=True) if text)


def kept_circuit(folder: Path, file: str) -> str:
    """Give the text of a circuit profile kept in a recording; empty where there is none.

    Parameters
    ----------
    folder : Path
    file : str
        As an entry names it. Nothing outside ``data/circuits/`` is ever read.
    """
    place = full_path(folder / layout.CIRCUITS)
    try:
        path = full_path(folder / file)
        if path.parent != place:
            return ""
        return read_plain(path).decode("utf-8")
    except (OSError, ValueError):
        return ""
