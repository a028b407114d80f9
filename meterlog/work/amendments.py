"""Amendments: the edits on top of a recording, kept beside its folder and never in it.

They stand in ``<recording>.amendments.jsonl``, one JSON object a line, oldest first, each with a
hash chained from the recording's ``about.json`` and the line before, as its events are
(:mod:`~meterlog.recording.event_chain`); how much there is stands beside it
(:mod:`~meterlog.work.amendment_count`). An edit is undone by another edit; no line is taken out.
"""

from __future__ import annotations

import contextlib
import json
import os
from collections.abc import Sequence
from dataclasses import asdict, replace
from datetime import UTC, datetime
from pathlib import Path

from meterlog.model.amendment import Amendment, AmendmentKind
from meterlog.model.errors import EvidenceError, UsageError
from meterlog.profile.full_path import full_path
from meterlog.profile.plain_file import read_plain
from meterlog.recording import layout
from meterlog.recording.append_file import sync_descriptor, sync_folder
from meterlog.recording.checked_text import crc_holds
from meterlog.recording.event_chain import EventChain, check_chain
from meterlog.work.amendment_count import count_more, count_path, cut_off, is_there
from meterlog.work.file_lock import alone_with

_APPEND = (
    os.O_RDWR | os.O_CREAT | os.O_APPEND | getattr(os, "O_BINARY", 0) | getattr(os, "O_NOFOLLOW", 0)
)

EDITS = (".amendments.jsonl", ".amendments.count")
"""How the names of the edits of a recording, and of their count, end behind its own."""


def amendments_path(folder: Path) -> Path:
    """Give the file of a recording's amendments; it need not exist."""
    place = full_path(folder)
    return place.with_name(f"{place.name}{EDITS[0]}")


def add_amendment(folder: Path, amendment: Amendment) -> Amendment:
    """Write down an edit.

    Parameters
    ----------
    folder : Path
        Of the recording, sealed or not; nothing in it is touched.
    amendment : Amendment
        Without a time it gets the present one.

    Returns
    -------
    Amendment
        As it was written.

    Raises
    ------
    UsageError
        If nobody or no reason is named, or nothing is changed by it.
    EvidenceError
        If the recording can't be read or the disk does not take it.
    DiskFailed
        If another program is writing down edits for longer than ten seconds.
    """
    refuse_empty(folder, amendment)
    now = datetime.now(UTC).isoformat(timespec="seconds").replace("+00:00", "Z")
    made = replace(amendment, made_utc=amendment.made_utc or now)
    path = amendments_path(folder)
    try:
        about = read_plain(folder / layout.ABOUT)
        _refuse_link(path)
        # Each line follows from the one before it: two programs at once would both follow from one.
        with alone_with(path):
            content = read_plain(path) if path.exists() else b""
            line = EventChain.behind(content, about).object_line(_text(made))
            # What a program that died left torn becomes a line of its own, which is told.
            torn = content and not content.endswith(b"\n")
            line = b"\n" + line if torn else line
            try:
                _append(path, line)
                count_more(path, len(content), len(line), about)
            except OSError:
                _take_back(path, len(content))
                raise
    except OSError as error:
        raise _cannot(path, error) from error
    return made


