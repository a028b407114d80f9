"""Files: whether every profile, setting and key of this user can be used."""

from __future__ import annotations

import json
import os
import stat
from collections.abc import Callable, Iterator
from pathlib import Path

from meterlog.evidence.signing import KEY, key_folder, own_fingerprint
from meterlog.model.errors import MeterlogError, ProfileError
from meterlog.profile import (
    listed,
    load_circuit,
    load_limits,
    load_meter,
    settings_folder,
    user_folder,
)
from meterlog.profile.folders import OWN_FOLDER, own_folder_fault
from meterlog.profile.plain_file import read_plain
from meterlog.work.card_templates import CardTemplates
from meterlog.work.doctor.look import Line, State, shown_place

_CHECK = "Correct it: meterlog check-profile says every fault."
_AWAY = "Take it away: it is made anew, and what it kept is asked again."
_OWN = frozenset(
    {
        *("good-ones.json", "keys.json", "last-conditions.json", "last-editor.json"),
        *("last-job.json", "last-setup.json", "meters.json", "skews.json", "sound.json"),
        *("watched-folders.json", "where.json", "zeros.json"),
    }
)
"""Settings that the program makes; whatever else lies there may be called by anybody's name."""
_LOAD: dict[str, Callable[[str], object]] = {
    "meters": load_meter,
    "limits": load_limits,
    "circuits": load_circuit,
}


def look_at_profiles() -> Iterator[Line]:
    """Load every profile, shipped and the user's own."""
    if own_folder_fault():
        words = f"{OWN_FOLDER} names what is no folder: profiles of one's own are not used"
        yield Line("profiles", State.BAD, words, "Name a folder, or take the variable away.")
    for kind, load in _LOAD.items():
        good, own, faulty = 0, 0, 0
        for profile in listed(kind):
            own += profile.own
            try:
                load(str(profile.file))
            except ProfileError as error:
                # One's own may be called by a customer, and hold anything.
                faulty += profile.own
                if not profile.own:
                    words = f"{error.subject}: {error.message}"
                    yield Line("profiles", State.BAD, words, "Install meterlog again.")
            else:
                good += 1
        if faulty:
            words = f"{faulty} of {kind} of one's own can't be used"
            yield Line("profiles", State.BAD, words, _CHECK)
        words = f"{good} of {kind} can be used, {own} of one's own"
        state = State.OK if good else State.BAD
        yield Line("profiles", state, words, "" if good else "Install meterlog again.")
    yield Line("profiles", State.OK, f"those of one's own belong into {shown_place(user_folder())}")


def look_at_settings() -> Iterator[Line]:
    """Read every file of settings; what they say is not told, nor what templates are called."""
    folder = settings_folder()
    files = sorted(folder.glob("*.json")) if folder.is_dir() else []
    broken = 0
    for file in files:
        why = _fault(file)
        if why:
            broken += 1
            name = file.name if file.name in _OWN else "a file that is not the program's"
            yield Line("settings", State.LOOK, f"{name}: {why}", _AWAY)
    if not broken:
        yield Line("settings", State.OK, f"{len(files)} files, all can be read")
    yield from _templates()


def _fault(file: Path) -> str:
    try:
        found = json.loads(read_plain(file))
    except OSError as error:
        return f"can't be read: {error.strerror}"
    except (ValueError, RecursionError):
        return "is no JSON"
    return "" if isinstance(found, dict) else "is no JSON object"


def _templates() -> Iterator[Line]:
    templates = CardTemplates()
    broken = 0
    names = templates.names()
    for name in names:
        try:
            templates.load(name)
        except MeterlogError:
            broken += 1
    if broken:
        words = f"{broken} of {len(names)} templates of job cards can't be used"
        yield Line(
            "settings", State.LOOK, words, f"Put them right in {shown_place(templates.folder)}."
        )
    elif names:
        yield Line("settings", State.OK, f"{len(names)} templates of job cards, all can be used")


def look_at_key() -> Iterator[Line]:
    """Tell whether packs can be signed; nothing of the key itself is read but its first line."""
    folder = key_folder()
    path, shown = folder / KEY, shown_place(folder)
    try:
        found = path.lstat()
    except FileNotFoundError:
        yield Line("signing key", State.OK, "none yet; the first claim pack makes one")
        return
    except OSError as error:
        words = f"can't be looked at: {error.strerror}"
        yield Line("signing key", State.BAD, words, f"Check your rights to {shown}.")
        return
    if not stat.S_ISREG(found.st_mode):
        yield Line("signing key", State.BAD, "is no file", f"Take {shown}/{KEY} away.")
        return
    if os.name == "posix" and (found.st_mode & 0o077 or found.st_uid != os.geteuid()):
        words = f"is not yours alone (mode {stat.S_IMODE(found.st_mode):04o})"
        do = f"If nobody had it: chmod 600 {shown}/{KEY}; else take it away, and a new one is made."
        yield Line("signing key", State.BAD, words, do)
        return
    if os.name == "posix" and folder.stat().st_mode & 0o022:
        words = "others may change its folder"
        yield Line("signing key", State.BAD, words, f"Make it yours alone: chmod 700 {shown}")
        return
    locked = b"ENCRYPTED" in read_plain(path).partition(b"\n")[0]
    known = "" if own_fingerprint() else "; its public half is made anew with the next pack"
    how = "under a passphrase" if locked else "without a passphrase"
    yield Line("signing key", State.OK, f"there, yours alone, {how}{known}")
