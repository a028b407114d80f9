"""Passing: whether a recording that could not be judged may be judged another time as it stands."""

from __future__ import annotations

import errno

from meterlog.work.screening.fetching import FetchFailed

_LASTING = frozenset(
    {
        *(errno.ENOENT, errno.ENOTDIR, errno.EISDIR, errno.EINVAL),
        *(errno.EFBIG, errno.ELOOP, errno.ENAMETOOLONG),
    }
)
"""What lies in the recording itself; that it is put right shows in its key."""


def may_pass(error: BaseException) -> bool:
    """Tell whether what was raised has nothing to do with what the recording holds.

    Rights, a disk or share that fails, a temporary folder that is full, no memory: none of them
    changes a file of the recording as it comes or goes, so that no key shows it.
    """
    one: BaseException | None = error
    while one is not None:
        if isinstance(one, FetchFailed | MemoryError):
            return True
        if isinstance(one, OSError) and one.errno not in _LASTING:
            return True
        one = one.__cause__
    return False