def amendments_of(folder: Path) -> tuple[tuple[Amendment, ...], tuple[str, ...]]:
    """Read the edits on top of a recording.

    Parameters
    ----------
    folder : Path
        Of the recording.

    Returns
    -------
    amendments : tuple of Amendment
        In the order they were made, up to the first line that is damaged or does not follow from
        the one before it: nobody knows what is missing there, and the edits behind it may rest on
        it.
    damage : tuple of str
        One text for each line that is damaged or does not follow from the one before it, one
        for the whole edits behind it; else one where edits at the end are missing; empty when
        nothing is wrong.

    Raises
    ------
    EvidenceError
        If a file can't be read.
    """
    path = amendments_path(folder)
    try:
        if not is_there(path) and not is_there(count_path(path)):
            return (), ()
        content = read_plain(path) if is_there(path) else b""
        about = read_plain(folder / layout.ABOUT)
        cut = cut_off(path, len(content), about)
    except OSError as error:
        raise _cannot(path, error) from error
    lines = [one for one in enumerate(content.split(b"\n"), 1) if one[1]]
    read = [(number, line, _parsed(line)) for number, line in lines]
    chain = EventChain(about)
    standing: list[Amendment] = []
    for _, line, amendment in read:
        if amendment is None or not _follows(line, chain):
            break
        standing.append(amendment)
    damage = [
        f"{path.name}: line {number} is damaged and left out."
        for number, _, amendment in read
        if amendment is None
    ]
    damage += check_chain(content, about, path.name).breaks
    behind = [number for number, _, amendment in read[len(standing) :] if amendment is not None]
    if behind:
        damage.append(_behind(path.name, behind))
    if cut and not damage:
        damage.append(cut)
    return tuple(standing), tuple(damage)


def _follows(line: bytes, chain: EventChain) -> bool:
    """Tell whether ``line`` is just what the chain makes of its body; takes the chain on."""
    body, _, _ = line.rpartition(b', "chain": "')
    return chain.body_line(body) == line + b"\n"


def _behind(name: str, numbers: Sequence[int]) -> str:
    many = f"lines {numbers[0]} to {numbers[-1]}" if len(numbers) > 1 else f"line {numbers[0]}"
    return (
        f"{name}: {many} can't be trusted to be all that was written, and "
        f"{'are' if len(numbers) > 1 else 'is'} not applied."
    )


def _refuse_link(path: Path) -> None:
    """Refuse to write elsewhere: who made a link that came with a recording is not known."""
    if path.is_symlink():
        raise EvidenceError(
            "is a link, not a file: edits are only written beside the recording itself.",
            subject=str(path),
            remedy="Put the file that it leads to in its place, or take it away.",
        )


def refuse_empty(folder: Path, amendment: Amendment) -> None:
    """Refuse an edit that nobody answers for, or that changes nothing.

    Raises
    ------
    UsageError
    """
    for name, given in (("who made the edit", amendment.who), ("a reason", amendment.why)):
        if not given.strip():
            raise UsageError(
                f"can't be amended without {name}.",
                subject=str(folder),
                remedy="Say who and why: a reviewer will ask.",
            )
    if amendment.old == amendment.new:
        raise UsageError(
            "is not changed by this edit: old and new are the same.",
            subject=str(folder),
            remedy="Give another value, or leave it as it is.",
        )


def _text(amendment: Amendment) -> str:
    values = {**asdict(amendment), "kind": amendment.kind.value}
    return json.dumps(values, ensure_ascii=False)


def _parsed(line: bytes) -> Amendment | None:
    if not crc_holds(line):
        return None
    try:
        values = json.loads(line)
        t_ns = values["t_ns"]
        return Amendment(
            AmendmentKind(values["kind"]),
            str(values["subject"]),
            None if t_ns is None else int(t_ns),
            *(str(values[name]) for name in ("old", "new", "who", "why", "made_utc")),
        )
    except (ValueError, KeyError, TypeError, RecursionError, OverflowError):
        return None


def _append(path: Path, content: bytes) -> None:
    with os.fdopen(os.open(path, _APPEND, 0o644), "ab", buffering=0) as stream:
        left = memoryview(content)
        while left:
            left = left[stream.write(left) :]
        sync_descriptor(stream.fileno())
    sync_folder(path.parent)


def _take_back(path: Path, size: int) -> None:
    """Give the file its old length: half a line would bar every edit that comes after it."""
    with contextlib.suppress(OSError):
        if size:
            os.truncate(path, size)
        else:
            path.unlink(missing_ok=True)


def _cannot(path: Path, error: OSError) -> EvidenceError:
    return EvidenceError(
        f"can't be read or written: {error.strerror}.",
        subject=str(error.filename or path),
        remedy="Check that the disk is there, has room, and that you may write beside the "
        "recording.",
    )
