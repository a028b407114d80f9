"""Memory: write a recording, read it, mend it, seal it, import one."""

from meterlog.recording.circuit_files import keep_circuit, kept_circuit
from meterlog.recording.envelope import Columns, Envelope
from meterlog.recording.events_file import MARKS, parse_events_csv
from meterlog.recording.recorder import Recorder
from meterlog.recording.recording import Recording
from meterlog.recording.sealing import find_unsealed, seal
from meterlog.recording.trace_fit import events_outside
from meterlog.recording.trace_import import UNDATED, ImportRequest, import_trace

__all__ = [
    "MARKS",
    "UNDATED",
    "Columns",
    "Envelope",
    "ImportRequest",
    "Recorder",
    "Recording",
    "events_outside",
    "find_unsealed",
    "import_trace",
    "keep_circuit",
    "kept_circuit",
    "parse_events_csv",
    "seal",
]
