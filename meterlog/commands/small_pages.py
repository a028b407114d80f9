"""use_small_pages: the memory of a recording is what it uses, not what pages of 2 MB hold."""

from __future__ import annotations

import contextlib
import ctypes
import sys

_PR_SET_THP_DISABLE = 41
"""Of ``linux/prctl.h``."""


def use_small_pages() -> None:
    """Let the system make no huge pages of this program's memory, nor of that of its children.

    Arrow's allocator allows it, and the system then joins pages some time later, with those between
    them that nobody has touched: 4 MB of such pages were seen in a day's recording, none with this.
    Does nothing where the system has no such pages.

    Source
    ------
    prctl(2) of Linux, ``PR_SET_THP_DISABLE``; Documentation/admin-guide/mm/transhuge.rst.
    """
    if sys.platform != "linux":
        return
    with contextlib.suppress(OSError, AttributeError):
        ctypes.CDLL(None).prctl(_PR_SET_THP_DISABLE, 1, 0, 0, 0)
