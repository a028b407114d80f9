"""Apart: the library's long work in a process of its own, so that no window waits for it.

Threads of one process take turns at running Python: while one judges, a window's would wait for
its turn dozens of times in one painting.
"""

from __future__ import annotations

import json
import queue
import subprocess
import sys
import threading
from collections.abc import Callable, Sequence
from pathlib import Path

from meterlog.model.errors import DiskFailed

_ASK_S = 0.1
_END_S = 5.0


def read_apart(index: Path, roots: Sequence[Path], progress: Callable[[float], None]) -> int:
    """Look through folders as :meth:`~.library.Library.refresh`, and give how many were read.

    Raises
    ------
    DiskFailed
        If the process does not start or breaks off, or the index can't be kept.
    """
    return _run("read", index, roots, 0, progress)


def judge_apart(
    index: Path, roots: Sequence[Path], most: int, progress: Callable[[float], None]
) -> int:
    """Judge as :meth:`~.library.Library.judge_missing`; raises as :func:`read_apart`."""
    return _run("judge", index, roots, most, progress)


def _run(
    task: str, index: Path, roots: Sequence[Path], most: int, progress: Callable[[float], None]
) -> int:
    command = [sys.executable, "-m", "meterlog.work.library.apart_process", task, str(index)]
    command += [str(most), *(str(root) for root in roots)]
    try:
        child = subprocess.Popen(
            command,
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            encoding="utf-8",
            # Ctrl-C is for the window, which ends it.
            start_new_session=True,
        )
    except OSError as error:
        raise _broken(str(error.strerror)) from error
    lines: queue.SimpleQueue[str | None] = queue.SimpleQueue()
    listener = threading.Thread(target=_listen, args=(child, lines), daemon=True)
    listener.start()
    try:
        return _heard(lines, progress)
    finally:
        _end(child)
        listener.join(_END_S)


def _listen(child: subprocess.Popen[str], lines: queue.SimpleQueue[str | None]) -> None:
    assert child.stdout is not None  # noqa: S101 - opened as a pipe above
    with child.stdout:
        for line in child.stdout:
            lines.put(line)
    lines.put(None)


def _heard(lines: queue.SimpleQueue[str | None], progress: Callable[[float], None]) -> int:
    part = 0.0
    while True:
        progress(part)
        try:
            line = lines.get(timeout=_ASK_S)
        except queue.Empty:
            continue
        said = {"broken": "it broke off"} if line is None else json.loads(line)
        if "part" in said:
            part = float(said["part"])
        elif "done" in said:
            return int(said["done"])
        else:
            raise _broken(str(said["broken"]))


def _end(child: subprocess.Popen[str]) -> None:
    if child.poll() is None:
        child.terminate()
    try:
        child.wait(_END_S)
    except subprocess.TimeoutExpired:
        child.kill()
        child.wait()


def _broken(why: str) -> DiskFailed:
    return DiskFailed(
        f"can't go on: {why}",
        subject="reading and judging recordings",
        remedy="Recordings are not touched by this; turn to the page again to try once more.",
    )
