"""One very long recording for all benchmarks that need it, made once in a process of its own.

``METERLOG_LONG`` names a folder to keep it in; without it, it is made anew and removed at the end.
"""

from __future__ import annotations

import atexit
import functools
import os
import shutil
import subprocess
import sys
import tempfile
from dataclasses import dataclass
from pathlib import Path

from meterlog.recording import PyramidUnusable, Recording, kept_pyramid

ROWS = 250_000_000
"""Of 4 channels: 1e9 samples, some 10.5 GB."""
FEWER = 25_000_000
_BYTES_A_ROW = 43
_HERE = Path(__file__).parent


@dataclass(frozen=True)
class Long:
    """The recording, and by how much the process that recorded it grew, in MB (0: not known)."""

    folder: Path
    rows: int
    grew_mb: float

    @property
    def samples(self) -> str:
        """How many samples, in words."""
        return f"{4 * self.rows:.0e}".replace("+0", "")


def child(name: str, *words: object) -> list[float]:
    """Run one of the scripts beside this file and give the numbers that it prints."""
    ran = subprocess.run(
        [sys.executable, str(_HERE / name), *map(str, words)],
        check=True,
        env={**os.environ, "QT_QPA_PLATFORM": "offscreen"},
        capture_output=True,
        text=True,
    )
    return [float(word) for word in ran.stdout.split()]


def _has_pyramid(folder: Path) -> bool:
    """Tell whether it was made by this user and this version of the program."""
    about = Recording.without_readings(folder).about
    try:
        kept_pyramid(folder, about, about.instruments[0])
    except PyramidUnusable:
        return False
    return True


@functools.cache
def long_recording() -> Long:
    """Make it; a tenth of it where the disk has no room for all."""
    kept = os.environ.get("METERLOG_LONG")
    place = Path(kept or tempfile.mkdtemp(prefix="meterlog-long-"))
    if not kept:
        atexit.register(shutil.rmtree, place, ignore_errors=True)
    for rows in (ROWS, FEWER):
        folder = place / f"of-{rows}"
        if (folder / "bagit.txt").is_file() and _has_pyramid(folder):
            return Long(folder, rows, 0.0)
    room = shutil.disk_usage(place if place.is_dir() else place.parent).free
    rows = ROWS if room > 1.5 * ROWS * _BYTES_A_ROW else FEWER
    folder = place / f"of-{rows}"
    shutil.rmtree(folder, ignore_errors=True)
    place.mkdir(parents=True, exist_ok=True)
    (grew_mb,) = child("recording_long.py", folder, rows)
    return Long(folder, rows, grew_mb)
