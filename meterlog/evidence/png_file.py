"""PngFile: a picture as a file that is there whole or not at all."""

from __future__ import annotations

import contextlib
from pathlib import Path

from PySide6.QtCore import QBuffer, QByteArray, QIODevice
from PySide6.QtGui import QImage, QImageWriter

from meterlog.model.errors import EvidenceError


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
        If it can't be written; nothing is left then.
    """
    # In memory first: of a disk that is full Qt says little, and may not even notice.
    packed = QBuffer()
    packed.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QImageWriter(packed, QByteArray(b"png"))
    if not writer.write(image):
        raise _cannot(path, writer.errorString())
    content = packed.data().data()
    try:
        path.write_bytes(content)
    except OSError as error:
        with contextlib.suppress(OSError):
            path.unlink(missing_ok=True)
        raise _cannot(path, error.strerror or str(error)) from error
    return path


def _cannot(path: Path, why: str) -> EvidenceError:
    return EvidenceError(
        f"the picture can't be written: {why}.",
        subject=str(path),
        remedy="Check that the folder exists and has room.",
    )
