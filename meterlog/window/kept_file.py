"""KeptFile: a small JSON file with what the window remembers for the next time.

One that can't be read or written costs nothing but the convenience.
"""

from __future__ import annotations

import contextlib
import json
import secrets
from pathlib import Path
from typing import Any

from meterlog.profile.plain_file import read_plain

MOST_BYTES = 1 << 20


def read_kept(path: Path) -> dict[str, Any]:
    """Read what is kept; whoever asks looks at the kinds of the values.

    Raises
    ------
    OSError
        If there is none, it can't be read, or it is no plain file of at most :data:`MOST_BYTES`.
    ValueError
        If it is no JSON object.
    """
    try:
        found = json.loads(read_plain(path, MOST_BYTES))
    except RecursionError as error:
        raise ValueError("it is nested too deep") from error
    if isinstance(found, dict):
        return found
    raise ValueError("it is no JSON object")


def write_kept(path: Path, values: object) -> None:
    """Put values in the place of those before: all of the old file or all of the new one.

    Raises
    ------
    OSError
        If it can't be written; what was there is there still.
    """
    aside = path.with_name(f".{path.name}.{secrets.token_hex(4)}")
    path.parent.mkdir(parents=True, exist_ok=True)
    try:
        aside.write_text(json.dumps(values, ensure_ascii=True, indent=1), "utf-8")
        aside.replace(path)
    except OSError:
        with contextlib.suppress(OSError):
            aside.unlink(missing_ok=True)
        raise


def keep(path: Path, values: object) -> bool:
    """Write as :func:`write_kept`; False when the disk does not take it."""
    try:
        write_kept(path, values)
    except OSError:
        return False
    return True
