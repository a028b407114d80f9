"""Job cards as files: read, and changed so that no crash and no other program loses anything."""

from __future__ import annotations

import contextlib
import json
import os
import secrets
import stat
from collections.abc import Callable, Iterable
from pathlib import Path

from meterlog.model.errors import DiskFailed, UsageError
from meterlog.model.job_card import JobCard, card_of, card_to_dict
from meterlog.profile.full_path import full_path
from meterlog.profile.plain_file import open_plain
from meterlog.recording.append_file import sync_descriptor, sync_folder
from meterlog.recording.given_folder import outside_recordings
from meterlog.work.file_lock import alone_with

FORMAT = "meterlog job card 1"
_MOST_BYTES = 1_000_000
_ASIDE = ".partial"


def load_card(path: Path) -> JobCard:
    """Read a job card.

    Raises
    ------
    UsageError
        If there is none at ``path``, or it is no job card; names the key that is wrong.
    DiskFailed
        If the file can't be read.
    """
    try:
        with open_plain(path) as stream:
            content = stream.read(_MOST_BYTES + 1)
    except FileNotFoundError as error:
        raise UsageError(
            "there is no such job card.",
            subject=str(path),
            remedy=f"Begin one: meterlog job {path.name} --set work_order=NUMBER.",
        ) from error
    except OSError as error:
        raise DiskFailed(
            f"can't be read: {error.strerror}.",
            subject=str(path),
            remedy="Give the file of a job card that you may read.",
        ) from error
    return _parsed(content, str(path))


def _parsed(content: bytes, subject: str) -> JobCard:
    if len(content) > _MOST_BYTES:
        raise _no_card(f"is larger than {_MOST_BYTES // 1_000_000} MB", subject)
    try:
        # An editor may have put a byte order mark before it.
        values = json.loads(content.decode("utf-8-sig"), object_pairs_hook=_once)
    except (ValueError, RecursionError) as error:
        raise _no_card(f"is not valid JSON: {error}", subject) from error
    if isinstance(values, dict) and values.pop("format", FORMAT) != FORMAT:
        raise _no_card(f"has not the format {FORMAT!r}", subject)
    return card_of(values, subject)


def _once(pairs: list[tuple[str, object]]) -> dict[str, object]:
    found: dict[str, object] = {}
    for key, value in pairs:
        if key in found:
            raise ValueError(f"{key!r} is there twice")
        found[key] = value
    return found


def _no_card(what: str, subject: str) -> UsageError:
    return UsageError(
        f"is no job card: it {what}.",
        subject=subject,
        remedy="Give another file, or put this one right in an editor.",
    )


def card_bytes(card: JobCard) -> bytes:
    """Give a card as the content of its file: UTF-8 JSON, one field a line."""
    values = {"format": FORMAT, **card_to_dict(card)}
    return (json.dumps(values, ensure_ascii=False, indent=1) + "\n").encode()


def change_card(path: Path, change: Callable[[JobCard], JobCard]) -> JobCard:
    """Change the card at ``path``; when this returns, the change is on the disk.

    The file is read again before, so that nothing is lost that another program wrote since. It is
    replaced at once: after a crash it holds all of the old card or all of the new one.

    Parameters
    ----------
    path : Path
        Need not exist: then ``change`` is given an empty card.
    change : callable
        Gives the new card from the one that is there. What it raises leaves the file as it was.

    Returns
    -------
    JobCard
        As it is now.

    Raises
    ------
    UsageError
        If the file is no job card, it is left as it is; if it lies inside a recording, too.
    DiskFailed
        If it can't be written, or another program keeps it.
    """
    target = full_path(outside_recordings(path))  # a link stays one
    try:
        target.parent.mkdir(parents=True, exist_ok=True)
        with alone_with(target):
            there = target.exists()
            before = load_card(target) if there else JobCard()
            after = change(before)
            if after != before or not there:
                _replace(target, card_bytes(after))
    except OSError as error:
        raise DiskFailed(
            f"can't be written: {error.strerror}.",
            subject=str(path),
            remedy="Choose another place, or free some space; what was there is there still.",
        ) from error
    return after


def _replace(path: Path, content: bytes) -> None:
    for left in _leftovers(path):
        with contextlib.suppress(OSError):
            left.unlink()
    aside = path.with_name(f".{path.name}.{secrets.token_hex(4)}{_ASIDE}")
    try:
        with aside.open("xb") as stream:
            stream.write(content)
            stream.flush()
            sync_descriptor(stream.fileno())
        if path.exists():
            aside.chmod(stat.S_IMODE(path.stat().st_mode))
        aside.replace(path)
    except BaseException:
        with contextlib.suppress(OSError):
            aside.unlink(missing_ok=True)
        raise
    sync_folder(path.parent)


def _leftovers(path: Path) -> Iterable[Path]:
    """Give what a program left that died while it wrote; nobody else writes now."""
    lead = f".{path.name}."
    with os.scandir(path.parent) as entries:
        names = [one.name for one in entries]
    return [
        path.with_name(name) for name in names if name.startswith(lead) and name.endswith(_ASIDE)
    ]
