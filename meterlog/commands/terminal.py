"""What a command says: answers on standard output, everything else on standard error."""

from __future__ import annotations

import contextlib
import json
import shutil
import sys
import time
from collections.abc import Mapping, Sequence
from pathlib import Path

_BAR = 24
_BELL = "\a"
_TERMINAL_PERIOD_S = 0.1
_LINE_PERIOD_S = 10.0


def answer(text: str) -> None:
    """Write what was asked for; nothing in it steers the terminal.

    Raises
    ------
    BrokenPipeError
        If whoever read it has gone.
    DiskFailed
        If it can't be written where standard output goes.
    """
    from meterlog.model.visible_text import steerless

    try:
        sys.stdout.write(f"{steerless(text)}\n")
        sys.stdout.flush()
    except BrokenPipeError:
        raise
    except OSError as error:
        from meterlog.model.errors import DiskFailed

        raise DiskFailed(
            f"can't be written: {error.strerror}.",
            subject="standard output",
            remedy="Send it to a disk with free space.",
        ) from error


def answer_json(value: Mapping[str, object]) -> None:
    """Write what was asked for as one JSON object (RFC 8259: no NaN)."""
    utf_8 = (sys.stdout.encoding or "").lower().replace("-", "") == "utf8"
    from meterlog.model.visible_text import steerless_json

    answer(steerless_json(json.dumps(value, ensure_ascii=not utf_8, allow_nan=False, indent=2)))


def remark(text: str, *, bell: bool = False) -> None:
    """Tell the person something beside the answer; that nobody listens any more stops nothing.

    Parameters
    ----------
    text : str
        Nothing in it steers the terminal.
    bell : bool
        Have the terminal call whoever is in the room.
    """
    from meterlog.model.visible_text import steerless

    _beside(f"{_BELL if bell else ''}{steerless(text)}\n")


def _beside(text: str) -> None:
    # A recording goes on when the terminal that showed its progress is closed.
    with contextlib.suppress(OSError):
        sys.stderr.write(text)
        sys.stderr.flush()


def line_width() -> int:
    """Give how many characters of prose fit a line: those of the terminal, at most 100."""
    return min(100, shutil.get_terminal_size((100, 24)).columns) if sys.stdout.isatty() else 100


def table(head: Sequence[str], rows: Sequence[Sequence[str]]) -> str:
    """Give rows as text in columns two blanks apart, without trailing blanks; a line each."""
    from meterlog.model.visible_text import one_line

    lines = [tuple(head), *(tuple(map(one_line, row)) for row in rows)]
    widths = [max(len(line[column]) for line in lines) for column in range(len(head))]
    return "\n".join(
        "  ".join(cell.ljust(width) for cell, width in zip(line, widths, strict=True)).rstrip()
        for line in lines
    )


def short(path: Path) -> str:
    """Give a path as one would type it here: relative where it lies below this folder.

    As it stands where this folder has gone: what was made elsewhere is told all the same.
    """
    try:
        here = Path.cwd()
        full = path.absolute()
    except OSError:
        return named(path)
    return named(full.relative_to(here) if full.is_relative_to(here) else full)


def named(path: Path | str) -> str:
    """Give a path as it can stand in a line: whatever is in a name, it ends none."""
    from meterlog.model.visible_text import one_line

    return one_line(path)


class Progress:
    """Shows how far long work is: a bar that redraws itself on a terminal, else sparse lines.

    Parameters
    ----------
    task : str
        What is being done.
    """

    def __init__(self, task: str) -> None:
        self._task = task
        self._terminal = sys.stderr.isatty()
        self._period_s = _TERMINAL_PERIOD_S if self._terminal else _LINE_PERIOD_S
        self._drawn_s = time.monotonic()
        self._open = False

    def is_due(self) -> bool:
        """Tell whether the last line is old enough for a new one."""
        return time.monotonic() - self._drawn_s >= self._period_s

    def __call__(self, fraction: float) -> None:
        """Show ``fraction`` (0 to 1) of the work as done, if it is time to show anything."""
        self.bar(fraction, "")

    def note(self, text: str) -> None:
        """Show a line of words, for work without a known end."""
        if self.is_due():
            self._draw(text)

    def bar(self, fraction: float, text: str) -> None:
        """Show a bar with words after it."""
        if not self.is_due():
            return
        part = min(max(fraction, 0.0), 1.0)
        filled = round(part * _BAR)
        drawn = f"[{'#' * filled}{'.' * (_BAR - filled)}] " if self._terminal else ""
        self._draw(f"{drawn}{part:4.0%}  {text}")

    def done(self) -> None:
        """Take the bar away."""
        if self._open:
            _beside("\r\x1b[K")
            self._open = False

    def _draw(self, text: str) -> None:
        self._drawn_s = time.monotonic()
        if not self._terminal:
            remark(f"{self._task}: {text.strip()}")
            return
        # Cut: a line that wraps can't be redrawn by a carriage return.
        fits = max(1, min(80, shutil.get_terminal_size((80, 24)).columns) - 1)
        _beside(f"\r\x1b[K{f'{self._task}  {text}'[:fits]}")
        self._open = True
