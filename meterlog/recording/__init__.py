"""Memory: write a recording, read it, mend it, seal it, import one."""

from meterlog.model import UNDATED
from meterlog.recording.about_text import about_bytes
from meterlog.recording.circuit_files import keep_circuit, kept_circuit, kept_circuits
from meterlog.recording.defused_text import as_written, defused
from meterlog.recording.edits_file import kept_edits
from meterlog.recording.envelope import Columns, Envelope
from meterlog.recording.events_file import MARKS, parse_events_csv
from meterlog.recording.joining import Joined, join_parts
from meterlog.recording.moving_recorder import MovingRecorder
from meterlog.recording.pyramid import Pyramid
from meterlog.recording.pyramid_head import PyramidUnusable
from meterlog.recording.pyramid_kept import (
    drop_pyramid,
    has_many_rows,
    kept_pyramid,
    make_pyramid,
)
from meterlog.recording.recorder import Recorder, refuse_taken
from meterlog.recording.recording import Recording
from meterlog.recording.sealing import find_unsealed, seal
from meterlog.recording.table_metadata import (
    EDITS_NAME,
    HEAD_NAME,
    HEAD_PROPERTY,
    METADATA_ENDING,
    PART_NAME,
)
from meterlog.recording.tables_import import ExportRequest, import_export
from meterlog.recording.trace_fit import events_outside
from meterlog.recording.trace_import import ImportRequest, import_trace

__all__ = [
    "EDITS_NAME",
    "HEAD_NAME",
    "HEAD_PROPERTY",
    "MARKS",
    "METADATA_ENDING",
    "PART_NAME",
    "UNDATED",
    "Columns",
    "Envelope",
    "ExportRequest",
    "ImportRequest",
    "Joined",
    "MovingRecorder",
    "Pyramid",
    "PyramidUnusable",
    "Recorder",
    "Recording",
    "about_bytes",
    "as_written",
    "defused",
    "drop_pyramid",
    "events_outside",
    "find_unsealed",
    "has_many_rows",
    "import_export",
    "import_trace",
    "join_parts",
    "keep_circuit",
    "kept_circuit",
    "kept_circuits",
    "kept_edits",
    "kept_pyramid",
    "make_pyramid",
    "parse_events_csv",
    "refuse_taken",
    "seal",
]
