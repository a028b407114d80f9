"""PdfSink: takes the bytes of a PDF as it is saved, and lets nothing that goes wrong into qpdf.

The library is C++ and closes its files where an error can't be caught any more: what a full disk
says there ends the whole process. So it never sees a file of ours. A sink keeps the first error to
itself and takes the rest of the bytes for nothing; who saves asks afterwards.
"""

from __future__ import annotations

import contextlib
import io
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

from meterlog.profile.plain_file import open_plain

if TYPE_CHECKING:
    from typing import BinaryIO

    from typing_extensions import Buffer


class PdfSink(io.RawIOBase):
    """Something to save to, for the library: a stream that never fails.

    Parameters
    ----------
    take : callable
        Takes the next bytes. What it raises is kept, and it is not called again.
    """

    def __init__(self, take: Callable[[bytes], object]) -> None:
        super().__init__()
        self._take = take
        self._failed: BaseException | None = None

    def writable(self) -> bool:
        """Say so."""
        return True

    def write(self, content: Buffer, /) -> int:
        """Take bytes; always all of them."""
        piece = bytes(content)
        if self._failed is None:
            try:
                self._take(piece)
            # Anything: Ctrl-C comes in here, too, and must not end the process half-way either.
            except BaseException as error:  # noqa: BLE001
                self._failed = error
        return len(piece)

    def settle(self) -> None:
        """Raise what went wrong, if anything did. Called when the library is through."""
        if self._failed is not None:
            raise self._failed


@contextmanager
def file_sink(path: Path) -> Iterator[PdfSink]:
    """Give a sink that writes a file, and put it there whole once all went well.

    Parameters
    ----------
    path : Path
        What is there is replaced at the end, and stays as it is where anything goes wrong.

    Raises
    ------
    OSError
        If the file can't be written.
    """
    aside = path.with_name(f"{path.name}.saving")
    try:
        # Unbuffered: then no error can come later than the write that caused it.
        with aside.open("wb", buffering=0) as stream:
            sink = PdfSink(lambda content: _write_all(stream, content))
            yield sink
            sink.settle()
        aside.replace(path)
    except BaseException:
        with contextlib.suppress(OSError):
            aside.unlink(missing_ok=True)
        raise


def _write_all(stream: io.FileIO, content: bytes) -> None:
    """Write all of it: a file without a buffer may take a part, as a nearly full disk does."""
    left = memoryview(content)
    while left:
        left = left[stream.write(left) :]


class _Likeness:
    """Compares what comes with what a file holds."""

    def __init__(self, stream: BinaryIO) -> None:
        self._stream = stream
        self.so_far = True

    def take(self, content: bytes) -> None:
        if self.so_far:
            self.so_far = self._stream.read(len(content)) == content

    def whole(self) -> bool:
        """Tell whether all was alike and nothing is left; called at the end."""
        return self.so_far and not self._stream.read(1)


def is_what(save: Callable[[PdfSink], None], path: Path) -> bool:
    """Tell whether a file holds just the bytes that ``save`` gives; no copy of it is made.

    Parameters
    ----------
    save : callable
        Saves into a sink.
    path : Path

    Raises
    ------
    OSError
        If the file can't be read.
    """
    with open_plain(path) as stream:
        likeness = _Likeness(stream)
        sink = PdfSink(likeness.take)
        save(sink)
        sink.settle()
        return likeness.whole()
