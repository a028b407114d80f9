"""Judge and check a very long recording; print seconds and grown MB of both (run by memory.py)."""

import sys
import time
from pathlib import Path

from resident import Watch

from meterlog.evidence import verify_folder
from meterlog.work import review_folder

folder, watch, begun = Path(sys.argv[1]), Watch(), [time.perf_counter()]


def tell(part):
    if part > 0.01 and len(begun) == 1:
        begun.append(part)
        watch.begin()


review_folder(folder, progress=tell)
print(time.perf_counter() - begun[0], watch.grew_mb)
start = time.perf_counter()
if not verify_folder(folder).intact:
    raise SystemExit("the recording is not intact")
print(time.perf_counter() - start, watch.grew_mb)
