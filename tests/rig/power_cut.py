"""A disk that loses what was not synced: the writes of a recording, and what a power cut leaves.

The program's own writes, syncs, renames and new names are noted as they happen
(:class:`Noted`), and :func:`after_cut` gives one of the states in which a disk may be found when
the power went at some moment: of each file what had been synced is there; of what came after,
each page of 4 KiB may be there, be nothing but zeros, or hold anything, and the file may end
anywhere behind what was synced; a name that was made or changed after its folder was last synced
may be there or not, each by itself. No file system that keeps to ``fsync`` leaves less.
"""

from __future__ import annotations

import random
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from unittest import mock

from meterlog.recording import append_file, circuit_files, moving_recorder, recorder, sealing

PAGE = 4096


@dataclass
class Step:
    """One thing that was asked of the disk: ``make``, ``write``, ``sync``, ``rename``, ``names``.

    Attributes
    ----------
    what : str
    path : Path
    content : bytes
        Of a ``write``; all of the new file of a ``rename``, which was synced before.
    """

    what: str
    path: Path
    content: bytes = b""


@dataclass
class Noted:
    """All steps, in order."""

    steps: list[Step] = field(default_factory=list)

    @contextmanager
    def watching(self) -> Iterator[Noted]:
        """Note what the recording layer asks of the disk meanwhile."""
        steps = self.steps
        real_init = append_file.AppendFile.__init__
        real_append = append_file.AppendFile.append
        real_sync = append_file.AppendFile.sync
        real_folder, real_aside = append_file.sync_folder, append_file.write_aside

        def begin(own, path, name):
            real_init(own, path, name)
            steps.append(Step("make", path))

        def append(own, parts):
            real_append(own, parts)
            steps.append(Step("write", own.path, b"".join(bytes(part) for part in parts)))

        def sync(own):
            real_sync(own)
            steps.append(Step("sync", own.path))

        def names(folder):
            real_folder(folder)
            steps.append(Step("names", folder))

        def aside(path, content):
            real_aside(path, content)
            steps.append(Step("rename", path, bytes(content)))
            steps.append(Step("names", path.parent))

        def sync_file(path):
            steps.append(Step("sync", path))

        with (
            mock.patch.multiple(append_file.AppendFile, __init__=begin, append=append, sync=sync),
            mock.patch.object(recorder, "sync_folder", names),
            mock.patch.object(recorder, "write_aside", aside),
            mock.patch.object(moving_recorder, "sync_folder", names),
            mock.patch.object(circuit_files, "sync_folder", names),
            mock.patch.object(circuit_files, "write_aside", aside),
            mock.patch.object(sealing, "sync_folder", names),
            mock.patch.object(sealing, "sync_file", sync_file),
            mock.patch.object(sealing, "write_aside", aside),
        ):
            yield self


@dataclass
class _File:
    """One file in the system's memory and on the disk."""

    memory: bytearray
    synced: int = 0
    named: bool = False


def after_cut(
    steps: Sequence[Step], cut: int, root: Path, out: Path, dice: random.Random
) -> dict[str, int]:
    """Make a folder as a disk may be found whose power went after so many steps.

    Parameters
    ----------
    steps : sequence of Step
        All below ``root``, or above it.
    cut : int
    root : Path
        What was recorded into.
    out : Path
        Absent; becomes what is left.
    dice : random.Random

    Returns
    -------
    dict of str to int
        Bytes that are on the disk for sure, by the name of the file within ``root``.
    """
    files: dict[Path, list[_File]] = {}
    for step in steps[:cut]:
        _play(files, step)
    out.mkdir(parents=True)
    sure: dict[str, int] = {}
    for path, versions in files.items():
        name = path.relative_to(root)
        named = [at for at, one in enumerate(versions) if one.named]
        least = named[-1] if named else -1
        chosen = dice.randint(least, len(versions) - 1)
        if chosen < 0:
            continue  # its name was never on the disk
        found = versions[chosen]
        place = out / name
        place.parent.mkdir(parents=True, exist_ok=True)
        place.write_bytes(_as_left(found, dice))
        if found.named and chosen == least:
            sure[name.as_posix()] = found.synced
    return sure


def _play(files: dict[Path, list[_File]], step: Step) -> None:
    if step.what == "make":
        files[step.path] = [_File(bytearray())]
    elif step.what == "rename":
        files.setdefault(step.path, []).append(_File(bytearray(step.content), len(step.content)))
    elif step.what == "names":
        for path, versions in files.items():
            if path.parent == step.path:
                versions[-1].named = True
    elif step.path in files:
        one = files[step.path][-1]
        if step.what == "write":
            one.memory += step.content
        else:
            one.synced = len(one.memory)


def _as_left(one: _File, dice: random.Random) -> bytes:
    """Give a file's bytes: what was synced, and behind it whatever a disk may have made of it."""
    end = dice.choice([one.synced, len(one.memory), dice.randint(one.synced, len(one.memory))])
    left = bytearray(one.memory[:end])
    start = one.synced
    while start < end:
        stop = min((start // PAGE + 1) * PAGE, end)
        fate = dice.random()
        if fate < 0.3:
            left[start:stop] = bytes(stop - start)
        elif fate < 0.5:
            left[start:stop] = dice.randbytes(stop - start)
        start = stop
    return bytes(left)
