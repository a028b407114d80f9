"""CheckProgress: how far the check of a recording is; its files are hashed, then read."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from pathlib import Path

from meterlog.recording import Recording
from meterlog.recording.bag import sha256_of

_HASHED = 0.5
"""Part of the work: a byte is hashed about as fast as it is read and its checksum compared."""

Tell = Callable[[float], None]


def nobody(part: float) -> None:
    """Tell nobody."""
    del part


class CheckProgress:
    """Does the two things of a check that take long, and tells of them as they go on.

    Parameters
    ----------
    tell : callable
        Called with the part done, 0 to 1, many times a second; what it raises ends the check.
    """

    def __init__(self, tell: Tell) -> None:
        self._tell = tell
        self._bytes, self._done = 1, 0

    def expect(self, files: Iterable[Path]) -> None:
        """Take note of what is going to be hashed."""
        self._bytes = max(sum(path.stat().st_size for path in files if path.is_file()), 1)

    def sha256_of(self, path: Path) -> str:
        """Give a file's SHA-256 as 64 lower-case hexadecimal digits.

        Raises
        ------
        OSError
            If it can't be read.
        """
        return sha256_of(path, self._hashed)

    def _hashed(self, count: int) -> None:
        self._done += count
        self._tell(_HASHED * min(self._done / self._bytes, 1.0))

    def read(self, recording: Recording) -> tuple[str, ...]:
        """Read all of a recording and give its damage.

        Raises
        ------
        RecordingUnreadable
            If a file can't be read.
        """
        damage = recording.check(lambda part: self._tell(_HASHED + (1.0 - _HASHED) * part))
        self._tell(1.0)
        return damage
