"""PyramidHead: what an envelope pyramid was made from, so that it is never taken for another's."""

from __future__ import annotations

import hashlib
import json
import os
from dataclasses import asdict, dataclass
from pathlib import Path

from meterlog.profile.plain_file import open_plain
from meterlog.recording.append_file import write_aside

NAME = "head.json"
VERSION = 1
_MOST_BYTES = 65_536
_MOST_LEVELS = 20


class PyramidUnusable(Exception):
    """The pyramid is missing, torn, damaged, or made from other data. It can be made anew."""


@dataclass(frozen=True, slots=True)
class PyramidHead:
    """What is written once a pyramid is whole.

    Attributes
    ----------
    recording_id, source : str
        Whose readings they are.
    channels, rows, batches : int
    records : tuple of int
        Records of each level.
    left_out : int
        Batches that did not match their checksum when it was made, and are not in it.
    stream_bytes, stream_mtime_ns : int
        Of the readings' file when it was made.
    crcs : str
        SHA-256 over the checksums of all batches in it, as their heads have them.
    """

    recording_id: str
    source: str
    channels: int
    rows: int
    batches: int
    records: tuple[int, ...]
    left_out: int
    stream_bytes: int
    stream_mtime_ns: int
    crcs: str

    @property
    def salt(self) -> int:
        """What the checks of all its records begin with."""
        return salt_of(self.recording_id, self.source)

    @property
    def is_possible(self) -> bool:
        """Tell whether the counts are counts."""
        counts = (
            *(self.channels, self.rows, self.batches, self.left_out),
            *(self.stream_bytes, self.stream_mtime_ns, *self.records),
        )
        return (
            all(type(one) is int and 0 <= one < 1 << 62 for one in counts)
            and all(isinstance(one, str) for one in (self.recording_id, self.source, self.crcs))
            and len(self.records) <= _MOST_LEVELS
        )

    def write(self, folder: Path) -> None:
        """Write it, all or nothing.

        Raises
        ------
        OSError
            If the disk does not take it.
        """
        said = json.dumps({"version": VERSION, **asdict(self)}, sort_keys=True)
        whole = {"said": said, "sha256": hashlib.sha256(said.encode()).hexdigest()}
        write_aside(folder / NAME, json.dumps(whole).encode())

    @classmethod
    def read(cls, folder: Path) -> PyramidHead:
        """Read the head of the pyramid in a folder.

        Raises
        ------
        PyramidUnusable
            If there is none or it is not as it was written.
        """
        try:
            with open_plain(folder / NAME) as stream:
                whole = json.loads(stream.read(_MOST_BYTES))
            said = whole["said"]
            if hashlib.sha256(said.encode()).hexdigest() != whole["sha256"]:
                raise PyramidUnusable("its head is damaged")
            fields = json.loads(said)
            if fields.pop("version") != VERSION:
                raise PyramidUnusable("it was written by another version")
            head = cls(**{**fields, "records": tuple(fields["records"])})
        except (OSError, ValueError, TypeError, KeyError, AttributeError, RecursionError) as error:
            raise PyramidUnusable("there is none, or its head can't be read") from error
        if not head.is_possible:
            raise PyramidUnusable("its head says what can't be")
        return head


def salt_of(recording_id: str, source: str) -> int:
    """Give a number that differs between recordings and between their instruments."""
    digest = hashlib.sha256(f"{recording_id}\n{source}".encode()).digest()
    return int.from_bytes(digest[:8], "little")


def stream_state(path: Path) -> tuple[int, int]:
    """Give length and time of change of a readings' file.

    Raises
    ------
    OSError
        If it is not there.
    """
    found = os.stat(path)  # noqa: PTH116 - one call for both
    return found.st_size, found.st_mtime_ns
