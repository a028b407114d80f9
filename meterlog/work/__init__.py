"""Work: one job's work put together. The commands and the window share it.

Two modules are imported by their own names, because they bring the whole export with them, which
a window has no need of at its start: :mod:`meterlog.work.demo`, the demo job, and
:mod:`meterlog.work.evidence_folder`, tables and picture of one recording.
"""

from meterlog.work.live_tail import LiveTail
from meterlog.work.review import review_folder
from meterlog.work.run import Run
from meterlog.work.run_status import RunStatus
from meterlog.work.schedule import Schedule
from meterlog.work.shelf import fresh_folder, recordings_folder
from meterlog.work.wiring import Wiring, choose_meters, role_named

__all__ = [
    "LiveTail",
    "Run",
    "RunStatus",
    "Schedule",
    "Wiring",
    "choose_meters",
    "fresh_folder",
    "recordings_folder",
    "review_folder",
    "role_named",
]
