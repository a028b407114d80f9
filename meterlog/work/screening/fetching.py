"""Fetching: a recording on a disk of this computer, for as long as it is being reviewed."""

from __future__ import annotations

import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from meterlog.model.errors import RecordingUnreadable
from meterlog.recording import layout
from meterlog.recording.bag import stays_inside
from meterlog.work.screening.places import Place, opened


@contextmanager
def at_hand(place: Place) -> Iterator[Path]:
    """Give the folder of a recording; one that lies elsewhere is fetched, and removed afterwards.

    Raises
    ------
    RecordingUnreadable
        If it can't be fetched, or names a file outside itself.
    """
    if place.local:
        yield Path(place.url)
        return
    with tempfile.TemporaryDirectory(prefix="meterlog-screen-") as made:
        folder = Path(made) / "recording"
        _fetch(place, folder)
        yield folder


def _fetch(place: Place, folder: Path) -> None:
    files, path = opened(place.url)
    try:
        names = [str(name) for name in files.find(path)]
        for name in names:
            inside = name[len(path) + 1 :]
            if not stays_inside(inside):
                raise RecordingUnreadable(
                    f"names a file outside itself: {inside}.",
                    subject=place.url,
                    remedy="Look at the recording where it lies before it is copied.",
                )
            target = folder / inside
            target.parent.mkdir(parents=True, exist_ok=True)
            files.get_file(name, str(target))
        edits = f"{path}.amendments.jsonl"
        if files.exists(edits):
            files.get_file(edits, str(folder.with_name(f"{folder.name}.amendments.jsonl")))
    except OSError as error:
        raise RecordingUnreadable(
            f"can't be fetched: {error.strerror or error}.",
            subject=place.url,
            remedy="Check the connection and your rights there, and screen once more.",
        ) from error
    if not (folder / layout.PAYLOAD).is_dir():
        raise RecordingUnreadable(
            "is not there any more.", subject=place.url, remedy="Screen once more."
        )
