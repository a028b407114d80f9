"""ApartProcess: the process that :mod:`~meterlog.work.library.apart` starts; lines of JSON out."""

from __future__ import annotations

import json
import os
import sys
import time
from collections.abc import Sequence
from pathlib import Path

from meterlog.model.errors import MeterlogError
from meterlog.work.library.library import Library

_TELL_S = 0.1
_LESS_URGENT = 10


class _Teller:
    """Tells the part done; ends the process where nobody listens any more."""

    def __init__(self) -> None:
        self._told_s = float("-inf")

    def __call__(self, part: float) -> None:
        if time.monotonic() - self._told_s >= _TELL_S:
            self._told_s = time.monotonic()
            say(part=part)


def say(**told: object) -> None:
    """Write one line.

    Raises
    ------
    BrokenPipeError
        If whoever started this process has gone.
    """
    sys.stdout.write(f"{json.dumps(told)}\n")
    sys.stdout.flush()


def main(arguments: Sequence[str]) -> int:
    """Do one task: ``read`` or ``judge``, the index, how many at most, the folders."""
    task, index, most, *roots = arguments
    if hasattr(os, "nice"):
        os.nice(_LESS_URGENT)
    places = [Path(root) for root in roots]
    try:
        with Library(Path(index)) as library:
            if task == "read":
                done = library.refresh(places, _Teller()).read
            else:
                done = library.judge_missing(places, _Teller(), int(most))
    except MeterlogError as error:
        say(broken=str(error))
        return 1
    say(done=done)
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
