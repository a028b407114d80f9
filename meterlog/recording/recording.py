"""Recording: a recording on the disk, sealed or not, whole or torn."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Literal

from meterlog.model import About, Block, Event, EventKind, Origin, RawBytes, standing
from meterlog.model.errors import RecordingUnreadable
from meterlog.profile.plain_file import read_plain
from meterlog.recording import layout
from meterlog.recording.about_text import parse_about
from meterlog.recording.event_chain import check_chain
from meterlog.recording.event_lines import parse_event_lines
from meterlog.recording.merge import merge
from meterlog.recording.raw_frames import RawFrames
from meterlog.recording.stream_reader import StreamReader

State = Literal["sealed", "unsealed", "recovered"]

ROWS = 65_536
RECOVERED = "Meterlog-Recovered"

_MOST_BYTES = 256 << 20
"""Of the head or of the events: a million marks take a half of it."""


class Recording:
    """Reads one recording. Every batch is checked each time it is read. Use :meth:`open`.

    Attributes
    ----------
    folder : Path
    about : About
    events : tuple of Event
        In time order; a mark that was withdrawn is among them, and so is what withdrew it.
    state : str
        ``sealed``; ``recovered``, sealed after the program that recorded it had died; or
        ``unsealed``.
    chained : bool
        True if the events carry the hash chain of :mod:`~meterlog.recording.event_chain`.
    """

    def __init__(self, folder: Path, about: About, state: State) -> None:
        self.folder = folder
        self.about = about
        self.state: State = state
        self.events: tuple[Event, ...] = ()
        self.chained = False
        self._damage: list[str] = []
        self._raw_damage: dict[str, str] = {}
        self._streams: dict[str, StreamReader] = {}

    @classmethod
    def open(cls, folder: Path) -> Recording:
        """Open a recording.

        Parameters
        ----------
        folder : Path

        Returns
        -------
        Recording
            Also when files were cut at any byte or bits were flipped: what is whole can be read,
            the rest is told by ``damage``.

        Raises
        ------
        RecordingUnreadable
            If there is no recording, or ``about.json`` can't be understood.
        """
        return cls._read(folder, readings=True)

    @classmethod
    def without_readings(cls, folder: Path) -> Recording:
        """Open a recording for what is known of it at once: ``about``, events and state.

        The readings of a long recording take seconds to be found; nothing gives any here.

        Raises
        ------
        RecordingUnreadable
            As :meth:`open`.
        """
        return cls._read(folder, readings=False)

    @classmethod
    def _read(cls, folder: Path, *, readings: bool) -> Recording:
        if not layout.holds_recording(folder):
            raise RecordingUnreadable(
                f"holds no recording: there is no {layout.ABOUT}.",
                subject=str(folder),
                remedy="Give the folder of one recording.",
            )
        subject = folder / layout.ABOUT
        head = _read(subject)
        about, damage = parse_about(head, str(subject))
        recording = cls(folder, about, _state(folder))
        recording._damage += damage
        recording._load_events(head)
        if readings:
            recording._load_streams()
            recording._check_end()
        return recording

    def _load_events(self, head: bytes) -> None:
        path = self.folder / layout.EVENTS
        if not path.is_file():
            self._damage.append(f"{layout.EVENTS}: is missing.")
            return
        content = _read(path)
        self.events, damage = parse_event_lines(content, layout.EVENTS)
        chain = check_chain(content, head)
        self.chained = chain.chained
        self._damage += (*damage, *chain.breaks)

    def _load_streams(self) -> None:
        for instrument in self.about.instruments:
            name = layout.arrows(instrument.key)
            if (self.folder / name).is_file():
                stream = StreamReader(self.folder / name, name, instrument)
                self._streams[instrument.key] = stream
                if self.is_ended and not stream.is_ended and not stream.damage:
                    self._damage.append(f"{name}: its end is missing.")
            else:
                self._damage.append(f"{name}: is missing.")

    def _check_end(self) -> None:
        # The chain can't tell a cut between two lines at its end; the readings can.
        streams = self._streams.values()
        closed = bool(streams) and all(stream.is_ended for stream in streams)
        told = any(text.startswith(layout.EVENTS) for text in self._damage)
        kept = self.chained or not self.events
        if kept and closed and not self.is_ended and not told:
            self._damage.append(
                f"{layout.EVENTS}: its last lines are missing: the readings were closed in good "
                "order, and no end is written."
            )

    @property
    def is_ended(self) -> bool:
        """True if the recording was closed, and not merely broken off."""
        return any(event.kind is EventKind.END for event in self.events)

    @property
    def standing(self) -> tuple[Event, ...]:
        """The events without the marks that were withdrawn: what is judged and drawn."""
        return standing(self.events)

    @property
    def damage(self) -> tuple[str, ...]:
        """What is torn, damaged or missing, as far as it has been read; empty when nothing."""
        found = [text for stream in self._streams.values() for text in stream.damage]
        return (*self._damage, *found, *self._raw_damage.values())

    def damage_of(self, source: str) -> tuple[str, ...]:
        """Tell what is torn or damaged in an instrument's readings, as far as it has been read.

        Raises
        ------
        KeyError
            If there is no such instrument.
        """
        stream = self._stream(source)
        return () if stream is None else stream.damage

    @property
    def end_ns(self) -> int:
        """Time of the last row or event, nanoseconds since the recording's zero."""
        last = [stream.last_ns or 0 for stream in self._streams.values()]
        return max([0, *last, *(event.t_ns for event in self.events)])

    @property
    def length_ns(self) -> int:
        """How long it is, nanoseconds: to its last row or event.

        Recorded ones begin at zero. The zero of a trace from elsewhere is that of its column of
        time, which may lie long before: it begins with its first row or event.
        """
        if self.about.origin is not Origin.IMPORTED:
            return self.end_ns
        rows = [next(iter(self.blocks(key)), None) for key in self._streams]
        begins = [int(block.t_ns[0]) for block in rows if block is not None]
        begins += [event.t_ns for event in self.events if event.kind is not EventKind.END]
        return self.end_ns - min(begins, default=0)

    def rows(self, source: str) -> int:
        """Count the rows of an instrument.

        Raises
        ------
        KeyError
            If there is no such instrument.
        """
        stream = self._stream(source)
        return 0 if stream is None else stream.rows

    def blocks(self, source: str, rows: int = ROWS) -> Iterator[Block]:
        """Give an instrument's readings in order; memory stays bounded.

        Parameters
        ----------
        source : str
            Key of the instrument.
        rows : int
            At most this many a Block.

        Returns
        -------
        iterator of Block
            Without the batches that fail their checksum; ``damage`` names those.

        Raises
        ------
        KeyError
            If there is no such instrument.
        RecordingUnreadable
            While iterating, if the file can't be read any more.
        """
        stream = self._stream(source)
        return iter(()) if stream is None else stream.blocks(rows)

    def numbered(self, source: str) -> Iterator[tuple[int, Block]]:
        """Give an instrument's readings batch by batch, each with the number of its first row.

        Rows are numbered as they were written: what is damaged or missing keeps its numbers.

        Raises
        ------
        KeyError
            If there is no such instrument.
        RecordingUnreadable
            While iterating, if the file can't be read any more.
        """
        stream = self._stream(source)
        return iter(()) if stream is None else stream.numbered()

    def between(self, source: str, start_ns: int, end_ns: int) -> Iterator[Block]:
        """Give an instrument's readings of a stretch, both ends included, without the rest.

        Raises
        ------
        KeyError
            If there is no such instrument.
        RecordingUnreadable
            While iterating, if the file can't be read any more.
        """
        stream = self._stream(source)
        return iter(()) if stream is None else stream.between(start_ns, end_ns)

    def items(self) -> Iterator[Block | Event]:
        """Give all readings and events merged by time.

        Returns
        -------
        iterator of Block or Event
            An event comes after all rows before its time and before all rows at or after it.
            Marks that were withdrawn are left out.

        Raises
        ------
        RecordingUnreadable
            While iterating, if a file can't be read any more.
        """
        # What is typed comes one by one, as it did when it was recorded: a reading that comes
        # among many in one Block would come late beside those of other instruments.
        sources = [
            self.blocks(instrument.key, 1 if instrument.typed else ROWS)
            for instrument in self.about.instruments
        ]
        return merge(sources, self.standing)

    def raw(self, source: str) -> Iterator[RawBytes]:
        """Give the bytes as an instrument sent them.

        Yields
        ------
        RawBytes
            None at all when they were not kept.

        Raises
        ------
        KeyError
            If there is no such instrument.
        RecordingUnreadable
            If the file can't be read.
        """
        self._stream(source)
        name = layout.raw(source)
        if not (self.folder / name).is_file():
            return
        frames = RawFrames(self.folder / name, source, name)
        try:
            yield from frames.read()
        except OSError as error:
            raise _cannot_read(self.folder / name, error) from error
        if frames.damage:
            self._raw_damage[source] = frames.damage

    def check(self, told: Callable[[float], object] | None = None) -> tuple[str, ...]:
        """Read everything and give all damage.

        Parameters
        ----------
        told : callable or None
            Called with the part that is read, 0 to 1, many times a second; what it raises ends it.

        Returns
        -------
        tuple of str
            As ``damage``, complete.

        Raises
        ------
        RecordingUnreadable
            If a file can't be read.
        """
        keys = [one.key for one in self.about.instruments]
        streams = [stream(key) for key in keys for stream in (self.blocks, self.raw)]
        end_ns = max(self.end_ns, 1)
        for place, stream in enumerate(streams):
            for item in stream:
                if told is not None:
                    at_ns = int(item.t_ns[-1]) if isinstance(item, Block) else item.t_ns
                    told((place + min(max(at_ns / end_ns, 0.0), 1.0)) / len(streams))
        return self.damage

    def _stream(self, source: str) -> StreamReader | None:
        if source not in {instrument.key for instrument in self.about.instruments}:
            raise KeyError(source)
        return self._streams.get(source)


def _state(folder: Path) -> State:
    if not layout.is_sealed(folder):
        return "unsealed"
    info = folder / layout.BAG_INFO
    text = _read(info).decode("utf-8", "replace") if info.is_file() else ""
    return "recovered" if re.search(rf"^{RECOVERED}: true\r?$", text, re.MULTILINE) else "sealed"


def _read(path: Path) -> bytes:
    try:
        return read_plain(path, _MOST_BYTES)
    except OSError as error:
        raise _cannot_read(path, error) from error


def _cannot_read(path: Path, error: OSError) -> RecordingUnreadable:
    return RecordingUnreadable(
        f"can't be read: {error.strerror}.",
        subject=str(path),
        remedy="Check that the disk is there and that you may read it.",
    )
