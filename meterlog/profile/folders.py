"""Where profiles are: those that are shipped, and the user's own."""

from __future__ import annotations

import os
from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent.parent
OWN_FOLDER = "METERLOG_PROFILES"
"""Environment variable that names another folder for the user's own profiles."""


def shipped_folder() -> Path:
    """Give the folder of shipped profiles: in the wheel, or beside the package in a checkout."""
    inside = _PACKAGE / "shipped_profiles"
    return inside if inside.is_dir() else _PACKAGE.parent / "profiles"


def settings_folder() -> Path:
    """Give the folder in which this user's settings are kept; it need not exist yet."""
    from platformdirs import user_config_path

    return user_config_path("meterlog", appauthor=False)


def own_folder_fault() -> str:
    """Say that the folder named for the user's own profiles is none; empty if all is well."""
    named = os.environ.get(OWN_FOLDER)
    if not named or Path(named).is_dir():
        return ""
    return f"{OWN_FOLDER} names {named}, which is no folder: profiles of your own are not used."


def user_folder() -> Path:
    """Give the folder of the user's own profiles; it need not exist."""
    named = os.environ.get(OWN_FOLDER)
    return Path(named) if named else settings_folder() / "profiles"
