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
from meterlog.work.sensor_words import SensorWords, role_named
from meterlog.work.shelf import fresh_folder, recordings_folder
from meterlog.work.typed_reading import parse_reading, reading_words
from meterlog.work.wiring import Wiring, choose_meters
from meterlog.work.zeros import KeptZeros

__all__ = [
    "KeptZeros",
    "LiveTail",
    "Run",
    "RunStatus",
    "Schedule",
    "SensorWords",
    "Wiring",
    "choose_meters",
    "fresh_folder",
    "parse_reading",
    "reading_words",
    "recordings_folder",
    "review_folder",
    "role_named",
]
