"""Facts: what the head of a recording and a job's card say, read without judging anything."""

from __future__ import annotations

import contextlib
import hashlib
import json
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from pathlib import Path

from meterlog.model import About, EventKind, Instrument, Origin
from meterlog.model.card_fields import FIELDS
from meterlog.model.errors import MeterlogError
from meterlog.model.job_card import PartIdentity, value_of
from meterlog.model.origin_mark import origin_mark
from meterlog.profile.files_below import files_below
from meterlog.profile.plain_file import open_plain, read_plain
from meterlog.recording import UNDATED, Recording, layout
from meterlog.recording.about_text import parse_about
from meterlog.recording.bag import oxum, read_info
from meterlog.recording.event_lines import parse_event_lines
from meterlog.recording.recording import RECOVERED
from meterlog.recording.writer_lock import is_being_written
from meterlog.work.amendment_count import count_path, is_there
from meterlog.work.amendments import amendments_path
from meterlog.work.job_cards import load_card
from meterlog.work.job_folder import CARD, Kept, Side, load_work
from meterlog.work.library.folded import folded
from meterlog.work.library.hit import (
    BEING_MADE,
    MENDED,
    SEALED,
    UNREADABLE,
    UNSEALED,
    Kind,
)
from meterlog.work.wholeness import one_part

_TAIL_BYTES = 65_536
_FIRST_YEAR = 1000
"""Of those that sort as text."""
_SLACK_NS = 2_000_000_000
"""Some disks keep times of change to two seconds."""


@dataclass(frozen=True, slots=True)
class Facts:
    """What is known of a folder without judging it; see :class:`~.hit.Hit` for the fields.

    Attributes
    ----------
    words : str
        All that a search looks into, folded.
    key : str
        Of the verdict: made from the seal and the edits on top; empty where there is no seal.
    belongs : tuple of Kept
        Of a job: its recordings.
    numbers : mapping of Side to str
        Of a job: the part numbers of the old and the new part by its card.
    """

    kind: Kind
    started: str = ""
    work_order: str = ""
    vehicle: str = ""
    part: str = ""
    technician: str = ""
    odometer: str = ""
    complaint: str = ""
    mark: str = ""
    duration_s: float | None = None
    instruments: str = ""
    state: str = ""
    trouble: str = ""
    words: str = ""
    key: str = ""
    belongs: tuple[Kept, ...] = field(default=())
    numbers: Mapping[Side, str] = field(default_factory=dict)


def recording_facts(folder: Path) -> Facts:
    """Read what a recording says of itself; what can't be read is told by the state."""
    try:
        about, damage = parse_about(read_plain(folder / layout.ABOUT), layout.ABOUT)
        sealed = layout.is_sealed(folder)
        info = _info(folder) if sealed else {}
        state = _state(folder, info, sealed=sealed)
        key, sizes = _key(folder) if sealed else ("", "")
        duration_s = _duration_s(folder, state, about.origin)
    except (MeterlogError, OSError) as error:
        return unreadable(folder, Kind.RUN, _words(error))
    changed = sealed and info.get("Payload-Oxum", sizes) != sizes
    trouble = [
        *damage,
        *filter(None, (one_part(folder),)),
        *(["not as it was sealed: check it with meterlog verify."] if changed else []),
    ]
    job = about.job
    kind = Kind.RUN if about.instruments else Kind.CIRCUIT
    titles = ", ".join(_meter(one) for one in about.instruments)
    mark = origin_mark(about)
    said = (
        *(folder.name, job.work_order, job.vehicle, job.part, job.technician, job.odometer),
        *(job.complaint, job.conditions, titles, mark, kind.value),
    )
    return Facts(
        kind,
        started=_started(about),
        work_order=job.work_order,
        vehicle=job.vehicle,
        part=job.part,
        technician=job.technician,
        odometer=job.odometer,
        complaint=job.complaint,
        mark=mark,
        duration_s=duration_s,
        instruments=titles,
        state=state,
        trouble=" ".join(trouble),
        words=folded("\n".join(said)),
        key=key,
    )


