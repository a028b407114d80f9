"""PngFile: a picture as a file that is there whole or not at all."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QBuffer, QByteArray, QIODevice
from PySide6.QtGui import QImage, QImageWriter

from meterlog.model.errors import EvidenceError
from meterlog.recording.append_file import write_aside


def write_png(image: QImage, path: Path) -> Path:
    """Write a picture as PNG.

    Parameters
    ----------
    image : QImage
    path : Path
        Its folder must exist; a file there is replaced.

    Returns
    -------
    Path
        ``path``.

    Raises
    ------
    EvidenceError
        If it can't be written; a file that was there stays as it was.
    """
    # In memory first: of a disk that is full Qt says little, and may not even notice.
    packed = QBuffer()
    packed.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QImageWriter(packed, QByteArray(b"png"))
    if not writer.write(image):
        raise _cannot(path, writer.errorString())
    try:
        write_aside(path, bytes(packed.data().data()))
    except OSError as error:
        raise _cannot(path, error.strerror or str(error)) from error
    return path


def _cannot(path: Path, why: str) -> EvidenceError:
    return EvidenceError(
        f"the picture can't be written: {why}.",
        subject=str(path),
        remedy="Check that the folder exists and has room.",
    )
