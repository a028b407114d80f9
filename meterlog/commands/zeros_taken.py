"""ZerosTaken: zeros taken one after the other while a recording runs, and what is said of it."""

from __future__ import annotations

from collections import deque
from collections.abc import Iterable

from meterlog.acquire import ZeroTaking
from meterlog.commands.terminal import Progress, remark
from meterlog.model import Role
from meterlog.model.errors import UsageError
from meterlog.work import Run


class ZerosTaken:
    """Takes zeros one after the other, and says how each went.

    Parameters
    ----------
    run : Run
        Started.
    roles : iterable of Role
        To begin with.
    """

    def __init__(self, run: Run, roles: Iterable[Role]) -> None:
        self._run = run
        self._wanted = deque(roles)
        self._taking: ZeroTaking | None = None

    @property
    def busy(self) -> bool:
        """True while one is being taken or waits."""
        return self._taking is not None or bool(self._wanted)

    def ask(self, role: Role) -> None:
        """Take the zero of ``role`` as soon as no other is being taken."""
        self._wanted.append(role)

    def go_on(self, progress: Progress) -> None:
        """Begin what waits; say how the one before went."""
        if self._taking is not None:
            if not self._taking.done:
                return
            progress.done()
            remark(str(self._taking))
            self._taking = None
        if not self._wanted:
            return
        role = self._wanted.popleft()
        progress.done()
        try:
            self._taking = self._run.take_zero(role)
        except UsageError as error:
            remark(str(error))
        else:
            remark(str(self._taking))
