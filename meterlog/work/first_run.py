"""FirstRun: what the head of a run says that a second one will be compared with it."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from meterlog.model import Conditions, Role
from meterlog.model.errors import RecordingUnreadable
from meterlog.profile.plain_file import open_plain
from meterlog.recording import layout
from meterlog.recording.about_text import parse_about

_MOST_BYTES = 16_000_000


@dataclass(frozen=True, slots=True)
class FirstRun:
    """The run before.

    Attributes
    ----------
    folder : Path
    conditions : Conditions
    voltage_read : bool
        The motor voltage was read.
    """

    folder: Path
    conditions: Conditions
    voltage_read: bool


def first_run(folder: Path) -> FirstRun:
    """Read the head of a recording, and nothing else of it.

    Parameters
    ----------
    folder : Path
        Of a recording, sealed or not.

    Raises
    ------
    RecordingUnreadable
        If there is none, or its head can't be understood.
    """
    path = folder / layout.ABOUT
    try:
        with open_plain(path) as stream:
            head = stream.read(_MOST_BYTES)
    except FileNotFoundError as error:
        raise RecordingUnreadable(
            f"holds no recording: there is no {layout.ABOUT}.",
            subject=str(folder),
            remedy="Give the folder of one recording.",
        ) from error
    except OSError as error:
        raise RecordingUnreadable(
            f"can't be read: {error.strerror}.",
            subject=str(path),
            remedy="Check that the disk is there and that you may read it.",
        ) from error
    about, _ = parse_about(head, str(path))
    read = any(one.column(Role.MOTOR_FEED) is not None for one in about.instruments)
    return FirstRun(folder, about.job.measured_under, read)
