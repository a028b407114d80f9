"""Catalogue: finds profiles by name, the user's own before those that are shipped."""

from __future__ import annotations

import difflib
from pathlib import Path

from meterlog.model import Limits
from meterlog.model.errors import ProfileError
from meterlog.profile.folders import shipped_folder, user_folder
from meterlog.profile.limits import limits_profile
from meterlog.profile.meter import MeterProfile
from meterlog.profile.meter_file import meter_profile
from meterlog.profile.table import read_text


def names(kind: str) -> tuple[str, ...]:
    """Give the names of all profiles of ``kind`` (``meters``, ``limits``), sorted."""
    places = (user_folder() / kind, shipped_folder() / kind)
    return tuple(sorted({path.stem for place in places for path in place.glob("*.toml")}))


def profile_file(kind: str, name_or_file: str) -> Path:
    """Give the file of a profile: one named as such, the user's own, or a shipped one.

    Parameters
    ----------
    kind : str
        ``meters`` or ``limits``.
    name_or_file : str

    Raises
    ------
    ProfileError
        If there is none; names the nearest and all.
    """
    path = Path(name_or_file)
    if path.suffix == ".toml" or len(path.parts) != 1:
        if not path.is_file():
            raise ProfileError(
                "no such file.", subject=name_or_file or "''", remedy="Check the path."
            )
        return path
    for folder in (user_folder(), shipped_folder()):
        file = folder / kind / f"{name_or_file}.toml"
        if file.is_file():
            return file
    known = names(kind)
    near = difflib.get_close_matches(name_or_file, known, 1)
    hint = f"Did you mean {near[0]!r}? " if near else ""
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
    return meter_profile(path.stem, read_text(path), str(path))


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
