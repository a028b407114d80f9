"""The folders a command is given: told apart before any work whether they can be meant."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from pathlib import Path


def recording_at(folder: Path) -> Path:
    """Give ``folder`` back if it is a recording, or what damage has left of one.

    Raises
    ------
    UsageError
        If it is not there or holds nothing of a recording.
    """
    from meterlog.recording.given_folder import recording_at as given

    return given(folder)


def new_folder(folder: Path) -> Path:
    """Give ``folder`` back if it can be written to: absent or empty, and in no recording.

    Raises
    ------
    UsageError
        If it holds something, is no folder, or lies inside a recording, whose seal it would break.
    """
    from meterlog.recording.given_folder import new_folder as given

    return given(folder)
