"""Joining: one recording out of those that it went on in when a disk failed."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from pathlib import Path

from meterlog.model import About, Event, EventKind
from meterlog.model.errors import DiskFailed, RecordingUnreadable, UsageError
from meterlog.recording import layout
from meterlog.recording.append_file import REMEDY
from meterlog.recording.circuit_files import keep_circuit, kept_circuits
from meterlog.recording.continuation import Continuation, kept_continuation
from meterlog.recording.folder_aside import folder_aside, put_folder_in_place
from meterlog.recording.recorder import Recorder, refuse_taken
from meterlog.recording.recording import Recording
from meterlog.recording.sealing import seal

Progress = Callable[[float], None]
_MOST_PARTS = 100


@dataclass(frozen=True, slots=True)
class Joined:
    """What came of it.

    Attributes
    ----------
    folder : Path
        Of the new, sealed recording.
    parts : tuple of Path
        Oldest first; untouched.
    missing : dict of str to int
        Rows that were taken and are in no part, by instrument; without those of which there are
        none.
    damage : tuple of str
        What is torn or damaged in the parts. Much of it lies behind the place where the next part
        begins, and costs nothing.
    """

    folder: Path
    parts: tuple[Path, ...]
    missing: dict[str, int]
    damage: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class _Part:
    """One part, and the numbers of its first rows and frames in the whole."""

    recording: Recording
    begun: Continuation | None

    def row(self, key: str) -> int:
        return 0 if self.begun is None else self.begun.rows.get(key, 0)

    def frame(self, key: str) -> int:
        return 0 if self.begun is None else self.begun.frames.get(key, 0)


def join_parts(
    last: Path, out: Path, before: Path | None = None, progress: Progress = lambda _: None
) -> Joined:
    """Put a recording that went on elsewhere together again, and seal it. No part is touched.

    Where it can't be finished, whatever the reason, there is no ``out`` afterwards.

    Of each part are taken the rows before those that the next one begins with: those had been put
    on the disk itself, the next one has all others.

    Parameters
    ----------
    last : Path
        The part in which the recording ended.
    out : Path
        Absent or empty.
    before : Path or None
        Where the part before ``last`` is now; None: where it was.
    progress : callable
        Called with the part done, 0 to 1. What it raises ends the work.

    Returns
    -------
    Joined

    Raises
    ------
    RecordingExists
        If ``out`` holds anything.
    UsageError
        If ``last`` goes on with nothing.
    RecordingUnreadable
        If a part is not there, can't be read or belongs to
        another recording.
    DiskFailed, EvidenceError
        If ``out`` can't be written.
    """
    parts = _parts(last, before)
    refuse_taken(out)
    try:
        with folder_aside(out) as work:
            whole = work / out.name
            missing = _write(parts, whole, progress)
            seal(whole, recovered=not parts[-1].recording.is_ended)
            put_folder_in_place(whole, out)
    except OSError as error:
        raise DiskFailed(
            f"can't be written: {error.strerror}.", subject=str(out), remedy=REMEDY
        ) from error
    progress(1.0)
    folders = tuple(part.recording.folder for part in parts)
    damage = tuple(
        f"{part.recording.folder.name}: {text}" for part in parts for text in part.recording.damage
    )
    return Joined(out, folders, missing, damage)


def _parts(last: Path, before: Path | None) -> tuple[_Part, ...]:
    """Find all parts, oldest first."""
    found = [_Part(Recording.open(last), kept_continuation(last))]
    begun = found[0].begun
    if begun is None:
        raise UsageError(
            "goes on with no other recording, so there is nothing to join.",
            subject=str(last),
            remedy="Give the last part of a recording that went on elsewhere.",
        )
    while begun is not None and len(found) < _MOST_PARTS:
        place = before if before is not None and len(found) == 1 else begun.folder
        if not layout.holds_recording(place):
            raise RecordingUnreadable(
                "the part before it is not there.",
                subject=str(place),
                remedy="Put its disk in again, or say where it is now with --before. Each part can"
                " be reviewed by itself.",
            )
        part = _Part(Recording.open(place), kept_continuation(place))
        _refuse_other(part.recording, found[0].recording.about)
        found.insert(0, part)
        begun = part.begun
    return tuple(found)


def _refuse_other(part: Recording, about: About) -> None:
    if part.about != about:
        raise RecordingUnreadable(
            "is a part of another recording.",
            subject=str(part.folder),
            remedy="Give the part that this one goes on with.",
        )


def _write(parts: Sequence[_Part], out: Path, progress: Progress) -> dict[str, int]:
    about = parts[0].recording.about
    keys = [one.key for one in about.instruments]
    raw = any((part.recording.folder / layout.raw(key)).is_file() for part in parts for key in keys)
    recorder = Recorder.create(out, about, raw)
    missing: dict[str, int] = {}
    try:
        for number, key in enumerate(keys):
            progress(number / (len(keys) + 1))
            lost = _write_rows(parts, key, recorder)
            if lost:
                missing[key] = lost
            _write_raw(parts, key, recorder)
        for event in _events(parts):
            recorder.take(event)
        recorder.take(Event(_end_ns(parts), EventKind.FAULT, _words(parts, missing)))
    finally:
        recorder.close(_outcome(parts[-1].recording))
    if recorder.failed:
        raise DiskFailed(recorder.failed, subject=str(out), remedy=REMEDY)
    for part in parts:
        for name, text in kept_circuits(part.recording.folder):
            keep_circuit(out, Path(name).stem, text)
    return missing


def _write_rows(parts: Sequence[_Part], key: str, recorder: Recorder) -> int:
    """Write one instrument's rows; give how many are in no part."""
    expected = lost = 0
    for part, end in _with_ends(parts, [part.row(key) for part in parts]):
        for first, block in part.recording.numbered(key):
            number = part.row(key) + first
            if end is not None and number >= end:
                break
            recorder.take(block if end is None else block.rows(0, min(len(block), end - number)))
            lost += number - expected
            expected = number + len(block)
        if end is not None:
            lost += max(end - expected, 0)
            expected = end
    return lost


