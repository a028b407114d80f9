"""How long a recording is: a trace from elsewhere need not begin at the zero of its times."""

import pytest

from meterlog.recording import ImportRequest, Recording, import_trace

ASSIGN = (("motor-current", "amps"),)
HEAD = "t,amps\n"


def imported(folder, rows, events=None):
    (folder / "trace.csv").write_text(HEAD + rows)
    path = None
    if events is not None:
        path = folder / "events.csv"
        path.write_text(f"elapsed_s,kind,value\n{events}")
    return Recording.open(
        import_trace(ImportRequest(folder / "trace.csv", "t", ASSIGN, folder / "out", path))
    )


@pytest.mark.parametrize("zero_s", [0, 100, 1_761_353_990])
def test_a_trace_is_as_long_as_its_rows_whatever_its_column_of_time_counts_from(tmp_path, zero_s):
    rows = "".join(f"{zero_s + k / 10:.1f},3.25\n" for k in range(461))
    recording = imported(tmp_path, rows)
    assert recording.length_ns == 46_000_000_000
    assert recording.end_ns == zero_s * 1_000_000_000 + 46_000_000_000


def test_events_before_and_behind_its_rows_count(tmp_path):
    rows = "".join(f"{10 + k / 10:.1f},3.25\n" for k in range(11))
    recording = imported(tmp_path, rows, "9.5,speed,1\n11.5,speed,0\n")
    assert recording.length_ns == 2_000_000_000