def job_facts(folder: Path) -> Facts:
    """Read a job's card and the list of what belongs to it; what can't be read is told."""
    trouble, belongs = "", tuple[Kept, ...]()
    try:
        card = load_card(folder / CARD)
        changed_s = (folder / CARD).stat().st_mtime
    except (MeterlogError, OSError) as error:
        return unreadable(folder, Kind.JOB, _words(error))
    try:
        belongs = load_work(folder).recordings
    except MeterlogError as error:
        trouble = _words(error)
    said = [value_of(card, one.key) for one in FIELDS if one.key != "photos"]
    parts = [_part(one) for one in (card.old_part, card.new_part)]
    return Facts(
        Kind.JOB,
        started=_here(changed_s),
        work_order=card.work_order,
        vehicle=card.vehicle,
        part=" → ".join(one for one in parts if one),
        technician=card.technician,
        odometer=card.odometer or card.hours,
        complaint=card.complaint,
        trouble=trouble,
        words=folded("\n".join((folder.name, Kind.JOB.value, *said))),
        belongs=belongs,
        numbers={Side.OLD: card.old_part.number, Side.NEW: card.new_part.number},
    )


def unreadable(folder: Path, kind: Kind, why: str) -> Facts:
    """Give the facts of a folder of which nothing more can be said than why."""
    return Facts(kind, state=UNREADABLE, trouble=why, words=folded(folder.name))


def _here(seconds: float) -> str:
    """Give a file's time in this place's; empty where it is none: a disk may keep any number."""
    try:
        local = datetime.fromtimestamp(seconds).astimezone()
    except (ValueError, OverflowError, OSError):
        return ""
    return local.strftime("%Y-%m-%dT%H:%M:%S") if local.year >= _FIRST_YEAR else ""


def _meter(one: Instrument) -> str:
    """Name a meter: as it said itself, or by its profile."""
    said = " ".join(word for word in (one.identity.maker, one.identity.model) if word)
    serial = f" {one.identity.serial}" if one.identity.serial else ""
    return f"{said or one.key}{serial}"


def _part(part: PartIdentity) -> str:
    return " ".join(word for word in (part.name, part.number, part.serial) if word)


def _started(about: About) -> str:
    if about.started_utc == UNDATED:
        return ""
    try:
        local = about.started_utc.astimezone(UTC) + timedelta(seconds=about.local_offset_s)
    except OverflowError:
        return ""
    return local.strftime("%Y-%m-%dT%H:%M:%S") if local.year >= _FIRST_YEAR else ""


def _info(folder: Path) -> dict[str, str]:
    path = folder / layout.BAG_INFO
    return read_info(read_plain(path)) if path.is_file() else {}


def _state(folder: Path, info: dict[str, str], *, sealed: bool) -> str:
    if sealed:
        return MENDED if info.get(RECOVERED) == "true" else SEALED
    return BEING_MADE if is_being_written(folder) else UNSEALED


def _key(folder: Path) -> tuple[str, str]:
    """Give the key of a sealed recording's verdict, and bytes and files as they are now.

    A copy has the same key. Where a file is younger than the seal its own times count, so that
    what was changed behind the seal's back is judged anew.
    """
    manifest = folder / layout.MANIFEST
    content = read_plain(manifest) if manifest.is_file() else b""
    sealed_ns = manifest.stat().st_mtime_ns if content else 0
    files = sorted(one for one in files_below(folder / layout.PAYLOAD) if one.is_file())
    stats = [(one.relative_to(folder).as_posix(), one.stat()) for one in files]
    seen = [
        [name, one.st_size, one.st_mtime_ns if one.st_mtime_ns > sealed_ns + _SLACK_NS else 0]
        for name, one in stats
    ]
    edits = amendments_path(folder)
    digest = hashlib.sha256(content)
    digest.update(json.dumps(seen).encode())
    for one in (edits, count_path(edits)):
        digest.update(read_plain(one) if is_there(one) and one.is_file() else b"")
    return digest.hexdigest(), oxum(sum(one.st_size for _, one in stats), len(stats))


def _duration_s(folder: Path, state: str, origin: Origin) -> float | None:
    """Give a recording's length: by its last event, or where it was cut off by its last reading.

    That of a trace from elsewhere does not begin at its zero.
    """
    if origin is Origin.IMPORTED and state != BEING_MADE:
        return Recording.open(folder).length_ns / 1e9
    path = folder / layout.EVENTS
    with contextlib.suppress(FileNotFoundError), open_plain(path) as stream:
        size = stream.seek(0, 2)
        stream.seek(max(size - _TAIL_BYTES, 0))
        events, _ = parse_event_lines(stream.read(), layout.EVENTS)
        ends = [event.t_ns for event in events if event.kind is EventKind.END]
        if ends:
            return ends[-1] / 1e9
    if state == BEING_MADE:
        return None
    return Recording.open(folder).length_ns / 1e9


def _words(error: MeterlogError | OSError) -> str:
    return str(error) if isinstance(error, MeterlogError) else (error.strerror or str(error))