def _write_raw(parts: Sequence[_Part], key: str, recorder: Recorder) -> None:
    """Write one instrument's bytes; what is missing of them is told by the parts' damage."""
    for part, end in _with_ends(parts, [part.frame(key) for part in parts]):
        for number, raw in enumerate(part.recording.raw(key), part.frame(key)):
            if end is not None and number >= end:
                break
            recorder.take(raw)


def _with_ends(parts: Sequence[_Part], starts: Sequence[int]) -> Iterator[tuple[_Part, int | None]]:
    """Give each part with the number at which the next one begins."""
    ends = [later for _, later in pairwise(starts)]
    yield from zip(parts, [*ends, None], strict=True)


def _events(parts: Sequence[_Part]) -> list[Event]:
    """Give the events of all parts, each as often as the part that has it most often has it."""
    most: Counter[Event] = Counter()
    for part in parts:
        most |= Counter(one for one in part.recording.events if one.kind is not EventKind.END)
    return sorted(most.elements(), key=lambda event: event.t_ns)


def _words(parts: Sequence[_Part], missing: dict[str, int]) -> str:
    names = ", ".join(part.recording.folder.name for part in parts)
    lost = "; ".join(f"{rows} rows of {key} are in none of them" for key, rows in missing.items())
    return f"put together of {len(parts)} parts: {names}" + (f"; {lost}" if lost else "")


def _end_ns(parts: Sequence[_Part]) -> int:
    return max(part.recording.end_ns for part in parts)


def _outcome(last: Recording) -> str:
    ends = [event.value for event in last.events if event.kind is EventKind.END]
    return ends[-1] if ends else "broken off"
