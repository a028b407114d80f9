"""Record very many rows and print by how many MB the process grew (run by long_trace.py)."""

import sys
from pathlib import Path

from resident import Watch
from traces import about, fan_block

from meterlog.model import Block, Event, EventKind
from meterlog.recording import Recorder, seal

PART, BATCH = 2_500_000, 10_000
folder, rows = Path(sys.argv[1]), int(sys.argv[2])
part = fan_block(PART, 1e-4, 4)
recorder = Recorder.create(folder, about(1e-4, 4), keep_raw=False)
recorder.take(Event(0, EventKind.SPEED, "4"))
watch = Watch()
for done in range(0, rows, PART):
    if done == PART:
        watch.begin()  # once everything has been used that will be used
    for start in range(0, PART, BATCH):
        one = part.rows(start, start + BATCH)
        recorder.take(Block(one.source, one.t_ns + done * 100_000, one.values, one.flags))
recorder.close()
seal(folder)
print(watch.grew_mb)
