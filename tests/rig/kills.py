"""Kill a second process at random instants, a thousand times; look at what it leaves.

    python tests/rig/kills.py [--kills N] [--seed S] [--workers W]

A seed gives one kill, always of the same work at the same part of it; what the machine has come
to by then differs. Prints what did not hold, and how old the newest readings were that were lost.
"""

from __future__ import annotations

import argparse
import os
import random
import shutil
import signal
import struct
import sys
import tempfile
import time
from collections import Counter
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context
from pathlib import Path

from kill_record import Lost, killed_recording
from kill_works import WORKS

SHARES = {
    "record": 36,
    "seal": 12,
    "claim pack": 6,
    "import": 6,
    "index": 8,
    "job card": 6,
    "list of a job": 6,
    "amendments": 8,
    "join": 6,
    "move": 6,
    "pyramid": 6,
    "recording with a pyramid": 6,
}
"""Weights."""
_ENDLESS = {"index", "job card", "list of a job", "amendments", "move", "pyramid"}
"""What goes on until it is killed."""
POLICY_MS = 100.0
"""What was sent longer ago than this is on its way to the disk: it survives the program."""
_LONGEST_S, _ENDLESS_S = 60.0, 0.5
_LOT = 25


def one_kill(seed: int, place: Path) -> tuple[str, list[str], Lost]:
    """Do one work in a second process, kill it, and look.

    Parameters
    ----------
    seed : int
    place : Path
        A folder for all kills of this process.

    Returns
    -------
    name, wrong, lost
        Of the work; what does not hold; what it cost.
    """
    dice = random.Random(f"kill {seed}")
    (name,) = dice.choices(list(SHARES), list(SHARES.values()))
    own = place / f"kill-{seed}"
    own.mkdir()
    try:
        if name == "record":
            return name, *killed_recording(own, dice)
        return name, _killed_work(name, own, dice.random()), Lost()
    except Exception as error:  # noqa: BLE001 - whatever it is, the other kills go on
        return name, [f"{type(error).__name__}: {error}"], Lost()
    finally:
        shutil.rmtree(own)


_USUAL_S: dict[str, float] = {}


def _killed_work(name: str, own: Path, part: float) -> list[str]:
    work = WORKS[name]()
    if name in _ENDLESS:
        _USUAL_S[name] = _ENDLESS_S
    elif name not in _USUAL_S:
        (own / "trial").mkdir()
        work.prepare(own / "trial")
        _USUAL_S[name] = _until_killed(work, _LONGEST_S)[1]
        wrong = work.check([])
        if wrong:
            return [f"not even without a kill: {wrong}"]
        work = WORKS[name]()
    place = own / "killed"
    place.mkdir()
    work.prepare(place)
    told, _ = _until_killed(work, part * _USUAL_S[name])
    return work.check(told)


def _until_killed(work: object, seconds: float) -> tuple[list[int], float]:
    """Do a work in a child; give what it said it had finished, and how long it took."""
    heard, tell = os.pipe()
    child = os.fork()
    if child == 0:
        os.close(heard)
        code = 1
        try:
            work.act(lambda number: os.write(tell, struct.pack("<q", number)))
            code = 0
        finally:
            os._exit(code)
    os.close(tell)
    began, said = time.monotonic(), bytearray()
    with os.fdopen(heard, "rb", buffering=0) as stream:
        os.set_blocking(heard, False)
        while (left := began + seconds - time.monotonic()) > 0:
            if os.waitpid(child, os.WNOHANG)[0]:
                said += stream.readall() or b""
                return _numbers(said), time.monotonic() - began
            said += stream.read(1 << 16) or b""
            time.sleep(min(left, 0.001))
        os.kill(child, signal.SIGKILL)
        took = time.monotonic() - began
        os.waitpid(child, 0)
        os.set_blocking(heard, True)
        said += stream.readall()
    return _numbers(said), took


def _numbers(said: bytearray) -> list[int]:
    return [number for (number,) in struct.iter_unpack("<q", said[: len(said) // 8 * 8])]


def many_kills(seeds: range) -> tuple[Counter[str], list[str], list[Lost]]:
    """Make one kill for each seed; give which works, what did not hold, what was lost."""
    kinds: Counter[str] = Counter()
    wrong: list[str] = []
    costs: list[Lost] = []
    with tempfile.TemporaryDirectory() as folder:
        os.environ["METERLOG_ELSEWHERE"] = f"{folder}/elsewhere"
        for seed in seeds:
            name, faults, lost = one_kill(seed, Path(folder))
            kinds[name] += 1
            wrong += [f"seed {seed}, {name}: {fault}" for fault in faults]
            if name == "record":
                costs.append(lost)
    return kinds, wrong, costs


def main() -> int:
    """Share the kills among workers; 1 when one did not hold."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--kills", type=int, default=1000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--workers", type=int, default=2)
    options = parser.parse_args()
    seeds = range(options.seed, options.seed + options.kills)
    lots = [seeds[start : start + _LOT] for start in range(0, len(seeds), _LOT)]
    began = time.monotonic()
    kinds: Counter[str] = Counter()
    wrong: list[str] = []
    costs: list[Lost] = []
    # Begun anew, not forked: each worker forks its children, and must have no other thread.
    with ProcessPoolExecutor(options.workers, get_context("spawn")) as workers:
        for some, faults, lost in workers.map(many_kills, lots):
            kinds += some
            wrong += faults
            costs += lost
            for fault in faults:
                print(fault, flush=True)
    told = ", ".join(f"{count} {name}" for name, count in sorted(kinds.items()))
    print(f"{kinds.total()} kills ({told}): {len(wrong)} faults; {time.monotonic() - began:.0f} s")
    if costs:
        _tell_lost(costs)
    return 1 if wrong else 0


def _tell_lost(costs: list[Lost]) -> None:
    """Say how old the oldest reading and byte were that a kill of the recorder cost."""
    for what in ("readings", "raw"):
        ages = sorted(getattr(cost, what) for cost in costs)
        at = {part: ages[int(part * (len(ages) - 1))] for part in (0.5, 0.99, 1.0)}
        above = [cost for cost in costs if getattr(cost, what) > POLICY_MS]
        stalled = sum(getattr(cost, what) <= POLICY_MS + cost.stall for cost in above)
        print(
            f"oldest of the {what} lost, {len(ages)} killed recorders: median {at[0.5]:.0f} ms, "
            f"99 % {at[0.99]:.0f} ms, longest {at[1.0]:.0f} ms; above {POLICY_MS:.0f} ms: "
            f"{len(above)}, of them {stalled} by no more than the machine stalled"
        )


if __name__ == "__main__":
    sys.exit(main())
