"""Look: one thing looked at, how it is, and what to do about it."""

from __future__ import annotations

import getpass
import re
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from pathlib import Path

from meterlog.model.errors import MeterlogError

_USUAL = frozenset(
    {
        *("home", "root", "users", "media", "mnt", "run", "volumes", "srv", "opt", "usr", "local"),
        *("tmp", "temp", "var", "private", "folders", "data", "dev", "shm", "share", "state"),
        *(".config", ".local", ".cache", "library", "application support", "preferences", "caches"),
        *("linux", "windows", "darwin", "amd64", "arm64", "user", "admin", "pi"),
        *("appdata", "roaming", "programdata", "documents", "desktop", "downloads"),
        *("meterlog", "recordings", "jobs", "profiles", "job-templates", "keys", "t"),
    }
)
"""Parts of paths that tell nothing of anybody."""


class State(StrEnum):
    """How a thing is."""

    OK = "ok"
    LOOK = "look"
    """Works, or works in part: somebody should look at it."""
    BAD = "bad"


@dataclass(frozen=True, slots=True)
class Line:
    """One line of the report.

    Attributes
    ----------
    about : str
        The thing, such as ``disk``.
    state : State
    words : str
        What was found.
    do : str
        What to do; empty when nothing needs to be done.
    """

    about: str
    state: State
    words: str
    do: str = ""


Look = Callable[[], Iterable[Line]]
"""Looks at one kind of thing."""


def worst(lines: Sequence[Line]) -> State:
    """Give the gravest state of several lines."""
    order = list(State)
    return max((line.state for line in lines), key=order.index, default=State.OK)


def gathered(about: str, look: Look) -> list[Line]:
    """Give what a look found, nobody's name in it; one that breaks off is a line as well.

    Parameters
    ----------
    about : str
        For the line that says that it broke off.
    look : callable
    """
    try:
        found = list(look())
    # Whatever is broken on this computer, the rest of the report is wanted all the same.
    except Exception as error:  # noqa: BLE001
        words = f"could not be looked at: {told_of(error)}"
        found = [Line(about, State.BAD, words, "Send this report to whoever keeps meterlog.")]
    return [replace(one, words=nameless(one.words), do=nameless(one.do)) for one in found]


def told_of(error: BaseException) -> str:
    """Say what went wrong without the file that an error names."""
    kind = type(error).__name__
    if isinstance(error, MeterlogError):
        return f"{kind}: {error.message}"
    told = error.strerror if isinstance(error, OSError) else str(error)
    return f"{kind}: {told}" if told else kind


def nameless(text: str) -> str:
    """Give text without the user's name in its paths, on one line."""
    home = str(Path.home())
    text = " ".join(text.split())
    if len(home) > 1:
        text = re.sub(rf"{re.escape(home)}(?=[/\\]|\W|$)", "~", text)
    try:
        user = getpass.getuser()
    except (KeyError, OSError):
        return text
    if user.casefold() in _USUAL:
        return text  # it tells nothing of anybody, and is a word of the report
    # A stick is mounted under the user's name, and folders in passing are called by it.
    return re.sub(rf"(?<=[/\\._-]){re.escape(user)}(?=[\W_]|$)", "USER", text, flags=re.I)


def shown_place(path: Path) -> str:
    """Give a path of which only such parts are told as are called alike on many computers.

    Whatever else a folder is called may be a customer, a work order or a vehicle.

    Examples
    --------
    >>> shown_place(Path("/srv/WO-4711 (invented)/left/recordings"))
    '/srv/…/recordings'
    """
    full = path.absolute()
    home = Path.home()
    at_home = full.is_relative_to(home) and len(home.parts) > 1
    parts = full.relative_to(home).parts if at_home else full.parts[1:]
    told: list[str] = []
    for part in parts:
        if part.casefold() in _USUAL:
            told.append(part)
        elif told[-1:] != ["…"]:
            told.append("…")
    # The anchor of a share is its server.
    top = "~" if at_home else "…" if full.drive.startswith("\\\\") else full.anchor
    return str(Path(top, *told))
