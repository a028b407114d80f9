"""OwnSecret: a number that only this user's programs know, to tell their own caches by.

A cache that came with somebody else's recording might say anything of it; one whose checks were
made with another secret is none, and is made anew.
"""

from __future__ import annotations

import contextlib
import functools
import os
from pathlib import Path

_BYTES = 32
_NAME = "cache-secret"
_BINARY = getattr(os, "O_BINARY", 0)


@functools.cache
def own_secret() -> bytes:
    """Give 32 bytes, made when first wanted; only for this process where they can't be kept."""
    from platformdirs import user_data_path

    path = user_data_path("meterlog", appauthor=False) / "keys" / _NAME
    for _ in range(2):
        with contextlib.suppress(OSError):
            found = path.read_bytes() if path.is_file() else b""
            if len(found) == _BYTES:
                return found
        with contextlib.suppress(OSError):
            _make(path)
    return os.urandom(_BYTES)


def _make(path: Path) -> None:
    path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    descriptor = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL | _BINARY, 0o600)
    try:
        os.write(descriptor, os.urandom(_BYTES))
    finally:
        os.close(descriptor)
