"""PyramidKept: where the pyramid of a recording lies, if it may be used, how it is made."""

from __future__ import annotations

import contextlib
import hashlib
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from meterlog.model import About, Instrument
from meterlog.recording import layout
from meterlog.recording.folder_aside import folder_aside
from meterlog.recording.pyramid import Pyramid
from meterlog.recording.pyramid_head import PyramidHead, PyramidUnusable, stream_state
from meterlog.recording.pyramid_writer import PyramidWriter, clear, pyramid_folder
from meterlog.recording.stream_reader import StreamReader

Progress = Callable[[float], None]


def has_many_rows(folder: Path, instrument: Instrument, rows: int) -> bool:
    """Tell whether an instrument's readings may be more than so many rows.

    Told by the length of the file: more of them do not fit into less.
    """
    try:
        size, _ = stream_state(folder / layout.arrows(instrument.key))
    except OSError:
        return False
    return size > rows * 8 * (1 + len(instrument.channels))


def drop_pyramid(folder: Path, about: About, source: str) -> None:
    """Take away the pyramid of an instrument, wherever it lies; never raises."""
    for place in (pyramid_folder(folder, source), _elsewhere(about, source)):
        clear(place)


def _elsewhere(about: About, source: str) -> Path:
    """Give where it lies when nothing can be written beside the readings."""
    from platformdirs import user_cache_path

    name = hashlib.sha256(about.recording_id.encode()).hexdigest()[:24]
    return user_cache_path("meterlog", appauthor=False) / "envelopes" / name / source


def kept_pyramid(folder: Path, about: About, instrument: Instrument) -> Pyramid:
    """Open the pyramid of one instrument.

    Parameters
    ----------
    folder : Path
        The recording.
    about : About
    instrument : Instrument

    Returns
    -------
    Pyramid

    Raises
    ------
    PyramidUnusable
        If there is none, or none that belongs to the readings as they are.
    OSError
        If a file can't be read.
    """
    stream = folder / layout.arrows(instrument.key)
    refusals: list[PyramidUnusable] = []
    for place in (pyramid_folder(folder, instrument.key), _elsewhere(about, instrument.key)):
        try:
            return _opened(place, stream, about, instrument)
        except PyramidUnusable as error:
            refusals.append(error)
    raise refusals[0]


def _opened(place: Path, stream: Path, about: About, instrument: Instrument) -> Pyramid:
    if place.parent.is_symlink():
        raise PyramidUnusable("where it should lie is a link")
    head = PyramidHead.read(place)
    expected = (about.recording_id, instrument.key, len(instrument.channels))
    if (head.recording_id, head.source, head.channels) != expected:
        raise PyramidUnusable("it belongs to other readings")
    _, changed_ns = stream_state(stream)
    if changed_ns != head.stream_mtime_ns:
        # Copied, or changed: the checksums in the heads of its batches tell.
        reader = StreamReader(stream, stream.name, instrument)
        if reader.crcs_digest() != head.crcs or head.left_out or reader.damage:
            raise PyramidUnusable("the readings' file was changed after it was made")
        head = replace(head, stream_mtime_ns=changed_ns)
        pyramid = Pyramid(place, stream, head)
        with contextlib.suppress(OSError):
            head.write(place)
        return pyramid
    return Pyramid(place, stream, head)


def make_pyramid(
    folder: Path, about: About, instrument: Instrument, progress: Progress = lambda _: None
) -> Pyramid | None:
    """Make a pyramid from the readings, beside them or else in the user's own cache.

    Parameters
    ----------
    folder : Path
    about : About
    instrument : Instrument
    progress : callable
        Called with the part done, 0 to 1; what it raises ends the work and leaves nothing behind.

    Returns
    -------
    Pyramid or None
        None where the readings are so few that none is kept, or where none can be kept anywhere.

    Raises
    ------
    RecordingUnreadable
        If the readings can't be read.
    """
    stream = folder / layout.arrows(instrument.key)
    reader = StreamReader(stream, layout.arrows(instrument.key), instrument)
    for place in (pyramid_folder(folder, instrument.key), _elsewhere(about, instrument.key)):
        try:
            if place.parent.parent != folder:
                place.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
            if place.parent.is_symlink():
                continue
            # What a program left that was killed at the same work goes first.
            with folder_aside(place) as work:
                whole = work / "whole"
                writer = PyramidWriter(
                    whole, about.recording_id, instrument.key, len(instrument.channels)
                )
                if _filled(writer, reader, stream, progress):
                    clear(place)
                    whole.replace(place)
                    return kept_pyramid(folder, about, instrument)
            if not writer.failed:
                with contextlib.suppress(OSError):  # others may be in it
                    place.parent.rmdir()
                return None
        except (OSError, PyramidUnusable):
            continue
    return None


def _filled(writer: PyramidWriter, reader: StreamReader, stream: Path, progress: Progress) -> bool:
    """Feed a writer with every sound batch; False if no pyramid came of it."""
    rows, done = max(reader.rows, 1), 0
    for place, block in reader.placed():
        if writer.failed:
            return False
        where = (place.offset, place.offset + place.body, place.end)
        writer.take(block.t_ns, block.values, where, place.crc)
        done += len(block)
        progress(min(done / rows, 1.0))
    return writer.finish(stream, len(reader.damage))
