"""Catalogue: finds profiles by name, the user's own before those that are shipped."""

from __future__ import annotations

import difflib
import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from meterlog.model import Limits
from meterlog.model.circuit import Circuit
from meterlog.model.errors import ProfileError
from meterlog.profile.circuit import circuit_profile
from meterlog.profile.folders import own_folder_fault, shipped_folder, user_folder
from meterlog.profile.limits import limits_profile
from meterlog.profile.meter import MeterProfile
from meterlog.profile.meter_file import meter_profile
from meterlog.profile.table import read_text

_NAME = re.compile(r"\w[\w.+ -]*")
"""Else it could not be told from the rest of PROFILE@PORT, nor be part of a file's name."""


@dataclass(frozen=True, slots=True)
class ListedProfile:
    """A profile that can be had by its name.

    Attributes
    ----------
    name : str
    file : Path
    own : bool
        It is the user's own.
    replaces : bool
        It is the user's own and takes the place of a shipped one.
    """

    name: str
    file: Path
    own: bool
    replaces: bool = False


def listed(kind: str) -> tuple[ListedProfile, ...]:
    """Give all profiles of ``kind``, a folder such as ``meters``: the user's own first, by name."""
    shipped = {file.stem: file for file in _files(shipped_folder() / kind)}
    own = {file.stem: file for file in _files(user_folder() / kind)}
    return (
        *(ListedProfile(name, own[name], own=True, replaces=name in shipped) for name in own),
        *(ListedProfile(name, shipped[name], own=False) for name in shipped if name not in own),
    )


def _files(folder: Path) -> Iterator[Path]:
    files = sorted(folder.glob("*.toml"), key=lambda file: file.stem)
    yield from (file for file in files if _is_file(file))


def _is_file(file: Path) -> bool:
    try:
        return file.is_file()
    except OSError:  # in a folder that this user may not look into
        return False


def names(kind: str) -> tuple[str, ...]:
    """Give the names of all profiles of ``kind``: the user's own first, each group sorted."""
    return tuple(profile.name for profile in listed(kind))


def profile_file(kind: str, name_or_file: str) -> Path:
    """Give the file of a profile: one named as such, the user's own, or a shipped one.

    Parameters
    ----------
    kind : str
        ``meters``, ``limits`` or ``circuits``.
    name_or_file : str

    Raises
    ------
    ProfileError
        If there is none; names the nearest and all.
    """
    path = Path(name_or_file)
    if path.suffix == ".toml" or len(path.parts) != 1:
        if not _is_file(path):
            is_folder = bool(name_or_file) and path.is_dir()
            raise ProfileError(
                "is a folder." if is_folder else "no such file.",
                subject=name_or_file or "''",
                remedy="Give a file in it." if is_folder else "Check the path.",
            )
        return path
    for folder in (user_folder(), shipped_folder()):
        file = folder / kind / f"{name_or_file}.toml"
        if _is_file(file):
            return file
    known = names(kind)
    near = difflib.get_close_matches(name_or_file, known, 1)
    hint = f"Did you mean {near[0]!r}? " if near else ""
    if fault := own_folder_fault():
        hint = f"{fault} {hint}"
    raise ProfileError(
        f"no profile of this name among the {kind}.",
        subject=name_or_file,
        remedy=f"{hint}There are: {', '.join(known)}; or give the path of a .toml file.",
    )


def load_meter(name_or_file: str) -> MeterProfile:
    """Load a meter profile by name or path.

    Raises
    ------
    ProfileError
        If there is none or it is wrong.
    """
    path = profile_file("meters", name_or_file)
    wrong = name_fault(path)
    if wrong is not None:
        raise wrong
    return meter_profile(path.stem, read_text(path), str(path))


def name_fault(path: Path) -> ProfileError | None:
    """Give what is wrong with a profile's name, which is that of its file; None if nothing is."""
    if _NAME.fullmatch(path.stem):
        return None
    # Shown as it can be: a name in another encoding than UTF-8 can't.
    shown = str(path).encode("utf-8", "backslashreplace").decode("utf-8")
    return ProfileError(
        "can't be the name of a profile.",
        subject=shown,
        remedy="Name the file with letters, digits, blanks and - _ . + only.",
    )


def load_listed_meters() -> tuple[tuple[MeterProfile, ...], tuple[ProfileError, ...]]:
    """Load every meter profile that has a name, the user's own first.

    Returns
    -------
    tuple of (MeterProfile, ...) and (ProfileError, ...)
        Those that can be used, and for each of the others what is wrong with it first.
    """
    good, bad = [], []
    for profile in listed("meters"):
        try:
            good.append(load_meter(str(profile.file)))
        except ProfileError as error:
            bad.append(error)
    return tuple(good), tuple(bad)


def load_limits(name_or_file: str) -> Limits:
    """Load a limits profile by name or path.

    Raises
    ------
    ProfileError
        If there is none or it is wrong.
    """
    path = profile_file("limits", name_or_file)
    # The name goes into files, which can't hold the bytes of a path that is no UTF-8.
    name = path.stem.encode("utf-8", "replace").decode("utf-8")
    return limits_profile(name, read_text(path), str(path))


def load_circuit(name_or_file: str) -> Circuit:
    """Load a circuit profile by name or path.

    Raises
    ------
    ProfileError
        If there is none or it is wrong.
    """
    path = profile_file("circuits", name_or_file)
    wrong = name_fault(path)
    if wrong is not None:
        raise wrong
    return _circuit(path.stem, read_text(path), str(path))


@lru_cache(maxsize=16)
def _circuit(name: str, text: str, subject: str) -> Circuit:
    """Read a circuit profile once: it takes 20 ms, and nothing but its text says what is in it."""
    return circuit_profile(name, text, subject)
