"""A full disk, made by a limit on file sizes: told once, nothing good behind a torn piece."""

import json
import subprocess
import sys

import pytest

from meterlog.model import EventKind
from meterlog.recording import Recording

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="RLIMIT_FSIZE is POSIX")

CHILD = """
import json, resource, sys
from datetime import UTC, datetime
from pathlib import Path
import numpy as np
from meterlog.model import *
from meterlog.model.errors import DiskFailed
from meterlog.recording import Recorder

one = Instrument("m", "p", "x", (Channel("u", Quantity.VOLTAGE),))
about = About("id", datetime.now(UTC), 0, 0, "t", Origin.MEASURED, (one,))
recorder = Recorder.create(Path(sys.argv[1]), about)
limit = int(sys.argv[2])
resource.setrlimit(resource.RLIMIT_FSIZE, (limit, limit))
failures, taken = [], 0
for k in range(40):
    number = np.arange(k * 100, k * 100 + 100)
    try:
        recorder.take(Block("m", number, number[:, None] * 1.5, np.zeros((100, 1), np.uint8)))
        recorder.flush()
    except DiskFailed as error:
        failures.append(str(error))
    taken += 100
try:
    recorder.take(Event(4000, EventKind.TAP))
except DiskFailed as error:
    failures.append(str(error))
recorder.close()
print(json.dumps({
    "failures": failures, "failed": recorder.failed, "taken": taken,
    "rows": recorder.rows["m"], "lost": recorder.lost_rows,
}))
"""


@pytest.mark.parametrize("limit", [4096, 20_000, 20_001, 33_333])
def test_a_full_disk_is_told_once_and_everything_before_it_is_there(tmp_path, limit):
    folder = tmp_path / "run"
    done = subprocess.run(
        [sys.executable, "-c", CHILD, str(folder), str(limit)],
        capture_output=True,
        text=True,
        timeout=240,
        check=False,
    )
    assert done.stderr == ""
    said = json.loads(done.stdout)
    assert len(said["failures"]) == 1
    assert "m.arrows" in said["failures"][0]
    assert said["failed"] == said["failures"][0]
    assert said["rows"] + said["lost"] == said["taken"]
    assert said["lost"] > 0
    recording = Recording.open(folder)
    assert (folder / "data/m.arrows").stat().st_size == limit
    assert recording.rows("m") == said["rows"] > 0
    count = 0
    for block in recording.blocks("m"):
        assert block.values[:, 0].tolist() == [k * 1.5 for k in range(count, count + len(block))]
        count += len(block)
    assert count == said["rows"]
    assert "torn off" in recording.damage[0]
    # the small file of events still had room: it tells what happened, and the tap is in it
    kinds = [event.kind for event in recording.events]
    assert kinds == [EventKind.FAULT, EventKind.TAP, EventKind.END]


def test_a_folder_that_cannot_be_made_is_an_error_for_people(tmp_path):
    from meterlog.model.errors import DiskFailed, RecordingError
    from meterlog.recording import Recorder

    (tmp_path / "file").write_text("x")
    about = recording_head()
    with pytest.raises((DiskFailed, RecordingError)) as caught:
        Recorder.create(tmp_path / "file" / "run", about)
    assert caught.value.remedy


def recording_head():
    from datetime import UTC, datetime

    from meterlog.model import About, Origin

    return About("id", datetime.now(UTC), 0, 0, "t", Origin.MEASURED, ())
