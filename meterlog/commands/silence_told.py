"""SilenceTold: cries out, once, that a meter gives no readings any more; and that it does again."""

from __future__ import annotations

import sys

from meterlog.commands.terminal import Progress, remark
from meterlog.work import RunStatus


class SilenceTold:
    """Says when a meter falls silent while a recording runs; a terminal rings its bell."""

    def __init__(self) -> None:
        self._silent: set[str] = set()
        self._bell = sys.stderr.isatty()

    def tell(self, status: RunStatus, progress: Progress) -> None:
        """Look at the meters.

        Parameters
        ----------
        status : RunStatus
        progress : Progress
            Taken away before a line is written.
        """
        for meter in status.meters:
            if meter.alive and meter.key in self._silent:
                self._silent.remove(meter.key)
                progress.done()
                remark(f"readings from {meter.key} again")
            elif not meter.alive and meter.key not in self._silent:
                self._silent.add(meter.key)
                progress.done()
                words = meter.message or "none has come"
                remark(f"NO READINGS FROM {meter.key}: {words}", bell=self._bell)
