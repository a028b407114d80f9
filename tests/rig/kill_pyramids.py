"""Works on the envelope cache that are killed: it is right or not used, and readings stay whole."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import numpy as np
from kill_models import ABOUT, numbered, numbers_in

from meterlog.recording import (
    Pyramid,
    PyramidUnusable,
    Recorder,
    kept_pyramid,
    layout,
    make_pyramid,
)

Tell = Callable[[int], None]
_INSTRUMENT = ABOUT.instruments[0]
_ROWS, _BATCH = 300_000, 5_000
"""More than are kept without a pyramid."""


class PyramidMaking:
    """A pyramid is made of a recording that has none, again and again."""

    source: Path | None = None

    def prepare(self, place: Path) -> None:
        """Make the recording, once for all, and a copy of it."""
        if PyramidMaking.source is None or not PyramidMaking.source.exists():
            PyramidMaking.source = place.parents[1] / "many-rows"
            _record(PyramidMaking.source, lambda _: None)
        self.folder = place / "run"
        shutil.copytree(PyramidMaking.source, self.folder)

    def act(self, tell: Tell) -> None:
        """Make it and say so, without end."""
        for number in range(1_000_000):
            if make_pyramid(self.folder, ABOUT, _INSTRUMENT) is None:
                raise RuntimeError("none could be made")
            tell(number + 1)

    def check(self, told: list[int]) -> list[str]:
        """Find one that is right, or none; then it can be made, and nothing else is left."""
        wrong = _wrong_pyramid(self.folder)
        made = make_pyramid(self.folder, ABOUT, _INSTRUMENT)
        wrong += ["can't be made"] if made is None else _wrong_extremes(made)
        left = [path.name for path in (self.folder / layout.CACHE).iterdir()]
        wrong += [] if left == [_INSTRUMENT.key] else [f"left behind: {left}"]
        return wrong + numbers_in(self.folder, _ROWS, _ROWS)


class PyramidRecording:
    """A recorder keeps the pyramid while so much comes that it is written."""

    def prepare(self, place: Path) -> None:
        """Say where."""
        self.folder = place / "run"

    def act(self, tell: Tell) -> None:
        """Record."""
        _record(self.folder, tell)

    def check(self, told: list[int]) -> list[str]:
        """Find what was handed over, and a pyramid only of a recording that was ended."""
        if not layout.holds_recording(self.folder):
            return [] if not told else ["the recording is gone"]
        if not (self.folder / layout.arrows(_INSTRUMENT.key)).exists():
            return numbers_in(self.folder, max(told, default=0), 0)  # had just begun
        wrong = _wrong_pyramid(self.folder)
        made = make_pyramid(self.folder, ABOUT, _INSTRUMENT)
        wrong += [] if made is None else _wrong_extremes(made)
        return wrong + numbers_in(self.folder, max(told, default=0))


def _record(folder: Path, tell: Tell) -> None:
    recorder = Recorder.create(folder, ABOUT, keep_raw=False)
    for first in range(0, _ROWS, _BATCH):
        recorder.take(numbered(first, _BATCH))
        recorder.flush()
        tell(first + _BATCH)
    recorder.close()


def _wrong_pyramid(folder: Path) -> list[str]:
    try:
        return _wrong_extremes(kept_pyramid(folder, ABOUT, _INSTRUMENT))
    except (PyramidUnusable, FileNotFoundError):
        return []


def _wrong_extremes(pyramid: Pyramid) -> list[str]:
    """Ask for the extremes of a few hundred stretches: values rise with their numbers."""
    rows = pyramid.rows
    bounds = np.linspace(0, rows, 301).astype(np.int64)
    found = pyramid.pixels(bounds * 1_000_000, 0, rows)
    if not np.array_equal(found.low[0], bounds[:-1] * 0.25):
        return ["the least readings are not those that were written"]
    if not np.array_equal(found.high[0], (bounds[1:] - 1) * 0.25):
        return ["the greatest readings are not those that were written"]
    return []
