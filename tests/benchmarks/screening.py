"""Figures of a screening of thousands: ``python tests/benchmarks/screening.py [--recordings N]``.

Not among those of ``make bench``: making the recordings takes minutes. Each invented recording
holds 50 s of three channels, 20 rows a second; of twenty one is of a dead motor, one simulated and
one damaged.
"""

from __future__ import annotations

import argparse
import json
import os
import resource
import statistics
import subprocess
import sys
import tempfile
import threading
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "rig"))
import shelf

_AFTER = (100, 1_000, 2_000)
_PAGE = os.sysconf("SC_PAGE_SIZE")


def _resident(pid: int) -> int:
    try:
        statm = Path(f"/proc/{pid}/statm").read_text(encoding="ascii")
        return int(statm.split()[1]) * _PAGE
    except (OSError, IndexError):
        return 0


def _children(pid: int) -> list[int]:
    found = Path(f"/proc/{pid}/task/{pid}/children").read_text(encoding="ascii").split()
    return [int(one) for one in found]


class Watch(threading.Thread):
    """Samples the memory of a screening and of each of its workers, by recordings done."""

    def __init__(self, child: subprocess.Popen[str], out: Path) -> None:
        super().__init__(daemon=True)
        self._child, self._out = child, out
        self.samples: list[tuple[int, int, int]] = []

    def run(self) -> None:
        """Sample until it ends: recordings kept, bytes of the largest worker, of the main one."""
        while self._child.poll() is None:
            parts = len(list((self._out / "parts").glob("*.parquet")))
            try:
                workers = [_resident(one) for one in _children(self._child.pid)]
            except OSError:
                break
            self.samples.append((parts * 8, max(workers, default=0), _resident(self._child.pid)))
            time.sleep(0.1)

    def after(self, recordings: int) -> tuple[float, float] | None:
        """Give MB of the largest worker and of the main process once so many were done."""
        later = [one for one in self.samples if recordings <= one[0] < recordings + 100]
        if not later:
            return None
        return tuple(round(max(one[k] for one in later) / 1e6, 1) for k in (1, 2))


def _used_s() -> float:
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


def screened(place: Path, out: Path, workers: int) -> tuple[float, dict[str, object], Watch]:
    """Screen in a process of its own; give seconds, what it said and its memory."""
    command = [sys.executable, "-m", "meterlog", "screen", str(place), "--out", str(out)]
    command += ["--workers", str(workers), "--json"]
    began_s = time.monotonic()
    child = subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True)
    watch = Watch(child, out)
    watch.start()
    said, _ = child.communicate()
    seconds = time.monotonic() - began_s
    watch.join()
    if child.returncode:
        raise RuntimeError(f"screening ended with {child.returncode}")
    return seconds, json.loads(said), watch


def main() -> int:
    """Measure and print one JSON object."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--recordings", type=int, default=2_000)
    parser.add_argument("--workers", type=int, nargs="+", default=[1, 2])
    options = parser.parse_args()
    with tempfile.TemporaryDirectory() as scratch:
        place = Path(scratch) / "shelf"
        shelf.fill(place, range(options.recordings))
        size = sum(one.stat().st_size for one in place.rglob("*") if one.is_file())
        found: dict[str, object] = {"recordings": options.recordings, "shelf_mb": size / 1e6}
        for turn, workers in enumerate(options.workers):
            out = Path(scratch) / f"out-{turn}"
            used_s = _used_s()
            seconds, said, watch = screened(place, out, workers)
            used_s = _used_s() - used_s
            found[f"turn_{turn}"] = {
                "workers": workers,
                "seconds": round(seconds, 1),
                "processor_seconds": round(used_s, 1),
                "recordings_a_second": round(options.recordings / seconds, 1),
                "worker_and_main_mb_after": {str(n): watch.after(n) for n in _AFTER},
                "outcomes": said["outcomes"],
                "table_mb": round((out / "findings.parquet").stat().st_size / 1e6, 2),
                "rows": said["findings"]["rows"],
            }
        again = [screened(place, out, workers)[0] for _ in range(3)]
        found["resumed_s"] = round(statistics.median(again), 2)
    print(json.dumps(found, indent=1))
    return 0


if __name__ == "__main__":
    sys.exit(main())
